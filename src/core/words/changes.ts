/** What comes out otherwise, tube by tube, in words. */
import type { TubeChange } from '../checks/changed-tubes.ts';
import { isSeenAngle } from '../checks/lead-changes.ts';
import { UNSEEN } from '../checks/limits.ts';
import { toDegrees } from '../geometry/angle.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { listed } from './lists.ts';

/** "blank 3.2 mm longer, end A cut otherwise by up to 1.1 mm": what of the tube is not as it was by more than a tape reads. */
export function tubeChangeInWords({ blank, ends, bends }: TubeChange, unit: LengthUnit): string {
  const length = (mm: number): string => `${formatLength(mm, unit).text} ${unit}`;
  const cut = ends.flatMap((by, which) => {
    if (by <= UNSEEN) return [];
    const how = Number.isFinite(by) ? ` by up to ${length(by)}` : '';
    return [`end ${which === 0 ? 'A' : 'B'} cut otherwise${how}`];
  });
  const bent =
    bends === null
      ? ['another number of bends']
      : isSeenAngle(bends)
        ? [`a bend or turn ${formatAngle(toDegrees(bends), 1)}° otherwise`]
        : [];
  const longer =
    Math.abs(blank) <= UNSEEN ? [] : [`blank ${length(Math.abs(blank))} ${blank > 0 ? 'longer' : 'shorter'}`];
  return listed([...longer, ...cut, ...bent]);
}
