/** sheets.pdf as pdf.js reads it, figure by figure against the fabrication file. */
import { unwatched, type Going } from '../../src/drawing/going.ts';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import { withSlowFindings } from '../../src/core/stages/work.ts';
import { fabrication, type FabricationTube } from '../../src/exports/tables/fabrication.ts';
import { plainPrint, type PrintSettings } from '../../src/exports/shared/files.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import { writePdf } from '../../src/drawing/pdf.ts';
import type { Sheet } from '../../src/drawing/types.ts';
import { coverSheets } from '../../src/exports/sheets/cover.ts';
import { liesOf } from '../../src/exports/sheets/locator.ts';
import type { Paper } from '../../src/exports/sheets/page.ts';
import { tubeSheets } from '../../src/exports/sheets/tube.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { latticeOf } from '../bench/lattice.ts';
import { demoText } from '../command-line.ts';
import { drawn, LONG } from '../draws.ts';
import { fewTubes } from '../few-tubes.ts';
import { fonts } from './fonts.ts';
import { bentTube, derivedDemo, derivedFrom, markedAs } from './jobs.ts';
import { readPdf, type Printed, type ReadPage } from './pdf.ts';
import { expectReadable } from './readable.ts';
import { taped } from './taped.ts';
import { inWords } from '../core/frame.ts';

const printed = async (derived: Derived, change: Partial<PrintSettings> = {}, going: Going = unwatched) =>
  (await sheetsPdf(derived, fonts, { ...plainPrint, ...change }, going)).bytes;

/** What sheets are drawn from, on paper with margins of 10 mm. */
const contextOf = (derived: Derived, paper: Paper) => ({
  derived,
  unit: derived.job.lengthUnit,
  letters: lettering(fonts),
  paper,
  width: paper.width - 20,
});

const IN = 25.4;

/** "14 ³⁄₁₆ in" or "360.4 mm" in mm: Unicode's own compatibility forms turn the fraction into plain figures. */
function lengthRead(text: string): number {
  const folded = text
    .normalize('NFKC')
    .replace('−', '-')
    .replace(/(\d)\/(\d)/u, '$1⁄$2')
    .trim();
  const parts = /^(-?)(\d+(?:\.\d+)?)?(?: ?(\d+)⁄(\d+))?(?: (in|mm))?$/u.exec(spaced(folded));
  if (parts === null) throw new Error(`no length: ${text}`);
  const [, sign, whole = '0', over, under, unit = 'in'] = parts;
  const count = Number(whole) + (over === undefined ? 0 : Number(over) / Number(under));
  return (sign === '-' ? -1 : 1) * count * (unit === 'in' ? IN : 1);
}

/** A fraction alone has no whole number before it. */
const spaced = (text: string): string => text.replace(/^(-?)(\d+)⁄/u, '$10 $2⁄');

const angleRead = (text: string): number => Number(text.replace('−', '-').replace('°', ''));

/** The words that stand under a heading: same left edge, next line. */
function under(page: ReadPage, heading: string): Printed[] {
  const heads = page.texts.filter(({ text }) => text === heading);
  return heads.map((head) => {
    const below = page.texts.filter(({ x, y }) => Math.abs(x - head.x) < 0.3 && y < head.y && head.y - y < 9);
    return below.toSorted((a, b) => b.y - a.y)[0]!;
  });
}

/** The check dimensions of a tube's sheets in their order: a name of one line or more, its figure beside it. */
function checksOn(pages: readonly ReadPage[]): readonly { readonly name: string; readonly figure: string }[] {
  return pages.flatMap(({ texts, width }) => {
    const head = texts.find(({ text }) => text.startsWith('Check after bending'));
    if (head === undefined) return [];
    const figures = texts.filter(({ y, size }) => y < head.y && Math.abs(size - 5.3) < 0.05);
    const rows = figures.toSorted((a, b) => b.y - a.y);
    // The list stands beside the drawing.
    const words = texts.filter(({ x, y, size }) => size < 3.5 && y < head.y && x > width / 3);
    const nearest = (line: Printed) =>
      rows.reduce((best, each) => (Math.abs(each.y - line.y) < Math.abs(best.y - line.y) ? each : best));
    return rows.map((figure) => {
      const lines = words.filter((line) => Math.abs(line.y - figure.y) < 6 && nearest(line) === figure);
      const name = lines.toSorted((a, b) => b.y - a.y).map(({ text }) => text.trim());
      return { name: name.join(' '), figure: figure.text };
    });
  });
}

const ofHoop = (derived: Derived): Derived => ({ ...derived, tubes: derived.tubes.filter(({ id }) => id === 'hoop') });

/** The hoop's own pages of a demo that was changed: no other tube is printed. */
async function hoopPages(derived: Derived, change: Partial<PrintSettings> = {}): Promise<readonly ReadPage[]> {
  return tubePages((await readPdf(await printed(ofHoop(derived), change))).pages).get(1)!;
}

const wordsOf = (pages: readonly ReadPage[]): string =>
  pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');

/** The foot of a tube's sheet is no higher, mm. */
const FOOT = 28;

/** The pages of each tube, by its number at the foot; of a page that two tubes share the half of each, with the foot. */
function tubePages(pages: readonly ReadPage[]): ReadonlyMap<number, readonly ReadPage[]> {
  const byTube = new Map<number, ReadPage[]>();
  const put = (number: number, page: ReadPage) => byTube.set(number, [...(byTube.get(number) ?? []), page]);
  const place = String.raw`(\d+)(?: of \d+|: \d+ of \d+ in build order)`;
  for (const page of pages) {
    for (const { text } of page.texts) {
      const [, alone] = new RegExp(`^Tube ${place}$`, 'u').exec(text) ?? [];
      const [, upper, lower] = new RegExp(`^Tubes ${place} and ${place}$`, 'u').exec(text) ?? [];
      if (alone !== undefined) put(Number(alone), page);
      if (upper === undefined) continue;
      const head = page.texts.find((one) => one.text === lower && Math.abs(one.size - 9) < 0.05)!.y + 5;
      put(Number(upper), { ...page, texts: page.texts.filter(({ y }) => y > head || y < FOOT) });
      put(Number(lower), { ...page, texts: page.texts.filter(({ y }) => y <= head) });
    }
  }
  return byTube;
}

/** In pounds of 0.45359237 kg to a tenth in a job in inches, else in kilograms. */
const weighed = (kg: number, unit: 'in' | 'mm', places = 2): string =>
  unit === 'in' ? `${(kg / 0.45359237).toFixed(1)} lb` : `${kg.toFixed(places)} kg`;

const demo = derivedDemo();
const demoSheets = printed(demo).then((bytes) => readPdf(bytes));
/** Its first two tubes alone: what does not hang on the tubes is soon printed and read. */
const two: Derived = { ...demo, tubes: demo.tubes.slice(0, 2) };
const letterSheets = printed(two, { paper: 'letter' }).then((bytes) => readPdf(bytes));
/** Without the mirror images of straight tubes; all of it in the long run. */
const MM_DEMO: Derived = {
  ...demo,
  job: { ...demo.job, lengthUnit: 'mm' },
  tubes: LONG ? demo.tubes : demo.tubes.filter(({ twinOf, bends }) => twinOf === null || bends.length > 0),
};

/** A frame with the same hoop that is soon derived, for what is asked of the hoop alone. */
const hoopJob = JSON.parse(fewTubes()) as Pick<typeof demo.job, 'dies' | 'members'>;

/** Half a step of what is shown: 1/32 in or 0.1 mm, of angles 0.1 degrees. */
const withinLength = (unit: string) => (unit === 'in' ? IN / 64 : 0.05) + 1e-6;
const WITHIN_ANGLE = 0.05 + 1e-9;

function expectLength(shown: string, mm: number, unit: string, what: string) {
  expect(Math.abs(lengthRead(shown) - mm), `${what}: ${shown} for ${mm}`).toBeLessThanOrEqual(withinLength(unit));
}

function expectAngle(shown: string, degrees: number, what: string) {
  expect(Math.abs(angleRead(shown) - degrees), `${what}: ${shown} for ${degrees}`).toBeLessThanOrEqual(WITHIN_ANGLE);
}

/** All that the sheets ask to be taped on the tube, and nothing else, is what is found on it. */
function expectChecks(pages: readonly ReadPage[], { job }: Derived, tube: FabricationTube) {
  const section = job.sections.find(({ id }) => id === tube.section)!;
  const known = [...taped(tube, section.outerDiameter)];
  const shown = checksOn(pages);
  expect(
    shown.map(({ name }) => name),
    tube.name,
  ).toEqual(known.map(([name]) => name));
  known.forEach(([name, mm], i) => {
    // Points of a surface reach less far than the surface does, by less than this.
    const within = withinLength(job.lengthUnit) + 0.001;
    const off = Math.abs(lengthRead(shown[i]!.figure) - mm);
    expect(off, `${tube.name}, ${name}: ${shown[i]!.figure} for ${mm}`).toBeLessThanOrEqual(within);
  });
}

/** "35.0° clockwise", "on the line", "opposite the line", signed as the fabrication file does. */
function turnRead(words: string): number {
  if (words.endsWith('the line')) return words.startsWith('opposite') ? 180 : 0;
  const [, size, side] = /^([\d.]+)° (clockwise|anticlockwise)$/u.exec(words)!;
  return side === 'anticlockwise' ? -Number(size) : Number(size);
}

describe.each([
  ['in', demo],
  ['mm', MM_DEMO],
] as const)('every figure of the demo in %s is that of the fabrication file', (unit, derived) => {
  const file = fabrication(derived);
  const read = derived === demo ? demoSheets : printed(derived).then((bytes) => readPdf(bytes));
  const sheetsOf = async ({ number }: FabricationTube) => tubePages((await read).pages).get(number)!;
  const figureUnder = async (tube: FabricationTube, heading: string) =>
    under((await sheetsOf(tube))[0]!, heading)[0]!.text;

  it('has a sheet for every tube, in order, each with its name', async () => {
    const pages = tubePages((await read).pages);
    expect([...pages.keys()]).toEqual(file.tubes.map(({ number }) => number));
    for (const { number, name } of file.tubes) {
      const texts = pages.get(number)![0]!.texts.map(({ text }) => text);
      expect(texts[0]).toBe(String(number));
      expect(texts.slice(1, 4).join(' ')).toContain(name);
    }
  });

  it('lengths: blank, tip to tip, throat to throat, node to node, corner to corner', async () => {
    for (const tube of file.tubes) {
      const [a, b] = tube.ends;
      const page = (await sheetsOf(tube))[0]!;
      const blanks = page.texts.filter(({ size, text }) => size > 8.9 && / (in|mm)$/u.test(text));
      expect(blanks).toHaveLength(1);
      expectLength(blanks[0]!.text, tube.blankLength, unit, `${tube.name} blank`);
      const words = page.texts.map(({ text }) => text).join(' ');
      // Of a straight tube in a line, of a bent one each under its name.
      const figure = async (name: string) =>
        tube.bends.length > 0
          ? await figureUnder(tube, name)
          : new RegExp(`${name} ([^·]+?(?:in|mm))(?: |$)`, 'u').exec(words)![1]!;
      expectLength(await figure('Node to node, along tube'), tube.developedLength, unit, `${tube.name} axis`);
      if (tube.bends.length > 0)
        expectLength(await figure('Corner to corner'), tube.sharpCornerLength, unit, `${tube.name} corners`);
      else expect(tube.sharpCornerLength).toBeCloseTo(tube.developedLength, 9);
      const tips = tube.developedLength - a.tip! - b.tip!;
      expectLength(await figure('Tip to tip'), tips, unit, `${tube.name} tips`);
      const throats = tube.developedLength - a.throat! - b.throat!;
      expectLength(await figure('Throat to throat'), throats, unit, `${tube.name} throats`);
      expect(page.texts.map(({ text }) => text).join(' ')).toContain(weighed(tube.mass, unit));
    }
  });

  it('bends: mark from the blank’s end A, rotation, net, pull, straights', async () => {
    let bends = 0;
    for (const tube of file.tubes) {
      const pages = await sheetsOf(tube);
      // The four main figures of a row share a baseline, what is to start at smaller; boxes for angles at the ends hold one each.
      const rows = pages.flatMap(({ texts }) => {
        const main = texts.filter(({ size }) => [7, 5].some((each) => Math.abs(size - each) < 0.05));
        const baselines = [...new Set(main.map(({ y }) => Math.round(y * 10)))];
        const lines = baselines.map((line) => main.filter(({ y }) => Math.round(y * 10) === line));
        return lines
          .map((line) => line.toSorted((a, b) => a.x - b.x))
          .filter((line) => line.length === 4 && line[0]!.x > 15);
      });
      expect(rows).toHaveLength(tube.bends.length);
      const fromNode = tube.ends[0].allowance - tube.ends[0].tip!;
      tube.bends.forEach((bend, i) => {
        const [mark, turn, net, pull] = rows[i]!.map(({ text }) => text) as [string, string, string, string];
        const [, division = '', leans] = /^(.*?)(?:\s([+−]))?$/u.exec(mark)!;
        const off = bend.start + fromNode - lengthRead(unit === 'in' ? division : `${division} mm`);
        expect(Math.abs(off), `${tube.name} bend ${i + 1}`).toBeLessThanOrEqual((unit === 'in' ? IN / 32 : 0.5) + 1e-6);
        expect(leans, `${mark} for ${off} more`).toBe(Math.abs(off) < 0.05 ? undefined : off > 0 ? '+' : '−');
        // Which way it is to be turned is followed to the letter elsewhere (literal.test.ts).
        if (i === 0) expect(turn).toBe('none');
        else expectAngle(turn, Math.abs(bend.rotation), `${tube.name} turn ${i + 1}`);
        expectAngle(net, bend.angle, `${tube.name} net ${i + 1}`);
        expect(pull, `${tube.name} pull ${i + 1}`).toBe(`${bend.pullTo.toFixed(1)}°`);
        bends += 1;
      });
      const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
      const straights = [...words.matchAll(/(?:straight from (?:node A|bend \d+)|to node B) (−?[\d.]+) (in|mm)/gu)];
      expect(straights).toHaveLength(tube.bends.length === 0 ? 0 : tube.straights.length);
      const inOrder = straights.map(([, figure]) => Number(figure!.replace('−', '-')) * (unit === 'in' ? IN : 1));
      inOrder.forEach((shown, i) => expect(Math.abs(shown - tube.straights[i]!)).toBeLessThanOrEqual(0.0501));
      // The blank repeats the marks and the angles.
      tube.bends.forEach((bend, i) => {
        expect(words).toContain(`${i + 1} · ${bend.angle.toFixed(1)}°`);
        expect(words).toContain(`${i + 1}: ${rows[i]![0]!.text}`);
      });
    }
    expect(bends).toBe(file.tubes.reduce((sum, tube) => sum + tube.bends.length, 0));
    expect(bends).toBeGreaterThan(8);
  });

  it('ends: tip, throat, what is left long, and each cut step by step', async () => {
    let [cuts, wraps, long] = [0, 0, 0];
    for (const tube of file.tubes) {
      const pages = await sheetsOf(tube);
      tube.ends.forEach((end, which) => {
        const what = `${tube.name} end ${which === 0 ? 'A' : 'B'}`;
        const column = (page: ReadPage) => page.texts.filter(({ x }) => (x < page.width / 2 - 1 ? 0 : 1) === which);
        const words = pages.flatMap((page) => column(page).map(({ text }) => text)).join(' ');
        const place = String.raw`(?: ([\d /.]+ (?:in|mm)))?`;
        const side = '(?: (short of|beyond|at) node)?';
        const [, tip, tipSide, throat, throatSide] = new RegExp(
          `Tip${place}${side}, throat${place}${side}\\.`,
          'u',
        ).exec(words)!;
        for (const [shown, stated, s] of [
          [tip, tipSide ?? throatSide, end.tip!],
          [throat, throatSide, end.throat!],
        ] as const) {
          // Never a minus: short of the node, or beyond it.
          expect(stated, what).toBe(Math.abs(s) < 0.005 ? 'at' : s > 0 ? 'short of' : 'beyond');
          expectLength(shown ?? `0 ${unit}`, Math.abs(s), unit, what);
        }
        const [, left] = /Left ([\d /.]+ (?:in|mm)) long at end ([AB])/u.exec(words) ?? [];
        if (end.allowance < 0.005) expect(left, what).toBeUndefined();
        else {
          expectLength(left!, end.allowance, unit, `${what} left long`);
          long += 1;
        }
        if (end.notching === null) return;

        const { notches, gap } = end.notching;
        const figures = (name: string) =>
          pages.flatMap((page) =>
            column(page)
              .filter(({ text }) => new RegExp(`^(?:\\d )?${name}$`, 'u').test(text))
              .map(
                (head) =>
                  page.texts.find(({ x, y }) => Math.abs(x - head.x) < 0.05 && head.y > y && head.y - y < 6)!.text,
              ),
          );
        const sawn = notches.filter(({ saw }) => saw !== null);
        const [saws, sets, depths] = [figures('Hole saw'), figures('Off square'), figures('Depth(?:, each side)?')];
        const centres = figures('Centre (?:at end|beyond end|in from end)');
        for (const list of [saws, sets, depths, centres]) expect(list, what).toHaveLength(sawn.length);
        sawn.forEach(({ saw, set, centre, depth, way }, i) => {
          expectLength(saws[i]!, saw!, unit, `${what} saw`);
          expectAngle(sets[i]!, set!, `${what} setting`);
          // To the 64th of an inch: what the saw stands off there the tube is short.
          const off = Math.abs(lengthRead(centres[i]!) - Math.abs(centre!));
          expect(off, `${what} centre`).toBeLessThanOrEqual((unit === 'in' ? IN / 128 : 0.05) + 1e-6);
          // Never shallower than it has to go.
          const deeper = lengthRead(depths[i]!) - (way === 'flip' ? depth! / 2 : depth!);
          expect(deeper, `${what} depth`).toBeGreaterThan(-1e-4);
          expect(deeper, `${what} depth`).toBeLessThan((unit === 'in' ? IN / 32 : 0.1) + 1e-4);
        });
        const said = [...words.matchAll(/Centre (at|beyond|in from) end/gu)].map(([, where]) => where);
        expect(said, what).toEqual(
          sawn.map(({ centre }) => (Math.abs(centre!) < 0.005 ? 'at' : centre! > 0 ? 'in from' : 'beyond')),
        );
        expect([...words.matchAll(/Use the wrap:/gu)], what).toHaveLength(notches.length - sawn.length);
        const [, off] = /As set the joint stands off by ([\d.]+) (?:in|mm)/u.exec(words) ?? [];
        if (gap < 0.05) expect(off, what).toBeUndefined();
        else
          expect(Math.abs(Number(off) * (unit === 'in' ? IN : 1) - gap), what).toBeLessThan(
            unit === 'in' ? 0.0128 : 0.0501,
          );
        const between = [...words.matchAll(/([\d.]+°) between the tubes\./gu)];
        const turns = figures('Mark, from line');
        expect([between.length, turns.length], what).toEqual([end.cuts.length, end.cuts.length]);
        end.cuts.forEach((cut, i) => {
          expectAngle(between[i]![1]!, cut.includedAngle, `${what} between`);
          const apart = Math.abs(turnRead(turns[i]!) - cut.clocking);
          expect(Math.min(apart, 360 - apart), `${what} clocking`).toBeLessThanOrEqual(WITHIN_ANGLE);
          cuts += 1;
        });
        wraps += notches.length - sawn.length;
      });
    }
    expect(cuts).toBeGreaterThan(derived === demo ? 30 : 15);
    expect(wraps).toBeGreaterThan(1);
    expect(long).toBeGreaterThan(1);
  });

  it('check dimensions: every one of every bent tube, looked for among points of its surface', async () => {
    const bent = file.tubes.filter(({ bends }) => bends.length > 0);
    expect(bent.length).toBeGreaterThan(3);
    for (const tube of bent) expectChecks(await sheetsOf(tube), derived, tube);
  });

  it('the table: number, name, blank, mass', async () => {
    const covers = (await read).pages.filter(({ texts }) =>
      texts.some(({ text }) => text === 'Key drawing and tube table'),
    );
    const rows = covers.flatMap(({ texts }) => texts).map(({ text }) => text);
    for (const tube of file.tubes) {
      const start = rows.findIndex(
        (text, i) => text === String(tube.number) && rows[i + 1] !== undefined && tube.name.startsWith(rows[i + 1]!),
      );
      expect(start, tube.name).toBeGreaterThan(-1);
      const row = rows.slice(start, start + 10);
      const mass = row.indexOf(weighed(tube.mass, unit));
      expect(mass).toBeGreaterThan(4);
      const blank = row[mass - 1]!;
      expectLength(unit === 'in' ? blank : `${blank} mm`, tube.blankLength, unit, `${tube.name} in the table`);
    }
    const mass = file.tubes.reduce((sum, tube) => sum + tube.mass, 0);
    expect(rows.join(' ')).toContain(`All: ${file.tubes.length} blanks`);
    expect(rows.join(' ')).toContain(`${weighed(mass, unit, 1)} when coped`);
  });
});

it.each([
  ['one bend', ['n0', 'n1', 'n2']],
  ['three bends, not in one plane', ['n0', 'n1', 'n2', 'n3', 'n4']],
  ['legs back along each other', ['n0', 'n1', 'n2', 'n5']],
] as const)('check dimensions of a tube with %s, looked for among points of its surface', async (_, path) => {
  const job = JSON.parse(JSON.stringify(bentTube().job)) as { nodes: object[]; members: object[] };
  const nodes = [...job.nodes, { id: 'n5', at: { kind: 'fixed', position: [-150, 350, 90] } }];
  const members = job.members.map((member) => ({ ...member, path }));
  const derived = derivedFrom(JSON.stringify({ ...job, nodes, members }));
  const { pages } = await readPdf(await printed(derived));
  expectChecks(tubePages(pages).get(1)!, derived, fabrication(derived).tubes[0]!);
});

describe('the cover', () => {
  it('numbers every tube in the isometric view and carries findings, what was not checked, and who decides', async () => {
    const { pages } = await demoSheets;
    const [first] = pages;
    const numbers = first!.texts.filter(({ size, y }) => size < 3.2 && y > 150).map(({ text }) => text.trim());
    for (const { number } of demo.tubes) expect(numbers).toContain(String(number));
    const words = pages
      .flatMap(({ texts }) => texts.map(({ text }) => text))
      .join(' ')
      .replace(/\s+/gu, ' ');
    expect(words).toContain('Strength. No load has been put on this frame.');
    for (const { message } of inWords(demo)) expect(words).toContain(message.slice(0, 60));
    for (const page of pages)
      expect(page.texts.map(({ text }) => text)).toContain(
        'The rule book, the inspector and licensed practice decide. This program is no approval.',
      );
    expect(words).not.toMatch(/\bsafe\b|\blegal\b/u);
  });
});

describe('paper and letters', () => {
  it('can be read: no words over other words, none off the page, none too small', async () => {
    expectReadable((await demoSheets).pages);
  });

  // ISO 216 and ANSI/ASME Y14.1.
  it.each([
    ['a4', demoSheets, 210, 297],
    ['letter', letterSheets, 215.9, 279.4],
  ] as const)('%s is as wide and as high as its standard says', async (_, sheets, width, height) => {
    for (const page of (await sheets).pages) {
      expect(page.width).toBeCloseTo(width, 2);
      expect(page.height).toBeCloseTo(height, 2);
    }
  });

  it('needs a sheet a tube at most for all but the bent legs of the demo, two straight tubes sharing one where they fit', async () => {
    const pages = tubePages((await demoSheets).pages);
    expect(pages.size).toBe(demo.tubes.length);
    for (const { bends, number } of demo.tubes)
      expect(pages.get(number)!.length).toBeLessThanOrEqual(bends.length > 0 ? 2 : 1);
    const feet = (read: readonly ReadPage[]) =>
      read.flatMap(({ texts }) => texts.filter(({ text }) => /^Tubes \d/u.test(text)));
    expect(feet((await demoSheets).pages).length).toBeGreaterThan(1);
    expect((await demoSheets).pages.length).toBeLessThanOrEqual(34);
  });

  it('embeds its two typefaces, holds no script and no link', async () => {
    const { pages, scripts } = await demoSheets;
    expect(scripts).toBe(false);
    for (const { annotations } of pages) expect(annotations).toBe(0);
    const faces = (await readPdf(await printed(two), true)).pages.flatMap((page) => page.faces);
    expect(new Set(faces.map(({ name }) => name.slice(7)))).toEqual(
      new Set(['DejaVuSansCondensed', 'DejaVuSansCondensed-Bold']),
    );
    for (const { name, embedded } of faces) {
      expect(name).toMatch(/^[A-Z]{6}\+/u);
      expect(embedded).toBe(true);
    }
  });

  it('prints nothing too small to read: figures 2.2 mm high, fractions too, and main figures 5 mm', async () => {
    // Heights of the typeface's figures, from the font file: 1493 and 867 of 2048.
    for (const { texts } of (await demoSheets).pages) {
      for (const { text, size } of texts) {
        expect(size * (1493 / 2048), text).toBeGreaterThanOrEqual(2.2);
        if (/[⁰¹²³⁴-⁹]⁄/u.test(text)) expect(size * (867 / 2048), text).toBeGreaterThanOrEqual(2.2);
      }
      const main = texts.filter(({ size }) => size > 6.9);
      expect(main.every(({ size }) => size * (1493 / 2048) >= 5)).toBe(true);
    }
  });
});

describe('ways of measuring', () => {
  it.each([
    ['A', 'Hook the tape over the blank’s end A'],
    ['B', 'Hook the tape over the blank’s end B'],
    ['middle', 'Draw a line round the tube'],
  ] as const)('from %s says where zero is', async (from, words) => {
    const hoop = await hoopPages(markedAs(demo, { from, mark: 'tangents', fine: true }));
    expect(wordsOf(hoop)).toContain(words);
    expect(hoop[0]!.texts.filter(({ text }) => text === 'start')).toHaveLength(4);
  });
});

describe('what was measured already', () => {
  it('stands in its box', async () => {
    const order = [1, 2, 3, 4].map((bend) => ({ bend, front: 'A' }));
    const bends = [{ bend: 1, pulled: 13.3, net: 12.4 }];
    const bent = [{ tube: 'hoop', order, done: [], bends, checks: [{ check: 'chord', measured: 1222.375 }] }];
    const { texts } = (await hoopPages(derivedFrom(JSON.stringify({ ...hoopJob, bent }))))[0]!;
    for (const reading of ['13.3°', '12.4°', '48 ¹⁄₈ in']) {
      const box = texts.filter(({ text }) => text === reading);
      expect(box, reading).toHaveLength(1);
    }
  });
});

it('has the heat of its tube in the box for it, and an empty box where the job says none', async () => {
  const heated = (batch = '') => {
    const members = hoopJob.members.map((each) => ({ ...each, batch }));
    return hoopPages(derivedFrom(JSON.stringify({ ...hoopJob, members })));
  };
  const besideHeat = ([page]: Awaited<ReturnType<typeof heated>>) => {
    const name = page!.texts.find(({ text }) => text === 'Batch')!;
    return page!.texts.filter(({ x, y }) => Math.abs(y - name.y) < 0.1 && x > name.x).map(({ text }) => text)[0];
  };
  expect(besideHeat(await heated('K-77'))).toBe('K-77');
  expect(besideHeat(await heated())).toBe('Cut by');
});

it('says in the finding of a grip that the length to cut has it, on the sheet and on the cover', async () => {
  // The hoop's last straight is 518.4 mm; what is short of 700 is 181.1 with the plate's half millimetre.
  const printedHoop = async (change: object) => {
    const dies = hoopJob.dies.map((die) => ({ ...die, ...change }));
    return wordsOf(await hoopPages(derivedFrom(JSON.stringify({ ...hoopJob, lengthUnit: 'mm', dies }))));
  };
  const tail = await printedHoop({ leastGrip: 700 });
  expect(tail).toContain('Cut the blank to 3210.0 mm');
  expect(tail).toContain('The length to cut has 181.1 mm more on end B');
  expect(tail).toContain('181.1 mm at end B, sawn off after bending at 3029 − mm on the tape');
  expect(tail).toContain('with the grip sawn off, before any cope is cut');
  // Bend 1 starts 518.4 mm from the node, 518.9 from the end: 81.1 short of 600.
  const clamp = await printedHoop({ clampOffset: 600 });
  expect(clamp).toContain('Cut the blank to 3110.0 mm');
  expect(clamp).toContain('81.1 mm at end A');
  expect(clamp).toContain('The length to cut has that much more there');
  expect(await printedHoop({ leastGrip: 0, clampOffset: 0 })).not.toContain('grip sawn off');
});

describe('what must not be made', () => {
  it('says so in place of "cut the blank to", with the reason and where the rule is from', async () => {
    const dies = hoopJob.dies.map((die) => ({ ...die, leastStraight: 5000 }));
    const broken = derivedFrom(JSON.stringify({ ...hoopJob, dies }));
    const words = wordsOf((await hoopPages(broken)).slice(0, 1));
    expect(words).toContain('NOT TO BE CUT');
    expect(words).not.toContain('Cut the blank to');
    expect(words).toContain('to clamp on');
    expect(words).toContain('(common practice)');
  });

  it('says of a tube whose ends are cut on the car that they are not cut by the sheet, and of no other', async () => {
    const members = hoopJob.members.map((one) => (one.id === 'hoop' ? { ...one, cutOnCar: true } : one));
    const words = wordsOf(await hoopPages(derivedFrom(JSON.stringify({ ...hoopJob, members }))));
    expect(words).toContain('Cut its ends on the car');
    expect(wordsOf((await demoSheets).pages)).not.toContain('Cut its ends on the car');
  });

  it('names the mirror twin, on both sheets', async () => {
    const pages = tubePages((await demoSheets).pages);
    const twins = demo.tubes.filter(({ twinOf }) => twinOf !== null);
    expect(twins.length).toBeGreaterThan(4);
    for (const twin of twins) {
      const own = demo.byId.get(twin.twinOf!)!;
      const wordsOf = (number: number) =>
        pages
          .get(number)![0]!
          .texts.map(({ text }) => text)
          .join(' ');
      expect(wordsOf(own.number)).toContain('Make one of each, not two of this.');
      expect(wordsOf(own.number)).toContain(`Mirror image: ${twin.number} ${twin.name}`);
      expect(wordsOf(twin.number)).toContain(`Mirror image: ${own.number} ${own.name}`);
    }
  });
});

/** A job file may come from a stranger. */
const BAD_NAMES: readonly string[] = [
  `quote " ' < > & (a) \\ %PDF \\(b\\)`,
  'W'.repeat(300),
  '\u202eright to left\u202c עמוד ראשי عمود',
  'line\nbreak\r\nand\ttab\u2028more',
  'weld 🔥 👩‍🏭 here',
  '=cmd()|calc',
  '../../etc/passwd',
  'tube name '.repeat(30),
  '\u0000\u0007\ud800 end',
  '',
];

/** The margin is 10 mm; a letter hangs a quarter of its body below its line and rises less than a body over it. */
function expectInside({ width, height, texts }: ReadPage) {
  const isInside = ({ x, y, width: wide, size }: Printed) =>
    x >= 9.9 && x + wide <= width - 9.9 && y - size / 4 >= 8 && y + size <= height - 6;
  expect(texts.filter((text) => !isInside(text))).toEqual([]);
}

/** Lines as well as letters, before they are written; the sheets that were looked at. */
function expectInkInside(plain: Derived): readonly Sheet[] {
  const derived = markedAs(plain, { from: 'B', mark: 'clamp', fine: true });
  const paper = { width: 210, height: 297 };
  const context = contextOf(derived, paper);
  const views = liesOf(derived.tubes);
  const sheets = [...coverSheets(context), ...tubeSheets(context, views).flatMap((made) => made())];
  const outside = sheets.flatMap(({ marks }) =>
    marks.filter((mark) => {
      const reach = mark.kind === 'arc' ? mark.radius : 0;
      const places = mark.kind === 'line' ? mark.places : [mark.kind === 'arc' ? mark.centre : mark.at];
      const isInside = ({ x, y }: { readonly x: number; readonly y: number }) =>
        Math.min(x, paper.width - x) - reach > 9 && Math.min(y, paper.height - y) - reach > 7;
      return !places.every(isInside);
    }),
  );
  expect(sheets.length).toBeGreaterThan(1);
  expect(outside).toEqual([]);
  return sheets;
}

describe('names from anywhere', () => {
  // Every kind of name at every kind of thing, the next one each time.
  it.each(LONG ? [0, 1, 2, 7] : [1])(
    'nothing breaks, nothing leaves the page, beginning with name %d',
    async (shift) => {
      const job = JSON.parse(demoText()) as Record<string, { name?: string; material?: string; batch?: string }[]>;
      const nameOf = (i: number) => BAD_NAMES[(i + shift) % BAD_NAMES.length]!;
      for (const list of ['members', 'nodes', 'sections', 'dies'])
        job[list]!.forEach((record, i) => (record.name = nameOf(i)));
      job.sections!.forEach((section, i) => (section.material = nameOf(i)));
      const { notchers } = job['tools'] as unknown as { notchers: { name: string }[] };
      notchers[0]!.name = nameOf(1);
      job.members!.forEach((member, i) => (member.batch = nameOf(i + 1)));
      const derived = derivedFrom(JSON.stringify({ ...job, name: nameOf(0) }));
      // A twin's sheet has its partner's names.
      const shown = LONG
        ? derived
        : { ...derived, tubes: derived.tubes.filter(({ twinOf }) => twinOf === null).slice(0, 8) };
      // The narrower of the two papers.
      expectInkInside(shown);
      const { pages, scripts } = await readPdf(await printed(shown));
      expect(scripts).toBe(false);
      expect(tubePages(pages).size).toBe(shown.tubes.length);
      pages.forEach(expectInside);
      for (const { annotations } of pages) expect(annotations).toBe(0);
    },
  );

  it.each([
    ['one endless word', 'W'.repeat(300)],
    ['many words', 'tube name '.repeat(30)],
  ])('size, radius and mass stay in the head where every name is %s', async (_, name) => {
    const job = JSON.parse(JSON.stringify(bentTube().job)) as Record<'sections' | 'dies' | 'members', object[]>;
    const [sections, dies, members] = [
      job.sections.map((each) => ({ ...each, name, material: name })),
      job.dies.map((each) => ({ ...each, name })),
      job.members.map((each) => ({ ...each, batch: name })),
    ];
    const long = derivedFrom(JSON.stringify({ ...job, sections, dies, members }));
    const { pages } = await readPdf(await printed(long));
    const words = tubePages(pages)
      .get(1)![0]!
      .texts.map(({ text }) => text)
      .join(' ');
    expect(words).toContain('45.0 x 2.50 mm');
    expect(words).toContain(', CLR 135.0 mm');
    expect(words).toContain(weighed(long.tubes[0]!.mass, 'mm'));
  });

  it('nothing leaves the page either with dozens of bends, dozens of errors and a name of 5000 letters', async () => {
    const bends = drawn(24, 60);
    const nodes = Array.from({ length: bends + 2 }, (_, i) => ({
      id: `n${i}`,
      at: { kind: 'fixed', position: [60 * i, (i % 2) * 40, (i % 3) * 20] },
    }));
    const ends = [{ fit: 'square' }, { fit: 'square' }];
    const path = nodes.map(({ id }) => id);
    const snake = derivedFrom(
      JSON.stringify({
        format: 'cagewright/job',
        version: 1,
        name: 'snake',
        sections: [{ id: 's', outerDiameter: 40, wall: 3 }],
        dies: [
          { id: 'd', outerDiameter: 40, centrelineRadius: 120, clampOffset: 400, leastStraight: 60, leastGrip: 500 },
        ],
        nodes,
        members: [{ id: 'm', name: 'snake '.repeat(800), path, section: 's', die: 'd', ends }],
      }),
    );
    expect(snake.findings.filter(({ severity }) => severity === 'error').length).toBeGreaterThan(24);
    const sheets = expectInkInside(snake);
    const { pages } = await readPdf(await writePdf('snake', lettering(fonts), [() => sheets], unwatched));
    expect(pages.length).toBeGreaterThan(4);
    pages.forEach(expectInside);
    const numbers = new Set(pages.flatMap(({ texts }) => texts.map(({ text }) => text)));
    for (let bend = 1; bend <= bends; bend++) expect(numbers).toContain(String(bend));
  });

  it('puts a box where the typeface has no sign', async () => {
    const members = hoopJob.members.map((one, i) => (i === 0 ? { ...one, name: 'a漢b' } : one));
    const hoop = await hoopPages(derivedFrom(JSON.stringify({ ...hoopJob, members })));
    expect(hoop[0]!.texts.map(({ text }) => text)).toContain('a□b');
  });
});

describe('the foot of a tube’s sheet', () => {
  const day = '2026-03-02';

  it('has one row of boxes a page, tall enough for a pen, also where two tubes share it', () => {
    const context = contextOf(demo, { width: 210, height: 297 });
    const sheets = tubeSheets(context, liesOf(demo.tubes)).flatMap((made) => made());
    expect(sheets.some(({ name }) => name.startsWith('Tubes '))).toBe(true);
    for (const { marks, name } of sheets) {
      for (const label of ['Customer', 'Batch', 'Cut by', 'Checked by']) {
        const [own, ...more] = marks.flatMap((mark) => (mark.kind === 'words' && mark.text === label ? [mark] : []));
        expect(own!.size, name).toBeGreaterThanOrEqual(3.3);
        expect(more, name).toEqual([]);
        const round = marks.some((mark) => {
          if (mark.kind !== 'line' || !mark.closed) return false;
          const heights = mark.places.map(({ y }) => y);
          const [low, high] = [Math.min(...heights), Math.max(...heights)];
          return low < own!.at.y && own!.at.y + own!.size < high + 1 && high - low >= 7;
        });
        expect(round, `${name}, ${label}`).toBe(true);
      }
    }
  });

  it('bears the day that it is given, on every page, and none where nobody says; of one day the same bytes', async () => {
    const bytes = await printed(two, { day });
    expect(Buffer.compare(Buffer.from(bytes), Buffer.from(await printed(two, { day })))).toBe(0);
    const { pages } = await readPdf(bytes);
    for (const { texts } of pages) expect(texts.filter(({ text }) => text === `printed ${day}`)).toHaveLength(1);
    expect(wordsOf((await letterSheets).pages)).not.toContain('printed 2');
  });
});

describe('long jobs', () => {
  it('says how far it is for the cover and each tube, and is the same bytes each time', async () => {
    const said: string[] = [];
    const shown = LONG ? demo : two;
    const before = await printed(shown);
    const again = await printed(shown, {}, async (done, total) => void said.push(`${done}/${total}`));
    expect(said).toEqual(Array.from({ length: shown.tubes.length + 2 }, (_, i) => `${i}/${shown.tubes.length + 1}`));
    expect(Buffer.compare(Buffer.from(before), Buffer.from(again))).toBe(0);
  });

  it('ends where it is stopped', async () => {
    let asked = 0;
    const stop: Going = () => (++asked < 4 ? Promise.resolve() : Promise.reject(new Error('stopped')));
    await expect(printed(demo, {}, stop)).rejects.toThrow('stopped');
    expect(asked).toBe(4);
  });

  const MANY = drawn(12, 200);
  it(`prints ${MANY} tubes, each with its sheet and its number on the key drawing`, async () => {
    const derivation = derive(latticeOf(MANY));
    if (!derivation.ok) throw new Error('the lattice does not derive');
    const { pages } = await readPdf(await printed(derivation.value));
    expect(tubePages(pages).size).toBe(MANY);
    const numbers = new Set(pages[0]!.texts.map(({ text }) => text.trim()));
    expect(derivation.value.tubes.filter(({ number }) => !numbers.has(String(number)))).toHaveLength(0);
  });
});

it('says before the bends where their order matters, unless a run has settled it', async () => {
  const cabinet = { name: 'Cabinet', kind: 'box', centre: [500, 900, 900], size: [240, 240, 1800] };
  const dies = hoopJob.dies.map((die, i) => ({ ...die, bender: { ...demo.job.dies[i]!.bender, room: [cabinet] } }));
  const hoopWith = async (bent: readonly object[]) =>
    wordsOf(await hoopPages(withSlowFindings(ofHoop(derivedFrom(JSON.stringify({ ...hoopJob, dies, bent }))))));
  const places = (words: string) => [words.indexOf('Cabinet'), words.indexOf('Start of bend')] as const;
  const [written, bends] = places(await hoopWith([]));
  expect(written).toBeGreaterThan(0);
  expect(written).toBeLessThan(bends);
  const order = [1, 2, 4, 3].map((bend) => ({ bend, front: bend === 3 ? 'B' : 'A' }));
  const [afterwards, first] = places(await hoopWith([{ tube: 'hoop', order }]));
  expect(afterwards).toBeGreaterThan(first);
});
