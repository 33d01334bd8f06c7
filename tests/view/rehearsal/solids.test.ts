import { describe, expect, it } from 'vitest';
import { cross, dot, scale, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { Solid } from '../../../src/core/rehearse/types.ts';
import { solidMesh, type SolidMesh } from '../../../src/view/rehearsal/solids.ts';

const solid = (shape: Solid['shape']): Solid => ({
  id: { part: 'room', kind: 'box', name: 's' },
  turning: false,
  shape,
});

function triangles({ positions, indices }: SolidMesh): readonly (readonly [Vec3, Vec3, Vec3])[] {
  const place = (i: number): Vec3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
  return Array.from({ length: indices.length / 3 }, (_, t) => [
    place(indices[3 * t]!),
    place(indices[3 * t + 1]!),
    place(indices[3 * t + 2]!),
  ]);
}

/** By the divergence theorem: the sum of the tetrahedra from the origin, positive when wound outwards. */
const volume = (mesh: SolidMesh): number =>
  triangles(mesh).reduce((sum, [a, b, c]) => sum + dot(a, cross(b, c)) / 6, 0);

/** A closed surface has the area of its triangles' normals sum to nothing. */
const openness = (mesh: SolidMesh): Vec3 =>
  triangles(mesh).reduce<Vec3>(
    (sum, [a, b, c]) => {
      const area = scale(cross(subtract(b, a), subtract(c, a)), 0.5);
      return [sum[0] + area[0], sum[1] + area[1], sum[2] + area[2]];
    },
    [0, 0, 0],
  );

const cos = Math.cos(0.5);
const sin = Math.sin(0.5);

describe('a solid of the machine', () => {
  it.each<[string, Solid['shape'], number]>([
    [
      'a box that stands askew',
      {
        kind: 'box',
        centre: [100, -200, 300],
        half: [10, 20, 30],
        axes: [
          [cos, sin, 0],
          [-sin, cos, 0],
          [0, 0, 1],
        ],
      },
      48_000,
    ],
    ['a cylinder', { kind: 'cylinder', centre: [0, 150, 900], radius: 152, halfHeight: 27 }, Math.PI * 152 ** 2 * 54],
  ])('%s is closed, wound outwards, and of its volume', (_, shape, expected) => {
    const mesh = solidMesh(solid(shape), 0);
    // 48 sides lose 0.3 % of a circle.
    expect(volume(mesh) / expected).toBeGreaterThan(0.997);
    expect(volume(mesh) / expected).toBeLessThan(1.0001);
    for (const part of openness(mesh)) expect(Math.abs(part)).toBeLessThan(0.1);
    const [a] = triangles(mesh)[0]!;
    const normal: Vec3 = [mesh.normals[0]!, mesh.normals[1]!, mesh.normals[2]!];
    expect(dot(subtract(a, shape.kind === 'plane' ? shape.point : shape.centre), normal)).toBeGreaterThan(0);
  });

  it.each<[Vec3, Vec3]>([
    [
      [0, -1473.2, 0],
      [0, 1, 0],
    ],
    [
      [900, 0, 500],
      [-1, 0, 0],
    ],
  ])('a wall at %j stands on the floor and faces into the room', (point, normal) => {
    const mesh = solidMesh(solid({ kind: 'plane', point, normal }), 2000);
    const heights = triangles(mesh).flatMap((corners) => corners.map((corner) => corner[2]));
    expect(Math.min(...heights)).toBeCloseTo(0, 6);
    expect(Math.max(...heights)).toBeCloseTo(2000, 6);
    for (const [a, b, c] of triangles(mesh)) {
      expect(dot(subtract(a, point), normal)).toBeCloseTo(0, 3);
      expect(dot(cross(subtract(b, a), subtract(c, a)), normal)).toBeGreaterThan(0);
    }
    expect(mesh.edges).toHaveLength(4);
  });

  it('a ceiling lies over the machine and faces down', () => {
    const mesh = solidMesh(solid({ kind: 'plane', point: [500, 500, 2500], normal: [0, 0, -1] }), 1000);
    const corners = triangles(mesh).flat();
    for (const corner of corners) expect(corner[2]).toBeCloseTo(2500, 3);
    for (const axis of [0, 1] as const) {
      expect(Math.min(...corners.map((corner) => corner[axis]))).toBeCloseTo(-1000, 3);
      expect(Math.max(...corners.map((corner) => corner[axis]))).toBeCloseTo(1000, 3);
    }
    const [a, b, c] = triangles(mesh)[0]!;
    expect(cross(subtract(b, a), subtract(c, a))[2]).toBeLessThan(0);
  });
});
