/**
 * The job: the one document that a person edits and keeps. Lengths mm, angles degrees, masses kg; axes ISO 8855
 * (x forward, y left, z up) with the centre plane at y = 0. Records are flat and immutable; the order of `members`
 * is the build order. The schema that fills in the defaults stands in schema.ts; docs/file-formats.md says what each
 * field means to a person.
 */
import type { Degrees } from '../geometry/angle.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { LengthUnit } from '../units/length.ts';

export type { LengthUnit };

/** Flavoured strings: a plain string fits any, but one kind of id is not accepted for another. */
type Flavour<Name> = string & { readonly idOf?: Name };
export type PointId = Flavour<'point'>;
export type SectionId = Flavour<'section'>;
export type DieId = Flavour<'die'>;
export type NodeId = Flavour<'node'>;
export type MemberId = Flavour<'member'>;
export type EnvelopeId = Flavour<'envelope'>;
export type BodyLineId = Flavour<'body-line'>;
/** A reference: an id, or an id with a prime (') for the mirror image in y = 0. */
export type PointRef = Flavour<'point' | 'point-ref'>;
export type NodeRef = Flavour<'node' | 'node-ref'>;
export type TubeRef = Flavour<'member' | 'tube-ref'>;

export type Axis = 'x' | 'y' | 'z';

export interface Point {
  readonly id: PointId;
  readonly name: string;
  readonly position: Vec3;
}

export interface Section {
  readonly id: SectionId;
  readonly name: string;
  readonly outerDiameter: number;
  readonly wall: number;
  /** A name from the list of steels, or the user's own word; '' when not said. */
  readonly material: string;
  /** How long the sticks are that it is bought in, mm; absent when not said. */
  readonly stick?: number;
}

export interface Die {
  readonly id: DieId;
  readonly name: string;
  readonly outerDiameter: number;
  readonly centrelineRadius: number;
  /** Clamp mark = start of bend minus this; mm along the tube. */
  readonly clampOffset: number;
  /** Shortest straight between two bends that the bender can hold; mm. */
  readonly leastStraight: number;
  /** Shortest straight beyond the last bend that the clamp can hold; mm. */
  readonly leastGrip: number;
  readonly greatestAngle: Degrees;
  /** 'from-pulls': each bend is laid out with the radius that the log of pulls says it opens to. */
  readonly radius: 'nominal' | 'from-pulls';
  /** The machine the die is used in, and the room round it; absent until somebody has set it up. */
  readonly bender?: Bender;
}

/**
 * The machine, and the room round it. Bender axes, mm: the origin on the floor, plumb under the place where every bend
 * starts; x along the feed, y to the left of it, z up. The bend plane is level.
 */
export interface Bender {
  /** To which side of the feed the tube is bent, seen from above. */
  readonly turns: 'left' | 'right';
  /**
   * On which side of its mark a bend lies, seen from the end that is measured from. 'beyond': that end goes through the
   * machine first, and the clamp holds it. 'before': it stays behind, and the clamp holds the tube beyond the bend.
   */
  readonly bendLies: 'beyond' | 'before';
  /** Of the tube's centreline over the floor. */
  readonly planeHeight: number;
  readonly rotationBy: 'level' | 'wheel';
  /** What each can be read to, and the scale that the machine's own angle is read from. */
  readonly levelStep: Degrees;
  readonly wheelStep: Degrees;
  readonly pullStep: Degrees;
  /** What stands round the machine, the floor not counted. */
  readonly room: readonly Obstacle[];
}

/** In bender axes. A plane stands for a wall, a bench's top or a ceiling without end: its normal points into the room. */
export type Obstacle = { readonly name: string } & (
  | {
      readonly kind: 'box';
      readonly centre: Vec3;
      readonly size: Vec3;
      readonly rotation: readonly [Degrees, Degrees, Degrees];
    }
  | { readonly kind: 'plane'; readonly point: Vec3; readonly normal: Vec3 }
);

/** One bend as it was made: how far the machine was pulled, and the angle measured after release. */
export interface Pull {
  readonly die: DieId;
  readonly section: SectionId;
  /** Heat or batch of the tube, where it is known. */
  readonly batch?: string;
  readonly pulled: Degrees;
  readonly net: Degrees;
  /** Date, as 2026-03-02; '' when not noted. */
  readonly on: string;
  /** The bend that it made, 1 = first from end A, when it came from a bend run. */
  readonly tube?: TubeRef;
  readonly bend?: number;
}

/** One bend at the machine: which, 1 = first from end A, and the end of the tube that is in front and swings. */
export interface BendStep {
  readonly bend: number;
  readonly front: 'A' | 'B';
}

/** A tube as it is made: what is done, and what was measured on it. */
export interface BentTube {
  readonly tube: TubeRef;
  /** Every bend once, in the order of bending. */
  readonly order: readonly BendStep[];
  /** Steps of the run that are ticked off and leave no reading: 'cut', 'mark', 'clamp 2', 'pull 2' ... by bend. */
  readonly done: readonly string[];
  /** In the order in which they were made. */
  readonly bends: readonly BentBend[];
  /** Check dimensions by name, mm as the tape read them. */
  readonly checks: readonly { readonly check: string; readonly measured: number }[];
  /** The tube as it was drawn when the run began: a change of the drawing since then is told. */
  readonly drawn?: DrawnTube;
}

/** What a tube is bent by, whatever radius it is laid out with. */
export interface DrawnTube {
  /** From end A's node to the first corner, from corner to corner, from the last to end B's node; mm. */
  readonly legs: readonly number[];
  /** One a bend, from end A. */
  readonly angles: readonly Degrees[];
  /** One a bend, as Bend.rotation; 0 on the first. */
  readonly rotations: readonly Degrees[];
  /** Where each bend started, by the radius of that day: mm from end A's node. The marks were drawn by it. */
  readonly starts?: readonly number[];
  /** What it was to be bent on, and of what. */
  readonly die?: Pick<Die, 'id' | 'name' | 'centrelineRadius' | 'clampOffset'>;
  readonly section?: Pick<Section, 'id' | 'name' | 'outerDiameter' | 'wall'>;
}

/** A bend as it came out; what was not measured is absent, and counts as planned. */
export interface BentBend {
  readonly bend: number;
  /** How far the machine was pulled, the last time. */
  readonly pulled: Degrees;
  /** Measured after release. */
  readonly net: Degrees;
  /** From the plane of the bend before it on the tube, as Bend.rotation. */
  readonly rotation?: Degrees;
  /** The straight before it, tangent to tangent, from end A; mm. */
  readonly straight?: number;
  /**
   * Where it was begun, by the mark that its step showed: its tangent nearer the end in front, mm along the tube as it was
   * cut from end A's node. Marks that move later do not move it.
   */
  readonly start?: number;
  /** Left as it is, though it is not what was asked for. */
  readonly kept?: boolean;
}

export type Place =
  | { readonly kind: 'fixed'; readonly position: Vec3 }
  | { readonly kind: 'point'; readonly point: PointRef; readonly offset: Vec3 }
  | OnMember
  | { readonly kind: 'between'; readonly nodes: readonly [NodeRef, NodeRef]; readonly fraction: number }
  | {
      readonly kind: 'ray';
      readonly from: NodeRef;
      readonly direction: Vec3;
      readonly until: { readonly axis: Axis; readonly value: number };
    };

/** A place on another member's real centreline, arcs included: from an end, or from a bend (1 = first from end A). */
export type OnMember = {
  readonly kind: 'on';
  readonly member: TubeRef;
  readonly distance: number;
  /** Moves the node off the axis, car axes, mm. */
  readonly offset: Vec3;
} & (
  | { readonly from: 'start' | 'end'; readonly bend?: never; readonly where?: never }
  | { readonly bend: number; readonly where: 'start' | 'middle' | 'end'; readonly from?: never }
);

/** Called FrameNode because the DOM's own `Node` would type-check silently in its place. */
export interface FrameNode {
  readonly id: NodeId;
  readonly name: string;
  readonly at: Place;
}

export type EndFit = (
  | { readonly fit: 'auto' | 'square' }
  | { readonly fit: 'cope'; readonly against: readonly TubeRef[] }
  | { readonly fit: 'plate'; readonly normal: Vec3 }
) & { readonly allowance: number };

export interface Member {
  readonly id: MemberId;
  readonly name: string;
  readonly role: string;
  readonly path: readonly NodeRef[];
  readonly section: SectionId;
  /** Needed as soon as the path bends. */
  readonly die?: DieId;
  /** Heat or batch that the tube is cut from; its pulls then count before the others. */
  readonly batch?: string;
  /** True: a twin, mirrored in y = 0, is derived beside it. */
  readonly mirror: boolean;
  readonly ends: readonly [EndFit, EndFit];
}

export interface Envelope {
  readonly id: EnvelopeId;
  readonly name: string;
  readonly kind: 'box';
  readonly centre: Vec3;
  /** Full size along the box's own axes. */
  readonly size: Vec3;
  /** Degrees about the fixed x, then y, then z axes. */
  readonly rotation: readonly [Degrees, Degrees, Degrees];
  /** Required distance from the box to a tube's surface. */
  readonly gap: number;
}

/** A line of the car's body, drawn through measured points so that one sees where the cage stands. Not derived from. */
export interface BodyLine {
  readonly id: BodyLineId;
  readonly name: string;
  readonly points: readonly PointRef[];
}

export interface Job {
  readonly format: 'cagewright/job';
  readonly version: 1;
  readonly name: string;
  /** How a person wants lengths shown and typed; nothing is stored in it. */
  readonly lengthUnit: LengthUnit;
  readonly points: readonly Point[];
  readonly bodyLines: readonly BodyLine[];
  readonly sections: readonly Section[];
  readonly dies: readonly Die[];
  readonly nodes: readonly FrameNode[];
  readonly members: readonly Member[];
  readonly envelopes: readonly Envelope[];
  readonly pulls: readonly Pull[];
  readonly bent: readonly BentTube[];
}

/** What is wrong with a file or an edit, and where: "members[3].path[1]". Place '' is the whole file. */
export interface Fault {
  readonly place: string;
  readonly message: string;
}
