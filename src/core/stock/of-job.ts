/** A job's tubes and spares, cut from its sticks: a plan for each section, and all of them together. */
import type { Job } from '../job/types.ts';
import { FIRST_KERF } from '../job/kinds/stock.ts';
import type { SectionId } from '../job/reference.ts';
import { feedOf } from '../solve/feed.ts';
import type { Frame } from '../solve/types.ts';
import { planCuts } from './plan-cuts.ts';
import type { CutPlan, Part, Sawing, StickSort } from './types.ts';

/** What one section's plan is made of; plain data, the same for the same. */
export interface ToCut {
  readonly section: SectionId;
  readonly parts: readonly Part[];
  readonly sticks: readonly StickSort[];
  readonly sawing: Sawing;
}

/** Each section of which something is to be cut, in the order of the job; nothing where the job has no sticks at all. */
export function toCut({ job, tubes }: Pick<Frame, 'job' | 'tubes'>): readonly ToCut[] {
  if (job.stickSorts.length === 0) return [];
  return job.sections.flatMap(({ id: section }): readonly ToCut[] => {
    const sticks = sticksOf(job, section);
    const ofTubes = tubes
      .filter((tube) => tube.section.id === section)
      .map((tube): Part => ({
        id: tube.id,
        spare: null,
        length: feedOf(job, tube).cutLength,
        batch: tube.member.batch ?? null,
      }));
    const parts = [...ofTubes, ...sparesOf(job, section)];
    return parts.length === 0 ? [] : [{ section, parts, sticks, sawing: sawingOf(job) }];
  });
}

/** mm. */
export const sawingOf = ({ stock = {} }: Pick<Job, 'stock'>): Sawing => ({
  kerf: stock.kerf ?? FIRST_KERF,
  squareOff: stock.squareOff ?? 0,
});

const sticksOf = ({ stickSorts }: Job, section: SectionId): readonly StickSort[] =>
  stickSorts
    .filter((stick) => stick.section === section)
    .map(({ id, length, count = Infinity, cost = length, batch = null }) => ({ id, length, count, cost, batch }));

/** A spare is called by the place of its record, and which of them it is, from 0: "spare 0.1". */
const sparesOf = ({ spares }: Job, section: SectionId): readonly Part[] =>
  spares.flatMap((spare, record) =>
    spare.section === section
      ? Array.from({ length: spare.count }, (_, which) => ({
          id: `spare ${record}.${which}`,
          spare: record,
          length: spare.length,
          batch: null,
        }))
      : [],
  );

/** The plans of all sections together. */
export function planStock(frame: Pick<Frame, 'job' | 'tubes'>): readonly (ToCut & { readonly plan: CutPlan })[] {
  return toCut(frame).map((each) => ({ ...each, plan: planCuts(each.parts, each.sticks, each.sawing) }));
}
