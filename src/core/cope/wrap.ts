/**
 * A wrap template: the surface at a tube's end unrolled flat, to be printed, cut out and wound round the tube.
 *
 * On the sheet x runs round the tube with phi, y along the tube with the trim s, into the tube; the printed side is
 * outside. The sheet lies on the tube, so a full turn of it is measured at the middle of its own thickness:
 * width = pi (OD + thickness). The seam is where its left and right edge must just meet. The lower edge is where the
 * blank was sawn off, so that it can be laid flush with it; the upper edge, the baseline, is square round the tube.
 * Between lower edge and cut line lies what is cut away. Derivation: docs/maths/wrap.md.
 *
 * A generator that nothing reaches has no trim: the cut line is open there, and is never joined across.
 */
import { toDegrees, toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import { SAME_LOW } from '../geometry/rim.ts';
import { ANGLE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import { add, addScaled, cross, scale, type Vec3 } from '../geometry/vector.ts';
import { cutCurve } from '../solve/end-cutter.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { onSheet, piecesOf, type CutLine, type Piece, type SurfacePlace } from './cut-pieces.ts';

/**
 * outer: where the outer surface ends, which is the profile. square-wall: for a cut made square to the wall, on each
 * generator the larger trim of the wall's two faces, or the inner edge would stand proud.
 */
export type Surface = 'outer' | 'square-wall';

export interface WrapSetting {
  readonly surface: Surface;
  /** Of what is wound round the tube, mm. */
  readonly thickness: number;
  /** The baseline stands a whole number of these from the blank's end, mm. */
  readonly step: number;
}

/** Common practice: a sheet of paper is 0.1 mm thick. */
const PAPER_THICKNESS = 0.1;
/** The baseline of paper, in a job of either unit, mm. */
const PAPER_STEPS = { mm: 10, in: MM_PER_INCH / 2 };

export interface Wrap {
  readonly surface: Surface;
  /** Radius that the sheet's middle is wound on, and the length of one turn of it; mm. */
  readonly radius: number;
  readonly width: number;
  /** phi at the left edge; the right edge is one turn on. */
  readonly left: Radians;
  /**
   * The cut line in unbroken pieces, phi rising from the left edge on. Every place is exact: whole degrees, those between, where
   * a piece ends, tips and throat.
   */
  readonly pieces: readonly Piece[];
  /** One piece, from edge to edge. */
  readonly closed: boolean;
  /** Trim s of the lower edge, of the blank's sawn end, and of the upper edge; the first two are the same unless the allowance is great. */
  readonly lower: number;
  readonly blankEnd: number;
  readonly baseline: number;
  /** Longest points of the wall (two where equal ones lie apart) and the deepest of the cut line; phi in (-pi, pi]. */
  readonly tips: readonly SurfacePlace[];
  readonly throat: SurfacePlace;
}

/** Left between the deepest point and the baseline for the words that stand there, mm. */
const BODY = 28;
/** More allowance than this is not drawn: the template would grow for nothing, mm. */
const MOST_ALLOWANCE = 25;

/** Null where nothing reaches this end at all, and there is no line to draw. */
export function wrapOf(tube: SolvedTube, which: 0 | 1, setting: WrapSetting): Wrap | null {
  const end = tube.ends[which];
  const { outerDiameter, wall } = tube.section;
  const bore = outerDiameter / 2 - wall;
  const line: CutLine = {
    cutter: end.cutter,
    radii: setting.surface === 'outer' ? [outerDiameter / 2] : [outerDiameter / 2, bore],
    sawnAt: end.tip ?? -Infinity,
  };
  // Of the outer surface the end has its curve already.
  const { trim, lows, high } =
    setting.surface === 'outer'
      ? { trim: end.outer, lows: end.lows, high: end.high }
      : cutCurve(line.cutter, line.radii);
  if (high === null) return null;
  const left = leftEdge(high.phi);
  // The tube's own tip, also where the bore is cut beyond it: the wall begins there, and the saw went through there.
  const tip = end.tip ?? lows[0]!.s;
  const blankEnd = tip - end.allowance;
  const tips = tipsOf(lows, trim, tip);
  const { pieces, closed } = piecesOf(line, trim, left, [...tips, high]);
  const radius = (outerDiameter + setting.thickness) / 2;
  return {
    surface: setting.surface,
    radius,
    width: 2 * Math.PI * radius,
    left,
    pieces,
    closed,
    lower: tip - Math.min(end.allowance, MOST_ALLOWANCE),
    blankEnd,
    baseline: blankEnd + setting.step * Math.ceil((high.s + BODY - blankEnd) / setting.step),
    tips,
    throat: high,
  };
}

/** As it is wound of paper or film, its baseline a whole number of 10 mm, or of half inches, from the blank's end. Null as wrapOf. */
export const paperWrap = (tube: SolvedTube, which: 0 | 1, surface: Surface, unit: LengthUnit): Wrap | null =>
  wrapOf(tube, which, { surface, thickness: PAPER_THICKNESS, step: PAPER_STEPS[unit] });

/** True where a template helps: not where a plain saw cuts the same line, square to within `within` mm of trim. */
export function needsWrap({ tip, throat, passedBy }: TubeEnd, within = 0.05): boolean {
  return passedBy || (tip !== null && throat !== null && throat - tip > within);
}

/** Of a place on the tube to the sheet, mm from its lower left corner; whatever turn its phi is in, it lies on the sheet. */
export const unroll = (wrap: Wrap, { phi, s }: SurfacePlace): { readonly x: number; readonly y: number } => ({
  x: (onSheet(phi, wrap.left) - wrap.left) * wrap.radius,
  y: s - wrap.lower,
});

/** The wider part of the sheet beside the reference line (phi = 0): from where to where, mm from the left edge. */
export function widerSide(wrap: Wrap): readonly [from: number, to: number] {
  const zero = unroll(wrap, { phi: 0, s: 0 }).x;
  return zero >= wrap.width / 2 - ROUNDING ? [0, zero] : [zero, wrap.width];
}

/** Of a place on the sheet to the tube: the other way round. */
export const roll = (wrap: Wrap, { x, y }: { readonly x: number; readonly y: number }): SurfacePlace => ({
  phi: wrap.left + x / wrap.radius,
  s: y + wrap.lower,
});

/** Trim s of the cut line at this phi, which must be one of its places (whole degrees are); null where the line is open. */
export function cutAt(wrap: Wrap, phi: Radians): number | null {
  const place = wrap.pieces.flat().find((each) => Math.abs(each.phi - phi) < ANGLE_ROUNDING);
  return place?.s ?? null;
}

/** The place in car axes, mm. */
export function inSpace(tube: SolvedTube, which: 0 | 1, { phi, s }: SurfacePlace): Vec3 {
  const { position, direction, reference } = tube.ends[which];
  const spoke = add(scale(reference, Math.cos(phi)), scale(cross(direction, reference), Math.sin(phi)));
  return addScaled(addScaled(position, spoke, tube.section.outerDiameter / 2), direction, s);
}

/** The tip, and another as long that lies beyond a rise of the cut line on either side: not the flat of the same one. */
function tipsOf(lows: readonly SurfacePlace[], trim: Float64Array, tip: number): SurfacePlace[] {
  const onWall = lows.filter(({ s }) => s >= tip);
  const [first] = onWall.length > 0 ? onWall : lows;
  const rises = (from: number, to: number): boolean => {
    for (let k = Math.ceil(from); k < to; k++) if (!(trim[((k % 360) + 360) % 360]! - first!.s < SAME_LOW)) return true;
    return false;
  };
  const second = onWall.find((each) => {
    const [a, b] = [first!.phi, each.phi].map((phi) => toDegrees(phi)).toSorted((one, other) => one - other);
    return rises(a!, b!) && rises(b!, a! + 360);
  });
  return second === undefined ? [first!] : [first!, second];
}

/**
 * The seam stands opposite phi = 0, which then lies in the middle of the sheet. Where the throat lies within 60 degrees of that,
 * the seam goes to 60 degrees beside phi = 0, on the side away from the throat: paper shifts most at its seam, and the throat is where
 * the fit shows. Not to a quarter turn, where most copes have their tips.
 */
function leftEdge(throat: Radians): Radians {
  const fromBack = wrapHalfTurn(throat - Math.PI);
  if (Math.abs(fromBack) >= toRadians(60)) return -Math.PI;
  // A throat beyond 180 (on the negative side) is farther from +60, and the other way round.
  return fromBack > 0 ? toRadians(60) - 2 * Math.PI : toRadians(-60);
}
