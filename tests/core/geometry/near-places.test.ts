/** Where two pieces of a path come nearest to one another, against small steps along one of them. Source: computed. */
import { expect, it } from 'vitest';
import { nearestToPath } from '../../../src/core/geometry/nearest-paths.ts';
import { nearPlaces, type NearPlaces } from '../../../src/core/geometry/near-places.ts';
import { arcPiece, linePiece, nearestOnPiece, placeOnPiece, type Piece } from '../../../src/core/geometry/path.ts';
import { add, addScaled, cross, distance, normalize, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawn } from '../../draws.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';

const place = (draw: Draw): Vec3 => [draw.between(-200, 200), draw.between(-200, 200), draw.between(-200, 200)];

/** Through a place, half of them bent. */
function pieceNear(draw: Draw, through: Vec3): Piece {
  const way = normalize(place(draw));
  if (draw.chance(0.4))
    return linePiece(addScaled(through, way, -draw.between(5, 200)), addScaled(through, way, 150), 10);
  const normal = normalize(cross(way, place(draw)));
  return arcPiece(through, way, normal, draw.between(30, 200), draw.between(0.2, 3), 10);
}

const STEPS = 4000;

// Of these, two meet where one of them begins.
it.each([1753, 1803, ...Array.from({ length: drawn(60, 3000) }, (_, i) => i + 1)])('%i: none is nearer', (seed) => {
  const draw = drawFrom(seed);
  const middle = place(draw);
  const a = pieceNear(draw, middle);
  const aside = draw.oneOf([0, 0, 20, 80]);
  const b = pieceNear(draw, addScaled(middle, normalize(place(draw)), aside));
  const found: NearPlaces[] = [];
  nearPlaces(a, b, Infinity, (near) => found.push(near));
  for (const { distance: apart, alongA, alongB } of found)
    expect(distance(placeOnPiece(a, alongA).point, placeOnPiece(b, alongB).point)).toBeCloseTo(apart, 8);
  const stepped = Array.from(
    { length: STEPS + 1 },
    (_, k) => nearestOnPiece(b, placeOnPiece(a, (k / STEPS) * a.length).point).distance,
  );
  const least = Math.min(...found.map((each) => each.distance));
  expect(least).toBeLessThan(Math.min(...stepped) + 1e-9);
});

it('beside an arc that a straight nearly touches there are two lows within a few degrees: none is nearer than the nearest', () => {
  const arc = arcPiece([0, 0, 0], [1, 0, 0], [0, 1, 0], 152.4, 1.5, 0);
  const draw = drawFrom(8);
  for (let one = 0; one < drawn(200, 3000); one++) {
    const off = draw.oneOf([0.01, 0.1, 1]);
    const aside = (): Vec3 => [draw.between(-off, off), draw.between(-off, off), draw.between(-off, off)];
    const { point, tangent } = placeOnPiece(arc, draw.between(0, arc.length));
    const [from, to] = [-80, 80].map((along) => add(addScaled(point, tangent, along), aside())) as [Vec3, Vec3];
    const line = linePiece(from, to, 0);
    let least = Infinity;
    nearPlaces(arc, line, Infinity, ({ distance: apart }) => {
      least = Math.min(least, apart);
    });
    const stepped = Array.from(
      { length: STEPS + 1 },
      (_, k) => nearestOnPiece(line, placeOnPiece(arc, (k / STEPS) * arc.length).point).distance,
    );
    expect(least).toBeLessThan(Math.min(...stepped) + 1e-5);
  }
});

it.each([
  { name: 'two straights', start: [0, 0, 0], other: linePiece([30, 20, 0], [400, 20, 0], 0), at: 30 },
  { name: 'the other way', start: [0, 0, 0], other: linePiece([90, 20, 0], [30, 20, 0], 0), at: 30 },
  { name: 'begun before', start: [0, 0, 0], other: linePiece([-30, 20, 0], [90, 20, 0], 0), at: 0 },
] as const)('of paths side by side the first place counts: $name', ({ start, other, at }) => {
  const path = { pieces: [linePiece(start, [100, 0, 0], 0)], length: 100 };
  const nearest = nearestToPath(path, { pieces: [other], length: other.length });
  expect(nearest.at).toBeCloseTo(at, 9);
  expect(nearest.distance).toBeCloseTo(20, 9);
});
