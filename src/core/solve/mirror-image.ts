/**
 * Whether two tubes are each other's mirror image as they are made. A tube and its twin have mirrored centrelines, but an end may be coped to a bar of one side
 * alone: then they are two different tubes.
 */
import { toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { SolvedTube, TubeEnd } from './types.ts';

/** mm. Less than a saw or a file tells. */
const ALIKE = 0.01;

/** Radians. The same of angles: 0.01 degrees. */
const ALIKE_ANGLE: Radians = toRadians(0.01);

/** Of a tube and its twin: they are bent alike, and both ends are cut alike, but for what arithmetic leaves over. */
export const isMirrorImage = (tube: SolvedTube, twin: SolvedTube): boolean =>
  isBentAlike(tube, twin) &&
  Math.abs(tube.blankLength - twin.blankLength) <= ALIKE &&
  tube.ends.every((end, which) => isCutAlike(end, twin.ends[which as 0 | 1]));

/** The image's rotations have the other sign. */
const isBentAlike = (a: SolvedTube, b: SolvedTube): boolean =>
  a.bends.length === b.bends.length &&
  a.bends.every(({ start, angle, rotation, radius }, i) => {
    const image = b.bends[i]!;
    return (
      Math.abs(start - image.start) <= ALIKE &&
      Math.abs(radius - image.radius) <= ALIKE &&
      Math.abs(angle - image.angle) <= ALIKE_ANGLE &&
      Math.abs(wrapHalfTurn(rotation + image.rotation)) <= ALIKE_ANGLE
    );
  });

/** The image's angles run the other way round. */
const isCutAlike = (a: TubeEnd, b: TubeEnd): boolean =>
  a.fit === b.fit &&
  a.cuts.length === b.cuts.length &&
  a.outer.every((trim, phi) => {
    const image = b.outer[(a.outer.length - phi) % a.outer.length]!;
    return Number.isNaN(trim) ? Number.isNaN(image) : Math.abs(trim - image) <= ALIKE;
  });
