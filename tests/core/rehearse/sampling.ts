/**
 * The sweep the simple way: the tube as a row of points, the machine at a row of angles, every distance by its own
 * formula. It can only miss a touch, never invent one.
 */
import { placeAt, type Path } from '../../../src/core/geometry/path.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import { machineOf, roomOf, sideOf } from '../../../src/core/rehearse/machine.ts';
import { type BendableTube } from '../../../src/core/rehearse/bendable.ts';
import { poseAt } from '../../../src/core/rehearse/pose.ts';
import type { Solid } from '../../../src/core/rehearse/types.ts';
import { add, inner, less, rotated, type Triple } from './turning.ts';

/** A place on the tube, and how far along the tube it is from the bend. */
interface Sample {
  readonly at: Triple;
  readonly from: number;
}

function samples(path: Path, spacing: number): readonly Sample[] {
  const count = Math.ceil(path.length / spacing);
  return Array.from({ length: count + 1 }, (_, i) => {
    const from = (path.length * i) / count;
    return { at: placeAt(path, from).point, from };
  });
}

/** mm from a point to a solid; less than 0 behind a plane. */
export function away(p: Triple, { shape }: Solid): number {
  if (shape.kind === 'plane') return inner(less(p, shape.point), shape.normal);
  const own = less(p, shape.centre);
  if (shape.kind === 'cylinder') {
    const out = Math.max(0, Math.sqrt(own[0] * own[0] + own[1] * own[1]) - shape.radius);
    const over = Math.max(0, Math.abs(own[2]) - shape.halfHeight);
    return Math.sqrt(out * out + over * over);
  }
  let square = 0;
  for (let k = 0; k < 3; k++) square += Math.max(0, Math.abs(inner(own, shape.axes[k]!)) - shape.half[k]!) ** 2;
  return Math.sqrt(square);
}

/** The solids as they stand at this angle: what turns with the die is turned. */
export function solidsAt({ die, section }: BendableTube, angle: number): readonly Solid[] {
  const middle: Triple = [0, sideOf(die.bender) * die.centrelineRadius, 0];
  const turn = (v: Triple): Triple => rotated(v, [0, 0, 1], sideOf(die.bender) * angle);
  return [...machineOf(die, section), ...roomOf(die.bender)].map((solid): Solid => {
    if (!solid.turning || solid.shape.kind !== 'box') return solid;
    const { centre, axes } = solid.shape;
    const [x, y, z] = axes;
    const placed = add(middle, turn(less(centre, middle)));
    return { ...solid, shape: { ...solid.shape, centre: placed, axes: [turn(x), turn(y), turn(z)] } };
  });
}

/** What a part of the tube is let off: as far from the bend as it lies in the tools. */
const letOff = ({ id: { part } }: Solid, path: Path): number =>
  part === 'clamp' || part === 'follower' ? path.pieces[0]!.length : -1;

/** Where the tube is nearest to something, and how near. */
export interface Gap {
  /** mm, from surface to surface. */
  readonly gap: number;
  /** How far from the bend the place is along what is in front, and along what is behind; null where that side has no part in it. */
  readonly front: number | null;
  readonly rear: number | null;
}

/** So much of what is in front and of what is behind, mm from the bend; null: nothing of it. */
export interface Stretch {
  readonly front: readonly [number, number] | null;
  readonly rear: readonly [number, number] | null;
}

const WHOLE: Stretch = { front: [-Infinity, Infinity], rear: [-Infinity, Infinity] };

/**
 * For an angle the least distance from the tube's surface to machine, room and itself, as far as a place every `spacing` mm
 * shows; along itself every second one. The places are those before the machine is turned, moved by a formula of their own.
 */
export function sampler(
  tube: BendableTube,
  made: ReadonlySet<number>,
  step: BendStep,
  spacing: number,
  stretch: Stretch = WHOLE,
): (angle: number) => Gap {
  const { die } = tube;
  const tubeRadius = tube.section.outerDiameter / 2;
  const side = sideOf(die.bender);
  const middle: Triple = [0, side * die.centrelineRadius, 0];
  const { front, rear } = poseAt(tube, made, step, 0);
  const within = (range: Stretch['front']) => (range === null ? () => false : isWithin(range));
  const [ofFront, ofRear] = [within(stretch.front), within(stretch.rear)];
  const ahead = stretch.front === null ? [] : samples(front, spacing).filter(ofFront);
  const behind = stretch.rear === null ? [] : samples(rear, spacing).filter(ofRear);
  const swung = (p: Triple, angle: number) => add(middle, rotated(less(p, middle), [0, 0, 1], side * angle));
  return (angle) => {
    const slid = die.centrelineRadius * angle;
    const solids = solidsAt(tube, angle);
    const swings = ahead.map(({ at, from }): Sample => ({ at: swung(at, angle), from }));
    const slides = behind
      .filter(({ from }) => from >= slid)
      .map(({ at, from }): Sample => ({ at: [at[0] + slid, at[1], at[2]], from }));
    let least: Gap = { gap: Infinity, front: null, rear: null };
    for (const [row, path, name] of [
      [swings, front, 'front'],
      [slides, rear, 'rear'],
    ] as const) {
      for (const solid of solids) {
        const beyond = letOff(solid, path) + 1e-6;
        for (const { at, from } of row) {
          if (from <= beyond) continue;
          const gap = away(at, solid) - tubeRadius;
          if (gap < least.gap) least = { gap, front: null, rear: null, [name]: from };
        }
      }
    }
    const start: Triple = [0, 0, die.bender.planeHeight];
    const laid = Array.from({ length: Math.ceil(slid / spacing) }, (_, i): Sample => {
      const from = i * spacing;
      return { at: swung(start, from / die.centrelineRadius), from: slid - from };
    }).filter(ofRear);
    const self = toItself(tube, swings, [...laid, ...slides]);
    return self.gap - 2 * tubeRadius < least.gap ? { ...self, gap: self.gap - 2 * tubeRadius } : least;
  };
}

const isWithin =
  ([low, high]: readonly [number, number]) =>
  ({ from }: Sample): boolean =>
    from >= low && from <= high;

/** Places farther apart along the tube than a piece of tube that is bent as tightly as this one can hide. */
function toItself(tube: BendableTube, ahead: readonly Sample[], behind: readonly Sample[]): Gap {
  const tight = Math.min(tube.die.centrelineRadius, ...tube.bends.map(({ radius }) => radius));
  const apart = 2 * tight * Math.asin((tube.section.outerDiameter + 0.3) / 2 / tight);
  let [least, front, rear] = [Infinity, 0, 0];
  for (let i = 0; i < ahead.length; i += 2) {
    const one = ahead[i]!;
    for (let k = 0; k < behind.length; k += 2) {
      const two = behind[k]!;
      if (one.from + two.from <= apart) continue;
      const x = one.at[0] - two.at[0];
      const y = one.at[1] - two.at[1];
      const z = one.at[2] - two.at[2];
      const square = x * x + y * y + z * z;
      if (square < least) [least, front, rear] = [square, one.from, two.from];
    }
  }
  return { gap: Math.sqrt(least), front, rear };
}
