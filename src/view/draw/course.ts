/** The tube as it would be made through the places drawn and the one aimed at, as a chain for the screen. */
import { withTube } from '../../core/shape/starters/with-tube.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import { courseOf, isForBothSides, usualSection, type DrawTrouble } from '../../core/shape/draw/tube.ts';
import { mirrored, type Vec3 } from '../../core/geometry/vector.ts';
import type { SectionId } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import { centrelineChain } from '../../core/mesh/sweep.ts';
import type { Frame } from '../../core/solve/types.ts';
import type { Drawing } from '../../store/types.ts';

/** The job with the tube that is drawn with in it: a job that has none yet gets the shop's commonest. */
export function stockFor(job: Job, drawing: Drawing): { readonly job: Job; readonly section: SectionId } {
  const chosen = job.sections.find(({ id }) => id === drawing.section)?.id ?? usualSection(job);
  if (chosen !== null) return { job, section: chosen };
  const stocked = withTube(job);
  return { job: stocked.job, section: stocked.tube.main };
}

export interface Course {
  readonly chain: readonly Vec3[];
  /** Its mirror image; none where the tube is for one side alone. */
  readonly twin: readonly Vec3[];
  readonly trouble: DrawTrouble | null;
}

/** With its bends; from corner to corner where it cannot be made. */
export function courseThrough(
  stock: { readonly job: Job; readonly section: SectionId },
  places: readonly Vec3[],
  bothSides: boolean,
): Course {
  const course = courseOf(stock.job, stock.section, places);
  const chain = typeof course === 'string' ? places : centrelineChain(course.path);
  return {
    chain,
    twin: bothSides ? chain.map(mirrored) : [],
    trouble: typeof course === 'string' && course !== 'too-few' ? course : null,
  };
}

/** As was said; else as its places lie. */
export const onBothSides = (frame: Frame, { bothSides }: Drawing, drawn: readonly Snap[]): boolean =>
  bothSides ?? isForBothSides(frame, drawn);
