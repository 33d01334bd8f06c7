/**
 * The stretches of one line that lie within a sleeve, and the one of them that counts for a cut: all of them, worked out in full, for
 * lines of which the nearest crossing does not tell (sleeve.ts).
 */
import { withinCylinder } from './leave-cylinder.ts';
import { withinTorus } from './leave-torus.ts';
import { laidOut, type MetSleeve } from './met-sleeve.ts';
import { ROUNDING } from './tolerance.ts';

/** From where the line enters to where it leaves, mm from the origin along the direction; both the same where it only touches. */
export interface Within {
  readonly from: number;
  readonly to: number;
  /** The number of the piece that it leaves. */
  readonly piece: number;
}

/**
 * Of the line of this cosine and sine of phi the stretches within the sleeve, ascending; one from piece to piece is one. It may begin at
 * -Infinity or end at Infinity, where the line runs along an end straight.
 */
export function stretchesWithin(met: MetSleeve, c: number, n: number): readonly Within[] {
  const parts: Within[] = [];
  met.pieces.forEach((piece, at) => {
    const laid = laidOut(piece, met);
    const found = laid.kind === 'torus' ? withinTorus(laid, c, n) : [withinCylinder(laid, c, n)];
    for (const each of found) if (each !== null) parts.push({ from: each[0], to: each[1], piece: at });
  });
  parts.sort((a, b) => a.from - b.from);
  const joined: Within[] = [];
  for (const part of parts) {
    const before = joined.at(-1);
    if (before === undefined || part.from > before.to + ROUNDING) joined.push(part);
    else if (part.to > before.to) joined[joined.length - 1] = { ...part, from: before.from };
  }
  return joined;
}

/**
 * The stretch that counts: the one nearest the origin, if that is within the sleeve's reach; of two as near the one farther along. Null
 * where there is none, and where it never ends.
 */
export function countingStretch(met: MetSleeve, c: number, n: number): Within | null {
  let nearest: Within | null = null;
  let least = Infinity;
  for (const each of stretchesWithin(met, c, n)) {
    const away = Math.max(0, each.from, -each.to);
    if (away > least + ROUNDING) continue;
    least = Math.min(least, away);
    nearest = each;
  }
  return nearest === null || least > met.sleeve.reach || nearest.to === Infinity ? null : nearest;
}
