/** Where the belts of one driver go, whether an article asks or not: of each shoulder the one to the nearest harness bar behind it. */
import type { DriverEnvelope } from '../job/kinds/envelope.ts';
import { isRole } from '../job/role.ts';
import type { Job } from '../job/types.ts';
import { placeAmong } from '../solve/envelope-box.ts';
import type { Frame } from '../solve/types.ts';
import type { Belt } from './kinds/belt.ts';
import { nearestBelt } from './kinds/harness.ts';

/** Left and right; null where no harness bar runs behind that shoulder. Empty where the shoulders were not measured. Degrees and mm, as Belt has them. */
export function beltsOfDriver(
  { job, bars }: Pick<Frame, 'bars'> & { readonly job: Pick<Job, 'points'> },
  { shoulders }: Pick<DriverEnvelope, 'shoulders'>,
): readonly (Belt | null)[] {
  const harnessBars = [...bars.values()].filter(({ member }) => isRole(member, 'harness-bar'));
  return (shoulders ?? []).map((shoulder) => nearestBelt(placeAmong(job.points, shoulder)!, harnessBars)?.[1] ?? null);
}
