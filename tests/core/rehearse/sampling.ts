/**
 * The sweep the simple way: the tube as a row of points, the machine at a row of angles, every distance by its own
 * formula. It can only miss a touch, never invent one.
 */
import { placeAt, type Path } from '../../../src/core/geometry/path.ts';
import type { BendStep } from '../../../src/core/job/types.ts';
import { machineOf, roomOf, sideOf } from '../../../src/core/rehearse/machine.ts';
import { poseAt, type BendableTube } from '../../../src/core/rehearse/pose.ts';
import type { Pose, Solid } from '../../../src/core/rehearse/types.ts';
import { add, inner, less, rotated, scaled, type Triple } from './turning.ts';

/** A place on the tube, and how far along the tube it is from the bend. */
interface Sample {
  readonly at: Triple;
  readonly from: number;
}

export function samples(path: Path, spacing: number): readonly Sample[] {
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
    const out = Math.max(0, Math.hypot(own[0], own[1]) - shape.radius);
    return Math.hypot(out, Math.max(0, Math.abs(own[2]) - shape.halfHeight));
  }
  const nearest = shape.axes.reduce((sum: Triple, axis, k) => {
    const along = Math.min(Math.max(inner(own, axis), -shape.half[k]!), shape.half[k]!);
    return add(sum, scaled(axis, along));
  }, shape.centre);
  return Math.hypot(...less(p, nearest));
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
function letOff({ part }: Solid, path: Path): number {
  const [first, second] = path.pieces;
  if (part === 'die') return first!.length + (second?.length ?? 0);
  return part === 'clamp' || part === 'follower' ? first!.length : -1;
}

/** Least distance from the tube's surface to machine, room and itself at this angle, as far as the samples show. */
export function clearanceAt(
  tube: BendableTube,
  made: ReadonlySet<number>,
  step: BendStep,
  angle: number,
  spacing: number,
): number {
  const pose = poseAt(tube, made, step, angle);
  const radius = tube.section.outerDiameter / 2;
  let least = Infinity;
  const solids = solidsAt(tube, angle);
  for (const path of [pose.front, pose.rear]) {
    for (const { at, from } of samples(path, spacing)) {
      for (const solid of solids) {
        if (from > letOff(solid, path) + 1e-6) least = Math.min(least, away(at, solid) - radius);
      }
    }
  }
  return Math.min(least, toItself(tube, pose, spacing * 2) - 2 * radius);
}

/** Places farther apart along the tube than a piece of tube that is bent as tightly as this one can hide. */
function toItself(tube: BendableTube, { front, arc, rear }: Pose, spacing: number): number {
  const tight = Math.min(tube.die.centrelineRadius, ...tube.bends.map(({ radius }) => radius));
  const apart = 2 * tight * Math.asin((tube.section.outerDiameter + 0.3) / 2 / tight);
  const laid = arc?.length ?? 0;
  const behind = [
    ...(arc === null ? [] : samples(arc, spacing).map(({ at, from }) => ({ at, from: laid - from }))),
    ...samples(rear, spacing).map(({ at, from }) => ({ at, from: from + laid })),
  ];
  let least = Infinity;
  for (const one of samples(front, spacing)) {
    for (const two of behind) {
      if (one.from + two.from <= apart) continue;
      const [x, y, z] = [one.at[0] - two.at[0], one.at[1] - two.at[1], one.at[2] - two.at[2]];
      least = Math.min(least, x * x + y * y + z * z);
    }
  }
  return Math.sqrt(least);
}
