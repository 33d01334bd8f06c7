/**
 * What a slip at the bender does to the end of the tube and to places on it, to first order and in closed form.
 *
 * Marks are absolute, from end A, and the tube keeps its length. So a bend turned further takes its arc from the straight
 * after it and turns all that follows about its second tangent; a wrong rotation turns all from that bend on about the
 * straight before it; a mark too far on moves all that follows by the difference of the directions before and after the
 * bend. With end A held the end B moves; with end B held end A's side makes the opposite motion. Places and moves are in
 * car axes, mm. Derivation: docs/maths/marks.md.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { placeAt } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import {
  add,
  addScaled,
  cross,
  dot,
  length,
  normalize,
  ORIGIN,
  scale,
  subtract,
  type Vec3,
} from '../geometry/vector.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import type { SolvedTube } from '../solve/types.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';

/** The slips that are shown for each bend: 1 degree of angle, 1 degree of rotation, and of mark, in mm, 1/16 in or 2 mm. */
export const SLIP_ANGLE: Radians = toRadians(1);
export const SLIP_MARK: Readonly<Record<LengthUnit, number>> = { in: MM_PER_INCH / 16, mm: 2 };

/** Quantiles for 95 %: chi-square with 3 degrees of freedom, and the normal distribution on both sides (printed tables). */
const CHI_SQUARE_95 = 7.8147;
const NORMAL_95 = 1.96;

/** Where the end goes, and how far, mm. */
export interface Slip {
  readonly move: Vec3;
  readonly distance: number;
}

/** How end B's node moves, end A held. */
export interface BendSlips {
  /** 1 = first from end A. */
  readonly bend: number;
  /** For 1 degree more of bend. */
  readonly angle: Slip;
  /** For 1 degree more of rotation before this bend; null on the first, whose rotation only turns the tube as a whole. */
  readonly rotation: Slip | null;
  /** For a mark too far towards end B by what was asked about. */
  readonly mark: Slip;
}

/** A shop's own tolerances: one standard deviation each, of every bend on its own. */
export interface Tolerances {
  readonly angle: Radians;
  readonly rotation: Radians;
  /** mm. */
  readonly mark: number;
}

export interface SemiAxis {
  /** mm. */
  readonly length: number;
  /** Unit vector; either sense is meant. */
  readonly direction: Vec3;
}

/** Where a place of the tube may come to lie, an end held. */
export interface Spread {
  /** mm^2, rows and columns x, y, z. */
  readonly covariance: readonly [Vec3, Vec3, Vec3];
  /** Of the ellipsoid that holds 95 % of all tubes, longest first. */
  readonly axes: readonly [SemiAxis, SemiAxis, SemiAxis];
  /** mm: in 95 % of all tubes it is within this, before or beyond where it is drawn, along the tube's own axis there. */
  readonly along: number;
}

/** One row a bend; none for a straight tube. `tooFar`: of the mark, mm. */
export function bendSlips(tube: SolvedTube, tooFar: number): readonly BendSlips[] {
  const end = tube.corners.at(-1)!;
  const slip = (motion: Motion, amount: number): Slip => {
    const move = scale(moveOf(motion, end), amount);
    return { move, distance: length(move) };
  };
  return bendMotions(tube).map(({ angle, rotation, mark }, i) => ({
    bend: i + 1,
    angle: slip(angle, SLIP_ANGLE),
    rotation: rotation === null ? null : slip(rotation, SLIP_ANGLE),
    mark: slip(mark, tooFar),
  }));
}

/** Of end A with end B held, and of end B with end A held. All zero for a straight tube. */
export function endSpreads(tube: SolvedTube, tolerances: Tolerances): readonly [Spread, Spread] {
  const [a, b] = spreadsAt(tube, tolerances, [0, tube.path.length]);
  return [a!.heldB, b!.heldA];
}

/** Of one place on the tube, with either end held. */
export interface PlaceSpread {
  readonly heldA: Spread;
  readonly heldB: Spread;
}

/**
 * Of places on the centreline, given by their developed length from end A's node, mm; in their order. A place is of the tube's
 * own steel: marked on the blank, it goes where the steel goes.
 */
export function spreadsAt(tube: SolvedTube, tolerances: Tolerances, places: readonly number[]): readonly PlaceSpread[] {
  const motions = bendMotions(tube);
  return places.map((at) => {
    const { point, tangent } = placeAt(tube.path, at);
    const slips = tube.bends.flatMap(({ start, end }, i) => {
      const { before, angle, rotation, mark } = motions[i]!;
      // Within the bend the steel lies on the die however far it is turned on; a mark too far on slides it round the die.
      const slides = at <= start ? ORIGIN : at >= end ? mark.shift : subtract(before, tangent);
      return [
        { motion: angle, own: at >= end ? moveOf(angle, point) : ORIGIN, deviation: tolerances.angle },
        ...(rotation === null
          ? []
          : [
              {
                motion: rotation,
                own: at >= start ? moveOf(rotation, point) : ORIGIN,
                deviation: tolerances.rotation,
              },
            ]),
        { motion: mark, own: slides, deviation: tolerances.mark },
      ];
    });
    return {
      heldA: spreadOf(
        slips.map(({ own, deviation }) => scale(own, deviation)),
        tangent,
      ),
      // With end B held all makes the opposite of end B's motion besides.
      heldB: spreadOf(
        slips.map(({ motion, own, deviation }) => scale(subtract(own, moveOf(motion, point)), deviation)),
        tangent,
      ),
    };
  });
}

/**
 * The end whose node moves most along the tube's own axis, and that 95 % move, mm: what to leave on there so that the
 * cope can still be cut. Null where nothing moves along either end. End B where both are alike.
 */
export function endToLeaveLong([a, b]: readonly [Spread, Spread]): { end: 'A' | 'B'; by: number } | null {
  if (a.along === 0 && b.along === 0) return null;
  return a.along - b.along > ROUNDING ? { end: 'A', by: a.along } : { end: 'B', by: b.along };
}

/** For one unit (radian, mm) of slip: a turn about a place, or a shift of all that follows. */
interface Motion {
  readonly turn: Vec3;
  readonly about: Vec3;
  readonly shift: Vec3;
}

const moveOf = ({ turn, about, shift }: Motion, place: Vec3): Vec3 => add(cross(turn, subtract(place, about)), shift);

interface BendMotions {
  /** Unit vector of the straight before the bend. */
  readonly before: Vec3;
  readonly angle: Motion;
  readonly rotation: Motion | null;
  readonly mark: Motion;
}

function bendMotions({ corners, bends }: SolvedTube): readonly BendMotions[] {
  const directions = corners.slice(1).map((corner, i) => normalize(subtract(corner, corners[i]!)));
  return bends.map(({ corner, setBack, normal }, i) => {
    const [before, after] = [directions[i]!, directions[i + 1]!];
    return {
      before,
      angle: { turn: normal, about: addScaled(corner, after, setBack), shift: ORIGIN },
      rotation: i === 0 ? null : { turn: before, about: corner, shift: ORIGIN },
      mark: { turn: ORIGIN, about: ORIGIN, shift: subtract(before, after) },
    };
  });
}

function spreadOf(deviations: readonly Vec3[], axis: Vec3): Spread {
  const sum = (of: (move: Vec3) => number): number => deviations.reduce((total, move) => total + of(move), 0);
  const row = (i: number): Vec3 => [0, 1, 2].map((k) => sum((move) => move[i]! * move[k]!)) as unknown as Vec3;
  const covariance = [row(0), row(1), row(2)] as const;
  // Rounding may leave the value of a flat ellipsoid's thickness just below nothing.
  const semiAxis = ({ value, vector }: { value: number; vector: Vec3 }): SemiAxis => ({
    length: Math.sqrt(CHI_SQUARE_95 * Math.max(0, value)),
    direction: vector,
  });
  const [first, second, third] = symmetricEigen(covariance).map(semiAxis);
  return {
    covariance,
    axes: [first!, second!, third!],
    along: NORMAL_95 * Math.sqrt(sum((move) => dot(move, axis) ** 2)),
  };
}
