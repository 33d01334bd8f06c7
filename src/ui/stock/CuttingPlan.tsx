/** Which part is cut from which stick, section by section, in the order of sawing; and what was sawn already. */
import { useCallback, useState, type ReactNode } from 'react';
import type { SectionId } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
import { TO_BUY } from '../../core/words/stock.ts';
import { stickNumbers } from '../../core/stock/saw-order.ts';
import { toCut } from '../../core/stock/to-cut.ts';
import { useDocument, useResults } from '../../store/page.ts';
import { EndOfPlan } from './EndOfPlan.tsx';
import { PlanSection, type ShownPlan } from './PlanSection.tsx';
import { SawnSoFar } from './SawnSoFar.tsx';

export function CuttingPlan(props: {
  hasTubes: boolean;
  toRack: () => void;
  /** Said to whoever hears the screen. */
  say: (words: string) => void;
}): ReactNode {
  const { hasTubes, toRack, say } = props;
  const derived = useDocument((state) => state.derived);
  const known = useResults((state) => state.plans);
  const before = useResults((state) => state.plansBefore);
  /** By which number the stick stands that the hand goes on to; 'end': there is none. */
  const [next, goOn] = useState<number | 'end' | null>(null);
  const arrived = useCallback(() => goOn(null), []);
  const sections = toCut(derived);
  const soFar = (
    <EndOfPlan isNext={next === 'end'} onArrived={arrived}>
      <SawnSoFar say={say} onBack={() => goOn('end')} />
    </EndOfPlan>
  );
  if (!hasTubes)
    return (
      <p className="empty">
        <strong>No tubes yet.</strong> Draw them in Frame: what they are cut from is planned here.
      </p>
    );
  if (derived.job.stickSorts.length === 0)
    return (
      <>
        <p className="empty">
          <strong>No sticks yet.</strong> List what is on the rack and in what lengths tube can be bought: the plan that
          costs least is then worked out by itself.
        </p>
        <button type="button" className="press" onClick={toRack}>
          List the sticks
        </button>
        {soFar}
      </>
    );
  const shown = sections.flatMap((section): readonly ShownPlan[] => {
    const planned = known.get(section.section);
    if (planned !== undefined) return [{ plan: { ...section, ...planned }, frame: derived, isOld: false }];
    const last = before.get(section.section);
    return last === undefined ? [] : [{ ...last, isOld: true }];
  });
  const numbers = stickNumbers(
    shown.map(({ plan }) => plan),
    derived.job,
  );
  const longest = Math.max(1, ...shown.map(longestOf));
  const all = numbers.flat();
  const sawn = (number: number, words: string): void => {
    const at = all.indexOf(number);
    goOn(all[at + 1] ?? all.find((each) => each !== number) ?? 'end');
    say(words);
  };
  const numbersOf = (section: SectionId): readonly number[] =>
    numbers[shown.findIndex(({ plan }) => plan.section === section)] ?? [];
  return (
    <>
      <Totals plans={shown} />
      {sections.length === 0 && <p className="empty">Every tube is cut.</p>}
      {sections.map(({ section, parts }) => (
        <PlanSection
          key={section}
          section={section}
          name={shownName(derived.job.sections.find(({ id }) => id === section)!.name)}
          parts={parts.length}
          shown={shown.find(({ plan }) => plan.section === section)}
          longest={longest}
          numbers={numbersOf(section)}
          next={next}
          onArrived={arrived}
          onSawn={sawn}
        />
      ))}
      {soFar}
    </>
  );
}

/** mm: of its sticks. */
const longestOf = ({ plan: { plan }, frame: { job } }: ShownPlan): number => {
  const used = new Set(plan.sticks.map(({ stick }) => stick));
  return Math.max(1, ...job.stickSorts.flatMap(({ id, length }) => (used.has(id) ? [length] : [])));
};

/** What one comes for; greyed while one of the plans is an old one. */
function Totals({ plans }: { plans: readonly ShownPlan[] }): ReactNode {
  const counted = plans.map(({ plan: { plan }, frame: { job } }) => ({
    sticks: plan.sticks.length,
    bought: plan.sticks.filter(({ stick }) => job.stickSorts.find(({ id }) => id === stick)?.count === undefined)
      .length,
    unplaced: plan.unplaced.length,
  }));
  const sum = (of: (each: (typeof counted)[number]) => number): number =>
    counted.reduce((all, each) => all + of(each), 0);
  const unplaced = sum((each) => each.unplaced);
  return (
    <dl className={plans.some(({ isOld }) => isOld) ? 'tally-row plan-old' : 'tally-row'}>
      <div>
        <dt>Sticks to saw</dt>
        <dd className="figure">{sum(({ sticks }) => sticks)}</dd>
      </div>
      <div>
        <dt>{TO_BUY}</dt>
        <dd className="figure">{sum(({ bought }) => bought)}</dd>
      </div>
      {unplaced > 0 && (
        <div className="tally-warning-word">
          <dt>Without a stick</dt>
          <dd className="figure">{unplaced}</dd>
        </div>
      )}
    </dl>
  );
}
