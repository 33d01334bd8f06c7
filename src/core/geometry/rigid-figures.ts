/**
 * The rigid motion by which single coordinates of some places come to figures that were measured, while what these leave free is the best fit of other
 * places to their goals. Where not all figures can be met, their squared misses are as small as can be, and then those of the goals.
 *
 * Every figure is a spring that is made a hundred million times as stiff as those of the goals: that comes to the least squares of figures that cannot be met.
 * Those that can be are then missed by no more than the goals pull; shifted once by that, they are met exactly: a step of the method of multipliers (Hestenes
 * 1969; Nocedal and Wright, Numerical Optimization, 17.1 and 17.3). A round is Newton's method with the exact second derivatives, along their eigenvectors with the size of their eigenvalues: it goes downhill from
 * a saddle too, as where a hoop that stands upright is measured less high. Several turns are begun from, since figures can be met in more ways than one.
 */
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { moved, ofQuaternion, rigidFit, turned, type RigidMotion } from './rigid-motion.ts';
import { add, cross, dot, equal, length, scale, subtract, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from './vector.ts';

/** What one coordinate of a place, along axis 0 = x, 1 = y or 2 = z, is to be once it is moved; mm. */
export interface PlaceFigure {
  readonly place: Vec3;
  readonly axis: 0 | 1 | 2;
  readonly value: number;
}

/** How stiff the figures' springs are in each round, those of the goals counted as 1. */
const ROUNDS = [1e4, 1e6, 1e8] as const;

/** mm. What the stiffest springs of all figures are drawn out by less than this only the goals pull out: all can be met. */
const MET = 0.01;

/** Newton's steps in a round; 3 to 8 are usual. */
const MOST_STEPS = 60;

/** mm, or mm at the places' distance of a turn. From here on rounding hides whether a step goes downhill, and Newton's own is taken. */
const ON_TRUST = 1e-3;

/** As above. The end of a round. */
const AT_REST = 1e-10;

/** As above. What the curvature at hand knows nothing of is not stepped over: a sixth of a turn is 1 of the places' distance. */
const LONGEST_STEP = 0.5;

/** Of the stiffest direction. What gives way more than so is open, as the turn of a straight tube about itself. */
const OPEN = 1e-13;

/** Of the sum of squares. Two ends that differ by less are the same, and the start that is named first holds. */
const SAME = 1e-9;

/** The motion that brings `figures` to what they say, and then `places` nearest to `goals`; these are as many, at least one of each. */
export function fitToFigures(
  places: readonly Vec3[],
  goals: readonly Vec3[],
  figures: readonly PlaceFigure[],
): RigidMotion {
  const first = rigidFit(places, goals);
  const size = sizeOf(places, first.from);
  const springs = (stiffness: number, shifts: readonly number[]) =>
    springsOf(first.from, places, goals, figures, stiffness, shifts);

  const unshifted = figures.map(() => 0);
  const [slack, stiffer, stiffest] = ROUNDS;
  const begun = starts(first, figures).reduce<{ pose: RigidMotion; energy: number } | null>((before, start) => {
    const pose = settled(start, springs(slack, unshifted), size);
    const energy = energyOf(pose, springs(slack, unshifted));
    return before === null || energy < before.energy * (1 - SAME) ? { pose, energy } : before;
  }, null)!.pose;
  const nearer = settled(begun, springs(stiffer, unshifted), size);
  const least = settled(nearer, springs(stiffest, unshifted), size);
  const misses = figures.map(({ place, axis, value }) => moved(least, place)[axis] - value);
  return misses.every((miss) => Math.abs(miss) < MET) ? settled(least, springs(stiffest, misses), size) : least;
}

/**
 * How far one figure moves the places, where that is most: mm of the farthest of them for each mm that the figure is more, figure by figure. They lie where
 * the figures have brought them. Near 1 a figure says where they are; a great number says that it hardly does.
 */
export function movesOfFigures(
  places: readonly Vec3[],
  goals: readonly Vec3[],
  figures: readonly PlaceFigure[],
): readonly number[] {
  const from = scale(places.reduce(add), 1 / places.length);
  const here: RigidMotion = { rows: [X_AXIS, Y_AXIS, Z_AXIS], from, to: from };
  const size = sizeOf(places, from);
  const stiffness = ROUNDS.at(-1)!;
  const springs = springsOf(
    from,
    places,
    goals,
    figures,
    stiffness,
    figures.map(() => 0),
  );
  return figures.map(({ place, axis }) => {
    const pull = slopeOf(subtract(place, from), AXES[axis].along, size).map((part) => -stiffness * part);
    const [a, b, c, x, y, z] = downhill(pull, curvatureAt(here, springs, size)) as unknown as Six;
    const turn: Vec3 = [a / size, b / size, c / size];
    return Math.max(...places.map((each) => length(add([x, y, z], cross(turn, subtract(each, from))))));
  });
}

const AXES = [
  { axis: 0, along: X_AXIS },
  { axis: 1, along: Y_AXIS },
  { axis: 2, along: Z_AXIS },
] as const;

/** Pulls one coordinate of a place, `arm` from the centre of all, to the value. */
interface Spring {
  readonly arm: Vec3;
  readonly along: Vec3;
  readonly value: number;
  readonly stiffness: number;
}

function springsOf(
  centre: Vec3,
  places: readonly Vec3[],
  goals: readonly Vec3[],
  figures: readonly PlaceFigure[],
  stiffness: number,
  shifts: readonly number[],
): readonly Spring[] {
  return [
    ...places.flatMap((place, i) =>
      AXES.map(({ axis, along }) => ({ arm: subtract(place, centre), along, value: goals[i]![axis], stiffness: 1 })),
    ),
    ...figures.map(({ place, axis, value }, k) => ({
      arm: subtract(place, centre),
      along: AXES[axis].along,
      value: value - shifts[k]!,
      stiffness,
    })),
  ];
}

/** mm. No less than 1, where all is in one place. */
const sizeOf = (places: readonly Vec3[], centre: Vec3): number =>
  Math.max(1, ...places.map((place) => length(subtract(place, centre))));

/**
 * The best fit itself; the places that were measured to where they were, what was not measured of them as at the best fit; then leaning a little every
 * way off what may be a saddle, then half a turn round.
 */
const starts = (first: RigidMotion, figures: readonly PlaceFigure[]): readonly RigidMotion[] => [
  first,
  ...(figures.length === 0 ? [] : [toFigures(first, figures)]),
  ...[LEAN, -LEAN, Math.PI].flatMap((angle) => AXES.map(({ along }) => turnedBy(first, along, angle))),
];

function toFigures(first: RigidMotion, figures: readonly PlaceFigure[]): RigidMotion {
  const measured: { readonly place: Vec3; readonly goal: [number, number, number] }[] = [];
  for (const { place, axis, value } of figures) {
    let known = measured.find((each) => equal(each.place, place));
    if (known === undefined) measured.push((known = { place, goal: [...moved(first, place)] }));
    known.goal[axis] = value;
  }
  const motion = rigidFit(
    measured.map(({ place }) => place),
    measured.map(({ goal }) => goal),
  );
  return { rows: motion.rows, from: first.from, to: moved(motion, first.from) };
}

/** Radians. */
const LEAN = 0.05;

const turnedBy = (pose: RigidMotion, axis: Vec3, angle: number): RigidMotion => {
  const [x, y, z] = ofQuaternion([Math.cos(angle / 2), ...axis.map((part) => part * Math.sin(angle / 2))]);
  const columns = AXES.map(({ axis: k }): Vec3 => [pose.rows[0][k], pose.rows[1][k], pose.rows[2][k]]);
  const row = (of: Vec3): Vec3 => [dot(of, columns[0]!), dot(of, columns[1]!), dot(of, columns[2]!)];
  return { ...pose, rows: [row(x), row(y), row(z)] };
};

/** How far the spring is drawn out. */
const drawnOut = (pose: RigidMotion, { arm, along, value }: Spring): number =>
  dot(along, add(pose.to, turned(pose, arm))) - value;

const energyOf = (pose: RigidMotion, springs: readonly Spring[]): number =>
  springs.reduce((sum, spring) => sum + (spring.stiffness * drawnOut(pose, spring) ** 2) / 2, 0);

/** Where the springs leave it at rest, going down from `start`. `size`, mm: a turn is counted in what it moves a place so far from the centre. */
function settled(start: RigidMotion, springs: readonly Spring[], size: number): RigidMotion {
  let pose = start;
  for (let step = 0; step < MOST_STEPS; step++) {
    const whole = newtonStep(pose, springs, size);
    const far = Math.hypot(...whole);
    if (far <= ON_TRUST) {
      pose = stepped(pose, whole, size);
      if (far <= AT_REST) break;
      continue;
    }
    const before = energyOf(pose, springs);
    let share = Math.min(1, (LONGEST_STEP * size) / far);
    let next = stepped(pose, whole, size, share);
    while (!(energyOf(next, springs) < before) && share * far > ON_TRUST) {
      share /= 2;
      next = stepped(pose, whole, size, share);
    }
    pose = next;
  }
  return pose;
}

/** Three turns, counted at `size`, and three shifts; mm. */
type Step = readonly number[];
type Six = readonly [number, number, number, number, number, number];

const stepped = (pose: RigidMotion, step: Step, size: number, share = 1): RigidMotion => {
  const [a, b, c, x, y, z] = step.map((part) => part * share) as unknown as Six;
  const turn: Vec3 = [a / size, b / size, c / size];
  const angle = length(turn);
  const axis: Vec3 = angle === 0 ? X_AXIS : [turn[0] / angle, turn[1] / angle, turn[2] / angle];
  return { ...turnedBy(pose, axis, angle), to: add(pose.to, [x, y, z]) };
};

const newtonStep = (pose: RigidMotion, springs: readonly Spring[], size: number): Step => {
  const slope = [0, 0, 0, 0, 0, 0];
  for (const spring of springs) {
    const by = slopeOf(turned(pose, spring.arm), spring.along, size);
    const out = spring.stiffness * drawnOut(pose, spring);
    for (let i = 0; i < 6; i++) slope[i]! += out * by[i]!;
  }
  return downhill(slope, curvatureAt(pose, springs, size));
};

/**
 * Turned by w and shifted, the place at arm a has along e what it had, plus w . (a x e), plus 1/2 [(w . a)(w . e) - w . w (a . e)] and less than
 * that: the first derivatives here, the second in the curvature.
 */
const slopeOf = (arm: Vec3, along: Vec3, size: number): Step => [
  ...cross(arm, along).map((part) => part / size),
  ...along,
];

function curvatureAt(pose: RigidMotion, springs: readonly Spring[], size: number): readonly (readonly number[])[] {
  const curvature = [0, 0, 0, 0, 0, 0].map(() => [0, 0, 0, 0, 0, 0]);
  for (const spring of springs) {
    const { along: e, stiffness } = spring;
    const a = turned(pose, spring.arm);
    const out = stiffness * drawnOut(pose, spring);
    const by = slopeOf(a, e, size);
    const level = dot(a, e);
    for (let i = 0; i < 6; i++) {
      for (let k = 0; k < 6; k++) curvature[i]![k]! += stiffness * by[i]! * by[k]!;
    }
    for (let i = 0; i < 3; i++) {
      for (let k = 0; k < 3; k++) {
        const bends = (a[i]! * e[k]! + a[k]! * e[i]!) / 2 - (i === k ? level : 0);
        curvature[i]![k]! += (out * bends) / size ** 2;
      }
    }
  }
  return curvature;
}

/** Newton's step, but never uphill: along each eigenvector by the size of its eigenvalue. */
function downhill(slope: Step, curvature: readonly (readonly number[])[]): Step {
  const pairs = symmetricEigen(curvature);
  const stiffest = Math.max(...pairs.map(({ value }) => Math.abs(value)));
  return pairs.reduce<Step>(
    (step, { value, vector }) => {
      const stiff = Math.abs(value);
      if (stiff <= OPEN * stiffest) return step;
      const along = -vector.reduce((sum, part, i) => sum + part * slope[i]!, 0) / stiff;
      return step.map((part, i) => part + along * vector[i]!);
    },
    [0, 0, 0, 0, 0, 0],
  );
}
