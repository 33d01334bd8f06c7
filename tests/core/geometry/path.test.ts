/** How far a place is from a path, against steps along it. Source: computed. */
import { describe, expect, it } from 'vitest';
import {
  arcPiece,
  distanceToPath,
  linePiece,
  placeAt,
  type Path,
  type Piece,
} from '../../../src/core/geometry/path.ts';
import { addScaled, cross, distance, normalize, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';

const STEP = 0.5;

/** Straights and bends by turns, tangent to each other, in planes of their own; seeded. */
function drawnPath(seed: number): { readonly path: Path; readonly draw: ReturnType<typeof drawFrom> } {
  const draw = drawFrom(seed);
  const pieces: Piece[] = [];
  let at = 0;
  let from: Vec3 = [draw.between(-300, 300), draw.between(-300, 300), draw.between(-300, 300)];
  let tangent = normalize([draw.between(-1, 1), draw.between(-1, 1), draw.between(0.1, 1)]);
  for (let i = 0; i < 2; i++) {
    const line = linePiece(from, addScaled(from, tangent, draw.between(50, 400)), at);
    const normal = normalize(cross(tangent, [draw.between(-1, 1), draw.between(-1, 1), draw.between(-1, 1)]));
    const arc = arcPiece(line.to, tangent, normal, draw.between(60, 200), draw.between(0.2, 2.8), at + line.length);
    pieces.push(line, arc);
    at += line.length + arc.length;
    [from, tangent] = [arc.to, arc.endTangent];
  }
  pieces.push(linePiece(from, addScaled(from, tangent, 120), at));
  return { path: { pieces, length: at + 120 }, draw };
}

describe('the distance of a place from a path', () => {
  const seeds = Array.from({ length: 12 }, (_, i) => 71001 + i);

  it.each(seeds)('is the least of steps along it, or less by no more than these leave out, %i', (seed) => {
    const { path, draw } = drawnPath(seed);
    const first = path.pieces[0]!;
    const last = path.pieces.at(-1)!;
    for (let i = 0; i < 6; i++) {
      const p: Vec3 = [draw.between(-600, 600), draw.between(-600, 600), draw.between(-600, 600)];
      let least = Infinity;
      for (let at = 0; at < path.length; at += STEP) least = Math.min(least, distance(placeAt(path, at).point, p));
      const ours = distanceToPath(path, p);
      expect(ours).toBeLessThan(least + 1e-9);
      expect(ours).toBeGreaterThan(least - STEP);

      let prolonged = least;
      for (let at = 0; at < 1500; at += STEP) {
        prolonged = Math.min(prolonged, distance(addScaled(first.from, first.startTangent, -at), p));
        prolonged = Math.min(prolonged, distance(addScaled(last.to, last.endTangent, at), p));
      }
      expect(distanceToPath(path, p, true)).toBeLessThan(prolonged + 1e-9);
      expect(distanceToPath(path, p, true)).toBeGreaterThan(prolonged - STEP);
    }
  });
});
