/**
 * The cut line of a template in unbroken pieces: sampled finely enough between the degrees, ended exactly where the line ends, and
 * with its extremes among its places. Phi rises from the sheet's left edge on; trims s as in wrap.ts.
 */
import { toDegrees, toRadians, type Radians } from '../geometry/angle.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { edgeBetween, trimOn } from '../solve/end-cutter.ts';
import type { EndCutter } from '../solve/types.ts';

/** A place on the tube's surface. */
export interface SurfacePlace {
  /** From the end's reference, right-hand about its direction. */
  readonly phi: Radians;
  /** mm from the node along the direction. */
  readonly s: number;
}

/** One unbroken piece of the line, phi rising. */
export type Piece = readonly SurfacePlace[];

/** Places between degrees are kept where a straight line from degree to degree would be off by more, mm. */
const STRAIGHT_ENOUGH = 0.002;
/** Parts of a degree are halved until their middles are this near to the line, mm, but no finer than this many parts. */
const FINE_ENOUGH = 0.005;
const MOST_PARTS = 16;
/** A place of the cut line this near to an extreme of it is that extreme, radians. */
const SAME_PLACE = 1e-6;

/** The line that is cut: on one radius, or on the greater trim of two, and only where there is wall. */
export interface CutLine {
  readonly cutter: EndCutter;
  readonly radii: readonly number[];
  /** Trim s of the tube's tip: a bore that is cut beyond it is cut where the saw has taken the wall away. */
  readonly sawnAt: number;
}

/**
 * @param whole the trims at whole degrees, NaN where nothing is reached.
 * @param left phi at the sheet's left edge.
 * @param extremes places of the line that must be among those of its pieces, to the last digit.
 * @returns its pieces, and whether it is one from edge to edge.
 */
export function piecesOf(
  line: CutLine,
  whole: Float64Array,
  left: Radians,
  extremes: readonly SurfacePlace[],
): { readonly pieces: readonly Piece[]; readonly closed: boolean } {
  const { trims, parts } = fineTrims(line, whole);
  const pieces = cutPieces(line, trims, parts, left);
  return {
    pieces: extremes.reduce<readonly Piece[]>((all, place) => withPlace(all, place, left), pieces),
    closed: pieces.length === 1 && trims.every((s) => s >= line.sawnAt),
  };
}

/** The same phi in the turn that begins at `left`; either edge, within rounding, stays where it is. */
export function onSheet(phi: Radians, left: Radians): Radians {
  const turns = (phi - left) / (2 * Math.PI);
  return turns > -ANGLE_ROUNDING && turns < 1 + ANGLE_ROUNDING
    ? phi
    : phi - 2 * Math.PI * Math.floor(turns + ANGLE_ROUNDING);
}

/**
 * The trims at 360 x parts generators. Halved as long as the curve between two of them is not straight enough, or is
 * reached at one and not at the next.
 */
function fineTrims({ cutter, radii }: CutLine, whole: Float64Array): { trims: Float64Array; parts: number } {
  const trimsAt = (turn: Radians) => radii.map((rho) => trimOn(cutter, rho, turn)).reduce(larger);
  let trims = whole;
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

function cutPieces({ cutter, radii, sawnAt }: CutLine, trims: Float64Array, parts: number, left: Radians) {
  const first = Math.round(toDegrees(left));
  const at = (degree: number, part: number): number =>
    trims[((((degree + 360) % 360) + 360) % 360) * parts + part] ?? NaN;
  const pieces: SurfacePlace[][] = [];
  let open: SurfacePlace[] = [];
  let before = { phi: left, s: NaN };
  /** Where the line ends between the last place and this one, of which only one is reached. */
  const edge = (reached: Radians, passed: Radians): SurfacePlace[] => {
    const { phi, s } = edgeBetween(cutter, radii, reached, passed);
    return s >= sawnAt ? [{ phi: onSheet(phi, left), s }] : [];
  };
  const put = (degree: number, part: number): void => {
    const phi = toRadians(degree + part / parts);
    const s = at(degree, part);
    if (s >= sawnAt) {
      if (Number.isNaN(before.s) && phi > left) open.push(...edge(phi, before.phi));
      open.push({ phi, s });
    } else if (open.length > 0) {
      if (Number.isNaN(s)) open.push(...edge(before.phi, phi));
      pieces.push(open);
      open = [];
    }
    before = { phi, s };
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

/** The pieces with this place of the curve among theirs, also at both edges of the sheet. */
function withPlace(pieces: readonly Piece[], { phi, s }: SurfacePlace, left: Radians): readonly Piece[] {
  const at = onSheet(phi, left);
  const turns = [at, at - 2 * Math.PI, at + 2 * Math.PI];
  const isThere = (place: SurfacePlace): boolean => turns.some((each) => Math.abs(place.phi - each) < SAME_PLACE);
  if (pieces.some((piece) => piece.some(isThere)))
    return pieces.map((piece) => piece.map((place) => (isThere(place) ? { phi: place.phi, s } : place)));
  return pieces.map((piece) => {
    const next = piece.findIndex((place) => place.phi > at);
    return next > 0 ? [...piece.slice(0, next), { phi: at, s }, ...piece.slice(next)] : piece;
  });
}
