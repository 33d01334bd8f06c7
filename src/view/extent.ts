/** How far things reach, for fitting the view and for the haze. */
import type { Derived } from '../core/derive.ts';
import { distance, interpolate, type Vec3 } from '../core/geometry/vector.ts';
import type { SolvedTube } from '../core/solve/types.ts';
import type { Selection } from '../store/types.ts';
import { boxCorners } from './meshes/box.ts';
import { centrelineChain } from '../core/mesh/sweep.ts';
import { bodyChains, pointPlace } from './shown.ts';

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
  const reach = (axis: 0 | 1 | 2): [number, number] => {
    const along = places.map((place) => place[axis]);
    return [Math.floor(Math.min(...along) / STEP) * STEP, Math.ceil(Math.max(...along) / STEP) * STEP];
  };
  const [x, y, z] = [reach(0), reach(1), reach(2)];
  const least: Vec3 = [x[0], y[0], z[0]];
  const greatest: Vec3 = [x[1], y[1], z[1]];
  return { middle: interpolate(least, greatest, 0.5), depth: Math.max(STEP, distance(least, greatest)) };
}

/** Places that must be in view to see the tubes and the envelopes. */
export const placesOfFrame = (derived: Derived): readonly Vec3[] => [
  ...derived.tubes.flatMap((tube) => centrelineChain(tube.path)),
  ...derived.job.envelopes.flatMap(boxCorners),
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
      return derived.job.envelopes.filter((envelope) => envelope.id === selection.id).flatMap(boxCorners);
  }
}
