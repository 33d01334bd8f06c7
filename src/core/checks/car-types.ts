/** Findings of tubes beside what was measured of the car, or was not, and of their fitting in it; types.ts has the others. */
import type { Trim } from '../gaps/trim-places.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import type { NodeId, PointId } from '../job/reference.ts';
import type { End, OfTube } from './types.ts';

/** A tube is nearer to a measured point or a body line than is wanted there. */
export interface NearTrim extends OfTube {
  readonly id: 'gap/near-trim';
  readonly trim: Trim;
  /** From it to the tube's outside; negative: so deep in the tube. */
  readonly distance: number;
  readonly wanted: number;
  /** How far to move `tube`, mm along each axis, for that much room. */
  readonly move: Vec3;
}

/** A tube goes by a point that nobody has measured. */
interface OnGuessedPoint extends OfTube {
  readonly id: 'point/guessed';
  readonly point: PointId;
  /** How many go by it. */
  readonly tubes: number;
}

/** A tube goes by a node that was put where it is by a figure that nobody has said. */
interface OnGuessedNode extends OfTube {
  readonly id: 'node/guessed';
  readonly node: NodeId;
  readonly tubes: number;
}
export type OnGuess = OnGuessedPoint | OnGuessedNode;

/** A tube goes by a point that no reading fixes along these directions. */
interface OnLoosePoint extends OfTube {
  readonly id: 'point/not-fixed';
  readonly point: PointId;
  readonly directions: readonly Vec3[];
  readonly tubes: number;
}

/** A tube goes by a point of a reading that does not agree with the others, which say `fits`. */
interface OnReadingOff extends OfTube {
  readonly id: 'point/reading-off';
  readonly measurement: Measurement;
  readonly fits: number;
  readonly tubes: number;
}
/** A tube goes by a point that was measured on what stands in for the real seat or door. */
export interface OnStandIn extends OfTube {
  readonly id: 'point/stand-in';
  readonly point: PointId;
  readonly tubes: number;
}
export type SurveyFinding = OnLoosePoint | OnReadingOff;

/** A torch has too little room above the joint that decides how far the cage is lowered, and what its ends stand on does not give that. */
export interface NoAir extends OfTube {
  readonly id: 'fit/no-air';
  readonly end: End;
  readonly trim: Trim;
  /** Above the joint, up to it; negative where the tube stands higher. */
  readonly air: number;
  readonly room: number;
  readonly lowerBy: number;
  /** What the boxes of the feet give; null without boxes. */
  readonly boxes: number | null;
}

/** A flat bent tube that is wider than the longest straight way across the door. */
export interface WiderThanDoor extends OfTube {
  readonly id: 'fit/wider-than-door';
  readonly width: number;
  readonly thickness: number;
  readonly way: number;
}

export type CarFinding = NearTrim | OnGuess | OnStandIn | SurveyFinding | NoAir | WiderThanDoor;
