/** What was read and fits no bend of its tube, or cannot be, in sentences. */
import type { ReadingImpossible, ReadingsUnused } from '../checks/made-types.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { listed } from './lists.ts';

/** After the tube's name. */
export function unusedInWords({ readings, now }: ReadingsUnused): string {
  const has = now === 0 ? 'no bend' : now === 1 ? '1 bend' : `${now} bends`;
  const read = listed(readings.map(({ bend, net }) => `bend ${bend} read as ${degrees(net)}`));
  return `it is drawn with ${has} now, and these readings of its bend run are of none of them: ${read}. They are kept with the run, under Bending in the Shop, and nothing goes by them. Draw the tube as it was bent, or start its run anew.`;
}

/** After the tube's name. */
export function impossibleInWords({ bend, why, reading, planned }: ReadingImpossible, unit: LengthUnit): string {
  const { pulled, net } = reading;
  const left = reading.kept ? ' It was left so.' : '';
  const again = `${left} Read it again in its bend run.`;
  switch (why) {
    case 'doubles-back':
      return `bend ${bend} is read as ${degrees(net)}, and no tube turns back on itself: it cannot stand in the frame as it came out.${again}`;
    case 'opened-to-more':
      return `bend ${bend} was pulled to ${degrees(pulled)} and read as ${degrees((reading.read ?? reading).net)}: a bend opens when it is let go, it does not close.${again}`;
    case 'opened-by-too-much':
      return `bend ${bend} was pulled to ${degrees(pulled)} and read as ${degrees((reading.read ?? reading).net)}: no steel springs back by so much.${again}`;
    case 'far-off':
      return `bend ${bend} is read as ${degrees(net)} and was planned with ${degrees(planned)}: that looks like the figure of another bend.${again}`;
    case 'straight-off-tube':
      return `the straight before bend ${bend} is entered as ${formatLength(reading.straight!, unit).text} ${unit}, which this tube has not.${again}`;
  }
}

const degrees = (angle: number): string => `${formatAngle(angle, 1)}°`;
