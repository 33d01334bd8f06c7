/**
 * What is derived from a job: every tube with its real centreline, bends, ends and copes. Millimetres, radians,
 * kilograms, car axes. All of it is immutable and shared between derivations: a record that an edit did not touch is
 * the same object afterwards, so views may compare by identity.
 */
import type { Radians } from '../geometry/angle.ts';
import type { Path } from '../geometry/path.ts';
import type { Bundle } from '../geometry/fan.ts';
import type { RimPlace } from '../geometry/rim-search.ts';
import type { Sleeve } from '../geometry/met-sleeve.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { PullLaw } from '../springback/pull-law.ts';
import type { Die } from '../job/kinds/die.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Foot } from '../job/kinds/foot.ts';
import type { MadeTube } from '../job/kinds/made.ts';
import type { Member } from '../job/kinds/member.ts';
import type { Section } from '../job/kinds/section.ts';
import type { NodeRef, TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Layout } from './lay-out.ts';

export interface Bend {
  /** The sharp corner that the die rounds: not a place on the tube. */
  readonly corner: Vec3;
  /** How far the tube turns, (0, pi). */
  readonly angle: Radians;
  /** Turn of this bend's plane from the plane of the bend before, right-hand about the feed direction A to B, (-pi, pi]; 0 on the first. */
  readonly rotation: Radians;
  /** Centreline radius. */
  readonly radius: number;
  /** Tangent length, from the corner to either tangent. */
  readonly setBack: number;
  readonly arc: number;
  /** Developed length from end A's node to the first tangent, and to the second. */
  readonly start: number;
  readonly end: number;
  readonly centre: Vec3;
  /** Unit normal of the bend plane: the tube turns right-hand about it, from A to B. */
  readonly normal: Vec3;
}

export interface Cut {
  readonly against: TubeRef;
  /** Between the two axes, 0..pi/2. */
  readonly includedAngle: Radians;
  /** pi/2 - included angle: what a notcher is set to. */
  readonly offSquare: Radians;
  /** From the end's reference to the acute side of the cut, right-hand about the end's direction, (-pi, pi]; at a square cut in [0, pi). */
  readonly clocking: Radians;
  /** How far the branch's axis passes the run tube's, signed along direction x acute side. */
  readonly axisOffset: number;
  /** Outer diameter of the run tube. */
  readonly sawDiameter: number;
  /** To pass right through on a blank that runs past the cut; null where the axes are parallel and no saw would. */
  readonly sawDepth: number | null;
  /** The nearest point of the run tube's centreline lies in one of its bends. */
  readonly onBend: boolean;
  /** That nearest point, and its place along the run tube's developed length from end A's node. */
  readonly landing: Vec3;
  readonly landingAt: number;
  /** False when no generator line of the branch meets the run tube's surface. */
  readonly reaches: boolean;
}

/** What an end is cut by: the curve that it leaves on any surface about the tube's axis comes of this. */
export interface EndCutter {
  readonly bundle: Bundle;
  /** Of the tube that is cut. */
  readonly section: Section;
  readonly plateNormal: Vec3 | null;
  /** From the node to that plane, mm along the tube into it; 0 without one. */
  readonly rise: number;
  /** The run tubes as what cuts; none at a plate and a square end. */
  readonly sleeves: readonly Sleeve[];
}

/** The other tube has no end at this node; is of another size; or both run the same way. */
export type Unmitred = 'no-end-there' | 'unlike' | 'folded';

export interface TubeEnd {
  /** Null where a bar in pieces is cut: no node stands there. */
  readonly node: NodeRef | null;
  readonly position: Vec3;
  /** How it is asked to be fitted. */
  readonly spec: EndFit;
  readonly fit: 'cope' | 'plate' | 'foot' | 'mitre' | 'square';
  /** Unit vector along the tube, INTO it. */
  readonly direction: Vec3;
  /** Unit vector square to direction: phi = 0 on the tube's surface. phi is right-hand about direction. */
  readonly reference: Vec3;
  readonly cuts: readonly Cut[];
  /** Tubes in line with this end (within 5 degrees) that it is butted to, not coped; and the one that it is mitred with. */
  readonly butted: readonly TubeRef[];
  /** Normal of the plane that it is cut to: a plate's, a foot's upper face, the plane of a mitre; null where it is cut to none. */
  readonly plateNormal: Vec3 | null;
  /** What it stands on where `fit` is 'foot'. */
  readonly foot: Foot | null;
  /** Why it is not mitred as it is asked to be, and is cut square; null where it is, and where it is not asked. */
  readonly unmitred: Unmitred | null;
  readonly cutter: EndCutter;
  /** Trim s at phi = 0, 1 ... 359 degrees on the outer surface: mm from the node along direction. NaN where nothing reaches. */
  readonly outer: Float64Array;
  /** The same on the bore. */
  readonly inner: Float64Array;
  /** Least and greatest of the curve that `outer` lists, exact between the degrees too; null where no line is reached. */
  readonly tip: number | null;
  readonly throat: number | null;
  /** Where they are: the tip first, then other lows as good as equal to it; empty, and null, where no line is reached. */
  readonly lows: readonly RimPlace[];
  readonly high: RimPlace | null;
  /** Some line of `outer` is reached by nothing. */
  readonly passedBy: boolean;
  /** Mean of the trim over the wall's cross-section; where a plane cuts it, where the axis meets that. */
  readonly meanTrim: number;
  readonly allowance: number;
}

/** A bar as it is drawn, between the ends of its member's path: what nodes stand on, and what other tubes are cut by. */
export interface Bar {
  /** The member's id, with a prime for its twin. */
  readonly id: TubeRef;
  /** The member's name; "(left)" or "(right)" is added to both of a mirrored pair, "(across)" where it is on neither side. */
  readonly name: string;
  readonly member: Member;
  readonly section: Section;
  readonly die: Die | null;
  /** How far the machine is pulled for its bends; null without a die, and where there are no pulls and the steel is unknown. */
  readonly pullLaw: PullLaw | null;
  /** Places of the path's nodes, straight-through corners among them. */
  readonly route: readonly Vec3[];
  /** End A, the sharp corners where it bends, end B. */
  readonly corners: readonly Vec3[];
  /** The real centreline, A to B, node to node. */
  readonly path: Path;
  readonly bends: readonly Bend[];
  /** One more than bends, tangent to tangent; negative where bends overlap. First and last from the end nodes. */
  readonly straights: readonly number[];
  readonly developedLength: number;
  readonly sharpCornerLength: number;
  readonly ends: readonly [TubeEnd, TubeEnd];
}

/** A tube to be made: a whole bar, or a piece of one. Of a piece, id, name and centreline are its own, its route that of the bar. */
export interface SolvedTube extends Bar {
  /** What it is called by in the shop and by an inspector, given once (job/numbers.ts). Not its place in the build order. */
  readonly number: number;
  /** The bar that it is, or is a piece of. */
  readonly bar: TubeRef;
  /** Null where the bar is made whole. */
  readonly piece: Piece | null;
  /** The tube whose mirror image it is. */
  readonly twinOf: TubeRef | null;
  /** Where it stands as it was built: the same tube as the drawing wants it in the frame as it is now. Null where it is as drawn. */
  readonly asDrawn: SolvedTube | null;
  /** Where it is held as it was cut: what was kept of it then. Else null. */
  readonly held: MadeTube | null;
  /** Tip to tip plus allowances. */
  readonly blankLength: number;
  /** Of the coped tube, at 7850 kg/m3. */
  readonly mass: number;
}

export interface Piece {
  /** 1 = at end A of the bar. */
  readonly number: number;
  readonly count: number;
  /** Where it begins: developed length along the bar from end A's node, mm. */
  readonly from: number;
}

export interface Frame {
  readonly job: Job;
  /** As it is drawn; and with the tubes that stand as built in their places. The same where none does. */
  readonly drawn: Layout;
  readonly layout: Layout;
  /** Every node, and the mirror image of every node (primed), to its place. */
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  /** In build order; a twin follows its member. */
  readonly tubes: readonly SolvedTube[];
  readonly byId: ReadonlyMap<TubeRef, SolvedTube>;
  /** What is drawn: a bar that is made whole is its tube. */
  readonly bars: ReadonlyMap<TubeRef, Bar>;
}
