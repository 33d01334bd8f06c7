/** Sections of shapes whose sections are known, and places picked on them. */
import { describe, expect, it } from 'vitest';
import {
  add,
  cross,
  distance,
  dot,
  length,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '../../../src/core/geometry/vector.ts';
import { pickOn } from '../../../src/core/scan/pick.ts';
import { inCar, placingOf, type Placing } from '../../../src/core/scan/place.ts';
import { sectionOf, slabOf, SLAB, type CuttingPlane, type SectionCurve } from '../../../src/core/scan/section.ts';
import type { ScanData } from '../../../src/core/scan/types.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { ball, cloud, dataOf, pipe, type Triple } from './shapes.ts';

const AS_FILED = placingOf({ unit: 'mm', up: 'z', placement: { rotation: [0, 0, 0], shift: [0, 0, 0] } });

const isClosed = (curve: SectionCurve): boolean => curve.length > 3 && distance(curve[0]!, curve.at(-1)!) === 0;

const lengthOf = (curve: SectionCurve): number =>
  curve.slice(1).reduce((sum, place, i) => sum + distance(place, curve[i]!), 0);

const cornersOf = (data: ScanData, placing: Placing): readonly (readonly [Vec3, Vec3, Vec3])[] =>
  Array.from({ length: data.triangles.length / 3 }, (_, i) => {
    const corner = (k: number): Vec3 => {
      const vertex = data.triangles[3 * i + k]!;
      return inCar(placing, [...data.positions.subarray(3 * vertex, 3 * vertex + 3)] as Triple);
    };
    return [corner(0), corner(1), corner(2)] as const;
  });

/** mm from the place to the triangle's plane, where it lies within the triangle; else infinity. */
function offTriangle(place: Vec3, [a, b, c]: readonly [Vec3, Vec3, Vec3]): number {
  const normal = cross(subtract(b, a), subtract(c, a));
  const inside = [
    [a, b],
    [b, c],
    [c, a],
  ].every(
    ([from, to]) =>
      dot(cross(subtract(to!, from!), subtract(place, from!)), normal) >= -1e-6 * dot(normal, normal) ** 0.5,
  );
  return inside ? Math.abs(dot(subtract(place, a), normalize(normal))) : Infinity;
}

describe('the section of a ball', () => {
  const [radius, around, up] = [800, 64, 32];
  const data = dataOf(ball(radius, [0, 0, 0], around, up));

  it('is one closed curve in the plane, on the triangles, and as long as the circle but for the facets', () => {
    const draw = drawFrom(12);
    for (let i = 0; i < drawn(5, 300); i++) {
      const unit = draw.oneOf(['mm', 'm', 'in'] as const);
      const placing = placingOf({
        unit,
        up: draw.oneOf(['x', 'y', 'z', '-x', '-y', '-z'] as const),
        placement: {
          rotation: [draw.between(-180, 180), draw.between(-90, 90), draw.between(-180, 180)],
          shift: [300, -20, draw.between(0, 900)],
        },
      });
      const size = placing.mm;
      const middle = inCar(placing, [0, 0, 0]);
      const normal = normalize([draw.between(-1, 1), draw.between(-1, 1), draw.between(-1, 1)]);
      const far = draw.between(-0.8, 0.8) * radius * size;
      const plane: CuttingPlane = { point: add(middle, scale(normal, far)), normal };
      const curves = sectionOf(data, placing, plane);
      expect(curves).toHaveLength(1);
      const [curve] = curves as readonly [SectionCurve];
      expect(isClosed(curve)).toBe(true);
      const circle = Math.sqrt((radius * size) ** 2 - far ** 2);
      // A chord of a facet lies within the ball by less than half its sagitta: of 64 round, 0.5 %.
      expect(lengthOf(curve)).toBeLessThan(2 * Math.PI * circle);
      expect(lengthOf(curve)).toBeGreaterThan(2 * Math.PI * circle * 0.985);
      const triangles = cornersOf(data, placing);
      for (const place of curve.filter((_, k) => k % 9 === 0)) {
        expect(Math.abs(dot(subtract(place, plane.point), normal))).toBeLessThan(1e-9 * Math.max(1, size) * 1000);
        expect(Math.min(...triangles.map((triangle) => offTriangle(place, triangle)))).toBeLessThan(
          1e-9 * Math.max(1, size) * 1000,
        );
        expect(length(subtract(place, middle))).toBeLessThanOrEqual(radius * size * (1 + 1e-12));
      }
    }
  });

  it('through its vertices closes too; one that only touches it is none', () => {
    const rings = dataOf(ball(radius, [0, 0, 0], around, up, 0));
    for (const normal of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0, 0, -1],
    ] as const) {
      const curves = sectionOf(rings, AS_FILED, { point: [0, 0, 0], normal });
      expect(curves.map(isClosed)).toEqual([true]);
    }
    expect(sectionOf(rings, AS_FILED, { point: [0, 0, radius], normal: [0, 0, 1] })).toEqual([]);
    expect(sectionOf(rings, AS_FILED, { point: [0, 0, radius], normal: [0, 0, -1] })).toEqual([]);
    expect(sectionOf(rings, AS_FILED, { point: [0, 0, radius + 1], normal: [0, 0, 1] })).toEqual([]);
  });
});

describe('the section of a pipe', () => {
  const data = dataOf(pipe(400, 0, 1200, 40));

  it('across is closed and has a place on every edge, along are two lines from rim to rim', () => {
    const across = sectionOf(data, AS_FILED, { point: [0, 0, 500], normal: [0, 0, 1] });
    expect(across.map(isClosed)).toEqual([true]);
    // Forty edges along, and a diagonal between any two of them.
    expect(across[0]).toHaveLength(81);
    for (const place of across[0]!)
      expect(Math.hypot(place[0], place[1])).toBeGreaterThan(400 * Math.cos(Math.PI / 40) - 1e-9);
    const along = sectionOf(data, AS_FILED, { point: [0, 13, 0], normal: [0, 1, 0] });
    expect(along.map(isClosed)).toEqual([false, false]);
    for (const curve of along) {
      expect([curve[0]![2], curve.at(-1)![2]].toSorted((a, b) => a - b)).toEqual([0, 1200]);
      expect(lengthOf(curve)).toBeCloseTo(1200, 9);
    }
  });

  it('three leaves at one edge are one chain through and one that ends there', () => {
    const leaves: ScanData = {
      kind: 'triangles',
      positions: Float64Array.of(0, 0, -1, 0, 0, 1, 5, 0, 0.5, -5, 0, 0.5, 0, 5, 0.5),
      triangles: Uint32Array.of(0, 1, 2, 0, 1, 3, 0, 1, 4),
    };
    const curves = sectionOf(leaves, AS_FILED, { point: [0, 0, 0], normal: [0, 0, 1] });
    expect(curves.map((curve) => curve.length).toSorted((a, b) => a - b)).toEqual([2, 3]);
  });
});

describe('the slab of a cloud', () => {
  it('has every point near the plane, laid onto it, and no other', () => {
    const places = cloud(4000, [2000, 1500, 1200], 3);
    const data = dataOf({ vertices: places, faces: [] });
    const found = slabOf(data, AS_FILED, { point: [0, 600, 0], normal: [0, 1, 0] });
    const wanted = places.filter(([, y]) => Math.abs(y - 600) <= SLAB).map(([x, , z]) => [x, 600, z]);
    expect(wanted.length).toBeGreaterThan(10);
    expect(found).toHaveLength(wanted.length);
    found.forEach((place, i) => expect(distance(place, wanted[i] as unknown as Vec3)).toBeLessThan(1e-9));
  });
});

describe('picking', () => {
  const placing = placingOf({ unit: 'in', up: 'y', placement: { rotation: [3, -40, 100], shift: [500, 20, -100] } });

  it('on a ball is the near side, and beside it nothing', () => {
    const data = dataOf(ball(30, [0, 0, 0], 96, 48));
    const middle = inCar(placing, [0, 0, 0]);
    const draw = drawFrom(4);
    for (let i = 0; i < 30; i++) {
      const toEye = normalize([draw.between(-1, 1), draw.between(-1, 1), draw.between(-1, 1)]);
      const picked = pickOn(data, placing, { through: middle, toEye }, 5);
      expect(picked).not.toBeNull();
      const from = subtract(picked!.place, middle);
      expect(length(cross(from, toEye))).toBeLessThan(1e-6);
      expect(dot(from, toEye)).toBeGreaterThan(30 * 25.4 * 0.995);
      expect(distance(inCar(placing, picked!.at), picked!.place)).toBeLessThan(1e-9);
      const aside = normalize(cross(toEye, [0.3, 0.4, 0.5]));
      expect(pickOn(data, placing, { through: add(middle, scale(aside, 31 * 25.4)), toEye }, 5)).toBeNull();
    }
  });

  it('on a cloud is the nearest to the line of those in front', () => {
    const data = dataOf({
      vertices: [
        [0, 0, 10],
        [0.02, 0, 100],
        [0.1, 0, 100.1],
        [5, 5, 500],
      ],
      faces: [],
    });
    const flat = placingOf({ unit: 'mm', up: 'z', placement: { rotation: [0, 0, 0], shift: [0, 0, 0] } });
    const sight = { through: [0, 0, 0], toEye: [0, 0, 1] } as const;
    expect(pickOn(data, flat, sight, 1)!.place).toEqual([0.02, 0, 100]);
    expect(pickOn(data, flat, sight, 0.01)!.place).toEqual([0, 0, 10]);
    expect(pickOn(data, flat, { ...sight, through: [50, 0, 0] }, 1)).toBeNull();
  });
});
