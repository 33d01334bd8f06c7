/**
 * What a place of a tube that is being drawn stands on: by that it is a node later, and follows the car. Places are found anew in each
 * frame, so that a half-drawn tube goes along with an edit. Car axes, mm.
 */
import { placeAt, type PathPlace } from '../../geometry/path.ts';
import { placesInPlane } from '../../geometry/plane-places.ts';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { AXIS_INDEX, distance, mirrored, type Vec3 } from '../../geometry/vector.ts';
import { bareId, isPrimed, type NodeRef, type PointRef, type TubeRef } from '../../job/reference.ts';

import type { Bar, Frame } from '../../solve/types.ts';

export type Ground =
  | { readonly kind: 'node'; readonly node: NodeRef }
  | { readonly kind: 'point'; readonly point: PointRef }
  | OnBar
  /** The mirror image, in y = 0, of an earlier place of the tube itself. */
  | { readonly kind: 'image'; readonly of: Exclude<Ground, { readonly kind: 'image' }> }
  | InSpace;

/** In the air. */
export interface InSpace {
  readonly kind: 'space';
  readonly position: Vec3;
  /** Of each coordinate whose it is: that of a node, of a point, or of an earlier place of the tube. Left out: all are numbers. */
  readonly by?: readonly [Ground | null, Ground | null, Ground | null];
}

/** On a bar's real centreline. */
export type OnBar = { readonly tube: TubeRef } & (
  | { readonly kind: 'bend'; readonly bend: number; readonly where: 'start' | 'middle' | 'end' }
  /** The middle of a straight; 1 is the one at end A. */
  | { readonly kind: 'middle'; readonly straight: number }
  /** Where it crosses the car's centre plane, for the nth time from end A. */
  | { readonly kind: 'centre'; readonly nth: number }
  /** Where it is as high as an earlier place of the tube that is drawn, for the nth time from end A. */
  | { readonly kind: 'level'; readonly with: Ground; readonly nth: number }
  /** So far from end A's node. */
  | { readonly kind: 'along'; readonly distance: number }
);

/**
 * Where it is in the frame; null where what it stands on is not there, or not so long, any more. A coordinate whose owner is gone is the number
 * that it was.
 */
export function standsAt(frame: Frame, ground: Ground): Vec3 | null {
  switch (ground.kind) {
    case 'node':
      return frame.nodes.get(ground.node) ?? null;
    case 'point': {
      const position = frame.job.points.find(({ id }) => id === bareId(ground.point))?.position;
      if (position === undefined) return null;
      return isPrimed(ground.point) ? mirrored(position) : position;
    }
    case 'image': {
      const at = standsAt(frame, ground.of);
      return at && mirrored(at);
    }
    case 'space':
      return ground.by === undefined
        ? ground.position
        : [spaceAt(frame, ground, 0), spaceAt(frame, ground, 1), spaceAt(frame, ground, 2)];
    default:
      return placeOnBar(frame, ground)?.point ?? null;
  }
}

/** Of a coordinate: along, across, up. */
export type AxisNumber = 0 | 1 | 2;

const spaceAt = (frame: Frame, { position, by }: InSpace, axis: AxisNumber): number => {
  const owner = by?.[axis] ?? null;
  return (owner === null ? null : coordinateAt(frame, owner, axis)) ?? position[axis];
};

/** One coordinate alone: place after place in line with the one before is a chain then, where whole places would branch. */
function coordinateAt(frame: Frame, ground: Ground, axis: AxisNumber): number | null {
  if (ground.kind === 'space') return spaceAt(frame, ground, axis);
  if (ground.kind !== 'image') return standsAt(frame, ground)?.[axis] ?? null;
  const at = coordinateAt(frame, ground.of, axis);
  return at !== null && axis === 1 ? -at : at;
}

/** Those of the places that are there still; where two that a lost one parted stand at one place now, the first of them. */
export function stillThere<P extends { readonly ground: Ground }>(frame: Frame, places: readonly P[]): readonly P[] {
  let last: Vec3 | null = null;
  return places.filter(({ ground }) => {
    const at = standsAt(frame, ground);
    if (at === null || (last !== null && distance(last, at) <= ROUNDING)) return false;
    last = at;
    return true;
  });
}

/** The same with the bar's direction there; null as above. */
export function placeOnBar(frame: Frame, ground: OnBar): PathPlace | null {
  const bar = frame.bars.get(ground.tube);
  if (bar === undefined) return null;
  if (ground.kind === 'level') {
    const height = coordinateAt(frame, ground.with, 2);
    return height === null ? null : (placesInPlane(bar.path, AXIS_INDEX.z, height)[ground.nth - 1] ?? null);
  }
  if (ground.kind === 'centre') return placesInPlane(bar.path, AXIS_INDEX.y, 0)[ground.nth - 1] ?? null;
  const along = alongBar(bar, ground);
  return along === null ? null : placeAt(bar.path, along);
}

type ByLength = Exclude<OnBar, { readonly kind: 'centre' | 'level' }>;

/** Developed length from end A's node, mm; null where the bar has no such place, which one whose bends overlap may lack. */
export function alongBar(bar: Bar, ground: ByLength): number | null {
  const along = alongIfAny(bar, ground);
  return along >= -ROUNDING && along <= bar.developedLength + ROUNDING ? along : null;
}

function alongIfAny({ bends, straights }: Bar, ground: ByLength): number {
  switch (ground.kind) {
    case 'bend': {
      const bend = bends[ground.bend - 1];
      if (bend === undefined) return NaN;
      return { start: bend.start, middle: (bend.start + bend.end) / 2, end: bend.end }[ground.where];
    }
    case 'middle': {
      const length = straights[ground.straight - 1];
      if (length === undefined || length < 0) return NaN;
      return (bends[ground.straight - 2]?.end ?? 0) + length / 2;
    }
    case 'along':
      return ground.distance;
  }
}
