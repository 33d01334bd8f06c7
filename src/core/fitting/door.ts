/**
 * The opening of the car's door, as its measured points tell it by their names: sill at A- and B-pillar, roof rail at the B-pillar, the
 * windscreen's two corners; none that is a guess. Its longest straight way is the greatest distance between two of them on one side of the car, as a tape has it. Corners of the
 * opening are round and its edges thick, so less goes through there than that figure; a typed figure stands in its place.
 */
import { distance } from '../geometry/vector.ts';
import { AT_A_PILLAR, AT_B_PILLAR, BEHIND, SCREEN_FOOT, SCREEN_TOP, tells } from '../job/point-words.ts';
import type { Point } from '../job/kinds/point.ts';
import type { PointId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

const DOOR_SPOTS = ['sill-a', 'sill-b', 'rail-b', 'screen-top', 'screen-foot'] as const;
type DoorSpot = (typeof DOOR_SPOTS)[number];

/** Every one of these has to be in a name. */
const TELLING: Readonly<Record<DoorSpot, readonly RegExp[]>> = {
  'sill-a': [/sill/u, AT_A_PILLAR],
  'sill-b': [/sill/u, AT_B_PILLAR],
  'rail-b': [/roof|rail/u, AT_B_PILLAR],
  'screen-top': SCREEN_TOP,
  'screen-foot': SCREEN_FOOT,
};

/** A sill or a rail may have a rear end of its own. */
const notOf = (spot: DoorSpot): RegExp => (spot.startsWith('screen') ? BEHIND : /rear window|back/u);

export interface Door {
  /** mm. */
  readonly way: number;
  /** Between which points; null where it was typed. */
  readonly between: readonly [PointId, PointId] | null;
}

/** Null where neither a sill and a higher point of one side were measured, nor the figure typed. */
export function doorOf({ points, doorOpening }: Pick<Job, 'points' | 'doorOpening'>): Door | null {
  if (doorOpening !== undefined) return { way: doorOpening, between: null };
  let longest: Door | null = null;
  for (const side of [1, -1]) {
    const found = spotsOn(points, side);
    if (!found.some(({ spot }) => isSill(spot)) || found.every(({ spot }) => isSill(spot))) continue;
    for (const [i, { point: one }] of found.entries()) {
      for (const { point: other } of found.slice(i + 1)) {
        const way = distance(one.position, other.position);
        if (way > (longest?.way ?? 0)) longest = { way, between: [one.id, other.id] };
      }
    }
  }
  return longest;
}

interface Spot {
  readonly spot: DoorSpot;
  readonly point: Point;
}

/** The first point of each name on that side of the car: 1 left, -1 right. */
const spotsOn = (points: Job['points'], side: number): readonly Spot[] =>
  DOOR_SPOTS.flatMap((spot) => {
    const point = points.find(
      (each) => !each.guessed && Math.sign(each.position[1]) === side && tells(each.name, TELLING[spot], notOf(spot)),
    );
    return point === undefined ? [] : [{ spot, point }];
  });

/** Heights of the opening on that side, 1 left, -1 right: from the lower of its sill's points to the rail at the B-pillar, mm; null where one was not measured. */
export function doorHeights(
  points: Job['points'],
  side: 1 | -1,
): { readonly sill: number; readonly rail: number } | null {
  const found = spotsOn(points, side);
  const sills = found.filter(({ spot }) => isSill(spot)).map(({ point }) => point.position[2]);
  const rail = found.find(({ spot }) => spot === 'rail-b')?.point.position[2];
  const sill = Math.min(...sills);
  return rail === undefined || !(rail > sill) ? null : { sill, rail };
}

const isSill = (spot: DoorSpot): boolean => spot.startsWith('sill');
