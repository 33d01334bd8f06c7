/** An end unrolled, as it is drawn: to scale, tip and throat where they are, what comes off under the line. */
import { describe, expect, it } from 'vitest';
import type { TubeEnd } from '../../src/core/solve/types.ts';
import { unrolledEnd } from '../../src/drawing/unrolled-end.ts';
import type { Line, Picture } from '../../src/drawing/types.ts';
import { screenLetters } from '../../src/ui/kit/letters.ts';
import { demoText, secondRoundText } from '../command-line.ts';
import { tube } from '../core/frame.ts';
import { derivedFrom } from '../exports/jobs.ts';
import { beyond, overlapping, wordsOf } from './words-on.ts';

const demo = derivedFrom(demoText());
const SPACE = { width: 110, height: 45 };

const lines = ({ marks }: Picture, layer: string): Line[] =>
  marks.filter((mark) => mark.kind === 'line' && mark.layer === layer) as Line[];

/** Of the sheet: its edges, and mm on paper for one on the tube. */
function sheetOf(picture: Picture, outerDiameter: number) {
  const corners = lines(picture, 'flat')[0]!.places;
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [foot, top] = [Math.min(...ys), Math.max(...ys)];
  return { left, right, foot, top, scale: (right - left) / (Math.PI * outerDiameter) };
}

describe('an end unrolled', () => {
  const diagonal = tube(derivedFrom(secondRoundText()), 'diagonal');
  const { outerDiameter } = diagonal.section;
  const [end] = diagonal.ends;
  const picture = unrolledEnd(screenLetters, diagonal, 0, 'in', SPACE);
  const { left, right, foot, top, scale } = sheetOf(picture, outerDiameter);
  const [cut] = lines(picture, 'cut').map(({ places }) => places) as [Line['places']];

  it('is one turn wide from seam to seam, at one scale both ways, the reference in the middle', () => {
    expect([cut[0]!.x, cut.at(-1)!.x]).toEqual([expect.closeTo(left, 9), expect.closeTo(right, 9)]);
    const heights = cut.map(({ y }) => y);
    const rise = Math.max(...heights) - Math.min(...heights);
    expect(rise / scale).toBeCloseTo(end.throat! - end.tip!, 9);
    expect(lines(picture, 'reference')[0]!.places[0]!.x).toBeCloseTo((left + right) / 2, 9);
    expect(picture.width).toBeLessThanOrEqual(SPACE.width + 1e-9);
    expect(picture.height).toBeLessThanOrEqual(SPACE.height + 1e-9);
  });

  it('names throat and tip at their places on the line, with what is read for them elsewhere', () => {
    const spots = lines(picture, 'level')
      .filter(({ closed }) => !closed)
      .map(({ places }) => places.at(-1)!);
    const wanted = [end.high!, end.lows[0]!].map(({ phi }) => (left + right) / 2 + (phi * outerDiameter * scale) / 2);
    expect(spots.map(({ x }) => x)).toEqual(wanted.map((x) => expect.closeTo(x, 9)));
    for (const spot of spots) {
      expect(Math.min(...cut.map(({ x, y }) => Math.hypot(x - spot.x, y - spot.y)))).toBeLessThan(1e-9);
    }
    // That demo's page: throat 61.18 mm, tip 0.00.
    expect(
      wordsOf(picture)
        .slice(0, 4)
        .map(({ text }) => text),
    ).toEqual(['2 ¹³⁄₃₂', 'throat', '0', 'tip']);
  });

  it('is hatched from the foot up to the line, and the tube stands from the line to the top', () => {
    const under = (x: number): number => {
      const i = cut.findIndex((place) => place.x >= x - 1e-9);
      const [a, b] = [cut[Math.max(0, i - 1)]!, cut[i]!];
      return a.x === b.x ? b.y : a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
    };
    const hatching = lines(picture, 'scrap').flatMap(({ places }) => places);
    expect(hatching.length).toBeGreaterThan(60);
    for (const { x, y } of hatching) {
      expect(y).toBeGreaterThanOrEqual(foot - 1e-9);
      expect(y).toBeLessThanOrEqual(under(x) + 1e-6);
    }
    const standing = lines(picture, 'tube')[0]!.places;
    expect(standing.slice(0, cut.length)).toEqual(cut);
    expect(standing.slice(cut.length).map(({ y }) => y)).toEqual([top, top]);
  });

  it('is an empty sheet where nothing reaches the end', () => {
    const nothing = new Float64Array(360).fill(Number.NaN);
    const cutter = { ...end.cutter, plateNormal: end.reference, sleeves: [] };
    const missed: TubeEnd = {
      ...end,
      cutter,
      outer: nothing,
      inner: nothing,
      tip: null,
      throat: null,
      lows: [],
      high: null,
    };
    const empty = unrolledEnd(screenLetters, { ...diagonal, ends: [missed, missed] }, 0, 'in', SPACE);
    expect(['cut', 'bore', 'scrap', 'tube', 'level'].flatMap((layer) => lines(empty, layer))).toEqual([]);
    expect(wordsOf(empty).map(({ text }) => text)).toContain('0°');
  });

  it('can be read in little room as well as in much: no words over others, nothing beyond the edge', () => {
    for (const each of demo.tubes) {
      for (const which of [0, 1] as const) {
        for (const space of [
          { width: 70, height: 26 },
          { width: 99.4, height: 51 },
          { width: 140, height: 26 },
        ]) {
          for (const unit of ['in', 'mm'] as const) {
            const drawn = unrolledEnd(screenLetters, each, which, unit, space);
            const where = `${each.name} ${which} ${unit} ${space.width}`;
            expect(overlapping(drawn, screenLetters), where).toEqual([]);
            expect(beyond(drawn, screenLetters), where).toEqual([]);
          }
        }
      }
    }
  });
});
