/** The pictures of an end with many cuts can be read. */
import { unwatched } from '../../src/drawing/going.ts';
import { describe, expect, it } from 'vitest';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { derived } from '../core/frame.ts';
import { fonts } from '../exports/fonts.ts';
import { overlapsOf } from '../exports/overlap.ts';
import { readPdf } from '../exports/pdf.ts';

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
