/** Findings of tubes that are made, in part or whole, beside the frame as it is drawn now; types.ts has the others. */
import type { Degrees, Radians } from '../geometry/angle.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';
import type { BentBend, SeatPlace } from '../job/kinds/bent.ts';
import type { FootId, NodeRef, TubeRef } from '../job/reference.ts';
import type { End, OfBend, OfTube } from './types.ts';

/** It was made with so many bends, and is drawn with others now: it has no place in the frame, and stands there as drawn. */
export interface OtherBends extends OfTube {
  readonly id: 'made/other-bends';
  readonly was: number;
  readonly now: number;
}

/** A tube that stands as built does not come to a node of its path, which stays as drawn for the tubes that end there. */
export interface OffNode extends OfTube {
  readonly id: 'made/off-node';
  readonly node: NodeRef;
  readonly distance: number;
  readonly others: readonly TubeRef[];
}

/** An end of a tube that stands as built, or lies as cut, beside its foot, which is where its node is. */
export interface OffFoot extends OfTube {
  readonly id: 'made/off-foot';
  readonly end: End;
  readonly node: NodeRef;
  readonly foot: FootId;
  /** Car axes, on the foot's face: from where it was to come down to where it does. */
  readonly aside: Vec3;
  /** Square to the foot: above its face, or below 0 into it; 0 of a tube that is cut, whose end says so. */
  readonly up: number;
  /** The same along the tube. */
  readonly along: number;
  /** How far its outline then stands past the foot's edge. */
  readonly over: number;
}

/** An end of a tube that is cut, beside what the frame would have cut there now. */
export interface EndMisfit extends OfTube {
  readonly id: 'made/end-misfit';
  readonly end: End;
  /** Steel that is in the way, at the most, counted along the tube; below zero where the whole end stands so far short. */
  readonly long: number;
  /** What stays open where it is most, once that is ground off. */
  readonly gap: number;
  /** Of these mm, left on that end to trim. */
  readonly left: number;
  /** How the tube that it meets lies otherwise than when it was cut; null where it meets none, or another. */
  readonly turned: Radians | null;
}

/** What was sawn does not reach as far as the frame wants it now. */
export interface SawnShort extends OfTube {
  readonly id: 'made/sawn-short';
  readonly end: End;
  readonly missing: number;
}

/** What was measured of a tube in the car cannot all be so: it stands where the squares of what it misses are least. */
export interface SeatMissed extends OfTube {
  readonly id: 'made/seat-missed';
  /** Along x, y, z how far a place of the tube stands from what was measured; 0 where nothing was, and where the tape would not tell. */
  readonly missed: readonly { readonly place: SeatPlace; readonly by: Vec3 }[];
  /** Two places that were measured whole, so far from each other, and lie otherwise on the tube; mm, straight across. */
  readonly apart: readonly {
    readonly places: readonly [SeatPlace, SeatPlace];
    readonly measured: number;
    readonly built: number;
  }[];
}

/** What was measured of a tube in the car hangs on one figure that hardly tells where it is: a millimetre more of it moves the tube by `moves`. */
export interface SeatLoose extends OfTube {
  readonly id: 'made/seat-loose';
  readonly place: SeatPlace;
  readonly axis: Axis;
  readonly moves: number;
}

/** What a bend run holds of bends that the tube has not `now`, or all of it where the run is of another number, `was`. */
export interface ReadingsUnused extends OfTube {
  readonly id: 'made/readings-unused';
  readonly readings: readonly BentBend[];
  readonly was: number;
  readonly now: number;
}

/** Why no bend comes out as it was read. */
export type WhyImpossible = 'doubles-back' | 'opened-to-more' | 'opened-by-too-much' | 'far-off' | 'straight-off-tube';

export interface ReadingImpossible extends OfBend {
  readonly id: 'made/reading-impossible';
  readonly why: WhyImpossible;
  readonly reading: BentBend;
  readonly planned: Degrees;
}

export type MadeFinding =
  | OtherBends
  | OffNode
  | OffFoot
  | EndMisfit
  | SawnShort
  | SeatMissed
  | SeatLoose
  | ReadingsUnused
  | ReadingImpossible;
