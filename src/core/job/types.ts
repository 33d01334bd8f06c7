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
}

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
}

/** What is wrong with a file or an edit, and where: "members[3].path[1]". Place '' is the whole file. */
export interface Fault {
  readonly place: string;
  readonly message: string;
}
