/**
 * What the checks find in a solved frame: facts, without a sentence. Which kind, what it concerns, and the numbers that its words
 * need; the words stand in core/words. Lengths mm, angles radians unless a field says degrees, car axes.
 */
import type { Degrees, Radians } from '../geometry/angle.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { EnvelopeId, NodeRef, TubeRef } from '../job/reference.ts';
import type { Unmitred } from '../solve/types.ts';
import type { Wanting } from '../stock/wanting.ts';
import type { NoFreeOrder, OrderMatters, PlainOrderTouches } from './swing-types.ts';
import type { GussetFinding } from './gusset-types.ts';
import type { MadeFinding } from './made-types.ts';
import type { CarFinding } from './car-types.ts';
import type { PieceFinding } from './piece-types.ts';

export type Severity = 'error' | 'warning' | 'note';

export type End = 'A' | 'B';

/** Where a finding comes from; its words in core/words/sources.ts. */
export type Source =
  /** A fact of the trade without a published source. */
  | 'practice'
  | 'least-radius'
  | 'one-piece'
  | 'pulls'
  | 'envelope-gap'
  | 'bender-room'
  | 'kept-order'
  | 'torch-gap'
  | 'torch-room'
  | 'door'
  | 'least-gap'
  /** The sticks that this job has. */
  | 'rack';

export interface OfTube {
  readonly severity: Severity;
  readonly source: Source;
  readonly tube: TubeRef;
  /** Where it concerns one end. */
  readonly end?: End;
  /** 1 = first from end A. */
  readonly bend?: number;
  readonly node?: NodeRef;
  readonly envelope?: EnvelopeId;
  /** Where it is, for the view to go to. */
  readonly at: Vec3;
}

/** No node stands where a bar in pieces is cut. */
export interface OfEnd extends OfTube {
  readonly end: End;
}

export interface OfBend extends OfTube {
  readonly bend: number;
}

/** A straight that comes out below zero: between `bend` and the next. */
export interface BendsOverlap extends OfBend {
  readonly id: 'bend/overlap';
  readonly straight: number;
}

/** The same at an end of the tube. */
export interface BendPastEnd extends OfBend {
  readonly id: 'bend/past-end';
  readonly side: 'before' | 'after';
  readonly straight: number;
}

/** The straight between `bend` and the next is less than the die can clamp on. */
export interface ShortStraight extends OfBend {
  readonly id: 'bend/short-straight';
  readonly straight: number;
  readonly least: number;
}

export interface BeyondDie extends OfBend {
  readonly id: 'bend/beyond-die';
  readonly angle: Radians;
  readonly greatest: Degrees;
}

/** A bend `turns` otherwise than the angle that is kept for it at its corner, `node`. */
export interface AngleNotKept extends OfTube {
  readonly id: 'bend/angle-not-kept';
  readonly node: NodeRef;
  readonly turns: Degrees;
  readonly angle: Degrees;
}

/** The die is made for tube of another outer diameter. */
export interface WrongDie extends OfTube {
  readonly id: 'bend/wrong-die';
  readonly outerDiameter: number;
  readonly dieTakes: number;
}

/** A centreline radius under three times the outer diameter, `least`. */
export interface TightRadius extends OfTube {
  readonly id: 'bend/tight-radius';
  readonly radius: number;
  readonly least: number;
}

/** What is left behind the last bend made is too little to grip. */
export interface ShortTail extends OfBend {
  readonly id: 'bend/short-tail';
  readonly end: End;
  readonly tail: number;
  readonly grips: number;
  readonly missing: number;
  /** Bent the other way round, there would be enough. */
  readonly otherEndHolds: boolean;
}

/** The clamp mark lies off the blank, past `end`. */
export interface ClampOffTube extends OfBend {
  readonly id: 'bend/clamp-off-tube';
  readonly end: End;
  readonly missing: number;
  /** So the clamp need not hold at both ends: bent the other way round it holds at the other. */
  readonly otherEndIsBehind: boolean;
}

/** The order that the job keeps for the tube does not hold each of its `bends` once: it is not used. */
export interface OrderOutdated extends OfTube {
  readonly id: 'bend/order-outdated';
  readonly bends: number;
}

export interface ManyBends extends OfTube {
  readonly id: 'bend/many-bends';
  readonly count: number;
  /** Whether an order of bending is searched for so many. */
  readonly isSearched: boolean;
}

export interface LongerThanStick extends OfTube {
  readonly id: 'stock/longer-than-stick';
  /** To cut, `grip` counted. */
  readonly length: number;
  readonly grip: number;
  readonly stick: number;
  readonly mend: 'other-end-in-front' | 'longer-stick' | 'joint';
  /** The end to bend from for less grip. */
  readonly otherEnd: End;
}

/** The cutting plan has no stick for it, `length` to cut. `get`: sticks that it, and others of `parts` together, want. */
export interface NoStick extends OfTube {
  readonly id: 'stock/no-stick';
  readonly why: Wanting['why'];
  readonly length: number;
  readonly get: Pick<Wanting, 'count' | 'length' | 'batch'> & { readonly parts: number };
}

/** The log of pulls does not bear what this tube would be pulled to. */
export interface FirstPullOnly extends OfBend {
  /** All such bends; `bend` is the first. */
  readonly bends: readonly number[];
  /** Of `bend`, on the machine's scale. */
  readonly firstPull: Degrees;
  /** Of `bend`, too. */
  readonly net: Radians;
  /** The net angle near which one more pull would settle it. */
  readonly mendNear: Degrees;
  /** Its radius too rests on that first pull. */
  readonly isLaidOutByIt: boolean;
}
export interface PullsDisagree extends FirstPullOnly {
  readonly id: 'bend/pulls-disagree';
}
export interface SlackOrSpring extends FirstPullOnly {
  readonly id: 'bend/slack-or-spring';
}
export interface BeyondPulls extends FirstPullOnly {
  readonly id: 'bend/beyond-pulls';
}
export interface CoarseScale extends FirstPullOnly {
  readonly id: 'bend/coarse-scale';
}

/** By the log the die bends to a larger radius than is laid out. */
export interface RadiusOpens extends OfTube {
  readonly id: 'bend/radius-opens';
  readonly end: End;
  /** How far end B comes out from its place. */
  readonly off: number;
}

export interface MeetsNothing extends OfEnd {
  readonly id: 'end/meets-nothing';
  /** What a person sees there all the same: its own twin, or a tube that ends there and is built later. */
  readonly sees: 'own-twin' | { readonly later: TubeRef } | null;
}

export interface PlateAlongTube extends OfEnd {
  readonly id: 'end/plate-along-tube';
}

export interface CutterMisses extends OfEnd {
  readonly id: 'end/cutter-misses';
  readonly runTube: TubeRef;
}

/** An end is to be mitred with a tube and cannot be; it is cut square. */
export interface MitreCannot extends OfEnd {
  readonly id: 'mitre/cannot';
  readonly why: Unmitred;
  readonly mate: TubeRef;
}

/** An end is mitred with a tube that is not mitred with it. */
export interface MitreOneSided extends OfEnd {
  readonly id: 'mitre/one-sided';
  readonly mate: TubeRef;
}

/** The normal of the foot points away from the tube that stands on it. */
export interface FootUpsideDown extends OfEnd {
  readonly id: 'foot/upside-down';
}

/** The cut end stands `over` past an edge of its foot; a foot of the size `takes`, along and across, would just take it. */
export interface FootOverEdge extends OfEnd {
  readonly id: 'foot/over-edge';
  readonly over: number;
  readonly takes: readonly [number, number];
}

/** The cut end runs `over` into the bend of its plate. */
export interface FootInBend extends OfEnd {
  readonly id: 'foot/in-bend';
  readonly over: number;
}

/** The cut end stands over a hole of its foot, counted from 1, and `by` past that hole's edge. */
export interface FootOverHole extends OfEnd {
  readonly id: 'foot/over-hole';
  readonly hole: number;
  readonly by: number;
}

export interface WiderThanRun extends OfEnd {
  readonly id: 'end/wider-than-run';
}

/** Past its cope the wall lies inside its run tube again, `depth` deep. */
export interface MeetsRunAgain extends OfEnd {
  readonly id: 'end/meets-run-again';
  readonly runTube: TubeRef;
  readonly depth: number;
}

/** The run tube passes the node `by` so much, and cuts this end `away` from there: more than half the tube, in or out. */
export interface CutElsewhere extends OfEnd {
  readonly id: 'end/cut-elsewhere';
  readonly runTube: TubeRef;
  readonly by: number;
  readonly away: number;
}

export interface CutThrough extends OfEnd {
  readonly id: 'end/cut-through';
  readonly throat: number;
  readonly developedLength: number;
}

export interface CopeInOwnBend extends OfEnd {
  readonly id: 'end/cope-in-own-bend';
  readonly throat: number;
  readonly straight: number;
}

export interface JointInBend extends OfEnd {
  readonly id: 'joint/in-bend';
  readonly runTube: TubeRef;
  readonly runTubeBend: number;
}

/** It lands `distance` from a bend of its run tube, less than one outer diameter of that, `reach`. */
export interface JointNearBend extends OfEnd {
  readonly id: 'joint/near-bend';
  readonly runTube: TubeRef;
  readonly runTubeBend: number;
  readonly distance: number;
  readonly reach: number;
}

/** The saddle runs `over` past an end of its run tube. */
export interface JointOffRunEnd extends OfEnd {
  readonly id: 'joint/off-run-end';
  readonly runTube: TubeRef;
  readonly runTubeEnd: End;
  readonly over: number;
}

/** Two bars that seem meant as one line are not: at this end they are `angle` and `offset` out of it. */
export interface OutOfLine extends OfEnd {
  readonly id: 'joint/out-of-line';
  readonly mate: TubeRef;
  readonly mateEnd: End;
  /** The bar that both are coped to; null where they meet end to end. */
  readonly through: TubeRef | null;
  readonly angle: Radians;
  readonly offset: number;
}

export interface TwinInSamePlace extends OfTube {
  readonly id: 'member/twin-in-same-place';
}

export interface TooClose extends OfTube {
  readonly id: 'clearance/too-close';
  readonly envelope: EnvelopeId;
  /** Negative when the tube is inside. */
  readonly distance: number;
  readonly gap: number;
}

/** Two tubes that are not joined: `tube` is the one built later, `other` the earlier. */
interface OfTwoTubes extends OfTube {
  readonly other: TubeRef;
  /** Between their outsides; negative: the deepest place of one inside the other. */
  readonly distance: number;
  /** How far to move `tube`, mm along each axis, for the torch to have its room. */
  readonly move: Vec3;
}

/** They run into each other. */
export interface RunsThrough extends OfTwoTubes {
  readonly id: 'gap/runs-through';
}

/** There is less room between them than the torch wants. */
export interface NoRoomForTorch extends OfTwoTubes {
  readonly id: 'gap/no-room-for-torch';
  readonly torchGap: number;
}

export type Finding =
  | BendsOverlap
  | BendPastEnd
  | ShortStraight
  | BeyondDie
  | AngleNotKept
  | WrongDie
  | TightRadius
  | ShortTail
  | ClampOffTube
  | OrderOutdated
  | ManyBends
  | LongerThanStick
  | NoStick
  | PullsDisagree
  | SlackOrSpring
  | BeyondPulls
  | CoarseScale
  | RadiusOpens
  | MeetsNothing
  | PlateAlongTube
  | CutterMisses
  | MitreCannot
  | MitreOneSided
  | FootUpsideDown
  | FootOverEdge
  | FootInBend
  | FootOverHole
  | WiderThanRun
  | CutThrough
  | MeetsRunAgain
  | CutElsewhere
  | CopeInOwnBend
  | JointInBend
  | JointNearBend
  | JointOffRunEnd
  | OutOfLine
  | TwinInSamePlace
  | TooClose
  | RunsThrough
  | NoRoomForTorch
  | CarFinding
  | GussetFinding
  | PieceFinding
  | MadeFinding
  | OrderMatters
  | PlainOrderTouches
  | NoFreeOrder;
