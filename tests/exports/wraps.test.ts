/** Flat patterns as files, read back by programs that are not ours and held to the fabrication file. */
import { unwatched } from '../../src/drawing/going.ts';
import { describe, expect, it } from 'vitest';
import type { ILwpolylineEntity } from 'dxf-parser';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { wrapsPdf } from '../../src/exports/wraps/wraps-pdf.ts';
import { wrapsDxf, wrapsSvg } from '../../src/exports/wraps/wraps.ts';
import { auditAll, auditDxf, hasEzdxf, outlinesOf, readDxf, textsOf } from './dxf.ts';
import { fonts } from './fonts.ts';
import { bentTube, branchAt60, derivedDemo, derivedFrom } from './jobs.ts';
import { readPdf } from './pdf.ts';

const demo = derivedDemo();
/** Made once. */
const demoDxf = wrapsDxf(demo, unwatched);
const demoSvgs = wrapsSvg(demo, unwatched);

/** A job with one name put to every name there is. */
function jobNamed(name: string) {
  const job = JSON.parse(JSON.stringify(branchAt60().job)) as Record<string, { name?: string }[]>;
  for (const list of ['members', 'nodes', 'sections']) for (const record of job[list]!) record.name = name;
  return derivedFrom(JSON.stringify({ ...job, name }));
}

const BAD_NAMES: readonly (readonly [string, string])[] = [
  ['quotes and commands', `quote " ' < > & %%c ^J \\U+0041`],
  ['line breaks', 'line\nbreak\r\n0\nEOF\n'],
  ['emoji', 'weld 🔥 here'],
  ['right to left', '\u202eright to left אבג\u202c'],
  ['a formula', '=cmd()|calc'],
  ['a path', '../../etc/passwd'],
  ['300 letters', 'x'.repeat(300)],
  ['controls and half a sign', '\u0000\u0007\ud800'],
];

/** The outline's places along the cut, left to right, x and y from its lower left corner. */
function cutOf(vertices: readonly { readonly x: number; readonly y: number }[]) {
  const left = Math.min(...vertices.map(({ x }) => x));
  const right = Math.max(...vertices.map(({ x }) => x));
  const top = Math.max(...vertices.map(({ y }) => y));
  const cut = vertices.filter(({ y }) => y < top - 1e-9);
  return { width: right - left, height: top - Math.min(...cut.map(({ y }) => y)), top, left, cut };
}

/** Trim along the curve at phi, degrees from the middle of the sheet, seam opposite the reference. */
function trimAt({ left, width, cut }: ReturnType<typeof cutOf>, phi: number): number {
  const x = left + ((phi + 180) / 360) * width;
  return cut.reduce((best, each) => (Math.abs(each.x - x) < Math.abs(best.x - x) ? each : best)).y;
}

describe('wraps.dxf', () => {
  it('is in millimetres on its layers, with one closed outline for every end, none over another', async () => {
    const drawing = readDxf((await demoDxf).bytes);
    expect(drawing.header.$INSUNITS).toBe(4);
    expect(Object.keys(drawing.tables.layer.layers)).toEqual(
      expect.arrayContaining(['CUT', 'CUT_OPEN', 'MARK', 'TEXT']),
    );
    const outlines = outlinesOf(drawing, 'CUT');
    expect(outlines.length).toBe(2 * demo.tubes.length);
    expect(outlines.every(({ shape }) => shape)).toBe(true);
    const boxes = outlines.map(({ vertices }) => ({
      left: Math.min(...vertices.map(({ x }) => x)),
      right: Math.max(...vertices.map(({ x }) => x)),
      bottom: Math.min(...vertices.map(({ y }) => y)),
      top: Math.max(...vertices.map(({ y }) => y)),
    }));
    boxes.forEach((a, i) =>
      boxes.slice(i + 1).forEach((b) => {
        expect(a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top).toBe(false);
      }),
    );
  });

  it('has the trims of the fabrication file at every degree, and a turn of pi times the diameter and the paper', async () => {
    const outlines = outlinesOf(readDxf((await demoDxf).bytes), 'CUT');
    const ends = fabrication(demo).tubes.flatMap((tube, i) => tube.ends.map((end) => ({ end, tube: demo.tubes[i]! })));
    let compared = 0;
    outlines.forEach((outline: ILwpolylineEntity, i) => {
      const { end, tube } = ends[i]!;
      const flat = cutOf(outline.vertices);
      expect(flat.width).toBeCloseTo(Math.PI * (tube.section.outerDiameter + 0.1), 3);
      const listed = end.profile.map((s) => s!);
      const throatAt = listed.indexOf(Math.max(...listed));
      if (Math.abs(throatAt - 180) < 61) return; // its seam is elsewhere
      const { lows, high } = tube.ends[i % 2]!;
      const isExtreme = (phi: number): boolean =>
        [...lows, high!].some(
          (place) => Math.abs((((((place.phi * 180) / Math.PI - phi) % 360) + 540) % 360) - 180) < 1e-4,
        );
      const along = (phi: number): number => trimAt(flat, phi) - end.profile[(phi + 360) % 360]!;
      const degrees = Array.from({ length: 360 }, (_, k) => k - 180);
      const foot = along(degrees.find((phi) => !isExtreme(phi))!);
      for (const phi of degrees) {
        // Where the curve's extreme stands on a whole degree the two may differ by what rounding leaves of a touch.
        expect(Math.abs(along(phi) - foot)).toBeLessThan(isExtreme(phi) ? 1e-5 : 5e-7);
        compared += 1;
      }
    });
    expect(compared).toBeGreaterThan(360 * 40);
  });

  it.skipIf(!hasEzdxf)('passes ezdxf’s audit, which finds the same outlines', async () => {
    const { bytes } = await demoDxf;
    const audit = auditDxf(bytes);
    expect(audit).toMatchObject({ units: 4, troubles: [], undefined: [], open: 0 });
    expect(audit.version >= 'AC1015').toBe(true);
    const ours = outlinesOf(readDxf(bytes), 'CUT').map(({ vertices }) => vertices.map(({ x, y }) => [x, y]));
    expect(audit.cut).toEqual(ours);
  });

  it('draws no closed outline where part of the way round nothing is cut', async () => {
    const job = JSON.parse(JSON.stringify(branchAt60().job)) as { sections: { outerDiameter: number }[] };
    job.sections[1]!.outerDiameter = 60;
    const drawing = readDxf((await wrapsDxf(derivedFrom(JSON.stringify(job)), unwatched)).bytes);
    expect(outlinesOf(drawing, 'CUT').length).toBe(3);
    const open = outlinesOf(drawing, 'CUT_OPEN');
    expect(open.length).toBeGreaterThan(1);
    expect(open.some(({ shape }) => shape)).toBe(false);
    expect(textsOf(drawing).filter((text) => text.startsWith('OPEN')).length).toBe(1);
  });
});

it('flat patterns say who decides, and that a tube with errors has them', async () => {
  // Its bends overlap: a die of 500 on legs of 300 and 400.
  const overlapping = bentTube({ dies: [{ id: 'die', outerDiameter: 45, centrelineRadius: 500 }] });
  const texts = textsOf(readDxf((await wrapsDxf(overlapping, unwatched)).bytes));
  expect(texts.filter((text) => text.startsWith('! Cannot be made like this')).length).toBe(2);
  expect(texts.join(' ')).toContain('This program is no approval.');
  for (const { bytes } of await wrapsSvg(overlapping, unwatched)) {
    const text = new TextDecoder().decode(bytes);
    expect(text).toMatch(/<desc>[^<]*This program is no approval\.<\/desc>/u);
    expect(text).toContain('! Cannot be made like this');
  }
  expect(textsOf(readDxf((await demoDxf).bytes)).some((text) => text.startsWith('!'))).toBe(false);
});

describe('wraps/*.svg', () => {
  it('is one file an end, named by number and end alone', async () => {
    const files = await demoSvgs;
    expect(files.map(({ fileName }) => fileName)).toEqual(
      demo.tubes.flatMap(({ number }) => [`wraps/${number}-A.svg`, `wraps/${number}-B.svg`]),
    );
  });
});

it('no words run out of a flat pattern, and how far its edge is from the sawn end is said whole', async () => {
  for (const { bytes, fileName } of await demoSvgs) {
    const text = new TextDecoder().decode(bytes);
    const width = Number(text.match(/viewBox="0 0 ([\d.]+)/u)![1]);
    const written = [
      ...text.matchAll(/<text x="([\d.]+)"[^>]*font-size="([\d.]+)"[^>]*text-anchor="(\w+)"[^>]*>([^<]*)</gu),
    ];
    expect(written.length).toBeGreaterThan(4);
    for (const [, x, size, anchor, shown] of written) {
      // DejaVu Sans, by its own file, is 0.59 of its body wide for such text, bold 0.7.
      const wide = shown!.length * Number(size) * 0.6;
      if (anchor === 'end') expect(Number(x) - wide, `${fileName} ${shown}`).toBeGreaterThan(0);
      else expect(Number(x) + wide, `${fileName} ${shown}`).toBeLessThan(width);
    }
    const all = written.map(([, , , , shown]) => shown).join(' ');
    expect(all, fileName).toMatch(/this edge [^…]* from the sawn end/u);
    expect(all, fileName).toContain('printed side out');
  }
});

describe('wraps.pdf of a job without a template', () => {
  const pageOf = async (change: Record<string, unknown>) => {
    const { pages } = await readPdf((await wrapsPdf(bentTube(change), fonts, plainPrint, unwatched)).bytes);
    expect(pages).toHaveLength(1);
    return pages[0]!.texts.map(({ text }) => text).join(' ');
  };
  it('is one page that says why: no tubes, or all ends cut square', async () => {
    expect(await pageOf({ members: [] })).toContain('This job has no tubes, so no ends to cut.');
    expect(await pageOf({})).toContain('Cut square, no template needed: 1 A, 1 B.');
  });
});

describe('names that somebody typed', () => {
  const cases = BAD_NAMES.map(([what, name]) => {
    const named = jobNamed(name);
    return [what, named, wrapsDxf(named, unwatched)] as const;
  });
  it.each(cases)('%s lead nowhere and break nothing', async (_, named, dxf) => {
    const svgs = await wrapsSvg(named, unwatched);
    for (const { fileName, bytes } of svgs) {
      expect(fileName).toMatch(/^wraps\/\d+-[AB]\.svg$/u);
      const text = new TextDecoder().decode(bytes);
      // What is left is well formed as far as one can tell without a parser; Chromium's parser reads them in the browser tests.
      expect(text).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ud800-\udfff]/u); // oxlint-disable-line no-control-regex
      expect(text.match(/<(?!\/?(?:\?xml|svg|title|desc|g|path|text|circle)\b)[^>]*>/gu)).toBeNull();
    }
    const drawing = readDxf((await dxf).bytes);
    expect(outlinesOf(drawing, 'CUT').length).toBe(2 * named.tubes.length);
    for (const text of textsOf(drawing)) expect(text.length).toBeLessThan(250);
    const pdf = await wrapsPdf(named, fonts, plainPrint, unwatched);
    expect(pdf.fileName).toBe('wraps.pdf');
  });
  it.skipIf(!hasEzdxf)('pass ezdxf’s audit', async () => {
    const files = await Promise.all(cases.map(async ([, , dxf]) => (await dxf).bytes));
    expect(auditAll(files).map(({ troubles }) => troubles)).toEqual(cases.map(() => []));
  });
});

it('ends where whoever waits ends it', async () => {
  const stop = new Error('stopped');
  const going = (done: number) => (done > 3 ? Promise.reject(stop) : Promise.resolve());
  await expect(wrapsDxf(demo, going)).rejects.toBe(stop);
  await expect(wrapsSvg(demo, going)).rejects.toBe(stop);
  await expect(wrapsPdf(demo, fonts, plainPrint, going)).rejects.toBe(stop);
});

it('gives the same bytes for the same job', async () => {
  const once = await demoDxf;
  expect(Buffer.from((await wrapsDxf(demo, unwatched)).bytes).equals(Buffer.from(once.bytes))).toBe(true);
});
