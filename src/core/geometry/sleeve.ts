/**
 * How a bundle of parallel lines, the generators of a second cylinder, is trimmed by sleeves.
 *
 * Of the stretches of a line within a sleeve the one nearest s = 0 counts, and the line is trimmed to its far end, where it LEAVES
 * the sleeve as s grows (docs/maths/cope.md). On nearly every line that is the leaving crossing nearest s = 0, and which lines those
 * are is certain: where another stretch may come as near as that crossing, or the crossing lies beyond the reach, all of the line's
 * stretches are worked out (stretches.ts).
 */
import type { Radians } from './angle.ts';
import { linesAt, type Bundle, type Fan, type Graze, type Leaving, type Touched } from './fan.ts';
import { cylinderLeft, leaveCylinder, leaveEndless, type AlongMet, type CylinderMet } from './leave-cylinder.ts';
import { leaveTorus, mayCount, torusLeft, torusTouched } from './leave-torus.ts';
import { laidOut, metBy, type MetPiece, type MetSleeve, type Sleeve } from './met-sleeve.ts';
import { countingStretch } from './stretches.ts';
import { ROUNDING } from './tolerance.ts';

/** Generators are counted in whole degrees. */
export const GENERATORS = 360;

const EVERY_DEGREE = linesAt(Array.from({ length: GENERATORS }, (_, k) => (k * Math.PI) / 180));
const GRAZES: Graze[] = [];
const WITH_GRAZES: Fan = { ...EVERY_DEGREE, grazes: GRAZES };
/** Of the whole degrees, 0 to 359. */
export const COSINES = EVERY_DEGREE.cosines;
export const SINES = EVERY_DEGREE.sines;

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

/**
 * On each generator, of every sleeve the far end of the stretch that counts, and of these the one farthest along the direction: every
 * sleeve takes away what lies before it.
 */
export function trimOf(met: readonly MetSleeve[], winners: Winners | null): Trim {
  const trim = new Float64Array(GENERATORS).fill(NaN);
  const { nearest, by } = EVERY_DEGREE;
  if (winners !== null) winners.touched = [];
  const reached = met.map((each, i) => {
    GRAZES.length = 0;
    leave(each, winners === null ? EVERY_DEGREE : WITH_GRAZES, NaN);
    if (winners !== null) noteTouched(each, nearest, winners.touched);
    let any = false;
    for (let k = 0; k < GENERATORS; k++) {
      const s = nearest[k]!;
      if (Number.isNaN(s)) continue;
      any = true;
      if (trim[k]! >= s) continue;
      trim[k] = s;
      if (winners === null) continue;
      winners.sleeve[k] = i;
      winners.piece[k] = by[k]!;
    }
    return any;
  });
  return { trim, reached };
}

/** The trim at each generator of radius `rho`, mm. */
export const trimBySleeves = (sleeves: readonly Sleeve[], bundle: Bundle, rho: number): Float64Array =>
  trimOf(metBy(sleeves, bundle, rho), null).trim;

function noteTouched(met: MetSleeve, trims: Float64Array, touched: Touched[]): void {
  for (const { line, surface, s } of GRAZES) {
    if (!mayCount(trims[line]!, s)) continue;
    const on = met.pieces[surface]!.laid!;
    const place = on.kind === 'torus' ? torusTouched(on, (line * Math.PI) / 180, s) : null;
    if (place !== null) touched.push(place);
  }
}

const ONE = linesAt([0]);

/** The trim by one of the sleeves on the one line at phi, mm; NaN where it does not cut it. `near` saves steps where it is about that. */
export function trimAt(met: MetSleeve, phi: Radians, near: number): number {
  ONE.cosines[0] = Math.cos(phi);
  ONE.sines[0] = Math.sin(phi);
  leave(met, ONE, near);
  return ONE.nearest[0]!;
}

/** Where the line at phi leaves one of the sleeves, and how that lies there; null where that does not cut it. */
export function leavingAt(met: MetSleeve, phi: Radians, near: number): Leaving | null {
  const s = trimAt(met, phi, near);
  return Number.isNaN(s) ? null : leavingPiece(met, ONE.by[0]!, ONE, 0, s);
}

/** The same on the generator k, that is known to leave the sleeve on this piece at s. */
export const leavingGenerator = (met: MetSleeve, piece: number, k: number, s: number): Leaving =>
  leavingPiece(met, piece, EVERY_DEGREE, k, s);

function leavingPiece(met: MetSleeve, piece: number, { cosines, sines }: Fan, k: number, s: number): Leaving {
  const on = laidOut(met.pieces[piece]!, met);
  return on.kind === 'torus' ? torusLeft(on, cosines[k]!, sines[k]!, s) : cylinderLeft(on, cosines[k]!, sines[k]!, s);
}

/** Writes how far each line is trimmed by the sleeve into `nearest`, NaN where it is not. */
function leave(met: MetSleeve, lines: Fan, near: number): void {
  const { pieces, sleeve } = met;
  const { nearest, rival, passedAt, passedFrom } = lines;
  const [only] = pieces;
  if (pieces.length === 1 && only!.low === -Infinity && only!.high === Infinity) {
    const laid = laidOut(only!, met) as CylinderMet | AlongMet;
    if (laid.kind === 'cylinder') leaveEndless(laid, lines, 0);
    else nearest.fill(NaN);
    return;
  }
  const neverLeft = leavePieces(met, lines, near);
  for (let k = 0; k < nearest.length; k++) {
    const away = Math.abs(nearest[k]!);
    const mayGoOn = passedAt[k]! > away - ROUNDING && passedFrom[k]! < away + ROUNDING;
    if (!neverLeft && !mayGoOn && !(away > sleeve.reach) && !(rival[k]! < away + ROUNDING)) continue;
    const counting = countingStretch(met, lines.cosines[k]!, lines.sines[k]!);
    nearest[k] = counting === null ? NaN : counting.to;
    if (counting !== null) lines.by[k] = counting.piece;
  }
}

/** The leaving crossing nearest the origin on each line, and its rivals. True if a line may be within an end straight for ever. */
function leavePieces(met: MetSleeve, lines: Fan, near: number): boolean {
  const { nearest, rival, passedAt, passedFrom } = lines;
  for (let k = 0; k < nearest.length; k++) {
    nearest[k] = NaN;
    rival[k] = passedFrom[k] = Infinity;
    passedAt[k] = -Infinity;
  }
  let neverLeft = false;
  for (let i = 0; i < met.pieces.length; i++) {
    const piece = met.pieces[i]!;
    if (!anyLater(nearest, piece)) continue;
    const laid = laidOut(piece, met);
    if (laid.kind === 'cylinder') leaveCylinder(laid, lines, i);
    else if (laid.kind === 'torus') leaveTorus(laid, lines, i, near);
    else if (laid.low === -Infinity || laid.high === Infinity) neverLeft = true;
  }
  return neverLeft;
}

function anyLater(nearest: Float64Array, { soonest }: MetPiece): boolean {
  for (let k = 0; k < nearest.length; k++) if (!(Math.abs(nearest[k]!) <= soonest)) return true;
  return false;
}
