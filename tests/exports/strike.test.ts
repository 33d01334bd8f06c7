/**
 * The pages by which hoops are struck on the floor, read back from layout.pdf and held to places worked out from the fabrication file alone:
 * corners, angles, radii and tips, with a plane and a line laid through them here.
 */
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import type { Derived } from '../../src/core/derive.ts';
import { layoutPdf } from '../../src/exports/layout/layout-pdf.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { fabrication, type FabricationTube } from '../../src/exports/tables/fabrication.ts';
import { derived } from '../core/frame.ts';
import { drawn } from '../draws.ts';
import { fonts } from './fonts.ts';
import { derivedDemo } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf, type ReadPage } from './pdf.ts';
import { uniformFrom } from '../reference/oracles/seeded.ts';

type Triple = readonly [number, number, number];
const plus = (a: Triple, b: Triple, by = 1): Triple => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];
const inner = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: Triple): number => Math.sqrt(inner(a, a));
const unit = (a: Triple): Triple => plus([0, 0, 0], a, 1 / size(a));

/** By tag: how far along the chalk line from end A's node, and square off it; mm. */
function placesOf({ corners, bends, ends }: FabricationTube): ReadonlyMap<string, readonly [number, number]> {
  const all = corners as readonly Triple[];
  const [a, b] = [all[0]!, all.at(-1)!];
  const places = new Map<string, Triple>([
    ['A', a],
    ['B', b],
  ]);
  ends.forEach(({ direction, tip, allowance }, which) => {
    const end = which === 0 ? a : b;
    places.set(`${'AB'[which]} sawn`, plus(end, direction, (tip ?? 0) - allowance));
  });
  bends.forEach(({ angle, radius }, i) => {
    const corner = all[i + 1]!;
    const [back, on] = [unit(plus(all[i]!, corner, -1)), unit(plus(all[i + 2]!, corner, -1))];
    const half = (angle * Math.PI) / 360;
    const setBack = radius * Math.tan(half);
    // From the corner along the line that halves it.
    const inwards = unit(plus(back, on));
    const far = radius / Math.cos(half);
    places.set(`${i + 1}`, corner);
    places.set(`${i + 1}s`, plus(corner, back, setBack));
    places.set(`${i + 1}e`, plus(corner, on, setBack));
    places.set(`${i + 1}c`, plus(corner, inwards, far));
    places.set(`${i + 1}m`, plus(corner, inwards, far - radius));
  });
  const along = unit(plus(b, a, -1));
  const off = (place: Triple): Triple => plus(plus(place, a, -1), along, -inner(plus(place, a, -1), along));
  const sum = all.reduce<Triple>((total, corner) => plus(total, off(corner)), [0, 0, 0]);
  const up = unit(sum);
  return new Map([...places].map(([tag, place]) => [tag, [inner(plus(place, a, -1), along), inner(off(place), up)]]));
}

/** Over the outside from sawn end to sawn end, along the line and square off it: both walls walked, in steps of a fiftieth of a degree. */
function outsideOf(
  { bends }: FabricationTube,
  places: ReadonlyMap<string, readonly [number, number]>,
  outer: number,
): readonly [number, number] {
  const at = (tag: string) => places.get(tag)!;
  const walls: (readonly [number, number])[] = [];
  const faceOf = ([x, y]: readonly [number, number], towards: readonly [number, number]): void => {
    const long = Math.hypot(towards[0] - x, towards[1] - y);
    const square = [-(towards[1] - y) / long, (towards[0] - x) / long] as const;
    for (const side of [outer, -outer]) walls.push([x + side * square[0], y + side * square[1]]);
  };
  faceOf(at('A sawn'), at('1s'));
  faceOf(at('B sawn'), at(`${bends.length}e`));
  bends.forEach(({ angle, radius }, i) => {
    const [cx, cy] = at(`${i + 1}c`);
    const [mx, my] = at(`${i + 1}m`);
    const middle = Math.atan2(my - cy, mx - cx);
    const steps = Math.ceil(angle * 50);
    for (let step = 0; step <= steps; step++) {
      const spoke = middle + ((step / steps - 0.5) * angle * Math.PI) / 180;
      for (const far of [radius - outer, radius + outer])
        walls.push([cx + far * Math.cos(spoke), cy + far * Math.sin(spoke)]);
    }
  });
  const over = (axis: 0 | 1) =>
    Math.max(...walls.map((each) => each[axis])) - Math.min(...walls.map((each) => each[axis]));
  return [over(0), over(1)];
}

/** "23 ³¹⁄₃₂ in" in mm. */
function lengthOf(text: string): number {
  const match = /^(−?)(\d+(?:\.\d+)?)?(?: ?(\d+)\/(\d+))? (in|mm)$/u.exec(plain(text));
  if (match === null) return expect.fail(text);
  const [, sign, whole = '0', over = '0', under = '1', unitOf] = match;
  return (sign === '−' ? -1 : 1) * (Number(whole) + Number(over) / Number(under)) * (unitOf === 'in' ? 25.4 : 1);
}
const plain = (text: string): string =>
  text
    .replace(/(\d)([⁰¹²³⁴-⁹])/gu, '$1 $2')
    .normalize('NFKD')
    .replace('⁄', '/')
    .replace(/^(−?)(\d+)\/(\d+)/u, '$10 $2/$3')
    .replace(/\s+/gu, ' ');

/** Rows of the page, top to bottom, each its cells from left to right. */
function rowsOf({ texts }: ReadPage): readonly (readonly { readonly text: string; readonly x: number }[])[] {
  const rows = new Map<number, { text: string; x: number }[]>();
  for (const { text, x, y, turn } of texts) {
    if (Math.abs(turn) > 0.01) continue;
    const key = Math.round(y * 4);
    // Figures side by side may come as one.
    const cells = text.split(/(?<= (?:in|mm)) (?=[−\d⁰¹²³⁴-⁹])/u).map((each, i) => ({ text: each, x: x + i }));
    rows.set(key, [...(rows.get(key) ?? []), ...cells]);
  }
  return [...rows].toSorted(([a], [b]) => b - a).map(([, cells]) => cells.toSorted((a, b) => a.x - b.x));
}

const TAG = /^(?:[AB](?: sawn)?|sawn|A, B|\d+[secm]?(?:, \d+[secm]?)?)$/u;

/** The table, and the diagonals; of each page together with those that it goes on on. */
function read(pages: readonly ReadPage[]) {
  const table: { tags: string[]; along: number; off: number }[] = [];
  const diagonals: { pairs: string[]; value: number }[] = [];
  const others = new Map<string, string>();
  for (const page of pages) {
    const rows = rowsOf(page);
    const from = rows.findIndex((cells) => cells.some(({ text }) => text === 'Place'));
    for (const cells of rows.slice(from + 1)) {
      const left = cells.filter(({ x }) => x < 142);
      const right = cells.filter(({ x }) => x >= 142).map(({ text }) => text);
      if (left.length === 4 && TAG.test(left[0]!.text)) {
        table.push({ tags: left[0]!.text.split(', '), along: lengthOf(left[2]!.text), off: lengthOf(left[3]!.text) });
      }
      if (right.length === 2 && / to /u.test(right[0]!))
        diagonals.push({ pairs: right[0]!.split(', '), value: lengthOf(right[1]!) });
      else if (right.length === 2) others.set(right[0]!, right[1]!);
    }
  }
  return { table, diagonals, others };
}

const pagesOf = async (frame: Derived): Promise<readonly ReadPage[]> =>
  (await readPdf((await layoutPdf(frame, fonts, plainPrint, unwatched)).bytes)).pages;
const demoPages = pagesOf(derivedDemo());

/** Every flat bent tube of the frame, its page against its geometry; how many numbers were compared. */
async function compare(
  frame: Derived,
  symmetric: (tube: FabricationTube) => boolean,
  pages: readonly ReadPage[],
): Promise<number> {
  // Half a division of what is printed.
  const within = frame.job.lengthUnit === 'in' ? 25.4 / 64 + 1e-6 : 0.05 + 1e-6;
  let compared = 0;
  const close = (shown: number, exact: number, what: string): void => {
    expect(Math.abs(shown - exact), what).toBeLessThan(within);
    compared += 1;
  };
  for (const tube of fabrication(frame).tubes) {
    const own = pages.filter(({ texts }) =>
      texts.some(({ text }) => text.includes(`${tube.number} ${tube.name}, to strike`)),
    );
    if (own.length === 0) continue;
    const places = placesOf(tube);
    const { table, diagonals, others } = read(own);
    const halves = symmetric(tube);
    const [, [base]] = [0, places.get('B')!];
    const seen = new Set<string>();
    for (const { tags, along, off } of table) {
      const named = tags[0] === 'sawn' ? ['A sawn', 'B sawn'] : tags;
      named.forEach((tag, i) => {
        const [x, y] = places.get(tag)!;
        seen.add(tag);
        const out = !halves ? x : (i === 0 ? 1 : -1) * (base / 2 - x);
        close(along, out, `${tube.name} ${tag} along`);
        close(off, y, `${tube.name} ${tag} off`);
      });
    }
    for (const tag of places.keys()) {
      const [x, y] = places.get(tag)!;
      const node = places.get(tag[0]!)!;
      // A sawn end at its node has no row.
      if (/sawn/u.test(tag) && Math.hypot(x - node[0], y - node[1]) < 0.06) continue;
      expect(seen.has(tag), `${tube.name} ${tag}`).toBe(true);
    }
    for (const { pairs, value } of diagonals) {
      for (const pair of pairs) {
        const [from, to] = pair.split(' to ').map((tag) => places.get(tag)!) as [
          readonly [number, number],
          readonly [number, number],
        ];
        close(value, Math.hypot(to[0] - from[0], to[1] - from[1]), `${tube.name} ${pair}`);
      }
    }
    const count = tube.bends.length + 2;
    // Every pair that are no neighbours, counted from both sides.
    expect(diagonals.flatMap(({ pairs }) => pairs).length).toBe(((count - 1) * (count - 2)) / 2);
    const radius = tube.bends[0]!.radius;
    if (tube.bends.every((bend) => bend.radius === radius)) {
      const outer = frame.byId.get(tube.id)!.section.outerDiameter / 2;
      close(
        lengthOf(others.get(tube.bends.length === 1 ? 'Arc: centreline' : 'Every arc: centreline')!),
        radius,
        'radius',
      );
      close(lengthOf(others.get('outside')!), radius + outer, 'outside');
    }
    const [wide, high] = outsideOf(tube, places, frame.byId.get(tube.id)!.section.outerDiameter / 2);
    close(lengthOf(others.get('over all, along')!), wide, `${tube.name} over all, along`);
    close(lengthOf(others.get('over all, square off')!), high, `${tube.name} over all, square off`);
    expect(own.flatMap(overlapsOf)).toEqual([]);
  }
  return compared;
}

/** A hoop of two to five bends in a plane of its own, somewhere; askew: none of it its own mirror image. */
function hoop(seed: number, askew: boolean): Derived {
  const next = uniformFrom(seed);
  const between = (low: number, high: number): number => low + (high - low) * next();
  const [foot, shoulder, top] = [between(450, 650), between(500, 700), between(280, 420)];
  const [low, high] = [between(380, 560), between(950, 1150)];
  const shape = next();
  const half: [number, number][] =
    shape < 0.4
      ? [
          [-foot, 0],
          [-top, high],
        ]
      : [
          [-foot, 0],
          [-shoulder, low],
          [-top, high],
        ];
  const middle: [number, number][] = shape > 0.75 ? [[0, high + between(140, 220)]] : [];
  const right = half.toReversed().map(([x, y]): [number, number] => [-x, y]);
  const flat = [...half, ...middle, ...right].map(([x, y]): [number, number] =>
    askew ? [x + between(-60, 60), y + between(-60, 60)] : [x, y],
  );
  const along = unit([between(-1, 1), between(-1, 1), between(-0.3, 0.3)]);
  const any: Triple = [between(-1, 1), between(-1, 1), 1];
  const up = unit(plus(any, along, -inner(any, along)));
  const origin: Triple = [between(-900, 900), between(-900, 900), between(0, 400)];
  const nodes = Object.fromEntries(flat.map(([x, y], i) => [`n${i}`, plus(plus(origin, along, x), up, y)]));
  const square = { fit: 'square' };
  const allowance = askew ? 12 : 0;
  const frame = derived({
    nodes,
    members: [{ id: 'hoop', name: 'Hoop', path: Object.keys(nodes), ends: [{ ...square, allowance }, square] }],
  });
  return { ...frame, job: { ...frame.job, lengthUnit: seed % 2 === 0 ? 'in' : 'mm' } };
}

const compareHoop = async (frame: Derived, isSymmetric: boolean): Promise<number> =>
  compare(frame, () => isSymmetric, await pagesOf(frame));

describe('the page by which a hoop is struck on the floor', () => {
  it('of the demo has the solved places, in its unit, of what is on both sides one row', async () => {
    expect(await compare(derivedDemo(), () => true, await demoPages)).toBeGreaterThan(90);
  });
  it('of random hoops their own mirror image, and of others', async () => {
    for (let seed = 1; seed <= drawn(1, 25); seed++) {
      expect(await compareHoop(hoop(seed, false), true), `seed ${seed}`).toBeGreaterThan(20);
      expect(await compareHoop(hoop(seed, true), false), `seed ${seed}, askew`).toBeGreaterThan(20);
    }
  });
  it.each(['a4', 'letter'] as const)('has the car beside it, on %s, each place with its gap', async (paper) => {
    // A hoop of 40 mm tube upright at x = 0, its legs at 500; sills 100 and 120 outside the middle of these, the rail measured on the left alone.
    const line = (id: string, y: number, z: number) => [
      { id: `${id}-0`, name: `${id} 0`, position: [-200, y, z] },
      { id: `${id}-1`, name: `${id} 1`, position: [200, y, z] },
    ];
    const drawn = (id: string, name: string) => ({ id, name, points: [`${id}-0`, `${id}-1`] });
    const frame = derived({
      nodes: { a: [0, 500, 0], b: [0, 500, 1000], c: [0, -500, 1000], d: [0, -500, 0] },
      sections: [{ id: 'main', outerDiameter: 40, wall: 2 }],
      members: [{ id: 'hoop', name: 'Hoop', path: ['a', 'b', 'c', 'd'] }],
      points: [...line('l', 600, 200), ...line('r', -620, 200), ...line('rail', 550, 700)],
      bodyLines: [drawn('l', 'Sill, left'), drawn('r', 'Sill, right'), drawn('rail', 'Rail, left')],
    });
    const mm = { ...frame, job: { ...frame.job, lengthUnit: 'mm' as const } };
    const { pages } = await readPdf((await layoutPdf(mm, fonts, { ...plainPrint, paper }, unwatched)).bytes);
    const [page] = pages;
    expect(overlapsOf(page!)).toEqual([]);
    for (const { x, width, text } of page!.texts) {
      expect(x, text).toBeGreaterThanOrEqual(7.9);
      expect(x + width, text).toBeLessThanOrEqual(page!.width - 7.9);
    }
    const figure = (row: string): string => {
      const { x, y } = page!.texts.find(({ text }) => text === row)!;
      return page!.texts.find((each) => each.x > x && Math.abs(each.y - y) < 0.5)!.text;
    };
    expect(figure('a, d: Sill')).toBe('80.0, 100.0 mm');
    expect(figure('b: Rail, left')).toBe('30.0 mm');
    expect(figure('c: Rail, left, mirrored')).toBe('30.0 mm');
    for (const tag of ['a', 'b', 'c', 'd'])
      expect(page!.texts.filter(({ text }) => text.trim() === tag)).toHaveLength(1);
  });
  it('of one bend alone goes along the line from end to end', async () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [0, 0, 700], c: [600, 0, 1000] },
      members: [{ id: 'leg', name: 'Leg', path: ['a', 'b', 'c'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
    });
    expect(await compareHoop(frame, false)).toBeGreaterThan(14);
  });

  it.each([0, 40])(
    'of an L goes over all by that line too, not by its legs, with %d mm left long at end A',
    async (allowance) => {
      const frame = derived({
        nodes: { a: [0, 0, 0], b: [0, 0, 600], c: [600, 0, 600] },
        sections: [{ id: 'main', outerDiameter: 40, wall: 2 }],
        members: [
          { id: 'leg', name: 'Leg', path: ['a', 'b', 'c'], ends: [{ fit: 'square', allowance }, { fit: 'square' }] },
        ],
      });
      const mm = { ...frame, job: { ...frame.job, lengthUnit: 'mm' as const } };
      const { others } = read(await pagesOf(mm));
      // The base is 848.5, and each sawn end stands half a diameter out at 45 degrees.
      expect(lengthOf(others.get('over all, along')!)).toBeCloseTo(
        600 * Math.SQRT2 + 40 * Math.SQRT1_2 + allowance * Math.SQRT1_2,
        1,
      );
    },
  );
});

it('sheets at full size on which nothing of the tube lies are left out', async () => {
  const pages = await demoPages;
  // The demo's hoop and dash bar: two pages to strike by, two maps, and 34 sheets; one that says what is not laid out.
  expect(pages.length).toBeLessThanOrEqual(39);
  const said = pages
    .at(-1)!
    .texts.map(({ text }) => text)
    .join(' ');
  expect(said).toMatch(
    /does not lie flat: 11 Front leg \(left\), 12 Front leg \(right\)\. Strike no floor drawing of it/u,
  );
});
