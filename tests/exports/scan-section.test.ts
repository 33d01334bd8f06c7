/** A scan's section on paper, read back by another program: at full size, beside the tube that it is for, and no farther round it than is said. */
import { describe, expect, it } from 'vitest';
import { planeOfTube } from '../../src/core/run/tube-plane.ts';
import { layFlat } from '../../src/core/run/lay-flat.ts';
import { dot, subtract } from '../../src/core/geometry/vector.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { scanSectionPdf, type ScanCut } from '../../src/exports/layout/scan-section-pdf.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { derived } from '../core/frame.ts';
import { fonts } from './fonts.ts';
import { readPdf } from './pdf.ts';
import { linesOfPdf } from './pdf-lines.ts';

const FRAME = derived({
  nodes: { a: [0, -300, 0], b: [40, -300, 500], c: [40, 300, 500], d: [0, 300, 0] },
  members: [
    { id: 'hoop', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] },
    { id: 'bar', path: ['a', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] },
  ],
});
const HOOP = FRAME.byId.get('hoop')!;
const { outside } = layFlat(HOOP)!;

const cut = (curves: ScanCut['curves'], dots: ScanCut['dots'] = []): ScanCut => ({
  name: 'Shell',
  accuracy: 3,
  curves,
  dots,
});

const pdf = async (cuts: readonly ScanCut[], tube = 'hoop') =>
  scanSectionPdf(FRAME, tube, cuts, fonts, plainPrint, unwatched);

describe('the plane of a tube', () => {
  it('holds its corners; a straight one has none', () => {
    const { point, normal } = planeOfTube(HOOP)!;
    for (const corner of HOOP.corners) expect(Math.abs(dot(subtract(corner, point), normal))).toBeLessThan(1e-9);
    expect(planeOfTube(FRAME.byId.get('bar')!)).toBeNull();
  });
});

describe('the section on paper', () => {
  it('is as long as it is, up to 150 mm round the tube and no farther', async () => {
    const [x, y] = [(outside.left + outside.right) / 2, (outside.bottom + outside.top) / 2];
    const inside = [
      { x: x - 10, y: y - 8.5 },
      { x: x + 10, y: y + 8.5 },
    ];
    const through = [
      { x: outside.left - 1000, y },
      { x: outside.left - 120, y },
    ];
    const beyond = [
      { x: outside.right + 200, y: 0 },
      { x: outside.right + 200, y: 33.25 },
    ];
    const { bytes, fileName } = await pdf([cut([inside, through, beyond])]);
    expect(fileName).toBe('scan-section.pdf');
    const [, ...sheets] = await linesOfPdf(bytes); // after the map, which is small
    const lengths = sheets
      .flat()
      .map((places) =>
        places.slice(1).reduce((sum, [px, py], i) => sum + Math.hypot(px - places[i]![0], py - places[i]![1]), 0),
      );
    const has = (length: number) => lengths.some((each) => Math.abs(each - length) < 0.01);
    expect(has(Math.hypot(20, 17))).toBe(true);
    expect(has(30)).toBe(true);
    expect(has(33.25)).toBe(false);
  });

  it('says of what it is, how sure, and that a tape has the last word', async () => {
    const { pages } = await readPdf((await pdf([cut([], [{ x: outside.left, y: outside.top }])])).bytes);
    expect(JSON.stringify(pages)).toContain('Scan in the plane of 1 hoop');
    expect(JSON.stringify(pages)).toContain('Shell, to 3');
  });

  it('is none of a straight tube', async () => {
    await expect(pdf([cut([])], 'bar')).rejects.toThrow('does not lie in one plane');
  });
});
