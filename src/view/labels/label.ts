/** A word or number that stands at a place in the car. */
import type { ReactNode } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { SolvedTube } from '../../core/solve/types.ts';

export interface Label {
  readonly key: string;
  /** Places it may stand at, best first; from the zoom, in pixels a mm, for what is of one size on the screen. */
  readonly at: readonly Vec3[] | ((pixelsPerMm: number) => readonly Vec3[]);
  /** Stands only where this tube, on whose centreline its places are, is the one that is seen: no number lies on another tube. */
  readonly on?: SolvedTube;
  /** Its places change from frame to frame, also while the view stands still. */
  readonly drifts?: true;
  /** Pixels right of and below the place. */
  readonly shift?: readonly [number, number];
  /** Lower is placed first. */
  readonly rank: number;
  readonly look: 'number' | 'name' | 'dimension' | 'fault' | 'caution' | 'end' | 'axis' | 'grip' | 'clear';
  /** Drawn as selected, or as too close. */
  readonly tone?: 'live' | 'bad';
  readonly text: ReactNode;
}
