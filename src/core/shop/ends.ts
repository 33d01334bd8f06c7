/** What is done to a tube's end, in the words of the shop. */
import { angleBetween, toDegrees, type Radians } from '../geometry/angle.ts';
import type { Cut, Frame, SolvedTube, TubeEnd } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import { tubeName } from '../solve/names.ts';

/** "coped to Main hoop and Rear stay (left)", "cut square", "cut to a plate". */
export function endInWords(frame: Frame, end: TubeEnd): string {
  const butted = end.butted.length === 0 ? '' : `butted to ${listed(end.butted.map((id) => tubeName(frame, id)))}`;
  const cut =
    end.fit === 'cope'
      ? `coped to ${listed(end.cuts.map((one) => tubeName(frame, one.against)))}`
      : end.fit === 'plate'
        ? 'cut to its plate'
        : 'cut square';
  return butted === '' ? cut : end.fit === 'cope' ? `${cut}, ${butted}` : `${butted}, ${cut}`;
}

/** "a, b and c". */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

/** A turn about the tube's axis as one sees it looking into the end: right-hand about the end's direction is clockwise. */
export function turnInWords(turn: Radians): string {
  const shown = formatAngle(Math.abs(toDegrees(turn)), 1);
  if (Number(shown) === 0) return '0°';
  if (Number(shown) === 180) return '180°';
  return `${shown}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`;
}

/** What common practice says against a plain saw cut at this angle; empty where it says nothing. */
export function sawCautions(cut: Cut): string[] {
  const degrees = toDegrees(cut.includedAngle);
  const cautions: string[] = [];
  if (!cut.reaches) cautions.push('This tube runs past without meeting it: nothing is cut here.');
  if (cut.onBend) cautions.push('It lands in a bend: no saw fits, use the wrap template.');
  if (degrees <= 30 + 1e-9) cautions.push('30° or less: no saw, use the wrap template (common practice).');
  else if (degrees < 60 - 1e-9) {
    cautions.push(
      'Below about 60° most saws are too short: break the slug out, cut it roughly first, or use the wrap template (common practice).',
    );
  }
  return cautions;
}

/** Angle between a plate-cut end and a square one, 0..pi/2: what the saw is set over by. */
export function plateOffSquare(end: TubeEnd): Radians {
  if (end.plateNormal === null) return 0;
  const angle = angleBetween(end.plateNormal, end.direction);
  return Math.min(angle, Math.PI - angle);
}

/** The three lengths that shops cut by, mm: from tip to tip, from throat to throat, and along the axis from node to node. */
export function cutLengths(tube: SolvedTube): { tips: number; throats: number; axis: number } {
  const [endA, endB] = tube.ends;
  const axis = tube.developedLength;
  return {
    axis,
    tips: axis - (endA.tip ?? 0) - (endB.tip ?? 0),
    throats: axis - (endA.throat ?? 0) - (endB.throat ?? 0),
  };
}

/** What phi = 0 is on this end, in words: the line from which every turn of the end is told. */
export function referenceInWords(tube: SolvedTube, which: 0 | 1): string {
  if (tube.bends.length === 0) return which === 0 ? 'line scribed along the tube' : 'same line along the tube';
  return tube.bends.length === 1 ? 'inside of the bend' : `inside of bend ${which === 0 ? 1 : tube.bends.length}`;
}

/** How a straight tube's line is found and scribed, once for both ends; null where a bend gives it. */
export function scribeInWords(tube: SolvedTube): string | null {
  if (tube.bends.length > 0) return null;
  const [endA, endB] = tube.ends;
  if (endA.cuts.length > 0) return 'scribe it at end A, on the acute side of the first cut';
  if (endB.cuts.length > 0) return 'scribe it at end B, on the acute side of the first cut';
  return 'scribe it on the side nearest straight up in the car';
}
