/**
 * The car that a person finds the places on: an ordinary closed one, drawn round where its places are, from the side (ahead is right), from behind
 * (left is left) and from above (ahead is right, left is up). Nothing is measured on it.
 */
import { mirrored, type Vec3 } from '../../core/geometry/vector.ts';
import type { Spot } from '../../core/survey/spots.ts';
import type { Place2 } from '../types.ts';

export const VIEWS = ['side', 'behind', 'above'] as const;
export type View = (typeof VIEWS)[number];

/** Where a place of the car is seen, mm of the car. */
export function seenFrom(view: View, [x, y, z]: Vec3): Place2 {
  switch (view) {
    case 'side':
      return { x, y: z };
    case 'behind':
      return { x: 0 - y, y: z };
    case 'above':
      return { x, y };
  }
}

export interface Outline {
  /** Closed. */
  readonly body: readonly Place2[];
  /** Pillars, glass and the like. */
  readonly lines: readonly (readonly Place2[])[];
  readonly wheels: readonly { readonly centre: Place2; readonly radius: number }[];
}

type Car = Readonly<Record<Spot, Vec3>>;

const at = (x: number, y: number): Place2 => ({ x, y });

/** The car from there. */
export const outlineOf = (view: View, car: Car): Outline => ({ side, behind, above })[view](car);

function side(car: Car): Outline {
  const [floor, roof, tower, top, foot] = [
    car['floor-b'],
    car['roof-b'],
    car.tower,
    car['screen-top'],
    car['screen-foot'],
  ];
  const belt = car['belt-b'][2];
  const [tail, nose, sill] = [tower[0] - 480, foot[0] + 850, floor[2] - 110];
  return {
    body: [
      at(tail, belt - 260),
      at(tail + 40, belt + 40),
      at(tower[0] - 40, belt + 90),
      at(roof[0] - 260, roof[2] + 55),
      at(roof[0] + 120, roof[2] + 85),
      at(top[0], top[2] + 45),
      at(foot[0] + 60, foot[2] + 25),
      at(nose - 90, foot[2] - 110),
      at(nose, foot[2] - 330),
      at(nose - 30, sill + 60),
      at(foot[0] + 60, sill),
      at(tower[0] + 330, sill),
      at(tail + 60, sill + 60),
    ],
    lines: [
      [at(roof[0] - 40, roof[2] + 20), at(roof[0] - 40, belt), at(roof[0] - 40, sill)],
      [at(tower[0] + 150, belt + 30), at(foot[0], belt + 30)],
      [at(foot[0] - 20, belt + 30), at(foot[0] - 60, sill)],
    ],
    wheels: [
      { centre: at(tower[0] + 20, sill + 70), radius: 290 },
      { centre: at(foot[0] + 380, sill + 70), radius: 290 },
    ],
  };
}

function behind(car: Car): Outline {
  const [floor, belt, roof] = [car['floor-b'], car['belt-b'], car['roof-b']];
  const half: readonly Place2[] = [
    at(floor[1] + 60, floor[2] - 110),
    at(belt[1] + 110, floor[2] + 160),
    at(belt[1] + 100, belt[2] - 60),
    at(belt[1] + 60, belt[2] + 60),
    at(roof[1] + 50, roof[2] + 30),
    at(roof[1] - 90, roof[2] + 90),
  ];
  return {
    body: [...half, ...half.map(({ x, y }) => at(0 - x, y)).toReversed()],
    lines: [
      [at(-belt[1] - 60, belt[2] + 60), at(belt[1] + 60, belt[2] + 60)],
      [at(-floor[1], floor[2]), at(floor[1], floor[2])],
    ],
    wheels: [],
  };
}

function above(car: Car): Outline {
  const [roof, tower, top, foot] = [car['roof-b'], car.tower, car['screen-top'], car['screen-foot']];
  const wide = car['belt-b'][1] + 110;
  const [tail, nose] = [tower[0] - 480, foot[0] + 850];
  const edge: readonly Place2[] = [
    at(tail, wide - 260),
    at(tail + 120, wide - 60),
    at(tower[0] + 200, wide),
    at(foot[0], wide),
    at(nose - 120, wide - 90),
    at(nose, wide - 300),
  ];
  const across = ([x, y]: Vec3): readonly Place2[] => [at(x, y), at(x, 0 - y)];
  const rear: Vec3 = [roof[0] - 260, roof[1] - 30, 0];
  const window: Vec3 = [tower[0] + 60, tower[1] + 40, 0];
  return {
    body: [...edge, ...edge.map(({ x, y }) => at(x, 0 - y)).toReversed()],
    lines: [
      ...[window, rear, top, foot].map(across),
      ...[window, mirrored(window)].map(([x, y], i) => {
        const turn = i === 0 ? 1 : -1;
        return [at(x, y), at(rear[0], turn * rear[1]), at(top[0], turn * top[1]), at(foot[0], turn * foot[1])];
      }),
    ],
    wheels: [],
  };
}
