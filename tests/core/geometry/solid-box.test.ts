import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcPiece, linePiece, placeAt, placeOnPiece, type Path } from '../../../src/core/geometry/path.ts';
import { boxFrame, nearestToBox, signedDistanceToBox, type SolidBox } from '../../../src/core/geometry/solid-box.ts';
import type { Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawn } from '../../draws.ts';

const straight = (from: Vec3, to: Vec3) => linePiece(from, to, 0);
const upright = boxFrame([0, 0, 1000], [300, 280, 330], [0, 0, 0]);

/** Signed distance by turning the point back with plain matrices, written apart from the code under test. */
function signedDistance(p: Vec3, centre: Vec3, size: Vec3, [rx, ry, rz]: Vec3): number {
  let [x, y, z] = [p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]];
  [x, y] = [x * Math.cos(rz) + y * Math.sin(rz), -x * Math.sin(rz) + y * Math.cos(rz)];
  [x, z] = [x * Math.cos(ry) - z * Math.sin(ry), x * Math.sin(ry) + z * Math.cos(ry)];
  [y, z] = [y * Math.cos(rx) + z * Math.sin(rx), -y * Math.sin(rx) + z * Math.cos(rx)];
  const beyond = [Math.abs(x) - size[0] / 2, Math.abs(y) - size[1] / 2, Math.abs(z) - size[2] / 2];
  return Math.min(Math.max(...beyond), 0) + Math.hypot(...beyond.map((each) => Math.max(each, 0)));
}

describe('nearest place of a piece to a box', () => {
  it('to a face, an edge and a corner, by Pythagoras', () => {
    expect(nearestToBox(straight([250, -999, 1000], [250, 999, 1000]), upright).distance).toBeCloseTo(100, 8);
    expect(nearestToBox(straight([180, -999, 1205], [180, 999, 1205]), upright).distance).toBeCloseTo(50, 8);
    expect(nearestToBox(straight([151, 142, 1167], [500, 500, 1500]), upright).distance).toBeCloseTo(3, 8);
  });
  it('a piece through the box goes as deep as its deepest place', () => {
    const through = nearestToBox(straight([-999, 100, 1000], [999, 100, 1000]), upright);
    expect(through.distance).toBeCloseTo(-40, 9);
  });
  it('straight to the box from there, one comes to its surface', () => {
    const piece = straight([300, -80, 1300], [200, 700, 1400]);
    const { along, distance } = nearestToBox(piece, upright);
    const { point } = placeOnPiece(piece, along);
    const { gradient } = signedDistanceToBox(point, upright);
    const onBox = point.map((each, axis) => each - distance * gradient[axis]!) as unknown as Vec3;
    expect(signedDistance(onBox, [0, 0, 1000], [300, 280, 330], [0, 0, 0])).toBeCloseTo(0, 9);
  });
  it('beside a box by less than a square can hold: it comes to an end, and at nothing', () => {
    const speck = boxFrame([500, 0, 0], [1e-200, 1e-200, 1e-200], [0, 0, 0]);
    const { distance, along } = nearestToBox(straight([0, 1e-190, 0], [1000, 1e-190, 0]), speck);
    expect(distance).toBeCloseTo(0, 9);
    expect([along, ...signedDistanceToBox([along, 1e-190, 0], speck).gradient].every(Number.isFinite)).toBe(true);
  });
  it('on arcs and lines alike: never more than the best of 20 000 samples, never less than they allow', () => {
    const coordinate = (reach: number) => fc.double({ min: -reach, max: reach, noNaN: true });
    const vector = (reach: number) => fc.tuple(coordinate(reach), coordinate(reach), coordinate(reach));
    fc.assert(
      fc.property(
        vector(500),
        vector(Math.PI),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        vector(400),
        (start, rotation, angle, centre) => {
          const size: Vec3 = [330, 280, 350];
          const box: SolidBox = boxFrame(centre, size, rotation);
          const first = linePiece(start, [start[0] + 300, start[1], start[2]], 0);
          const arc = arcPiece(first.to, first.endTangent, [0, 0, 1], 152.4, angle, first.length);
          const path: Path = { pieces: [first, arc], length: first.length + arc.length };
          const step = path.length / 20_000;
          let best = Infinity;
          for (let i = 0; i <= 20_000; i++)
            best = Math.min(best, signedDistance(placeAt(path, i * step).point, centre, size, rotation));
          const distance = Math.min(...path.pieces.map((piece) => nearestToBox(piece, box).distance));
          expect(distance).toBeLessThanOrEqual(best + 1e-8);
          expect(distance).toBeGreaterThanOrEqual(best - step); // distance changes by no more than one mm a mm
        },
      ),
      { seed: 20260303, numRuns: drawn(15, 60) },
    );
  });
});
