/**
 * The surface at a fixed radius round a path, its end straights prolonged without limit: cylinders joined to sectors of
 * tori. And the crossings of a bundle of parallel lines, the generators of a second cylinder, with it.
 *
 * A crossing counts where the line LEAVES the surface as s grows; of those the one nearest s = 0 (docs/maths/cope.md).
 * Neighbouring pieces share the plane square to the path between them; each owns its side and ROUNDING beyond, so that no
 * crossing is lost in the joint.
 */
import type { Radians } from './angle.ts';
import { linesAt, type Bundle, type Fan, type Graze, type Leaving, type Lines, type Touched } from './fan.ts';
import { cylinderLeft, cylinderMet, leaveCylinder, type CylinderMet } from './leave-cylinder.ts';
import { leaveTorus, torusLeft, torusMet, torusTouched, type TorusMet } from './leave-torus.ts';
import type { ArcPiece, LinePiece, Path } from './path.ts';
import { ROUNDING } from './tolerance.ts';
import { distance, dot, interpolate, length, rejectFrom, scale, subtract, type Vec3 } from './vector.ts';

/** Generators are counted in whole degrees. */
export const GENERATORS = 360;

const EVERY_DEGREE = linesAt(Array.from({ length: GENERATORS }, (_, k) => (k * Math.PI) / 180));
const GRAZES: Graze[] = [];
const WITH_GRAZES: Lines = { forth: { ...EVERY_DEGREE.forth, grazes: GRAZES }, back: EVERY_DEGREE.back };
/** Of the whole degrees, 0 to 359. */
export const COSINES = EVERY_DEGREE.forth.cosines;
export const SINES = EVERY_DEGREE.forth.sines;

export interface Sleeve {
  readonly path: Path;
  readonly radius: number;
  /** How far from the origin, mm, the lines meet the sleeve at this place of it; see dropElsewhere. */
  readonly reach: number;
}

/** A sleeve as the lines of radius `rho` of one bundle meet it. What only some of them need is laid out when one asks. */
export interface MetSleeve {
  readonly sleeve: Sleeve;
  readonly bundle: Bundle;
  readonly rho: number;
  readonly forth: readonly MetPiece[];
  back: readonly MetPiece[] | null;
}

/** An arc, or the straight from `from` along `axis` between `low` and `high`. */
interface MetPiece {
  readonly arc: ArcPiece | null;
  readonly from: Vec3;
  readonly axis: Vec3;
  readonly low: number;
  readonly high: number;
  /** No crossing on it lies nearer the origin than this, mm. */
  readonly soonest: number;
  /** Null where the lines never leave it; undefined before one of them needed it. */
  laid: CylinderMet | TorusMet | null | undefined;
}

export interface Trim {
  /** For each generator, mm from the origin along the direction; NaN where it leaves none of the sleeves. */
  readonly trim: Float64Array;
  /** For each sleeve, whether any generator leaves it. */
  readonly reached: readonly boolean[];
}

/** For each generator that has a trim, the number of the sleeve that it is by, and of the piece of that. */
export interface Winners {
  readonly sleeve: Uint16Array;
  readonly piece: Uint16Array;
  /** Angles at which a line only touches a bend: there the nearest crossing may come or go, also within a degree. */
  touched: Touched[];
}

/** Room to note who cut each generator. */
export const winnersNoted = (): Winners => ({
  sleeve: new Uint16Array(GENERATORS),
  piece: new Uint16Array(GENERATORS),
  touched: [],
});

/** What of each sleeve the lines at distance `rho` (mm) round the axis may meet. */
export const metBy = (sleeves: readonly Sleeve[], bundle: Bundle, rho: number): MetSleeve[] =>
  sleeves.map((sleeve) => ({ sleeve, bundle, rho, forth: piecesMet(sleeve, bundle, rho), back: null }));

/**
 * On each generator, of every sleeve the leaving crossing nearest the origin, and of these the one farthest along the
 * direction: every sleeve takes away what lies before it. Generators parallel to a straight piece never leave it.
 */
export function trimOf(met: readonly MetSleeve[], winners: Winners | null): Trim {
  const trim = new Float64Array(GENERATORS).fill(NaN);
  const { forth } = EVERY_DEGREE;
  if (winners !== null) winners.touched = [];
  const reached = met.map((each, i) => {
    GRAZES.length = 0;
    leave(each, winners === null ? EVERY_DEGREE : WITH_GRAZES, NaN);
    if (winners !== null) noteTouched(each, winners.touched);
    let any = false;
    for (let k = 0; k < GENERATORS; k++) {
      const s = forth.nearest[k]!;
      if (Number.isNaN(s)) continue;
      any = true;
      if (trim[k]! >= s) continue;
      trim[k] = s;
      if (winners === null) continue;
      winners.sleeve[k] = i;
      winners.piece[k] = forth.by[k]!;
    }
    return any;
  });
  return { trim, reached };
}

/** The trim at each generator of radius `rho`, mm. */
export const trimBySleeves = (sleeves: readonly Sleeve[], bundle: Bundle, rho: number): Float64Array =>
  trimOf(metBy(sleeves, bundle, rho), null).trim;

function noteTouched(met: MetSleeve, touched: Touched[]): void {
  for (const { line, surface, s } of GRAZES) {
    const on = met.forth[surface]!.laid!;
    const place = on.kind === 'torus' ? torusTouched(on, (line * Math.PI) / 180, s) : null;
    if (place !== null) touched.push(place);
  }
}

const ONE = linesAt([0]);

/** The trim by one of the sleeves on the one line at phi, mm; NaN where it does not leave it. `near` saves steps where it is about that. */
export function trimAt(met: MetSleeve, phi: Radians, near: number): number {
  const [c, n] = [Math.cos(phi), Math.sin(phi)];
  const { forth, back } = ONE;
  forth.cosines[0] = back.cosines[0] = c;
  forth.sines[0] = n;
  back.sines[0] = -n;
  leave(met, ONE, near);
  return forth.nearest[0]!;
}

/** Where the line at phi leaves one of the sleeves, and how that lies there; null where it does not leave it. */
export function leavingAt(met: MetSleeve, phi: Radians, near: number): Leaving | null {
  const s = trimAt(met, phi, near);
  return Number.isNaN(s) ? null : leavingPiece(met, ONE.forth.by[0]!, ONE.forth, 0, s);
}

/** The same on the generator k, that is known to leave the sleeve on this piece at s. */
export const leavingGenerator = (met: MetSleeve, piece: number, k: number, s: number): Leaving =>
  leavingPiece(met, piece, EVERY_DEGREE.forth, k, s);

function leavingPiece(met: MetSleeve, piece: number, { cosines, sines }: Fan, k: number, s: number): Leaving {
  const on = met.forth[piece]!.laid!;
  return on.kind === 'cylinder'
    ? cylinderLeft(on, cosines[k]!, sines[k]!, s)
    : torusLeft(on, cosines[k]!, sines[k]!, s);
}

/** Writes where each line leaves the sleeve into `lines.forth.nearest`, NaN where it does not at this place of it. */
function leave(met: MetSleeve, lines: Lines, near: number): void {
  leavePieces(met, met.forth, met.bundle, lines.forth, near);
  if (anyBeyond(lines.forth.nearest, met.sleeve.reach)) dropElsewhere(met, lines);
}

function anyBeyond(nearest: Float64Array, reach: number): boolean {
  for (let k = 0; k < nearest.length; k++) if (Math.abs(nearest[k]!) > reach) return true;
  return false;
}

/**
 * Takes out the crossings at another place of the sleeve: those that lie beyond its reach while the line neither enters
 * it within reach nor runs inside it past the origin. The lines enter where they leave when they are followed backwards.
 */
function dropElsewhere(met: MetSleeve, { forth, back }: Lines): void {
  const { sleeve, bundle, rho } = met;
  const backwards = { ...bundle, direction: scale(bundle.direction, -1) };
  met.back ??= piecesMet(sleeve, backwards, rho);
  leavePieces(met, met.back, backwards, back, NaN);
  for (let k = 0; k < forth.nearest.length; k++) {
    const out = forth.nearest[k]!;
    // Backwards, s changes sign.
    const into = -back.nearest[k]!;
    const here = Math.abs(out) <= sleeve.reach || Math.abs(into) <= sleeve.reach || (into < 0 && out > 0);
    forth.nearest[k] = here ? out : NaN;
  }
}

function leavePieces(
  { sleeve, rho }: MetSleeve,
  pieces: readonly MetPiece[],
  bundle: Bundle,
  fan: Fan,
  near: number,
): void {
  const { nearest } = fan;
  for (let k = 0; k < nearest.length; k++) nearest[k] = NaN;
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i]!;
    if (!anyLater(nearest, piece.soonest)) continue;
    if (piece.laid === undefined) piece.laid = layPiece(piece, sleeve.radius, bundle, rho);
    const { laid } = piece;
    if (laid === null) continue;
    if (laid.kind === 'cylinder') leaveCylinder(laid, fan, i);
    else leaveTorus(laid, fan, i, near);
  }
}

function anyLater(nearest: Float64Array, soonest: number): boolean {
  for (let k = 0; k < nearest.length; k++) if (!(Math.abs(nearest[k]!) <= soonest)) return true;
  return false;
}

const layPiece = ({ arc, from, axis, low, high }: MetPiece, radius: number, bundle: Bundle, rho: number) =>
  arc === null ? cylinderMet(from, axis, low, high, radius, bundle, rho) : torusMet(arc, radius, bundle, rho);

/** The pieces that any of the lines may cross. Arcs last: where every line has left nearer by, no quartic need be solved. */
function piecesMet({ path, radius }: Sleeve, bundle: Bundle, rho: number): MetPiece[] {
  const first = path.pieces[0]!;
  const last = path.pieces[path.pieces.length - 1]!;
  const met: MetPiece[] = [];
  const straight = (from: Vec3, axis: Vec3, low: number, high: number, soonest: number) =>
    void met.push({ arc: null, from, axis, low, high, soonest, laid: undefined });
  // A path that begins or ends with an arc (its end straight is zero, or negative) is prolonged from the arc's tangent.
  if (first.kind === 'arc') straight(first.from, first.startTangent, -Infinity, 0, -Infinity);
  if (last.kind === 'arc') straight(last.to, last.endTangent, 0, Infinity, -Infinity);
  for (const piece of path.pieces) {
    if (piece.kind === 'arc') continue;
    const from = piece === first ? -Infinity : 0;
    const to = piece === last ? Infinity : piece.length;
    const soonest = from < 0 || to === Infinity ? -Infinity : soonestOn(piece, radius, bundle, rho);
    if (soonest !== null) straight(piece.from, piece.startTangent, from, to, soonest);
  }
  for (const piece of path.pieces) {
    const soonest = piece.kind === 'arc' ? soonestOn(piece, radius, bundle, rho) : null;
    if (piece.kind !== 'arc' || soonest === null) continue;
    met.push({ arc: piece, from: piece.from, axis: piece.startTangent, low: 0, high: 0, soonest, laid: undefined });
  }
  return met;
}

/**
 * How far from the origin the lines can meet a piece at the soonest, mm; null if all pass clear of it. A piece of less than
 * half a turn lies in the ball on its chord.
 */
function soonestOn(
  { from, to }: LinePiece | ArcPiece,
  radius: number,
  { origin, direction }: Bundle,
  rho: number,
): number | null {
  const middle = subtract(interpolate(from, to, 0.5), origin);
  const ball = distance(from, to) / 2 + radius + ROUNDING;
  if (length(rejectFrom(middle, direction)) > ball + rho) return null;
  return Math.abs(dot(middle, direction)) - ball;
}
