/**
 * The tapes that set a cage up, held against the fabrication file's own geometry: marks worked out anew from profiles, corners and bends, an end found
 * again from its three tapes, and tubes walked along in small steps to see that no tape goes through steel.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadOf } from '../../../src/core/tack/tapes.ts';
import { fabrication, type FabricationFile, type FabricationTube } from '../../../src/exports/tables/fabrication.ts';
import { demoText } from '../../command-line.ts';
import { drawn } from '../../draws.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { derivedOrSkipped, fixed, mirroredFrame, plainFrame } from '../../laws/frames.ts';
import { derived } from '../frame.ts';

type Triple = readonly [number, number, number];
const plus = (a: Triple, b: Triple, by = 1): Triple => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];
const inner = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const size = (a: Triple): number => Math.sqrt(inner(a, a));
const unit = (a: Triple): Triple => plus([0, 0, 0], a, 1 / size(a));
const apart = (a: Triple, b: Triple): number => size(plus(a, b, -1));

/** Places of the centreline every few tenths of a mm, by the corners, angles and radii alone. */
function walked({ corners, bends }: FabricationTube, step: number): Triple[] {
  const places: Triple[] = [corners[0]!];
  const to = (end: Triple): void => {
    const from = places.at(-1)!;
    const count = Math.max(1, Math.ceil(apart(from, end) / step));
    for (let i = 1; i <= count; i++) places.push(plus(from, plus(end, from, -1), i / count));
  };
  bends.forEach(({ angle, radius }, i) => {
    const corner = corners[i + 1]!;
    const [u, v] = [unit(plus(corner, corners[i]!, -1)), unit(plus(corners[i + 2]!, corner, -1))];
    const turn = (angle * Math.PI) / 180;
    const start = plus(corner, u, -radius * Math.tan(turn / 2));
    to(start);
    const inwards = unit(plus(v, u, -inner(u, v)));
    const centre = plus(start, inwards, radius);
    const count = Math.max(2, Math.ceil((radius * turn) / step));
    for (let k = 1; k <= count; k++) {
      const a = (turn * k) / count;
      places.push(plus(plus(centre, inwards, -radius * Math.cos(a)), u, radius * Math.sin(a)));
    }
  });
  to(corners.at(-1)!);
  return places;
}

type Ends = FabricationFile['tackUp']['ends'];
type Place = Ends[number]['tapes'][number]['to'];

/** Where a place's mark and its centre must be. */
function placed(
  file: FabricationFile,
  diameters: ReadonlyMap<string, number>,
  place: Place,
): { mark: Triple; centre: Triple } {
  const tube = file.tubes.find(({ id }) => id === place.tube)!;
  if (place.kind === 'top') {
    const half = walked(tube, 0.5);
    const lengths = half.slice(1).map((each, i) => apart(each, half[i]!));
    const total = lengths.reduce((sum, each) => sum + each, 0);
    let [at, i] = [0, 0];
    while (at + lengths[i]! < total / 2) at += lengths[i++]!;
    const centre = plus(half[i]!, unit(plus(half[i + 1]!, half[i]!, -1)), total / 2 - at);
    return { mark: place.mark, centre };
  }
  const which = place.end === 'A' ? 0 : 1;
  const end = tube.ends[which];
  const node = tube.corners.at(-which)!;
  if (place.kind === 'spot') return { mark: node, centre: node };
  if (place.kind === 'corner') {
    const under = file.feet.find((each) => each.tube === place.tube && each.end === place.end)!;
    return { mark: under.corners[place.corner]!, centre: node };
  }
  const aside = (place.side === 'line' ? 0.5 : -0.5) * diameters.get(tube.id)!;
  const trim = end.profile[place.side === 'line' ? 0 : 180]!;
  return { mark: plus(plus(node, end.reference, aside), end.direction, trim), centre: node };
}

/** The place so far from three others that lies nearest to a guess: two spheres' circle cut by the third, in closed form. */
function trilaterated(marks: readonly Triple[], [a, b, c]: readonly number[], guess: Triple): Triple {
  const [p, q, r] = marks as [Triple, Triple, Triple];
  const ex = unit(plus(q, p, -1));
  const d = apart(q, p);
  const i = inner(ex, plus(r, p, -1));
  const ey = unit(plus(plus(r, p, -1), ex, -i));
  const ez = outer(ex, ey);
  const j = inner(ey, plus(r, p, -1));
  const x = (a! ** 2 - b! ** 2 + d ** 2) / (2 * d);
  const y = (a! ** 2 - c! ** 2 + i ** 2 + j ** 2) / (2 * j) - (i / j) * x;
  const z = Math.sqrt(Math.max(0, a! ** 2 - x ** 2 - y ** 2));
  const base = plus(plus(p, ex, x), ey, y);
  const [one, other] = [plus(base, ez, z), plus(base, ez, -z)];
  return apart(one, guess) < apart(other, guess) ? one : other;
}

const demo = derivedFrom(demoText());
const demoFile = fabrication(demo);
const diametersOf = (frame: { tubes: readonly { id: string; section: { outerDiameter: number } }[] }) =>
  new Map(frame.tubes.map(({ id, section }) => [id, section.outerDiameter]));

/** All that is said of the tapes of a frame, looked at anew; how many tapes that were. */
function check(file: FabricationFile, diameters: ReadonlyMap<string, number>): number {
  const order = new Map(file.tubes.map(({ id }, i) => [id, i]));
  let count = 0;
  for (const { tube, end, from, tapes, spread } of file.tackUp.ends) {
    expect([from.tube, from.end]).toEqual([tube, end]);
    const here = placed(file, diameters, from);
    expect(apart(here.mark, from.mark)).toBeLessThan(1e-6);
    for (const { to, tape, centres } of tapes) {
      const there = placed(file, diameters, to);
      expect(apart(there.mark, to.mark)).toBeLessThan(1e-6);
      expect(apart(there.centre, to.centre)).toBeLessThan(to.kind === 'top' ? 0.01 : 1e-6);
      expect(Math.abs(apart(here.mark, there.mark) - tape)).toBeLessThan(1e-6);
      expect(Math.abs(apart(from.centre, to.centre) - centres)).toBeLessThan(1e-6);
      expect(tape >= 150 && tape <= 3000).toBe(true);
      // What stands by then; a spot is struck on the car for what does not.
      if (to.kind === 'spot') expect(order.get(to.tube)!).toBeGreaterThan(order.get(tube)!);
      else expect(order.get(to.tube)!).toBeLessThan(order.get(tube)!);
      count += 1;
    }
    // Found again: to a hundredth, though rounding is multiplied by the spread.
    const again = trilaterated(
      tapes.map(({ to }) => to.mark),
      tapes.map(({ tape }) => tape),
      from.mark,
    );
    expect(apart(again, from.mark), `${tube} ${end}`).toBeLessThan(0.01);
    expect(spread).toBeLessThan(8);
  }
  return count;
}

describe('the tapes of an end', () => {
  it('of the demo: every end has three, their marks and lengths are those of the geometry, and they give the end back', () => {
    expect(demoFile.tackUp.ends.length).toBe(2 * demo.tubes.length);
    expect(check(demoFile, diametersOf(demo))).toBe(6 * demo.tubes.length);
  });

  it('of random frames too, wherever they have any', () => {
    let tapes = 0;
    for (const frames of [plainFrame, mirroredFrame]) {
      fc.assert(
        fc.property(frames, (job) => {
          const frame = derivedOrSkipped(job);
          tapes += check(fabrication(frame), diametersOf(frame));
        }),
        { ...fixed(drawn(10, 250)), endOnFailure: true },
      );
    }
    expect(tapes).toBeGreaterThan(20);
  });

  it('go through no tube that stands, nor through their own', () => {
    const paths = new Map(demoFile.tubes.map((tube) => [tube.id, walked(tube, 4)]));
    const diameters = diametersOf(demo);
    const order = demoFile.tubes.map(({ id }) => id);
    // Every fifth tape: each against all that stands by then.
    const all = demoFile.tackUp.ends.flatMap(({ tube, from, tapes }) => tapes.map(({ to }) => ({ tube, from, to })));
    for (const { tube, from, to } of all.filter((_, i) => i % drawn(7, 1) === 0)) {
      for (const id of order.slice(0, order.indexOf(tube) + 1)) {
        const way = unit(plus(to.mark, from.mark, -1));
        const long = apart(to.mark, from.mark);
        const near = Math.min(
          ...paths.get(id)!.map((place) => {
            const along = Math.min(Math.max(inner(plus(place, from.mark, -1), way), 0), long);
            return apart(place, plus(from.mark, way, along));
          }),
        );
        expect(near, `${from.tube} ${from.end} to ${to.tube}, past ${id}`).toBeGreaterThan(
          diameters.get(id)! / 2 - 2.01,
        );
      }
    }
  });

  it('fix it as well as any three do: the spread is that of the inverted normal matrix', () => {
    for (const { from, tapes, spread } of demoFile.tackUp.ends) {
      const ways = tapes.map(({ to }) => unit(plus(from.mark, to.mark, -1))) as unknown as [Triple, Triple, Triple];
      const volume = inner(ways[0], outer(ways[1], ways[2]));
      // Columns of the inverse of a matrix of rows are the cross products of these over its determinant.
      const columns = [outer(ways[1], ways[2]), outer(ways[2], ways[0]), outer(ways[0], ways[1])];
      const trace = columns.reduce((sum, column) => sum + inner(column, column), 0) / volume ** 2;
      expect(spread).toBeCloseTo(Math.sqrt(trace), 6);
    }
  });

  it('spread by √3 where square to each other, by √(2.75 / 0.75) where two are 60° apart, without bound in a plane', () => {
    expect(spreadOf(0, 0, 0)).toBeCloseTo(Math.sqrt(3), 12);
    expect(spreadOf(0.5, 0, 0)).toBeCloseTo(Math.sqrt(2.75 / 0.75), 12);
    expect(spreadOf(0.5, 0.5, -0.5)).toBe(Infinity);
  });
});

describe('the tube that is set first', () => {
  const lone = (nodes: Record<string, Triple>) =>
    fabrication(
      derived({
        nodes,
        members: [{ id: 'a', path: Object.keys(nodes), ends: [{ fit: 'square' }, { fit: 'square' }] }],
      }),
    ).tackUp.first!;

  it('stands plumb in the demo, its feet 48 in apart and 43 in between their inner corners', () => {
    const first = demoFile.tackUp.first!;
    expect(first).toMatchObject({ tube: 'hoop', lean: expect.closeTo(0, 6), towards: null, plane: true });
    expect(first.feet!.centres / 25.4).toBeCloseTo(48, 2);
    expect(first.feet!.tape / 25.4).toBeCloseTo(43, 2);
  });

  it('leans by the angle of its plane, to the side of its top', () => {
    const back = Math.tan((8 * Math.PI) / 180) * 1000;
    const hoop = lone({ p: [0, 600, 0], q: [-back, 500, 1000], r: [-back, -500, 1000], s: [0, -600, 0] });
    expect(hoop).toMatchObject({ lean: expect.closeTo(8, 6), towards: 'rear', plane: true, feet: null });
    expect(lone({ p: [0, 0, 0], q: [0, 100, 1000] })).toMatchObject({
      lean: expect.closeTo((Math.atan(0.1) * 180) / Math.PI, 6),
      towards: 'left',
      plane: false,
    });
  });

  it('leans to no side where it lies level', () => {
    expect(lone({ p: [0, 600, 300], q: [0, -600, 300] })).toMatchObject({
      lean: expect.closeTo(90, 6),
      towards: null,
      plane: false,
      feet: null,
    });
    const bent = lone({ p: [0, 600, 300], q: [500, 500, 300], r: [500, -500, 300], s: [0, -600, 300] });
    expect(bent).toMatchObject({ lean: expect.closeTo(90, 6), towards: null, plane: true });
  });
});
