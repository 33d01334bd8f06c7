/** The corners at a node that a gusset could stand in, and a usual one for each. */
import { cornerAt, type Corner, type Way } from '../gusset/corner.ts';
import { gussetsOf, type SetGusset } from '../gusset/gussets.ts';
import { faceAt } from '../gusset/face.ts';
import { legRanges } from '../gusset/sheet.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import { cross, distance, dot, scale, type Vec3 } from '../geometry/vector.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import type { NodeRef } from '../job/reference.ts';
import type { Frame } from '../solve/types.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { jointAt } from './joint-order.ts';

export interface FreeCorner {
  readonly corner: Corner;
  readonly usual: Pick<Gusset, 'node' | 'between' | 'thickness'>;
}

/**
 * Across a bend whose corner is the node; else between every two bars of the joint there, each way that they run. Left out are those between which no sheet fits, those that another
 * tube of the joint parts in two, and those that have a gusset.
 */
export function freeCorners(frame: Frame, node: NodeRef): readonly FreeCorner[] {
  const place = frame.nodes.get(node);
  if (place === undefined) return [];
  const bent = [...frame.bars.values()].filter(({ bends }) =>
    bends.some(({ corner }) => distance(corner, place) <= MEETING_DISTANCE),
  );
  const there = waysAt(frame, node);
  const pairs = [
    ...bent.map((bar): readonly [Way, Way] => [
      { bar, towards: 'A' },
      { bar, towards: 'B' },
    ]),
    ...pairsOf(there),
  ];
  return pairs.flatMap((ways) => {
    const corner = cornerAt(place, ways);
    if ('why' in corner || gussetsOf(frame).some((set) => isThere(set, node, ways))) return [];
    if (there.some((way) => parts(way, corner, place))) return [];
    const legs = usualLegs(corner, frame.job.lengthUnit);
    return legs === null ? [] : [{ corner, usual: usualOf(node, ways, legs) }];
  });
}

const waysAt = (frame: Frame, node: NodeRef): readonly Way[] =>
  jointAt(frame, node).flatMap(({ bar, which }): Way[] => {
    if (which !== null) return [{ bar, towards: which === 0 ? 'B' : 'A' }];
    return [
      { bar, towards: 'A' },
      { bar, towards: 'B' },
    ];
  });

const pairsOf = (ways: readonly Way[]): readonly (readonly [Way, Way])[] =>
  ways.flatMap((one, i) => ways.slice(i + 1).flatMap((two) => (one.bar === two.bar ? [] : [[one, two] as const])));

/** Whether a third tube runs between the two legs, and has not left the sheet's plane where the sheet begins. */
function parts({ bar, towards }: Way, corner: Corner, place: Vec3): boolean {
  const { sides, normal } = corner;
  if (sides.some((side) => side.bar === bar)) return false;
  const direction = scale(nearestOnPath(bar.path, place).tangent, towards === 'B' ? 1 : -1);
  const [a, b] = sides;
  const along = [dot(cross(direction, b.direction), normal), dot(cross(a.direction, direction), normal)];
  const begins = Math.hypot(...faceAt(corner, 0, 0)!.corner);
  const leaves = Math.abs(dot(direction, normal)) * begins >= bar.section.outerDiameter / 2;
  return along.every((share) => share > ROUNDING) && !leaves;
}

const isThere = (set: SetGusset, node: NodeRef, ways: readonly [Way, Way]): boolean =>
  set.node === node &&
  ways.every(({ bar, towards }) => set.ways.some((way) => way.bar === bar && way.towards === towards));

/** Diameters of its tube that a leg is long, the middle of what is usual (common practice: two to four). */
const USUAL_LEG = 3;
const LEAST_LEG = 2;
/** Beyond a bend's tangent, as a share of the diameter. */
const BEYOND_BEND = 1;
/** A leg is begun with whole steps of the tape: 5 mm, a quarter inch. */
const STEP: Readonly<Record<LengthUnit, number>> = { mm: 5, in: MM_PER_INCH / 4 };

/** Null where a straight is too short for any. Rounded to whole steps it is never less than the two diameters that are usual, where there is room for them. */
function usualLegs(corner: Corner, unit: LengthUnit): readonly [number, number] | null {
  const step = STEP[unit];
  const legs = legRanges(corner).map(([least, longest], i) => {
    const diameter = 2 * corner.sides[i]!.radius;
    const wanted = Math.max(USUAL_LEG * diameter, least + BEYOND_BEND * diameter);
    if (longest <= Math.max(least, diameter / 2)) return null;
    const most = Math.min(wanted, longest);
    const rounded = step * Math.floor(most / step);
    const shortest = Math.max(LEAST_LEG * diameter, least);
    return rounded >= shortest ? rounded : Math.min(shortest, most);
  });
  const [a, b] = legs;
  return a == null || b == null ? null : [a, b];
}

const usualOf = (node: NodeRef, ways: readonly [Way, Way], legs: readonly [number, number]): FreeCorner['usual'] => ({
  node,
  between: [legOf(ways[0], legs[0]), legOf(ways[1], legs[1])],
  thickness: Math.max(...ways.map(({ bar }) => bar.section.wall)),
});

const legOf = ({ bar, towards }: Way, leg: number): Gusset['between'][0] => ({ member: bar.id, towards, leg });
