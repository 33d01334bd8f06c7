/** The bent tube's picture: what a dimension's line spans is what its row says, the tube is to scale, and nothing stands on anything. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArcPiece } from '../../src/core/geometry/path.ts';
import { cross, dot, length, subtract } from '../../src/core/geometry/vector.ts';
import { checkDimensions } from '../../src/core/run/check-dimensions.ts';
import { checkPlaces } from '../../src/core/run/check-places.ts';
import { farthestOf, reachOf, sawnTube, type SawnTube } from '../../src/core/run/sawn-tube.ts';
import { bentViews, letteredChecks, showsInFull, viewsOf } from '../../src/drawing/bent/bent-views.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import { project } from '../../src/drawing/projection.ts';
import type { Line, Picture, Place2, Words } from '../../src/drawing/types.ts';
import { demoText } from '../command-line.ts';
import { drawn } from '../draws.ts';
import { fonts } from '../exports/fonts.ts';
import { derivedFrom } from '../exports/jobs.ts';
import { fixed } from '../laws/frames.ts';
import { anyTube, bar } from './bent-tubes.ts';
import { beyond, overlapping, wordsOf } from './words-on.ts';

const letters = lettering(fonts);
const ROOMS = [
  { width: 60, height: 48 },
  { width: 86, height: 70 },
];

const demo = derivedFrom(demoText()).tubes.filter(({ bends }) => bends.length > 0);

interface Drawn {
  readonly letter: string;
  /** Between the tips of its arrowheads, mm of the picture. */
  readonly spans: number;
}

/** As a reader of the picture has them: a letter, and the two arrowheads of its line, which come before it. */
function dimensionsOf({ marks }: Picture): Drawn[] {
  const own = marks.filter(({ layer }) => layer === 'check');
  return own.flatMap((mark, i) => {
    if (mark.kind !== 'words') return [];
    const [one, other] = own.slice(0, i).filter(isArrow).slice(-2) as [Line, Line];
    const [a, b] = [one.places[0]!, other.places[0]!];
    return [{ letter: mark.text, spans: Math.hypot(a.x - b.x, a.y - b.y) }];
  });
}

const isArrow = (mark: Picture['marks'][number]): mark is Line => mark.kind === 'line' && mark.closed;

/** mm of the picture a mm of the tube: from the wall to wall of a piece that is drawn in one outline. */
function scaleOf({ marks }: Picture, { outerDiameter }: SawnTube): number {
  const walls = marks.filter(
    (mark): mark is Line => mark.kind === 'line' && mark.layer === 'steel' && mark.places.length === 4,
  );
  const [first, , , last] = walls[0]!.places as [Place2, Place2, Place2, Place2];
  return Math.hypot(first.x - last.x, first.y - last.y) / outerDiameter;
}

function held(form: SawnTube, room: { width: number; height: number }): void {
  const picture = bentViews(letters, form, room);
  const lettered = letteredChecks(form).filter(({ letter }) => letter !== null);
  const scale = scaleOf(picture, form);
  const dimensions = dimensionsOf(picture);
  expect(dimensions.map(({ letter }) => letter).toSorted()).toEqual(lettered.map(({ letter }) => letter));
  for (const { check, letter } of lettered) {
    const { spans } = dimensions.find((each) => each.letter === letter)!;
    expect(Math.abs(spans / scale - check.value)).toBeLessThan(0.06);
  }
  expect(overlapping(picture, letters)).toEqual([]);
  expect(beyond(picture, letters)).toEqual([]);
  expect(picture.height).toBeLessThanOrEqual(room.height);
  expect(onLines(picture)).toEqual([]);
}

/** Words that a line of the tube or of a dimension runs through. */
function onLines(picture: Picture): string[] {
  const lines = picture.marks.filter((mark): mark is Line => mark.kind === 'line' && mark.pen !== null);
  return wordsOf(picture)
    .filter((words) => lines.some(({ places, closed }) => through(words, closed ? [...places, places[0]!] : places)))
    .map(({ text }) => text);
}

/** Looked at every fifth of a millimetre. */
function through({ at, text, size, bold }: Words, places: readonly Place2[]): boolean {
  const half = letters.width(text, size, bold) / 2;
  return places.slice(1).some((to, i) => {
    const from = places[i]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 0.2));
    return Array.from({ length: steps + 1 }, (_, k) => k / steps).some((t) => {
      const [x, y] = [from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)];
      return Math.abs(x - at.x) < half && y > at.y && y < at.y + 0.73 * size;
    });
  });
}

describe('the picture of a bent tube with its check dimensions', () => {
  it.each(demo.map((tube) => [tube.name, tube] as const))('of the demo’s %s', (_, tube) => {
    for (const room of ROOMS) held(sawnTube(tube), room);
  });

  it('of any tube of 1 to 6 bends, flat and not: each line spans what its row says; no word stands on another or on a line', () => {
    fc.assert(
      fc.property(anyTube, (form) => held(form, ROOMS[1]!)),
      fixed(drawn(30, 300)),
    );
  });

  it('letters the ends and numbers the bends', () => {
    const hoop = sawnTube(demo.find(({ id }) => id === 'hoop')!);
    const names = wordsOf(bentViews(letters, hoop, ROOMS[0]!)).map(({ text }) => text);
    expect(names.toSorted()).toEqual(['1', '2', '3', '4', 'A', 'B', 'a', 'b', 'c', 'd', 'e', 'f', 'g']);
  });

  it('a flat tube has one view and all but what it stands off by; another two, square to each other, and that in the second', () => {
    fc.assert(
      fc.property(anyTube, (form) => {
        const checks = checkDimensions(form);
        const views = viewsOf(form, checks);
        const isFlat = checks[0]!.lies.along !== 'ends-on-first-bend';
        expect(views.length).toBe(isFlat ? 1 : 2);
        for (const { right, up, toEye } of views) expect(length(subtract(cross(right, up), toEye))).toBeLessThan(1e-9);
        if (!isFlat) expect(Math.abs(dot(views[0]!.toEye, views[1]!.toEye))).toBeLessThan(1e-9);
        const unlettered = letteredChecks(form).flatMap(({ check, letter }) => (letter === null ? [check.id] : []));
        if (isFlat) expect(unlettered).toEqual(checks.some(({ id }) => id === 'stands-off') ? ['stands-off'] : []);
        else expect(unlettered).not.toContain('stands-off');
        // What is left out is shorter in either view than it is.
        for (const check of checks.filter(({ id }) => unlettered.includes(id) && id !== 'stands-off'))
          for (const view of views) {
            const { from, to } = checkPlaces(form, check);
            const [a, b] = [project(view, from), project(view, to)];
            expect(showsInFull(view, form, check)).toBe(false);
            expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(check.value);
          }
      }),
      fixed(drawn(20, 400)),
    );
  });

  it('draws bends round and both walls at their distance: a U of 40 on 100 has walls of 80 and 120', () => {
    const form = bar([
      [0, 0, 0],
      [0, 0, 500],
      [400, 0, 500],
      [400, 0, 0],
    ]);
    const picture = bentViews(letters, form, ROOMS[0]!);
    const scale = scaleOf(picture, form);
    const bends = picture.marks.filter(
      (mark): mark is Line => mark.kind === 'line' && mark.layer === 'steel' && mark.places.length > 4,
    );
    expect(bends.length).toBe(2);
    for (const { places } of bends) {
      const half = places.length / 2;
      const radii = [places.slice(0, half), places.slice(half)].map((wall) => radiusOf(wall) / scale);
      expect(radii.toSorted((a, b) => a - b)).toEqual([expect.closeTo(80, 6), expect.closeTo(120, 6)]);
    }
  });
});

/** Of the circle through the first, the middle and the last place. */
function radiusOf(wall: readonly Place2[]): number {
  const [a, b, c] = [wall[0]!, wall[Math.floor(wall.length / 2)]!, wall.at(-1)!];
  const side = (p: Place2, q: Place2): number => Math.hypot(p.x - q.x, p.y - q.y);
  const area = Math.abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)) / 2;
  return (side(a, b) * side(b, c) * side(c, a)) / (4 * area);
}

describe('the two places of a check dimension', () => {
  it('lie as far apart along it as it says, and on the tube', () => {
    fc.assert(
      fc.property(anyTube, (form) => {
        for (const check of checkDimensions(form)) {
          const { from, to, along } = checkPlaces(form, check);
          expect(dot(subtract(to, from), along)).toBeCloseTo(check.value, 6);
          expect(length(along)).toBeCloseTo(1, 9);
          if (check.kind === 'centre') expect(length(subtract(to, from))).toBeCloseTo(check.value, 6);
        }
        const normal = form.pieces.find((piece): piece is ArcPiece => piece.kind === 'arc')!.normal;
        for (const radius of [0, form.outerDiameter / 2])
          for (const way of [normal, form.pieces[0]!.startTangent, cross(normal, form.pieces[0]!.startTangent)])
            expect(dot(farthestOf(form.pieces, radius, way), way)).toBeCloseTo(reachOf(form.pieces, radius, way), 6);
      }),
      fixed(drawn(20, 400)),
    );
  });
});
