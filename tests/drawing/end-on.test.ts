/** Names round a ring keep clear of one another, and the picture of an end with many cuts can be read. */
import { unwatched } from '../../src/drawing/going.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from '../../src/drawing/end-on/spread.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { derived } from '../core/frame.ts';
import { fonts } from '../exports/fonts.ts';
import { overlapsOf } from '../exports/overlap.ts';
import { readPdf } from '../exports/pdf.ts';

const APART = 0.35;

/** Differences from each to the next round the ring, all of a turn. */
function gapsOf(directions: readonly number[]): number[] {
  const turn = 2 * Math.PI;
  const sorted = directions.map((at) => ((at % turn) + turn) % turn).toSorted((a, b) => a - b);
  return sorted.map((at, i) => (i + 1 < sorted.length ? sorted[i + 1]! : sorted[0]! + turn) - at);
}

describe('names round a ring', () => {
  const wanted = fc.array(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), { minLength: 1, maxLength: 12 });

  it('stand apart, wherever they would be', () => {
    fc.assert(
      fc.property(wanted, (directions) => {
        const placed = spread(directions, APART);
        if (directions.length > 1) expect(Math.min(...gapsOf(placed))).toBeGreaterThan(APART - 1e-9);
      }),
      { seed: 20261129, numRuns: 500 },
    );
  });

  it('stay where they would be when there is room', () => {
    const turn = 2 * Math.PI;
    const directions = [3.1, -3.1 + 1, 0.2, -0.4, 1.5];
    spread(directions, APART).forEach((at, i) => {
      const off = (((at - directions[i]! + Math.PI) % turn) + turn) % turn;
      expect(off - Math.PI).toBeCloseTo(0, 12);
    });
  });

  it('stand about the middle of where they would be, equal ones in their order', () => {
    const placed = spread([1, 1, 1.1], APART);
    expect((placed[0]! + placed[1]! + placed[2]!) / 3).toBeCloseTo(3.1 / 3, 12);
    expect(placed[1]! - placed[0]!).toBeCloseTo(APART, 12);
    expect(placed[2]! - placed[1]!).toBeCloseTo(APART, 12);
  });
});

describe('an end cut to five tubes', () => {
  // Three of them lie almost in one plane with the coped tube, so that their deep-bite sides stand almost together.
  const runs = { r: [0, 500, 40], s: [0, 520, 60], t: [0, 480, -30], u: [300, -400, 0], v: [-100, -300, 400] };
  const frame = derived({
    nodes: { n: [0, 0, 0], far: [900, 20, 10], ...runs },
    members: [
      ...Object.keys(runs).map((id) => ({
        id,
        path: [id, 'n'],
        ends: [{ fit: 'square' }, { fit: 'square' }],
      })),
      {
        id: 'coped',
        path: ['n', 'far'],
        ends: [{ fit: 'cope', against: Object.keys(runs) }, { fit: 'square' }],
      },
    ],
  });

  it('is drawn and lettered without a word over another', async () => {
    const { bytes } = await sheetsPdf(frame, fonts, plainPrint, unwatched);
    const { pages } = await readPdf(bytes);
    expect(pages.length).toBeGreaterThan(6);
    expect(pages.flatMap((page) => overlapsOf(page))).toEqual([]);
  });
});
