/** Through the door: the least width of flat outlines by hand and beside all turns, and what the points of a door say. */
import { describe, expect, it } from 'vitest';
import { doorOf } from '../../../src/core/fitting/door.ts';
import { leastWidth, WHOLE_TURN, type Round } from '../../../src/core/fitting/least-width.ts';
import { slitOf } from '../../../src/core/fitting/through-door.ts';
import { outsideOf } from '../../../src/core/gaps/outside.ts';
import { placeOnPiece } from '../../../src/core/geometry/path.ts';
import { addScaled, cross, dot, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawn } from '../../draws.ts';
import { derived, tube } from '../frame.ts';
import { seeded } from '../rehearse/draws.ts';

const point = (x: number, y: number): Round => ({ centre: [x, y], radius: 0, from: 0, turn: WHOLE_TURN });

describe('the least width', () => {
  it('of a polygon is square to one of its edges', () => {
    expect(leastWidth([point(0, 0), point(400, 0), point(400, 300), point(0, 300)]).width).toBeCloseTo(300, 9);
    // 3, 4, 5: the height on the longest side.
    expect(leastWidth([point(0, 0), point(400, 0), point(0, 300)]).width).toBeCloseTo(240, 9);
    expect(leastWidth([point(0, 0), point(400, 0), point(200, 0)]).width).toBeCloseTo(0, 9);
  });
  it('of a half disc is its radius, and of a bow with round ends across it the way between', () => {
    const half: Round = { centre: [0, 0], radius: 100, from: 0, turn: Math.PI };
    const { width, turn } = leastWidth([half, point(100, 0), point(-100, 0)]);
    expect(width).toBeCloseTo(100, 9);
    expect(turn).toBeCloseTo(Math.PI / 2, 9);
    // A lens of two arcs whose centres lie 60 apart: 2 x 100 - 60 between them.
    const rise = Math.acos(0.3);
    const lens: Round[] = [
      { centre: [-30, 0], radius: 100, from: -rise, turn: 2 * rise },
      { centre: [30, 0], radius: 100, from: Math.PI - rise, turn: 2 * rise },
    ];
    const tip = 100 * Math.sin(rise);
    expect(leastWidth([...lens, point(0, tip), point(0, -tip)]).width).toBeCloseTo(140, 9);
  });
});

const square = [{ fit: 'square' }, { fit: 'square' }];
const bent = (corners: Vec3[], more: object = {}) =>
  derived({
    nodes: Object.fromEntries(corners.map((at, i) => [`n${i}`, at])),
    members: [{ id: 'bent', path: corners.map((_, i) => `n${i}`), ends: square, ...more }],
  });

describe('the slit that a bent tube goes through', () => {
  it('of a hoop is as high as the hoop is, where it is wider than that', () => {
    const hoop = bent([
      [0, 600, 0],
      [0, 600, 1000],
      [0, -600, 1000],
      [0, -600, 0],
    ]);
    const slit = slitOf(tube(hoop, 'bent'))!;
    expect(slit.width).toBeCloseTo(1000 + 44.45 / 2, 9);
    expect(slit).toMatchObject({ thickness: 44.45, outOfFlat: 0 });
    const left = [{ fit: 'square', allowance: 10 }, { fit: 'square' }];
    const longer = bent(
      [
        [0, 600, 0],
        [0, 600, 1000],
        [0, -600, 1000],
        [0, -600, 0],
      ],
      { ends: left },
    );
    // 10 longer on one leg alone.
    expect(slitOf(tube(longer, 'bent'))!.width).toBeGreaterThan(slit.width!);
    expect(slitOf(tube(longer, 'bent'))!.width).toBeLessThanOrEqual(slit.width! + 10);
  });
  it('of an elbow is square to the line over its ends', () => {
    const { width } = slitOf(
      tube(
        bent([
          [500, 0, 0],
          [0, 0, 0],
          [0, 500, 0],
        ]),
        'bent',
      ),
    )!;
    // Over the outer corners of its ends, to the outside of the bend: centre at 152.4, 152.4 and 174.625 round it.
    const bend = (2 * 152.4) / Math.SQRT2 - (152.4 + 44.45 / 2);
    expect(width).toBeCloseTo((500 + 44.45 / 2) / Math.SQRT2 - bend, 9);
  });
  it('is as thick as it lies thinnest, the same from either end', () => {
    // A hoop with one foot 60 ahead: corners a..d. From its first bend's plane the foot stands 60 off, from the last bend's the first foot about as much; between the
    // plane through a c and the ways b d it is thinner: tried here over directions, coarse and then fine.
    const corners: Vec3[] = [
      [0, 600, 0],
      [0, 600, 1000],
      [0, -600, 1000],
      [60, -600, 300],
    ];
    const there = slitOf(tube(bent(corners), 'bent'))!;
    expect(slitOf(tube(bent(corners.toReversed()), 'bent'))!.outOfFlat).toBeCloseTo(there.outOfFlat, 9);
    expect(there.outOfFlat).toBeLessThan(50);
    const extent = (n: Vec3): number => {
      const heights = corners.map((corner) => dot(corner, n) / Math.hypot(...n));
      return Math.max(...heights) - Math.min(...heights);
    };
    let [best, at, step] = [Infinity, [0, 0] as [number, number], 0.2];
    for (let round = 0; round < 40; round++, step *= 0.7) {
      const [y, z] = at;
      for (let i = -5; i <= 5; i++) {
        for (let k = -5; k <= 5; k++) {
          const tried: [number, number] = [y + (i * step) / 5, z + (k * step) / 5];
          const thick = extent([1, ...tried]);
          if (thick < best) [best, at] = [thick, tried];
        }
      }
    }
    expect(there.outOfFlat).toBeCloseTo(best, 4);
  });
  it('is not said of a tube that is not flat, nor of a straight one', () => {
    const turned = slitOf(
      tube(
        bent([
          [0, 600, 0],
          [0, 600, 1000],
          [0, -600, 1000],
          [300, -600, 0],
        ]),
        'bent',
      ),
    )!;
    expect(turned.width).toBeNull();
    expect(turned.outOfFlat).toBeGreaterThan(100);
    expect(
      slitOf(
        tube(
          bent(
            [
              [0, 600, 0],
              [0, 600, 1000],
            ],
            { die: undefined },
          ),
          'bent',
        ),
      ),
    ).toBeNull();
  });
  it('is as narrow as looking at every turn of flat tubes that come as they do has it', () => {
    const TURNS = 720;
    const random = seeded(5);
    for (let i = 0; i < drawn(12, 120); i++) {
      let [x, y, way] = [0, 0, 0];
      const corners: Vec3[] = [[0, 0, 0]];
      for (let k = 0; k < 4; k++) {
        const step = 420 + 500 * random();
        [x, y] = [x + step * Math.cos(way), y + step * Math.sin(way)];
        corners.push([x, y, 0]);
        way += (random() < 0.7 ? 1 : -1) * (0.3 + 1.1 * random());
      }
      const solved = tube(bent(corners), 'bent');
      const { pieces, radius } = outsideOf(solved);
      const wall = pieces.flatMap((piece) =>
        Array.from({ length: 61 }, (_, k) => placeOnPiece(piece, (piece.length * k) / 60)).flatMap(
          ({ point: p, tangent }) => {
            const aside = cross([0, 0, 1], tangent);
            return [addScaled(p, aside, radius), addScaled(p, aside, -radius)];
          },
        ),
      );
      let least = Infinity;
      for (let turn = 0; turn < TURNS; turn++) {
        const n: Vec3 = [Math.cos((turn * Math.PI) / TURNS), Math.sin((turn * Math.PI) / TURNS), 0];
        const over = wall.map((p) => dot(p, n));
        least = Math.min(least, over.reduce((a, b) => Math.max(a, b)) - over.reduce((a, b) => Math.min(a, b)));
      }
      const { width } = slitOf(solved)!;
      // Between the places of a bend that are looked at, less than 0.4 of its rise.
      expect(width).toBeLessThan(least + 0.4);
      // Half a step of the turns, at as much as the tube is long.
      expect(width).toBeGreaterThan(least - 2 * solved.developedLength * (Math.PI / (2 * TURNS)));
    }
  });
});

describe('the door', () => {
  const named = (name: string, position: Vec3) => ({ id: name, name, position });
  const sill = named('Sill top at B-pillar, left', [0, 660, 180]);
  const corner = named('Windscreen, top corner, left', [600, 500, 1120]);
  it('is as wide as the longest way between two of its points, on one side of the car', () => {
    const front = named('Sill top at A-pillar, left', [1000, 660, 180]);
    const rail = named('Roof rail at B-pillar, left', [0, 540, 1140]);
    const back = named('Rear window, top corner, left', [-5000, 540, 1140]);
    const behind = named('Rear windscreen, top corner, left', [-5000, 540, 1140]);
    const other = named('Roof rail at B-pillar, right', [0, -540, 1140]);
    expect(doorOf({ points: [behind, sill, front, rail, corner, back, other] })).toEqual({
      way: Math.hypot(1000, 120, 960),
      between: [front.id, rail.id],
    });
  });
  it('is not known by a sill alone, nor by none; a typed figure goes before all', () => {
    expect(doorOf({ points: [sill] })).toBeNull();
    expect(doorOf({ points: [sill, { ...corner, guessed: true }] })).toBeNull();
    expect(doorOf({ points: [corner] })).toBeNull();
    expect(doorOf({ points: [sill, corner] })!.way).toBeCloseTo(Math.hypot(600, 160, 940), 9);
    expect(doorOf({ points: [sill, corner], doorOpening: 900 })).toEqual({ way: 900, between: null });
  });
});
