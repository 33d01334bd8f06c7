/** Which part is cut from which stick, section by section, in the order of sawing; and what was sawn already. */
import type { ReactNode } from 'react';
import type { Section } from '../../core/job/kinds/section.ts';
import { shownName } from '../../core/job/shown.ts';
import { leastInWords, TO_BUY, wantingInWords } from '../../core/words/stock.ts';
import { stickNumbers } from '../../core/stock/saw-order.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import { begunPlan } from '../../core/stock/begun-plan.ts';
import { isProven } from '../../core/stock/types.ts';
import { toCut } from '../../core/stock/to-cut.ts';
import { useDocument, useResults } from '../../store/page.ts';
import { Proof } from './Proof.tsx';
import { SawnSoFar } from './SawnSoFar.tsx';
import { StickCard } from './StickCard.tsx';

export function CuttingPlan({ hasTubes, toRack }: { hasTubes: boolean; toRack: () => void }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const plans = useResults((state) => state.plans);
  const sections = toCut(derived);
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
        <SawnSoFar />
      </>
    );
  const ready = sections.flatMap((section): readonly SectionPlan[] => {
    // What is being sawn is known at once: the hand stays where it is.
    const begun = begunPlan(section, section.begun);
    const planned = begun === null ? plans.get(section.section) : { plan: begun, wanting: [] };
    return planned === undefined ? [] : [{ ...section, ...planned }];
  });
  const numbers = stickNumbers(ready, derived.job);
  const used = ready.flatMap(({ plan }) => plan.sticks.map(({ stick }) => stick));
  const longest = Math.max(
    ...derived.job.stickSorts.flatMap(({ id, length }) => (used.includes(id) ? [length] : [])),
    1,
  );
  return (
    <>
      <Totals plans={ready} />
      {sections.length === 0 && <p className="empty">Every tube is cut.</p>}
      {sections.map(({ section }) => {
        const of = derived.job.sections.find(({ id }) => id === section)!;
        const plan = ready.find((each) => each.section === section);
        return (
          <section key={section} className="plan-section" aria-label={`Sticks of ${shownName(of.name)}`}>
            <h3>{shownName(of.name)}</h3>
            {plan === undefined ? (
              <p role="status">Working out the cutting plan…</p>
            ) : (
              <Plan plan={plan} of={of} longest={longest} numbers={numbers[ready.indexOf(plan)]!} />
            )}
          </section>
        );
      })}
      <SawnSoFar />
    </>
  );
}

/** What one comes for. */
function Totals({ plans }: { plans: readonly SectionPlan[] }): ReactNode {
  const sorts = useDocument((state) => state.job.stickSorts);
  const sticks = plans.flatMap(({ plan }) => plan.sticks);
  const used = sticks.flatMap(({ stick }) => sorts.find(({ id }) => id === stick) ?? []);
  const bought = used.filter(({ count }) => count === undefined).length;
  const unplaced = plans.reduce((sum, { plan }) => sum + plan.unplaced.length, 0);
  return (
    <dl className="tally-row">
      <div>
        <dt>Sticks to saw</dt>
        <dd className="figure">{sticks.length}</dd>
      </div>
      <div>
        <dt>{TO_BUY}</dt>
        <dd className="figure">{bought}</dd>
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

function Plan(props: { plan: SectionPlan; of: Section; longest: number; numbers: readonly number[] }): ReactNode {
  const {
    plan: { plan, sawing, wanting },
    of,
    longest,
    numbers,
  } = props;
  const sorts = useDocument((state) => state.job.stickSorts);
  const byId = useDocument((state) => state.derived.byId);
  const unit = useDocument((state) => state.job.lengthUnit);
  const listed = sorts.filter(({ section }) => section === of.id);
  return (
    <>
      {plan.sticks.length > 0 && plan.unplaced.length === 0 && <p className="small">{leastInWords(plan, listed)}</p>}
      <Proof section={of.id} name={shownName(of.name)} />
      <ol className="sticks">
        {plan.sticks.map((stick, i) => (
          <StickCard
            key={i}
            number={numbers[i]!}
            stick={stick}
            rest={{
              sticks: plan.sticks.flatMap((each, at) => (at === i ? [] : [{ ...each, number: numbers[at]! }])),
              proven: isProven(plan),
            }}
            sawing={sawing}
            longest={longest}
          />
        ))}
      </ol>
      {wanting.map((each) => (
        <p key={each.parts.map(({ id }) => id).join()} className="notice-warning">
          <span aria-hidden="true">▲ </span>
          {wantingInWords(each, (id) => byId.get(id)?.number ?? null, unit)}
        </p>
      ))}
    </>
  );
}
