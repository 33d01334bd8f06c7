/**
 * Words and pictures that a literal reader took in two ways: each now says one thing, on paper and screen alike. What they say is held
 * against the fabrication file, or against the picture's own lines.
 */
import { unwatched } from '../../src/drawing/going.ts';
import { describe, expect, it } from 'vitest';
import type { Derived } from '../../src/core/derive.ts';
import { layFlat } from '../../src/core/run/lay-flat.ts';
import { throatInWords } from '../../src/core/words/cope-mark.ts';
import { rotationReading, type RotationReading } from '../../src/core/run/rotation-reading.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import type { Line, Mark } from '../../src/drawing/types.ts';
import { TURN_PICTURE, turnPicture } from '../../src/drawing/end-on/turn.ts';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { layoutDxf } from '../../src/exports/layout/layout.ts';
import { layoutDrawing } from '../../src/exports/layout/layout-drawing.ts';
import { wrapTemplate } from '../../src/exports/wraps/wrap-template.ts';
import { paperWrap } from '../../src/core/cope/wrap.ts';
import { secondRoundText } from '../command-line.ts';
import { readDxf, textsOf } from './dxf.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { taped } from './taped.ts';

const demo = derivedFrom(JSON.stringify({ ...JSON.parse(secondRoundText()), lengthUnit: 'mm' }));
const face = lettering(fonts);
const wordsIn = (marks: readonly Mark[]): string[] =>
  marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));

describe('the level on its bar', () => {
  const leg = demo.byId.get('leg')!;
  const plain = rotationReading(
    leg,
    [1, 2].map((bend) => ({ bend, front: 'A' as const })),
    1,
  )!;
  const shapes = (reading: RotationReading): Line[] =>
    turnPicture(reading).flatMap((mark) => (mark.kind === 'line' && mark.closed ? [mark] : []));

  it.each([0.5, 21.4, 60, 90, 120, 158.6, 180])(
    'turned by %d° it stands clear of the leg, within the picture',
    (turn) => {
      for (const legTo of ['left', 'right'] as const) {
        for (const sense of ['clockwise', 'anticlockwise'] as const) {
          const reading: RotationReading = { ...plain, by: 'level', turn, sense, legTo };
          const drawn = shapes(reading);
          // The leg is the grey one; along it runs its longest side.
          const grey = drawn.find(({ fill }) => fill !== null && fill > 0 && fill < 1)!;
          const [a, b] = grey.places;
          const long = Math.hypot(b!.x - a!.x, b!.y - a!.y);
          const out = ({ x, y }: { x: number; y: number }) =>
            ((b!.x - a!.x) * (y - a!.y) - (b!.y - a!.y) * (x - a!.x)) / long;
          const legSides = grey.places.map(out);
          // Bar and level are blocks of four corners, as the legs are; the block under the bar is the only thing that bridges them.
          const blocks = drawn.filter(({ places }) => places.length === 4).slice(2);
          const [stand, bar, level] = blocks;
          expect(blocks).toHaveLength(3);
          for (const piece of [bar!, level!]) {
            const gaps = piece.places.map((place) =>
              Math.max(out(place) - Math.max(...legSides), Math.min(...legSides) - out(place)),
            );
            expect(Math.min(...gaps), `${legTo} ${sense}`).toBeGreaterThan(1.5);
            // And the bar leans as the tube is turned: 0 to 90, and back.
            const [p, q] = piece.places;
            const lean = Math.abs((Math.atan2(q!.y - p!.y, q!.x - p!.x) * 180) / Math.PI);
            expect(Math.min(lean, 180 - lean)).toBeCloseTo(Math.min(turn, 180 - turn), 6);
            for (const { x, y } of piece.places) {
              expect(x > 0 && x < TURN_PICTURE.width && y > 0 && y < TURN_PICTURE.height - 3).toBe(true);
            }
          }
          // The block stands on the round of the tube, in the picture's middle.
          const centre = { x: TURN_PICTURE.width / 2, y: stand!.places.reduce((sum, { y }) => sum + y, 0) / 4 };
          expect(Math.abs(stand!.places.reduce((sum, { x }) => sum + x, 0) / 4 - centre.x)).toBeLessThan(5);
        }
      }
    },
  );
  it('is named with what it reads, so that no other line bears its name', () => {
    const level = wordsIn(turnPicture({ ...plain, by: 'level' }));
    expect(level).toEqual([plain.seenFrom, `level on bar ${plain.reads}°`]);
    expect(wordsIn(turnPicture({ ...plain, by: 'wheel' }))[1]).toMatch(/^wheel [\d.]+°$/u);
  });
});

const templateOf = (frame: Derived, id: string, which: 0 | 1) => {
  const end = { tube: frame.byId.get(id)!, which };
  const wrap = paperWrap(end.tube, which, 'outer', 'mm')!;
  return { wrap, ...wrapTemplate(frame, face, end, wrap, 'mm', 190, 4) };
};

describe('throat and deep-bite side', () => {
  it('are told apart where they stand apart by more than half a degree, and only there', () => {
    let [apart, together] = [0, 0];
    for (const tube of fabrication(demo).tubes) {
      tube.ends.forEach((end, i) => {
        const which = i as 0 | 1;
        if (end.cuts.length !== 1) return;
        const { clocking, offSquare } = end.cuts[0]!;
        const { wrap, marks } = templateOf(demo, tube.id, which);
        const throat = (wrap.throat.phi * 180) / Math.PI;
        const far = (to: number) => Math.abs(((throat - to + 540) % 360) - 180);
        const off = Math.abs(offSquare) < 0.05 ? Math.min(far(clocking), far(clocking + 180)) : far(clocking);
        if (Math.abs(off - 0.5) < 0.02) return;
        const words = wordsIn(marks).join(' ');
        const stated =
          /Deep-bite side (.*?): (?:sets the saw|deepest on a straight run)\. Throat ([\d.]+)° (clockwise|anticlockwise): deepest/u.exec(
            words,
          );
        expect(stated !== null, `${tube.name} ${which}: ${off}`).toBe(off > 0.5);
        if (stated === null) together += 1;
        else {
          apart += 1;
          expect(Math.abs(Number(stated[2]) * (stated[3] === 'clockwise' ? 1 : -1) - throat)).toBeLessThan(0.051);
        }
      });
    }
    expect(apart).toBeGreaterThan(1);
    expect(together).toBeGreaterThan(15);
  });
  it('in one sentence for sheet, Shop and template', () => {
    const leg = demo.byId.get('leg')!;
    expect(throatInWords(leg, 0, leg.ends[0].high!.phi)).toBe(
      'Deep-bite side 35.0° clockwise: deepest on a straight run. Throat 30.8° clockwise: deepest on this bend.',
    );
  });
});

it('a tip at the seam has a stroke and its name at both edges, which both are the seam', () => {
  const { wrap, marks } = templateOf(demo, 'hoop', 0);
  expect(Math.abs(Math.abs(wrap.tips[0]!.phi) - Math.PI)).toBeLessThan(1e-6);
  const tips = marks.flatMap((mark) => (mark.kind === 'words' && mark.text === 'tip' ? [mark] : []));
  expect(tips.map(({ anchor }) => anchor)).toEqual(['start', 'end']);
  for (const [i, x] of [0, wrap.width].entries()) {
    const { at } = tips[i]!;
    expect(Math.abs(at.x - x)).toBeLessThan(2);
    const beside = marks.some(
      (mark) =>
        mark.kind === 'line' &&
        mark.places.length === 2 &&
        mark.pen !== null &&
        mark.pen.width > 0.5 &&
        mark.places.every((place) => Math.abs(place.x - x) < 1e-9) &&
        Math.min(...mark.places.map(({ y }) => y)) <= at.y &&
        Math.max(...mark.places.map(({ y }) => y)) >= at.y,
    );
    expect(beside).toBe(true);
  }
});

describe('a layout and a sheet of the same tube', () => {
  const flat = fabrication(demo).tubes.filter(({ id }) => layFlat(demo.byId.get(id)!) !== null);

  it('have one width and one height over all, found among points of the tube as it comes off the bender', () => {
    expect(flat.length).toBeGreaterThan(1);
    for (const tube of flat) {
      const solved = demo.byId.get(tube.id)!;
      const drawing = layoutDrawing(solved, layFlat(solved)!, [], 'mm', false, true);
      const over = wordsIn(drawing.marks).flatMap((text) => /^over all ([\d.]+) mm$/u.exec(text)?.[1] ?? []);
      const [width, height] = [...taped(tube, solved.section.outerDiameter).values()];
      [width, height].forEach((mm, i) => expect(Math.abs(Number(over[i]) - mm!), tube.name).toBeLessThan(0.052));
      // What the cope leaves of the sawn end is drawn, and where it is sawn.
      const sawn = drawing.marks.filter((mark) => mark.layer === 'SAWN');
      expect(sawn).toHaveLength(2);
    }
  });
  it('call the two ways from node to node by two names', async () => {
    const texts = textsOf(readDxf((await layoutDxf(demo, unwatched)).bytes));
    const across = texts.flatMap((text) => /^node to node, straight across ([\d.]+) mm$/u.exec(text)?.[1] ?? []);
    const straight = flat.map(({ corners }) => Math.hypot(...corners[0]!.map((x, i) => x - corners.at(-1)![i]!)));
    expect(across.map(Number).toSorted((a, b) => a - b)).toEqual(
      straight.toSorted((a, b) => a - b).map((mm) => Math.round(mm * 10) / 10),
    );
    expect(texts.filter((text) => text.startsWith('node to node'))).toHaveLength(across.length);
  });
});
