/** Sticks by a job's cutting plans: which are taken, how many of each, and what they cost where that was said. */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Sawn } from '../job/kinds/sawn.ts';
import type { Stick } from '../job/kinds/stick.ts';
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

/** In the order of the job. */
export const sticksTaken = ({ job }: Pick<Frame, 'job'>, plans: readonly PlanOf[]): readonly SticksTaken[] =>
  job.stickSorts.flatMap((stick): readonly SticksTaken[] => {
    const count = plans
      .flatMap(({ plan }) => plan.sticks)
      .reduce((sum, each) => sum + (each.stick === stick.id ? 1 : 0), 0);
    if (count === 0) return [];
    if (job.sawn.some(({ kept }) => kept === stick.id)) return [{ stick, count, from: 'left-over', cost: 0 }];
    const cost = stick.cost === undefined ? null : rounded(count * stick.cost);
    return [{ stick, count, from: stick.count === undefined ? 'bought' : 'rack', cost }];
  });

/** Sticks that were sawn, alike ones together; one that was itself the left-over of another counts with that. */
export function sticksSawn({ sawn }: Pick<Job, 'sawn'>): readonly { readonly like: Sawn; readonly count: number }[] {
  const isAlike = (one: Sawn, other: Sawn): boolean =>
    one.section === other.section &&
    one.length === other.length &&
    one.cost === other.cost &&
    one.batch === other.batch;
  const whole = sawn.filter((each) => !sawn.some((other) => isLeftOver(each, other)));
  return whole
    .filter((each) => each === whole.find((other) => isAlike(each, other)))
    .map((like) => ({ like, count: whole.filter((each) => isAlike(each, like)).length }));
}

/** A record says of a stick what it was, and not which: a left-over is known by its length, which no whole stick has. */
const isLeftOver = (stick: Sawn, of: Sawn): boolean =>
  of !== stick && of.kept !== undefined && of.section === stick.section && Math.abs(of.left - stick.length) <= ROUNDING;

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
