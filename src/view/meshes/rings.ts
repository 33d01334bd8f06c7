/** The tape's marks on a tube: a ring where each bend starts, square to the tube and just off its surface. */
import { add, addScaled, cross, normalize, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { SolvedTube } from '../../core/solve/types.ts';

const STEPS = 32;
/** Clear of the drawn wall, which lies within this of the true one. */
const PROUD = 0.6;

/** Each ring as its closed chain of strokes. */
export function bendRings(tube: SolvedTube): readonly (readonly [Vec3, Vec3])[] {
  const radius = tube.section.outerDiameter / 2 + PROUD;
  return tube.path.pieces.flatMap((piece) => {
    if (piece.kind === 'line') return [];
    const outwards = normalize(subtract(piece.from, piece.centre));
    const beside = cross(piece.startTangent, outwards);
    const at = (step: number): Vec3 => {
      const phi = (2 * Math.PI * step) / STEPS;
      return addScaled(piece.from, add(scale(outwards, Math.cos(phi)), scale(beside, Math.sin(phi))), radius);
    };
    return Array.from({ length: STEPS }, (_, step): [Vec3, Vec3] => [at(step), at(step + 1)]);
  });
}
