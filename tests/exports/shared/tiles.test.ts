import { describe, expect, it } from 'vitest';
import { clipped } from '../../../src/drawing/clip.ts';
import { unknownFace } from '../../../src/drawing/unknown-face.ts';
import { hatched } from '../../../src/drawing/hatch.ts';
import { shelved } from '../../../src/drawing/shelves.ts';
import { FINE, line, words } from '../../../src/drawing/strokes.ts';
import type { Line, Place2, Words } from '../../../src/drawing/types.ts';
import { printedBy } from '../../../src/exports/shared/paper.ts';
import { tiled } from '../../../src/exports/shared/tiles.ts';

const lengthOf = (places: readonly Place2[]): number =>
  places.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - places[i]!.x, y - places[i]!.y), 0);

describe('a drawing in sheets', () => {
  const diagonal = line(
    'a',
    [
      { x: 0, y: 0 },
      { x: 500, y: 400 },
    ],
    FINE,
  );
  const space = { width: 180, height: 240 };
  const tiles = tiled([diagonal], { width: 500, height: 400 }, space, unknownFace);

  it('has all of it: joined at the crosses the line is whole, and sheets without any of it are left out', () => {
    expect(tiles.map(({ name }) => name)).toEqual(['A2', 'A3', 'B1', 'B2']);
    for (const { box, marks } of tiles) {
      const [drawn] = marks.filter((mark): mark is Line => mark.kind === 'line' && mark.layer === 'a');
      for (const { x, y } of drawn!.places) expect((x + box.left) * 0.8).toBeCloseTo(y + box.bottom, 9);
    }
    const cut = clipped([diagonal], { left: 100, right: 300, bottom: 0, top: 400 });
    expect(cut.map(({ places }) => lengthOf(places))).toEqual([expect.closeTo(200 * Math.hypot(1, 0.8), 9)]);
  });

  it('has crosses of one name at one place of the drawing on both neighbours', () => {
    const places = new Map<string, Place2[]>();
    for (const { box, marks } of tiles) {
      for (const mark of marks.filter((each): each is Words => each.kind === 'words' && each.layer === 'joints')) {
        const at = { x: mark.at.x + box.left, y: mark.at.y + box.bottom };
        places.set(mark.text, [...(places.get(mark.text) ?? []), at]);
      }
    }
    expect(Array.from(places.keys()).toSorted()).toEqual(['A2–A3', 'A2–B2', 'B1–B2']);
    for (const [, at] of places) {
      expect(at.length).toBe(4);
      for (const one of at) {
        expect(at.filter(({ x, y }) => Math.hypot(x - one.x, y - one.y) < 1e-9).length).toBe(2);
      }
    }
  });

  it('sets words whole on one sheet, clear of its joints, also those that would run over its edge or stand where no sheet is', () => {
    const stated = [
      words('a', 10, 10, 'here', 5),
      words('a', 170, 150, 'from one sheet on to the next', 5),
      words('a', 20, 390, 'in a corner without a line', 5),
      words('a', 250, 200, 'upright', 5, { turn: Math.PI / 2, anchor: 'middle' }),
      words('a', 10, 20, 'long '.repeat(60), 10, { bold: true }),
    ];
    const shown = tiled([diagonal, ...stated], { width: 500, height: 400 }, space, unknownFace).flatMap(
      ({ name, marks }) =>
        marks.flatMap((mark) => (mark.kind === 'words' && mark.layer === 'a' ? [{ name, mark }] : [])),
    );
    expect(shown.map(({ mark }) => mark.text.slice(0, 4)).toSorted()).toEqual(['from', 'here', 'in a', 'long', 'upri']);
    for (const { mark } of shown) {
      const wide = unknownFace.width(mark.text, mark.size, mark.bold);
      const along = mark.turn === 0 ? mark.at.x : mark.at.y;
      const from = along - (mark.anchor === 'middle' ? wide / 2 : 0);
      expect(from).toBeGreaterThanOrEqual(-1e-9);
      expect(from + wide).toBeLessThanOrEqual((mark.turn === 0 ? space.width : space.height) + 1e-9);
    }
    const [here] = shown.filter(({ mark }) => mark.text === 'here');
    expect(here).toMatchObject({ name: 'B1', mark: { size: 5 } });
    const [long] = shown.filter(({ mark }) => mark.text.startsWith('long'));
    expect(long!.mark.text.endsWith('…')).toBe(true);
  });
});

describe('hatching', () => {
  it('stays under the curve: as much of it as the area asks for', () => {
    // Under a half sine, 100 wide and 40 high: area 2 x 40 x 100 / pi. Lines 0.5 mm apart take area / 0.5 of ink.
    const curve = Array.from({ length: 201 }, (_, i) => ({ x: i / 2, y: 40 * Math.sin((Math.PI * i) / 200) }));
    const lines = hatched(curve, 0.5);
    const ink = lines.reduce((sum, places) => sum + lengthOf(places), 0);
    expect(ink * 0.5).toBeGreaterThan((0.99 * 8000) / Math.PI);
    expect(ink * 0.5).toBeLessThan((1.01 * 8000) / Math.PI);
    for (const [from, to] of lines) {
      expect(to.y - from.y).toBeCloseTo(to.x - from.x, 9);
      for (const { x, y } of [from, to]) {
        expect(y).toBeGreaterThan(-1e-9);
        expect(y).toBeLessThan(40 * Math.sin((Math.PI * x) / 100) + 0.01);
      }
    }
  });
});

it('drawings stand in rows, each where there is room first, none over another', () => {
  const sizes = [60, 60, 90, 30, 200, 20].map((width, i) => ({ width, height: 30 + 10 * i }));
  const places = shelved(sizes, { width: 150, height: 140 }, 5);
  expect(places.map(({ sheet }) => sheet)).toEqual([0, 0, 0, 0, 1, 0]);
  places.forEach((a, i) =>
    places.slice(i + 1).forEach((b, k) => {
      const [one, other] = [sizes[i]!, sizes[i + 1 + k]!];
      const apart =
        a.sheet !== b.sheet ||
        a.left + one.width < b.left ||
        b.left + other.width < a.left ||
        a.down + one.height < b.down ||
        b.down + other.height < a.down;
      expect(apart).toBe(true);
    }),
  );
});

it('a bar measured on paper is the printer’s ratio; one that cannot be is refused', () => {
  expect(printedBy(97)).toBeCloseTo(0.97, 12);
  expect(printedBy(101.6)).toBeCloseTo(1.016, 12);
  for (const wrong of [0, 4, 50, 254, NaN, Infinity]) expect(printedBy(wrong)).toBeNull();
});
