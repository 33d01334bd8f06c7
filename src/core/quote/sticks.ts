/** Sticks by a job's cutting plans: which are taken, how many of each, and what they cost where that was said. */
import { batchKey } from '../job/batch.ts';
import type { Sawn } from '../job/kinds/sawn.ts';
import type { Stick } from '../job/kinds/stick.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { SectionId } from '../job/reference.ts';
import { feedOf } from '../solve/feed.ts';
import type { Frame } from '../solve/types.ts';
import type { Planned } from '../stock/of-job.ts';
import type { Wanting } from '../stock/wanting.ts';
import { rounded } from '../units/money.ts';

/** What is planned for one section. */
export type PlanOf = Planned & { readonly section: SectionId };

export interface SticksTaken {
  readonly stick: Stick;
  readonly count: number;
  /** left-over: of a stick that was sawn for this job, and counts whole already. */
  readonly from: 'bought' | 'rack' | 'left-over';
  /** All of them; null where the job has no price. */
  readonly cost: number | null;
}

/** In the order of the job; of a sort that left-overs are among, these first: the rest of it, which stood on the rack, is charged. */
export const sticksTaken = ({ job }: Pick<Frame, 'job'>, plans: readonly PlanOf[]): readonly SticksTaken[] =>
  job.stickSorts.flatMap((stick): readonly SticksTaken[] => {
    const count = plans
      .flatMap(({ plan }) => plan.sticks)
      .reduce((sum, each) => sum + (each.stick === stick.id ? 1 : 0), 0);
    const sawn = job.sawn.filter(({ from }) => from === stick.id).length;
    const left = Math.min(count, Math.max(0, leftOversOf(job, stick.id) - sawn));
    const rest = count - left;
    const cost = stick.cost === undefined ? null : rounded(rest * stick.cost);
    return [
      ...(left > 0 ? [{ stick, count: left, from: 'left-over', cost: 0 } as const] : []),
      ...(rest > 0 ? [{ stick, count: rest, from: stick.count === undefined ? 'bought' : 'rack', cost } as const] : []),
    ];
  });

/** Whole sticks of one section, length, batch and price: so many still to buy, on the rack for the plan, and sawn. What is left of one that was sawn counts with it, also once that is sawn in its turn. */
export interface AlikeSticks {
  readonly like: Pick<Stick, 'section' | 'length' | 'batch' | 'cost'>;
  readonly bought: number;
  readonly rack: number;
  readonly sawn: number;
}

/** In the order of the job, with those last of which all are sawn. */
export function sticksAlike({ job }: Pick<Frame, 'job'>, plans: readonly PlanOf[]): readonly AlikeSticks[] {
  const none = { bought: 0, rack: 0, sawn: 0 };
  const all = [
    ...sticksTaken({ job }, plans).flatMap(({ stick, count, from }): readonly AlikeSticks[] =>
      from === 'left-over' ? [] : [{ like: stick, ...none, [from]: count }],
    ),
    ...wholeOf(job).map((like): AlikeSticks => ({ like, ...none, sawn: 1 })),
  ];
  const alike = new Map<string, AlikeSticks>();
  for (const each of all) {
    const key = lineKey(nameOfLike(each.like));
    const before = alike.get(key) ?? { ...none, like: each.like };
    alike.set(key, {
      like: before.like,
      bought: before.bought + each.bought,
      rack: before.rack + each.rack,
      sawn: before.sawn + each.sawn,
    });
  }
  return [...alike.values()];
}

/** What such sticks are called by what was noted of them: the same before they are sawn and after. No section's id holds a line break, so that no two have one name, but for batches that are shown alike. */
export const nameOfLike = ({ section, length, batch, cost }: AlikeSticks['like']): string =>
  `sticks ${length} mm${cost === undefined ? '' : ` at ${cost}`} of ${section}${batch === undefined ? '' : `\n${shownName(batch)}`}`;

/** By which lines of a quote are known: of sticks alike whatever way their batch is typed. */
export function lineKey(line: string): string {
  const [named, batch] = line.split('\n', 2) as [string, string?];
  return batch === undefined ? line : `${named}\n${batchKey(batch)}`;
}

/** What was sawn, but for left-overs: of a sort that left-overs came to these are sawn first. */
const wholeOf = ({ sawn }: Pick<Job, 'sawn'>): readonly Sawn[] =>
  sawn.filter(
    (each, at) =>
      each.from === undefined ||
      sawn.slice(0, at).filter(({ from }) => from === each.from).length >= leftOversOf({ sawn }, each.from),
  );

/** How many sticks of a sort are what was kept of others that were sawn for this job: one, as a rule, though alike ones of the rack may have come to it. */
const leftOversOf = ({ sawn }: Pick<Job, 'sawn'>, sort: Stick['id']): number =>
  sawn.filter(({ kept }) => kept === sort).length;

/** Tubes that are cut, and no record says of which stick. */
export function cutUntold({ made, sawn }: Pick<Job, 'made' | 'sawn'>): number {
  const told = new Set(sawn.flatMap(({ cuts }) => cuts.map(({ tube }) => tube)));
  return made.filter(({ tube }) => !told.has(tube)).length;
}

/** Sticks that the plan has to do without: to be got, at a price that nobody has said. */
export const sticksWanted = (plans: readonly PlanOf[]): readonly (Wanting & { readonly section: SectionId })[] =>
  plans.flatMap(({ section, wanting }) => wanting.map((each) => ({ ...each, section })));

/** Of a job without sticks what its tubes and spares of each section come to, mm, but for tubes that are cut already: no plan says how many sticks that is. */
export function lengthsToCut({
  job,
  tubes,
}: Frame): readonly { readonly section: SectionId; readonly length: number }[] {
  if (job.stickSorts.length > 0) return [];
  const made = new Set(job.made.map(({ tube }) => tube));
  const open = tubes.filter(({ id }) => !made.has(id));
  return job.sections.flatMap(({ id: section }) => {
    const ofTubes = open.filter((tube) => tube.section.id === section).map((tube) => feedOf(job, tube).cutLength);
    const ofSpares = job.spares.filter((spare) => spare.section === section).map((spare) => spare.length * spare.count);
    const length = [...ofTubes, ...ofSpares].reduce((sum, each) => sum + each, 0);
    return length === 0 ? [] : [{ section, length }];
  });
}
