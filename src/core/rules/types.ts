/**
 * What comes of holding a frame against an article of a rule sheet: facts, without a sentence (core/words/rules.ts has those). Lengths mm, areas mm2, second
 * moments mm4, angles degrees, car axes. `met` says that the drawing, or what was made, lies within the figure that somebody typed, and no more than that.
 */
import type { Vec3 } from '../geometry/vector.ts';
import type { CheckOf, Quantity, RuleAnswer, RuleCheck, RuleKind } from '../job/kinds/rule-check.ts';
import type { EnvelopeId, TubeRef } from '../job/reference.ts';
import type { Questions } from './questions.ts';

export type VerdictWord = 'met' | 'not-met' | 'not-checked';

/** What was measured of a tube, or of several, at a place; `to` is the other end of the dimension. */
export interface Measured {
  readonly value: number;
  /** The limits that hold for it, where they are not the article's own. */
  readonly least?: number;
  readonly most?: number;
  /** What it counts, where that is not what the article's figures count. */
  readonly quantity?: Quantity;
  readonly concerns: readonly TubeRef[];
  readonly envelope?: EnvelopeId;
  /** 1 = first from end A. */
  readonly bend?: number;
  readonly at: Vec3 | null;
  readonly to?: Vec3;
}

/** Not within the article, and no figure says how far off. */
export interface Fails {
  readonly fails: FailsBecause;
  readonly concerns: readonly TubeRef[];
  readonly at: Vec3 | null;
}

/** What cannot be measured, and why. */
export interface Unknown {
  readonly unknown: UnknownBecause;
  readonly concerns: readonly TubeRef[];
  readonly at: Vec3 | null;
}

export type Outcome = Measured | Fails | Unknown;

export type FailsBecause =
  /** It does not run the way that the article wants, from its upper end. */
  | { readonly id: 'runs-otherwise'; readonly way: 'rearward' | 'forward' }
  /** No tube lands where a bent one stands out farthest. */
  | { readonly id: 'unsupported' }
  /** Nobody of that role, and the article wants one. */
  | { readonly id: 'none-there' };

/** A stretch of tube near a helmet: developed lengths from end A's node, mm. */
export interface ToPad {
  readonly tube: TubeRef;
  readonly from: number;
  readonly to: number;
}

export type UnknownBecause =
  /** No bar has one of these roles. */
  | { readonly id: 'nobody'; readonly roles: readonly string[] }
  /** Bars without a role: one of them may be meant. */
  | { readonly id: 'unnamed' }
  /** Its place in the frame is not that of its role. */
  | { readonly id: 'misnamed'; readonly misfit: Misfit }
  /** The article has no figure yet. */
  | { readonly id: 'no-figure' }
  | { readonly id: 'no-mass' }
  /** The article is for cars of another mass, kg. */
  | { readonly id: 'other-mass'; readonly mass: number }
  | { readonly id: 'not-answered' }
  | { readonly id: 'no-driver' }
  /** The driver has not been measured so far: that point is missing. */
  | { readonly id: 'no-point'; readonly point: 'shoulders' | 'helmet' }
  /** No bar that the article measures to. */
  | { readonly id: 'nothing-there'; readonly roles: readonly string[] }
  | { readonly id: 'no-bends' }
  | { readonly id: 'no-joint'; readonly roles: readonly string[] }
  | { readonly id: 'no-foot' }
  /** An end is cut to a plate of which no size is known. */
  | { readonly id: 'foot-without-size' }
  /** Stands on a box: the area that it covers and that of its walls' foot, mm2, lie on either side of a limit. */
  | { readonly id: 'box'; readonly covers: number; readonly touches: number }
  | { readonly id: 'not-flat' }
  /** The diameters over its bends were not all measured. */
  | { readonly id: 'roundness-not-measured' }
  /** Near to a helmet: whether it is padded, the frame does not tell. */
  | { readonly id: 'to-pad'; readonly reach: number; readonly stretches: readonly ToPad[] }
  /** The harness bar does not run behind that shoulder. */
  | { readonly id: 'not-behind' }
  /** No part of these tubes lies behind that helmet. */
  | { readonly id: 'nothing-behind' }
  /** Sill and rail of the door were not measured. */
  | { readonly id: 'no-opening' };

/** Why a bar cannot be what its role says. */
export type Misfit =
  | 'does-not-cross'
  | 'crosses'
  | 'straight'
  | 'not-from-hoop'
  | 'not-rearward'
  | 'not-forward'
  | 'not-level'
  | 'not-in-hoop'
  | 'not-along';

export type Because =
  | { readonly id: 'measured' }
  /** It would be within, but its figure is from memory. */
  | { readonly id: 'from-memory' }
  | { readonly id: 'answered'; readonly answer: RuleAnswer }
  | FailsBecause
  | UnknownBecause;

export interface Verdict {
  /** The sheet's id, and the article's place in it. */
  readonly sheet: string;
  readonly index: number;
  readonly check: RuleCheck;
  readonly verdict: VerdictWord;
  /** What was measured where it lies nearest to its limit, or farthest past it; null where nothing was. */
  readonly value: number | null;
  readonly limit: number | null;
  /** Which limit it is. */
  readonly bound: 'least' | 'most' | null;
  /** By how much the value lies within the limit; negative: past it. */
  readonly margin: number | null;
  readonly quantity: Quantity;
  /** How many things were measured: helmets, straps, bends, feet, or tubes, by the kind of article. */
  readonly count: number;
  /** The tubes that are past the limit or cannot be told; where all are within, all that were looked at. */
  readonly concerns: readonly TubeRef[];
  readonly envelope: EnvelopeId | null;
  readonly bend: number | null;
  /** Where to look, and the other end of the dimension. */
  readonly at: Vec3 | null;
  readonly to: Vec3 | null;
  readonly because: Because;
}

/** How a kind of article is measured: of each bar, driver or joint that it concerns what was measured, or why nothing was. */
export type Judge<K extends RuleKind> = (check: CheckOf<K>, ask: Questions) => readonly Outcome[];
