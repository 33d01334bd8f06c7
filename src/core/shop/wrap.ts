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
import { toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import { add, addScaled, cross, scale, type Vec3 } from '../geometry/vector.ts';
import { trimBetween } from '../solve/trim-between.ts';
import type { Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

export interface WrapSetting {
  /**
   * outer: where the outer surface ends, which is the profile. square-wall: for a cut made square to the wall, on each
   * generator the larger trim of the wall's two faces, or the inner edge would stand proud.
   */
  readonly surface: 'outer' | 'square-wall';
  /** Of what is wound round the tube, mm. */
  readonly thickness: number;
  /** The baseline stands a whole number of these from the blank's end, mm. */
  readonly step: number;
}

/** Common practice: a sheet of paper is 0.1 mm thick. */
export const PAPER_THICKNESS = 0.1;

/** A place on the tube's surface. */
export interface SurfacePlace {
  /** From the end's reference, right-hand about its direction; not folded into one turn. */
  readonly phi: Radians;
  /** mm from the node along the direction. */
  readonly s: number;
}

export interface Wrap {
  readonly surface: WrapSetting['surface'];
  /** Radius that the sheet's middle is wound on, and the length of one turn of it; mm. */
  readonly radius: number;
  readonly width: number;
  /** phi at the left edge; the right edge is one turn on. */
  readonly left: Radians;
  /** The cut line in unbroken pieces, phi rising; whole degrees are exact, and so is every place between. */
  readonly pieces: readonly (readonly SurfacePlace[])[];
  /** One piece, from edge to edge. */
  readonly closed: boolean;
  /** Trim s of the lower edge, of the blank's sawn end, and of the upper edge; the first two are the same unless the allowance is great. */
  readonly lower: number;
  readonly blankEnd: number;
  readonly baseline: number;
  /** Longest points of the wall (two where equal ones lie apart) and the deepest of the cut line. */
  readonly tips: readonly SurfacePlace[];
  readonly throat: SurfacePlace;
}

/** Left between the deepest point and the baseline for the words that stand there, mm. */
const BODY = 28;
/** More allowance than this is not drawn: the template would grow for nothing, mm. */
const MOST_ALLOWANCE = 25;
/** Places between degrees are kept where a straight line from degree to degree would be off by more, mm. */
const STRAIGHT_ENOUGH = 0.002;
/** Parts of a degree are halved until their middles are this near to the line, mm, but no finer than this many parts. */
const FINE_ENOUGH = 0.005;
const MOST_PARTS = 16;
/** Tips this near in s are equals, mm. */
const SAME_TIP = 0.01;

/** Null where nothing reaches this end at all, and there is no line to draw. */
export function wrapOf(frame: Frame, tube: SolvedTube, which: 0 | 1, setting: WrapSetting): Wrap | null {
  const end = tube.ends[which];
  const { trims, parts } = fineTrims(frame, tube, which, setting.surface);
  const deepest = furthest(trims, parts, 1);
  if (deepest === null) return null;
  const left = leftEdge(deepest.phi);
  const pieces = cutPieces(trims, parts, left);
  const longest = furthest(trims, parts, -1)!;
  const blankEnd = (end.tip ?? longest.s) - end.allowance;
  const drawnFrom = (end.tip ?? longest.s) - Math.min(end.allowance, MOST_ALLOWANCE);
  const lower = Math.min(drawnFrom, longest.s);
  const radius = (tube.section.outerDiameter + setting.thickness) / 2;
  return {
    surface: setting.surface,
    radius,
    width: 2 * Math.PI * radius,
    left,
    pieces,
    closed: !trims.some((s) => Number.isNaN(s)),
    lower,
    blankEnd,
    baseline: blankEnd + setting.step * Math.ceil((deepest.s + BODY - blankEnd) / setting.step),
    tips: [longest, ...equalTip(trims, parts, longest)],
    throat: deepest,
  };
}

/** True where a template helps: not where a plain saw cuts the same line, square to within `within` mm of trim. */
export function needsWrap({ tip, throat, passedBy }: TubeEnd, within = 0.05): boolean {
  return passedBy || (tip !== null && throat !== null && throat - tip > within);
}

/** Of a place on the tube to the sheet, mm from its lower left corner. */
export const unroll = (wrap: Wrap, { phi, s }: SurfacePlace): { readonly x: number; readonly y: number } => ({
  x: (phi - wrap.left) * wrap.radius,
  y: s - wrap.lower,
});

/** Of a place on the sheet to the tube: the other way round. */
export const roll = (wrap: Wrap, { x, y }: { readonly x: number; readonly y: number }): SurfacePlace => ({
  phi: wrap.left + x / wrap.radius,
  s: y + wrap.lower,
});

/** Trim s of the cut line at this phi, which must be one of its places (whole degrees are); null where the line is open. */
export function cutAt(wrap: Wrap, phi: Radians): number | null {
  const place = wrap.pieces.flat().find((each) => Math.abs(each.phi - phi) < 1e-9);
  return place?.s ?? null;
}

/** The place in car axes, mm. */
export function inSpace(tube: SolvedTube, which: 0 | 1, { phi, s }: SurfacePlace): Vec3 {
  const { position, direction, reference } = tube.ends[which];
  const spoke = add(scale(reference, Math.cos(phi)), scale(cross(direction, reference), Math.sin(phi)));
  return addScaled(addScaled(position, spoke, tube.section.outerDiameter / 2), direction, s);
}

/**
 * The trims at 360 x parts generators. Halved as long as the curve between two of them is not straight enough, or is
 * reached at one and not at the next.
 */
function fineTrims(
  frame: Frame,
  tube: SolvedTube,
  which: 0 | 1,
  surface: WrapSetting['surface'],
): { trims: Float64Array; parts: number } {
  const { outerDiameter, wall } = tube.section;
  const end = tube.ends[which];
  const outer = (turn: Radians) => trimBetween(frame, tube, which, turn, outerDiameter / 2);
  const inner = (turn: Radians) => trimBetween(frame, tube, which, turn, outerDiameter / 2 - wall);
  const trimsAt = (turn: Radians) => (surface === 'outer' ? outer(turn) : larger(outer(turn), inner(turn)));

  let trims = surface === 'outer' ? end.outer : larger(end.outer, end.inner);
  let parts = 1;
  let rough = true;
  while (rough && parts < MOST_PARTS) {
    const finer = new Float64Array(trims.length * 2);
    for (let part = 0; part < parts; part++) {
      const between = trimsAt(toRadians((part + 0.5) / parts));
      for (let degree = 0; degree < 360; degree++) {
        const at = degree * parts + part;
        finer[2 * at] = trims[at]!;
        finer[2 * at + 1] = between[degree]!;
      }
    }
    rough = false;
    for (let at = 1; at < finer.length && !rough; at += 2) {
      const off = Math.abs(finer[at]! - (finer[at - 1]! + finer[(at + 1) % finer.length]!) / 2);
      const missed = [at - 1, at, (at + 1) % finer.length].filter((each) => Number.isNaN(finer[each])).length;
      rough = off > FINE_ENOUGH || missed === 1 || missed === 2;
    }
    trims = finer;
    parts *= 2;
  }
  return { trims, parts };
}

/** Of both where there are both, else of the one there is: a face that nothing reaches takes nothing away. */
const larger = (a: Float64Array, b: Float64Array): Float64Array =>
  a.map((s, k) => (Number.isNaN(s) || b[k]! > s ? b[k]! : s));

/** Greatest (sense 1) or least (sense -1) trim; of equals the one nearest phi = 0. */
function furthest(trims: Float64Array, parts: number, sense: 1 | -1): SurfacePlace | null {
  let best: SurfacePlace | null = null;
  trims.forEach((s, at) => {
    if (Number.isNaN(s)) return;
    const phi = wrapHalfTurn(toRadians(at / parts));
    const ahead = best === null ? Infinity : (s - best.s) * sense;
    if (ahead > 1e-9 || (ahead > -1e-9 && Math.abs(phi) < Math.abs(best!.phi))) best = { phi, s };
  });
  return best;
}

/** A second tip as long as the first, beyond a rise of the cut line on either side of it: not the flat of the same one. */
function equalTip(trims: Float64Array, parts: number, { phi, s }: SurfacePlace): SurfacePlace[] {
  const count = trims.length;
  const first = Math.round((phi * 180 * parts) / Math.PI);
  const from = (steps: number): number => (((first + steps) % count) + count) % count;
  const level = (at: number): boolean => trims[at]! - s < SAME_TIP;
  let [ahead, behind] = [1, count - 1];
  while (ahead < count && level(from(ahead))) ahead++;
  while (behind > ahead && level(from(behind))) behind--;
  const others = Array.from({ length: Math.max(0, behind - ahead) }, (_, i) => from(ahead + i)).filter(level);
  if (others.length === 0) return [];
  const at = others.reduce((best, each) => (trims[each]! < trims[best]! ? each : best));
  return [{ phi: wrapHalfTurn(toRadians(at / parts)), s: trims[at]! }];
}

/**
 * The seam stands opposite phi = 0, which then lies in the middle of the sheet. Where the throat lies within 60 degrees of that,
 * the seam goes to 60 degrees beside phi = 0, on the side away from the throat: paper slips most at its seam, and the throat is where
 * the fit shows. Not to a quarter turn, where most copes have their tips.
 */
function leftEdge(throat: Radians): Radians {
  const fromBack = wrapHalfTurn(throat - Math.PI);
  if (Math.abs(fromBack) >= toRadians(60)) return -Math.PI;
  // A throat beyond 180 (on the negative side) is farther from +60, and the other way round.
  return fromBack > 0 ? toRadians(60) - 2 * Math.PI : toRadians(-60);
}

function cutPieces(trims: Float64Array, parts: number, left: Radians): SurfacePlace[][] {
  const first = Math.round((left * 180) / Math.PI);
  const at = (degree: number, part: number): number =>
    trims[((((degree + 360) % 360) + 360) % 360) * parts + part] ?? NaN;
  const pieces: SurfacePlace[][] = [];
  let open: SurfacePlace[] = [];
  const put = (degree: number, part: number): void => {
    const s = at(degree, part);
    if (!Number.isNaN(s)) {
      open.push({ phi: toRadians(degree + part / parts), s });
    } else if (open.length > 0) {
      pieces.push(open);
      open = [];
    }
  };
  for (let degree = first; degree < first + 360; degree++) {
    put(degree, 0);
    const [from, to] = [at(degree, 0), at(degree + 1, 0)];
    const bowed = Array.from({ length: parts - 1 }, (_, i) => (i + 1) / parts).some((share, i) => {
      const off = Math.abs(at(degree, i + 1) - (from + share * (to - from)));
      return !(off <= STRAIGHT_ENOUGH);
    });
    if (bowed) for (let part = 1; part < parts; part++) put(degree, part);
  }
  put(first + 360, 0);
  if (open.length > 0) pieces.push(open);
  return pieces;
}
