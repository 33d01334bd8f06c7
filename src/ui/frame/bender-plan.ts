/**
 * The bender and its room seen from above, for the drawing beside the set-up's fields. Bender axes, mm: x along the feed,
 * y to the left of it; on the drawing x runs to the right and y up. Outlines only: nothing here judges what hits what.
 */
import { toRadians } from '../../core/geometry/angle.ts';
import { boxFrame } from '../../core/geometry/solid-box.ts';
import { addScaled, ORIGIN, type Vec3 } from '../../core/geometry/vector.ts';
import type { Bender } from '../../core/job/kinds/bender.ts';
import type { Die } from '../../core/job/kinds/die.ts';
import type { Obstacle } from '../../core/job/kinds/obstacle.ts';

export type Spot = readonly [number, number];
export type BoxObstacle = Extract<Obstacle, { kind: 'box' }>;
export type PlaneObstacle = Extract<Obstacle, { kind: 'plane' }>;

/** What a wall has to lean over, as z of its unit normal, to be named as level instead of drawn as a line. */
const LEVEL = 0.999;
/** How much is shown round what stands there, and the least that is shown before and behind the die, in radii. */
const AROUND = 0.08;
const LEAST = 3;

/** The corners of a box's shadow on the floor, anticlockwise: the convex hull of its eight corners. */
export function footprint({ centre, size, rotation }: BoxObstacle): readonly Spot[] {
  const { half, axes } = boxFrame(centre, size, [
    toRadians(rotation[0]),
    toRadians(rotation[1]),
    toRadians(rotation[2]),
  ]);
  const corners = [-1, 1].flatMap((x) =>
    [-1, 1].flatMap((y) =>
      [-1, 1].map((z) => {
        const reach = [x * half[0], y * half[1], z * half[2]] as const;
        const corner = axes.reduce<Vec3>((sum, axis, i) => addScaled(sum, axis, reach[i]!), centre);
        return [corner[0], corner[1]] as const;
      }),
    ),
  );
  return hullOf(corners);
}

/** From how low to how high a box stands, mm over the floor. */
export function heights({ centre, size, rotation }: BoxObstacle): readonly [number, number] {
  const { half, axes } = boxFrame(ORIGIN, size, [
    toRadians(rotation[0]),
    toRadians(rotation[1]),
    toRadians(rotation[2]),
  ]);
  const reach = axes.reduce((sum, axis, i) => sum + Math.abs(axis[2]) * half[i]!, 0);
  return [centre[2] - reach, centre[2] + reach];
}

/** Where a wall cuts the height of the bend plane, as a line: a spot on it and its direction. Null where it is level. */
export function wallLine({ point, normal }: PlaneObstacle, height: number): { at: Spot; along: Spot } | null {
  const [x, y, z] = normal;
  const flat = Math.hypot(x, y);
  if (Math.abs(z) >= LEVEL * Math.hypot(flat, z)) return null;
  // Down the slope from the point to the height of the bend plane.
  const out = ((point[2] - height) * z) / (flat * flat);
  return { at: [point[0] + x * out, point[1] + y * out], along: [-y / flat, x / flat] };
}

export interface PlanFrame {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** What of the room is drawn: the die with the tube it bends, every box, and the spot of every wall nearest the die. */
export function planFrame(bender: Bender, { centrelineRadius: radius }: Pick<Die, 'centrelineRadius'>): PlanFrame {
  const side = bender.turns === 'left' ? 1 : -1;
  const spots: Spot[] = [
    [-LEAST * radius, -radius],
    [LEAST * radius, radius],
    [0, side * LEAST * radius],
    ...bender.room.flatMap((obstacle) => {
      if (obstacle.kind === 'box') return footprint(obstacle);
      const line = wallLine(obstacle, bender.planeHeight);
      return line === null ? [] : [nearestOf(line)];
    }),
  ];
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const around = AROUND * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  return {
    left: Math.min(...xs) - around,
    right: Math.max(...xs) + around,
    bottom: Math.min(...ys) - around,
    top: Math.max(...ys) + around,
  };
}

/** The spot of a line that lies nearest the start of every bend. */
function nearestOf({ at, along }: { at: Spot; along: Spot }): Spot {
  const back = at[0] * along[0] + at[1] * along[1];
  return [at[0] - back * along[0], at[1] - back * along[1]];
}

/** Andrew's monotone chain, textbook. */
function hullOf(spots: readonly Spot[]): readonly Spot[] {
  const sorted = spots.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (ordered: readonly Spot[]): Spot[] => {
    const kept: Spot[] = [];
    for (const spot of ordered) {
      while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, spot) <= 0) kept.pop();
      kept.push(spot);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

const turn = (a: Spot, b: Spot, c: Spot): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
