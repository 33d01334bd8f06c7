/**
 * What of a run tube lies about a joint: its centreline, the end straights prolonged, as far as the tube round it may reach into a
 * ball. A bend is cut off where its discs leave the ball, so that its far side does not cut what is elsewhere.
 */
import type { ArcPiece, Path, Piece } from '../../core/geometry/path.ts';
import { addScaled, dot, length, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { Stretch } from './kernel.ts';

/** mm. A shorter part of a stretch is what arithmetic leaves of one that only touches the ball. */
const LEAST_PART = 1e-6;

/**
 * Of a centreline what may reach, as a tube of that radius, into the ball of radius `about` round `centre`: chains of stretches, each
 * joined to the next.
 */
export function stretchesAbout({ pieces }: Path, centre: Vec3, about: number, radius: number): Stretch[][] {
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  const prolonged: Stretch[] = pieces.map((piece) => ({
    piece,
    from: piece === first && piece.kind === 'line' ? -Infinity : 0,
    to: piece === last && piece.kind === 'line' ? Infinity : piece.length,
  }));
  if (first.kind === 'arc')
    prolonged.unshift({ piece: lineFrom(first.from, first.startTangent), from: -Infinity, to: 0 });
  if (last.kind === 'arc') prolonged.push({ piece: lineFrom(last.to, last.endTangent), from: 0, to: Infinity });

  const chains: Stretch[][] = [];
  let joins = false;
  for (const stretch of prolonged) {
    const near = within(stretch, centre, about, radius);
    if (near !== null) {
      if (joins && near.from === stretch.from) chains.at(-1)!.push(near);
      else chains.push([near]);
    }
    joins = near !== null && near.to === stretch.to;
  }
  return chains;
}

/** The part of a stretch whose discs of `radius` may reach into the ball; null if none does. */
function within(stretch: Stretch, centre: Vec3, about: number, radius: number): Stretch | null {
  const { piece } = stretch;
  const [low, high] =
    piece.kind === 'line' ? lineSpan(piece, centre, about, radius) : arcSpan(piece, centre, about, radius);
  const [from, to] = [Math.max(low, stretch.from), Math.min(high, stretch.to)];
  return to - from > LEAST_PART ? { piece, from, to } : null;
}

function lineSpan(
  { from, startTangent }: Piece,
  centre: Vec3,
  about: number,
  radius: number,
): readonly [number, number] {
  const foot = dot(subtract(centre, from), startTangent);
  const aside = length(subtract(centre, addScaled(from, startTangent, foot)));
  return aside > about + radius ? [0, 0] : [foot - about, foot + about];
}

function arcSpan(arc: ArcPiece, centre: Vec3, about: number, radius: number): readonly [number, number] {
  const d = subtract(centre, arc.centre);
  const x = dot(d, subtract(arc.from, arc.centre)) / arc.radius;
  const y = dot(d, arc.startTangent);
  const inPlane = Math.hypot(x, y);
  if (Math.hypot(inPlane - arc.radius, dot(d, arc.normal)) > about + radius && inPlane > about) return [0, 0];
  if (inPlane <= about) return [0, arc.length];
  const half = Math.asin(about / inPlane);
  // Counted from the middle of the arc, so that the turn does not wrap round within it.
  const middle = arc.angle / 2;
  const off = Math.atan2(Math.sin(Math.atan2(y, x) - middle), Math.cos(Math.atan2(y, x) - middle));
  return [(middle + off - half) * arc.radius, (middle + off + half) * arc.radius];
}

/** A line without length of its own, to be prolonged. */
export const lineFrom = (from: Vec3, tangent: Vec3): Piece => ({
  kind: 'line',
  at: 0,
  length: 0,
  from,
  to: from,
  startTangent: tangent,
  endTangent: tangent,
});
