/** How far things reach, for fitting the view and for the haze. */
import type { Derived } from '../../core/derive.ts';
import { distance, interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import { boxRound } from '../../core/geometry/box-tree.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Selection } from '../../store/types.ts';
import { boxCorners } from '../meshes/box.ts';
import { centrelineChain } from '../../core/mesh/sweep.ts';
import { remembered } from '../../core/remembered.ts';
import { bodyChains, boxesOfJob, pointPlace } from './shown.ts';

export interface Extent {
  readonly middle: Vec3;
  /** mm; in steps, so that a drag does not make the haze swim. */
  readonly depth: number;
}

const STEP = 500;

/** Of the box round the tubes. */
export const extentOf = (tubes: readonly SolvedTube[]): Extent => boxOf(tubes.flatMap((tube) => tube.corners));

/** Middle and diagonal of the box round the places, in steps of half a metre; the datum and one step when there are none. */
export function boxOf(places: readonly Vec3[]): Extent {
  if (places.length === 0) return { middle: [0, 0, 0], depth: STEP };
  const { low, high } = boxRound(places, 0);
  const least = low.map((mm) => Math.floor(mm / STEP) * STEP) as [number, number, number];
  const greatest = high.map((mm) => Math.ceil(mm / STEP) * STEP) as [number, number, number];
  return { middle: interpolate(least, greatest, 0.5), depth: Math.max(STEP, distance(least, greatest)) };
}

const chainOf = remembered(centrelineChain);

/** Places that must be in view to see the tubes and the envelopes. */
export const placesOfFrame = (derived: Derived): readonly Vec3[] => [
  ...derived.tubes.flatMap((tube) => chainOf(tube.path)),
  ...boxesOfJob(derived.job).flatMap(({ box }) => boxCorners(box)),
];

/** Places that must be in view to see the whole job, the car with it. */
export const placesOfJob = (derived: Derived): readonly Vec3[] => [
  ...placesOfFrame(derived),
  ...bodyChains(derived.job).flat(),
  ...derived.job.points.map((point) => point.position),
];

/** Places that must be in view to see what is selected; none for what is no longer there. */
export function placesOfSelection(derived: Derived, selection: Selection | null): readonly Vec3[] {
  switch (selection?.kind) {
    case undefined:
      return [];
    case 'tube':
      return centrelineChain(derived.byId.get(selection.id)?.path ?? { pieces: [], length: 0 });
    case 'node': {
      const place = derived.nodes.get(selection.id);
      return place === undefined ? [] : [place];
    }
    case 'point': {
      const place = pointPlace(derived.job, selection.id);
      return place === undefined ? [] : [place];
    }
    case 'envelope':
      return boxesOfJob(derived.job).flatMap(({ id, box }) => (id === selection.id ? boxCorners(box) : []));
  }
}
