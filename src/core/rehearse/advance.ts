/**
 * The angle at which a stretch of the tube first touches something, found without sampling.
 *
 * At an angle the distance is known from below, and it cannot change by more than its speed, mm a radian. So the
 * machine may be turned by distance / speed, and nothing has been touched on the way. That is done again until the end
 * of the sweep, or until no more than CONTACT is left. Where a chord's sag decides, the two halves go on from there
 * (docs/maths/rehearsal.md).
 */
import type { Radians } from '../geometry/angle.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { distanceBetween, distanceTo, nearestShare, other, segment } from './nearest.ts';
import { halvesOf, type Stretch } from './stretch.ts';
import { TOUCH, type Obstruction, type Surroundings } from './surroundings.ts';

/** mm. A distance left that is as good as none. */
const CONTACT = 0.01;
/** mm. A chord this near to its arc is not split again. */
const FINE = 0.005;

/** How a stretch moves as the machine is turned; 'passes': it slides, seen from the die that turns. */
export type Motion = 'still' | 'swings' | 'slides' | 'passes';
export type Moves = readonly [Motion, Motion];

/** The stretch that was last found to touch, and where on it. */
let touching: Stretch | null = null;
let touchingShare = 0;

/**
 * The least angle from `from` to `until` at which the stretch touches the solid, or Infinity. Whatever the motion, no
 * place of the tube changes its height, and what slides stays as far to the left: where these alone keep the two apart
 * nothing is turned, for past a bench just under the tube every advance would be as small as the gap.
 */
export function firstTouch(
  stretch: Stretch,
  obstruction: Obstruction,
  motion: Motion,
  speed: number,
  from: Radians,
  until: Radians,
  around: Surroundings,
): Radians {
  const taken = stretch.sag + around.tubeRadius + TOUCH;
  const { solid, low, high, y0, y1 } = obstruction;
  if (apart(stretch.from[2], stretch.to[2], low - taken, high + taken)) return Infinity;
  if (motion === 'slides' && apart(stretch.from[1], stretch.to[1], y0 - taken, y1 + taken)) return Infinity;
  for (let angle = from; angle <= until;) {
    put(segment, stretch, motion, angle, around);
    const clear = distanceTo(solid) - taken;
    if (clear > CONTACT) {
      angle += clear / speed;
    } else if (stretch.sag <= FINE) {
      touching = stretch;
      touchingShare = nearestShare;
      return angle;
    } else {
      const [one, two] = halvesOf(stretch);
      const first = firstTouch(one, obstruction, motion, speed, angle, until, around);
      return Math.min(first, firstTouch(two, obstruction, motion, speed, angle, Math.min(first, until), around));
    }
  }
  return Infinity;
}

/** The same for two stretches of the tube. */
export function firstMeeting(
  one: Stretch,
  two: Stretch,
  moves: Moves,
  speed: number,
  from: Radians,
  until: Radians,
  around: Surroundings,
): Radians {
  const taken = one.sag + two.sag + 2 * around.tubeRadius + TOUCH;
  const [low, high] = [Math.min(two.from[2], two.to[2]), Math.max(two.from[2], two.to[2])];
  if (apart(one.from[2], one.to[2], low - taken, high + taken)) return Infinity;
  for (let angle = from; angle <= until;) {
    put(segment, one, moves[0], angle, around);
    put(other, two, moves[1], angle, around);
    const clear = distanceBetween() - taken;
    if (clear > CONTACT) {
      angle += clear / speed;
    } else if (one.sag <= FINE && two.sag <= FINE) {
      touching = one;
      touchingShare = nearestShare;
      return angle;
    } else {
      const pairs =
        one.sag >= two.sag
          ? halvesOf(one).map((part) => [part, two] as const)
          : halvesOf(two).map((part) => [one, part] as const);
      let first = Infinity;
      for (const [a, b] of pairs) {
        first = Math.min(first, firstMeeting(a, b, moves, speed, angle, Math.min(first, until), around));
      }
      return first;
    }
  }
  return Infinity;
}

/** Whether neither of the two nor anything between them is between the limits. */
const apart = (one: number, other: number, low: number, high: number): boolean =>
  (one > high && other > high) || (one < low && other < low);

/** Where the touch last found is on the centreline. */
export function touchedAt(motion: Motion, angle: Radians, around: Surroundings): Vec3 {
  put(segment, touching!, motion, angle, around);
  const between = (k: number): number => segment[k]! + touchingShare * (segment[k + 3]! - segment[k]!);
  return [between(0), between(1), between(2)];
}

/** Writes the ends of the stretch as they are at this angle. */
function put(into: Float64Array, { from, to }: Stretch, motion: Motion, angle: Radians, around: Surroundings): void {
  const { axisY, side, radius } = around;
  const slide = motion === 'slides' || motion === 'passes' ? radius * angle : 0;
  into[0] = from[0] + slide;
  into[1] = from[1];
  into[2] = from[2];
  into[3] = to[0] + slide;
  into[4] = to[1];
  into[5] = to[2];
  if (motion === 'still' || motion === 'slides') return;
  const turn = motion === 'swings' ? side * angle : -side * angle;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (let k = 0; k < 6; k += 3) {
    const [x, y] = [into[k]!, into[k + 1]! - axisY];
    into[k] = c * x - s * y;
    into[k + 1] = axisY + s * x + c * y;
  }
}
