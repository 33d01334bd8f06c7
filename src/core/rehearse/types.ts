/**
 * A tube rehearsed on the bender before it is bent. Bender axes, mm: the origin on the floor, plumb under the place where
 * every bend starts; x along the feed, y to the left of it, z up. Angles are radians.
 */
import type { Degrees, Radians } from '../geometry/angle.ts';
import type { Path } from '../geometry/path.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { Obstacle } from '../job/kinds/obstacle.ts';

/** A part of the machine, or the floor that it stands on. The die is a core between two lips. */
export type MachinePart = 'die' | 'upper-lip' | 'lower-lip' | 'clamp' | 'follower' | 'column' | 'floor';

/** A thing in the room, with the name that a person gave it; '' where nobody did. */
export interface RoomThing {
  readonly part: 'room';
  readonly kind: Obstacle['kind'];
  readonly name: string;
}

/** Which solid it is; what it is called stands in core/words. */
export type SolidId = { readonly part: MachinePart } | RoomThing;

/** What the tube can run into. `turning`: it goes round with the die. */
export interface Solid {
  readonly id: SolidId;
  readonly turning: boolean;
  readonly shape:
    | { readonly kind: 'box'; readonly centre: Vec3; readonly half: Vec3; readonly axes: readonly [Vec3, Vec3, Vec3] }
    /** Upright: its axis is parallel to z. */
    | { readonly kind: 'cylinder'; readonly centre: Vec3; readonly radius: number; readonly halfHeight: number }
    | { readonly kind: 'plane'; readonly point: Vec3; readonly normal: Vec3 };
}

/** The tube on the machine, at one angle of one bend. */
export interface Pose {
  /** In front of the bend that is being made: it swings. From the bend outwards to the end in front. */
  readonly front: Path;
  /** What of this bend is laid round the die so far; null at angle 0. */
  readonly arc: Path | null;
  /** Behind: it slides along the feed. From the bend outwards to the other end. */
  readonly rear: Path;
}

/** The first touch in a sweep. */
export interface Hit {
  /** How far the machine has turned, 0 = before it moves. */
  readonly angle: Radians;
  /** Null where the tube touches itself. */
  readonly solid: SolidId | null;
  /** Which part of the tube. */
  readonly by: 'front' | 'rear';
  /** On the tube's centreline, there and then. */
  readonly at: Vec3;
}

/** Why the machine cannot hold the tube for a bend, by the die's own limits. */
export type Unheld =
  /** The bend turns further than the die of that name goes. */
  | { readonly kind: 'beyond-die'; readonly angle: Radians; readonly die: string; readonly greatest: Degrees }
  /** That bend, made before, leaves too little straight: in front for the clamp, behind for the follower. */
  | { readonly kind: 'too-near'; readonly bend: number; readonly side: 'in-front' | 'behind' };

/** What stands in the way of a step; both null where nothing does. */
export interface Trouble {
  /** Null also where the machine cannot hold the tube for a sweep. */
  readonly hit: Hit | null;
  readonly cannotHold: Unheld | null;
}

/** Why no order of bending is proposed. */
export type NoOrder =
  | { readonly kind: 'bends-overlap' }
  | { readonly kind: 'too-many-bends'; readonly count: number }
  /** This bend cannot be made, whichever are made before it; `trouble` with none made. */
  | { readonly kind: 'never'; readonly bend: number; readonly trouble: Trouble }
  /** The farthest that any order comes: these bends are made, and then this one is barred. */
  | { readonly kind: 'stuck'; readonly made: readonly number[]; readonly bend: number; readonly trouble: Trouble };

export interface RehearsedStep extends BendStep, Trouble {
  /** What a person is given to pull to, and the net angle at least. */
  readonly pullTo: Radians;
  /** How far the machine turns in the end: a first pull is gone on from, to no more than the log allows. */
  readonly pulled: Radians;
  readonly net: Radians;
  /**
   * From the bend made before it that lies nearest on the tube (of two as near, the one made last), right-hand about
   * the direction from end A to end B, (-pi, pi]; 0 on the first.
   */
  readonly rotation: Radians;
  readonly rotationFrom: number | null;
}

export interface Rehearsal {
  /**
   * The plain order, marked from end A: what happens if nobody thinks about it. Bend after bend with end A in front;
   * where the bender leaves the measured end behind, from the last to the first with end B in front.
   */
  readonly plain: readonly RehearsedStep[];
  /** The order proposed: every bend free. Null where none is, or where there are more than SEARCHED_BENDS bends. */
  readonly proposed: readonly RehearsedStep[] | null;
  /** Why there is none; null where there is one. */
  readonly reason: NoOrder | null;
  /** How far the search went: orders that keep free, of all orders and both ends in front. */
  readonly free: number;
  readonly all: number;
}
