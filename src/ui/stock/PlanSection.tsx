/** The cutting plan of one section: how it is sawn, how good it is, its sticks, and what to get. While it is worked out anew the last one stands there greyed, so that nothing jumps; none of its keys can be pressed. */
import type { ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import { dropBatch } from '../../core/edit/stock.ts';
import type { SectionId } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import { isUnknownBatch } from '../../core/stock/unknown-batch.ts';
import type { Wanting } from '../../core/stock/wanting.ts';
import { isProven } from '../../core/stock/types.ts';
import { leastInWords, sawingInWords, unplannedInWords, wantingInWords } from '../../core/words/stock.ts';
import { useResults } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { Proof } from './Proof.tsx';
import { StickCard } from './StickCard.tsx';

/** A plan, with the frame that it is of. */
export interface ShownPlan {
  readonly plan: SectionPlan;
  readonly frame: Pick<Derived, 'job' | 'byId'>;
  /** Another is being worked out. */
  readonly isOld: boolean;
}

interface PlanSectionProps {
  readonly section: SectionId;
  readonly name: string;
  /** How many are to be cut. */
  readonly parts: number;
  /** Undefined until there is one. */
  readonly shown: ShownPlan | undefined;
  /** mm: how long a stick is that fills the width. */
  readonly longest: number;
  /** Of its sticks. */
  readonly numbers: readonly number[];
  /** Of the stick that the hand goes on to. */
  readonly next: number | 'end' | null;
  readonly onArrived: () => void;
  /** A stick of that number was sawn, in these words. */
  readonly onSawn: (number: number, words: string) => void;
}

export function PlanSection({ section, name, parts, shown, ...props }: PlanSectionProps): ReactNode {
  const why = useResults((state) => state.unplanned.get(section));
  const isFound = shown !== undefined && !shown.isOld;
  return (
    <section className="plan-section" aria-label={`Sticks of ${name}`}>
      <h3>{name}</h3>
      {why !== undefined ? (
        <p className="word-error" role="alert">
          × {unplannedInWords(why)}
        </p>
      ) : (
        <p className="plan-state" role="status">
          {!isFound && workingInWords(parts, shown !== undefined)}
        </p>
      )}
      {isFound && <Proof section={section} name={name} />}
      {shown !== undefined && (why === undefined || isFound) && <Plan shown={shown} name={name} {...props} />}
    </section>
  );
}

const workingInWords = (parts: number, anew: boolean): string => {
  const many = parts === 1 ? '1 part' : `${parts} parts`;
  return anew
    ? `Being worked out anew, for ${many}. What stands here is the plan before the change.`
    : `Working out the cutting plan for ${many}…`;
};

type PlanProps = { shown: ShownPlan } & Pick<
  PlanSectionProps,
  'name' | 'longest' | 'numbers' | 'next' | 'onArrived' | 'onSawn'
>;

/** Whose batch it is that is asked for. */
const whoAsks = ({ parts }: Wanting, byId: Derived['byId']) => ({
  members: parts.flatMap(({ id, spare }) => (spare === null ? (byId.get(id)?.member.id ?? []) : [])),
  spares: parts.flatMap(({ spare }) => spare ?? []),
});

function Plan({
  shown: { plan: planned, frame, isOld },
  longest,
  numbers,
  next,
  name,
  ...moved
}: PlanProps): ReactNode {
  const { plan, sawing, wanting, section } = planned;
  const { job, byId } = frame;
  const numberOf = (id: string): number | null => byId.get(id)?.number ?? null;
  const listed = job.stickSorts.filter((stick) => stick.section === section);
  return (
    <div className={isOld ? 'plan-section plan-old' : 'plan-section'} inert={isOld}>
      {plan.sticks.length > 0 && <p className="small">{sawingInWords(sawing, job.lengthUnit)}</p>}
      {plan.sticks.length > 0 && plan.unplaced.length === 0 && <p className="small">{leastInWords(plan, listed)}</p>}
      <ol className="sticks">
        {plan.sticks.map((stick, i) => (
          <StickCard
            key={numbers[i]}
            number={numbers[i]!}
            stick={stick}
            frame={frame}
            rest={{
              sticks: plan.sticks.flatMap((each, at) => (at === i ? [] : [{ ...each, number: numbers[at]! }])),
              proven: isProven(plan),
            }}
            sawing={sawing}
            longest={longest}
            isNext={next === numbers[i]}
            {...moved}
          />
        ))}
      </ol>
      {wanting.map((each) => (
        <div key={each.parts.map(({ id }) => id).join()} className="notice-warning">
          <p>
            <span aria-hidden="true">▲ </span>
            {wantingInWords(each, { sticks: planned.sticks, name }, numberOf, job.lengthUnit)}
          </p>
          {isUnknownBatch(planned, each) && (
            <Command
              quiet
              step={`No batch asked for any more: ${shownName(each.batch!)}`}
              run={(now) => dropBatch(now, whoAsks(each, byId))}
            >
              Ask for no batch
            </Command>
          )}
        </div>
      ))}
    </div>
  );
}
