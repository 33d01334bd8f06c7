/** The blank as it is drawn for paper and screen: its marks stand where the tape has them, and all of it can be read. */
import { describe, expect, it } from 'vitest';
import { tapeList } from '../../../src/core/marks/tape.ts';
import { feedOf } from '../../../src/core/solve/feed.ts';
import type { Marking } from '../../../src/core/job/kinds/marking.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import type { LengthUnit } from '../../../src/core/units/length.ts';
import { blankDrawing } from '../../../src/drawing/blank/blank.ts';
import { fromZero, type Measured } from '../../../src/drawing/blank/measured.ts';
import { lettering } from '../../../src/drawing/lettering.ts';
import type { Line, Picture } from '../../../src/drawing/types.ts';
import { screenLetters } from '../../../src/ui/kit/letters.ts';
import { secondRoundText } from '../../command-line.ts';
import { derived, tube } from '../../core/frame.ts';
import { fonts } from '../../exports/fonts.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { beyond, overlapping, wordsOf } from '../words-on.ts';

const paper = lettering(fonts);
const demo = derivedFrom(secondRoundText());
/** Dies that hold so much that tubes get grip at their ends. */
const gripping = derivedFrom(secondRoundText().replaceAll(/"leastGrip": [\d.]+/gu, '"leastGrip": 600'));
const hoop = tube(demo, 'hoop');
const leg = tube(gripping, 'leg');

const SIDE = 9;

function measured(of: SolvedTube, marking: Partial<Marking> = {}, unit: LengthUnit = 'in'): Measured {
  const feed = feedOf(
    { bent: [], feeds: [], lengthUnit: unit, marking: { from: 'A', mark: 'start', fine: false, ...marking } },
    of,
  );
  return { feed, tape: tapeList(of, feed)! };
}

const lines = ({ marks }: Picture, layer: string): Line[] =>
  marks.filter((mark) => mark.kind === 'line' && mark.layer === layer && mark.pen !== null) as Line[];

/** mm from the blank's end A of what is drawn at this x, and back; `width` is the drawing's. */
const along = (x: number, { tape }: Measured, width: number): number => ((x - SIDE) * tape.blank) / (width - 2 * SIDE);

const acrossAt = (picture: Picture, layer: string, by: Measured): number[] =>
  lines(picture, layer).map(({ places }) => along(places[0]!.x, by, picture.width));

describe('the marks on the blank', () => {
  it.each([
    ['A', 'start'],
    ['A', 'clamp'],
    ['B', 'start'],
    ['B', 'clamp'],
    ['B', 'middle'],
  ] as const)('from end %s, %s: stand as far from that end as the tape shows', (from, mark) => {
    for (const each of [hoop, leg]) {
      const by = measured(each, { from, mark, fine: true });
      const picture = blankDrawing(paper, each, by, 'in', 190);
      const wanted = by.tape.steps
        .map(({ marks: [only] }) => (from === 'A' ? only!.at : by.tape.blank - only!.at))
        .toSorted((a, b) => a - b);
      expect(wanted.length).toBeGreaterThan(1);
      const drawn = acrossAt(picture, `mark-${mark}`, by);
      expect(drawn).toEqual(wanted.map((at) => expect.closeTo(at, 9)));
      const [zero] = acrossAt(picture, 'zero', by);
      expect(zero).toBeCloseTo(from === 'A' ? 0 : by.tape.blank, 9);
    }
  });

  it('from the middle: as far to either side of it', () => {
    const by = measured(hoop, { from: 'middle', mark: 'tangents' });
    const picture = blankDrawing(paper, hoop, by, 'in', 190);
    const [zero] = acrossAt(picture, 'zero', by);
    expect(zero).toBeCloseTo(by.tape.zero, 9);
    const starts = acrossAt(picture, 'mark-start', by).map((at) => at - by.tape.zero);
    expect(starts).toHaveLength(4);
    expect(starts[0]! + starts[3]!).toBeCloseTo(0, 9);
    expect(starts[1]! + starts[2]!).toBeCloseTo(0, 9);
    expect(acrossAt(picture, 'mark-end', by)).toHaveLength(4);
  });

  it('have their bend, the figure of the tape and an arrow to where the bend lies', () => {
    const drawn = (unit: LengthUnit, from: 'A' | 'B') => {
      const { marks } = blankDrawing(paper, hoop, measured(hoop, { from }, unit), unit, 190);
      return {
        figures: marks.flatMap((mark) => (mark.kind === 'words' && mark.layer === 'figure' ? [mark.text] : [])),
        // Its tip is its first place.
        arrows: marks.flatMap((mark) => {
          if (mark.kind !== 'line' || mark.layer !== 'mark-start' || mark.fill !== 0) return [];
          const [tip, tail] = mark.places;
          return [tip!.x > tail!.x ? 'towards B' : 'towards A'];
        }),
      };
    };
    // As tests/golden/demo.txt has the hoop's starts: 519.27, 968.89, 1858.96 and 2476.12 mm from its sawn end A.
    const { figures, arrows } = drawn('in', 'A');
    expect(figures).toEqual(['1: 20 ⁷⁄₁₆\u200a−', '2: 38 ¹⁄₈\u200a−', '3: 73 ³⁄₁₆', '4: 97 ¹⁄₂\u200a−']);
    expect(arrows).toEqual(Array(4).fill('towards B'));
    expect(drawn('mm', 'B').figures[3]).toMatch(/^4: 519/u);
    expect(drawn('mm', 'B').arrows).toEqual(Array(4).fill('towards A'));
  });

  it.each(['A', 'B'] as const)('where the grip is sawn off, as the tape shows it from end %s', (from) => {
    const by = measured(leg, { from }, 'mm');
    const picture = blankDrawing(paper, leg, by, 'mm', 190);
    const sawn = [by.tape.grip[0], by.tape.blank - by.tape.grip[1]].filter((_, i) => by.tape.grip[i]! > 0);
    expect(sawn.length).toBeGreaterThan(0);
    expect(acrossAt(picture, 'mark-saw', by)).toEqual(sawn.map((at) => expect.closeTo(at, 9)));
    const shown = wordsOf(picture).flatMap(({ text }) => /^saw: (\d+)/u.exec(text)?.[1] ?? []);
    expect(shown.map(Number)).toEqual(sawn.map((at) => Math.round(from === 'A' ? at : by.tape.blank - at)));
  });

  it('of a tube with very many bends are lines alone, and the drawing is low', () => {
    const by = measured(hoop);
    const many = { ...by, tape: { ...by.tape, steps: Array(7).fill(by.tape.steps).flat() } };
    const picture = blankDrawing(paper, hoop, many, 'in', 190);
    expect(lines(picture, 'mark-start')).toHaveLength(28);
    expect(wordsOf(picture).filter(({ layer }) => layer === 'figure')).toEqual([]);
    expect(picture.height).toBeLessThan(blankDrawing(paper, hoop, by, 'in', 190).height);
  });

  it('a mark beyond the end of the blank has its figure and no line', () => {
    const by = measured(leg, { mark: 'clamp' });
    const [first, ...others] = by.tape.steps;
    const off = { ...first!, marks: [{ ...first!.marks[0]!, onBlank: false }] };
    const picture = blankDrawing(paper, leg, { ...by, tape: { ...by.tape, steps: [off, ...others] } }, 'in', 190);
    expect(lines(picture, 'mark-clamp')).toHaveLength(others.length);
    const figures = wordsOf(picture).filter(({ layer }) => layer === 'figure');
    expect(figures.filter(({ text }) => !text.startsWith('saw'))).toHaveLength(by.tape.steps.length);
  });
});

describe('the blank', () => {
  it('bends where the tube does, is crossed out where grip is sawn off, and has throats and nodes at their places', () => {
    const by = measured(leg, { from: 'B' });
    const [grip] = by.tape.grip;
    expect(grip).toBeGreaterThan(50);
    const picture = blankDrawing(paper, leg, by, 'in', 190);
    const [a] = leg.ends;
    const node = a.allowance - a.tip! + grip;
    const edges = lines(picture, 'zone').filter(({ places }) => places[0]!.x === places[1]!.x);
    expect(edges.map(({ places }) => along(places[0]!.x, by, 190))).toEqual(
      leg.bends.flatMap(({ start, end }) => [start + node, end + node].map((at) => expect.closeTo(at, 9))),
    );
    const scrap = lines(picture, 'scrap').flatMap(({ places }) => places.map(({ x }) => along(x, by, 190)));
    expect([Math.min(...scrap), Math.max(...scrap)]).toEqual([expect.closeTo(0, 9), expect.closeTo(grip, 9)]);
    expect(acrossAt(picture, 'throat', by)[0]).toBeCloseTo(node + a.throat!, 9);
    const rings = lines(picture, 'node').map(({ places }) => {
      const xs = places.map(({ x }) => x);
      return along((Math.min(...xs) + Math.max(...xs)) / 2, by, 190);
    });
    expect(rings[0]).toBeCloseTo(node, 6);
    expect(fromZero(leg, by)[0]).toBeCloseTo(by.tape.blank - node, 9);
  });

  it('has a bend at the zero named beside it', () => {
    const arch = tube(
      derived({
        nodes: { a: [0, 700, 0], b: [0, 600, 900], c: [0, 0, 1300], d: [0, -600, 900], e: [0, -700, 0] },
        members: [{ id: 'arch', path: ['a', 'b', 'c', 'd', 'e'] }],
      }),
      'arch',
    );
    const by = measured(arch, { from: 'middle' });
    expect(by.feed.from).toBe('middle');
    const picture = blankDrawing(paper, arch, by, 'in', 190);
    const over = wordsOf(picture).filter(({ layer }) => layer === 'name');
    expect(over.map(({ text }) => text.slice(0, 1))).toEqual(['A', 'B', '1', '2', '3']);
    expect(overlapping(picture, paper)).toEqual([]);
  });
});

it.each([
  ['paper', paper],
  ['the screen', screenLetters],
])('on %s, at every width from a telephone on: nothing stands over another thing or beyond the edge', (_, letters) => {
  for (const width of [75, 87, 99.4, 150, 190, 240]) {
    for (const mark of ['start', 'tangents', 'clamp'] as const) {
      for (const from of ['A', 'B', 'middle'] as const) {
        for (const unit of ['in', 'mm'] as const) {
          for (const each of [...demo.tubes, leg]) {
            const picture = blankDrawing(letters, each, measured(each, { from, mark, fine: true }, unit), unit, width);
            const where = `${each.name} ${from} ${mark} ${unit} ${width}`;
            expect(overlapping(picture, letters), where).toEqual([]);
            expect(beyond(picture, letters), where).toEqual([]);
          }
        }
      }
    }
  }
});
