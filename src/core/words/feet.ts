/** Feet in the words of the shop: pieces, counts, bends, areas. */
import { unfolded } from '../feet/bend-allowance.ts';
import type { Blank } from '../feet/blanks.ts';
import type { Hands } from '../feet/hands.ts';
import { frameOf, slopeOf, type Face } from '../feet/slope.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import type { Foot } from '../job/kinds/foot.ts';

export const PART_NAMES: Readonly<Record<Blank['part'], string>> = {
  plate: 'plate',
  top: 'box, plate on top',
  'long-wall': 'box, long wall',
  'short-wall': 'box, short wall',
};

/** Square millimetres as rule books have areas: "144.0 cm²", "22.32 in²". */
export const areaInWords = (mm2: number, unit: LengthUnit): string =>
  unit === 'in' ? `${(mm2 / 645.16).toFixed(2)} in²` : `${(mm2 / 100).toFixed(1)} cm²`;

const shown = (mm: number, unit: LengthUnit): string => `${formatLength(mm, unit).text} ${unit}`;

/** "150 x 100 mm", "6 x 4 in": with the unit once. */
export const sizeInWords = ([long, wide]: readonly [number, number], unit: LengthUnit): string =>
  `${formatLength(long, unit).text} x ${shown(wide, unit)}`;

/** "Cut 4, 3 mm thick." and what of them is for the mirror image, where that makes a difference. */
export function countInWords(
  { count, thickness }: Blank,
  own: number,
  twins: number,
  hands: Hands,
  unit: LengthUnit,
): string {
  const cut = `Cut ${count * (own + twins)}, ${shown(thickness, unit)} thick.`;
  if (count > 1 || own === 0 || twins === 0 || hands === 'same') return cut;
  return hands === 'handed'
    ? `${cut} Bend ${own} as drawn and ${twins} the other way, for the mirror image.`
    : `${cut} ${own} as drawn, ${twins} the other face up, for the mirror image.`;
}

/** "Bend down 20°, inside radius 3 mm" as one looks onto the drawing, and what was reckoned with; null without a kink. */
export function bendInWords(foot: Foot, unit: LengthUnit): string | null {
  const flat = unfolded(foot);
  if (flat === null) return null;
  const { angle, radius } = flat.kink;
  const allowance = Math.abs(flat.lines[2] - flat.lines[0]);
  return `Bend ${angle < 0 ? 'up' : 'down'} ${formatAngle(Math.abs(angle), 1)}° on the middle line, inside radius ${shown(radius, unit)}; the bend takes ${shown(allowance, unit)} (DIN 6935): try a strip first.`;
}

/** The car's directions, each axis with its own and the other way. */
const WAYS = [
  ['forward', 'back'],
  ['left', 'right'],
  ['up', 'down'],
] as const;

/** What a lean above zero is called, and one below: "Falls forward", "Falls back". */
export function leanNames(face: Face, which: 0 | 1): readonly [string, string] {
  const names = WAYS[frameOf(face).towards[which]];
  const verb = face === 'up' ? 'Falls' : 'Leans';
  return [`${verb} ${names[0]}`, `${verb} ${names[1]}`];
}

/** "level", "falls 3.0° forward and 2.0° right", "faces back, leans 1.5° up". */
export function slopeInWords(normal: Vec3): string {
  const { face, leans } = slopeOf(normal);
  const said = leans.flatMap((lean, i) => {
    const shown = formatAngle(Math.abs(lean), 1);
    if (Number(shown) === 0) return [];
    return [`${shown}° ${WAYS[frameOf(face).towards[i as 0 | 1]][lean > 0 ? 0 : 1]}`];
  });
  if (face === 'up') return said.length === 0 ? 'level' : `falls ${said.join(' and ')}`;
  return said.length === 0 ? `faces ${face}` : `faces ${face}, leans ${said.join(' and ')}`;
}
