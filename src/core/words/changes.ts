/** What comes out otherwise, tube by tube, in words. */
import { TELLS, type TubeChange } from '../checks/changed-tubes.ts';
import { toDegrees } from '../geometry/angle.ts';
import { formatAngle } from '../units/angle.ts';
import type { LengthUnit } from '../units/length.ts';
import { comparedLength } from './lengths.ts';
import { listed } from './lists.ts';

/** "blank 3.2 mm longer, end A cut otherwise by up to 1.1 mm": what of the tube is not as it was. */
export function tubeChangeInWords({ blank, ends, bends }: TubeChange, unit: LengthUnit): string {
  const length = (mm: number): string => comparedLength(mm, unit);
  const cut = ends.flatMap((by, which) => {
    if (by <= TELLS) return [];
    const how = Number.isFinite(by) ? ` by up to ${length(by)}` : '';
    return [`end ${which === 0 ? 'A' : 'B'} cut otherwise${how}`];
  });
  const degrees = bends === null ? null : formatAngle(toDegrees(bends), 1);
  const bent =
    degrees === null
      ? ['another number of bends']
      : Number(degrees) === 0
        ? []
        : [`a bend or turn ${degrees}° otherwise`];
  const longer =
    Math.abs(blank) <= TELLS ? [] : [`blank ${length(Math.abs(blank))} ${blank > 0 ? 'longer' : 'shorter'}`];
  return listed([...longer, ...cut, ...bent]);
}
