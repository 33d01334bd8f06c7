/** tack-up.pdf, read back: every tape and diagonal of the fabrication file stands there, as large as it must, under its own tube. */
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import { lengthFigure } from '../../src/drawing/figures.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { tackUpPdf } from '../../src/exports/sheets/tack-up-pdf.ts';
import { fabrication, type FabricationFile } from '../../src/exports/tables/fabrication.ts';
import { firstInWords } from '../../src/core/words/tack.ts';
import { demoText } from '../command-line.ts';
import { derived } from '../core/frame.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf, type ReadPage } from './pdf.ts';

const TITLE = 'Setting up by tape';

async function pagesOf(frame: ReturnType<typeof derivedFrom>, paper: 'a4' | 'letter' = 'a4') {
  const { bytes } = await tackUpPdf(frame, fonts, { ...plainPrint, paper }, unwatched);
  const { pages } = await readPdf(bytes);
  expect(pages.every(({ texts }) => texts.some(({ text }) => text.startsWith(`${TITLE}:`)))).toBe(true);
  return pages;
}

const SIDES = { line: 'on its line', opposite: 'opposite its line' } as const;

type Place = FabricationFile['tackUp']['ends'][number]['tapes'][number]['to'];

/** What a tape is held at, said from the fabrication file alone. A foot on something steep to the front or the rear has upper corners, not front ones. */
function placeSaid({ number, ends }: FabricationFile['tubes'][number], { mark, centre, ...place }: Place): string {
  switch (place.kind) {
    case 'edge':
      return `${number} ${place.end}, ${SIDES[place.side]}`;
    case 'corner': {
      const [x, , z] = ends[place.end === 'A' ? 0 : 1].plateNormal!.map(Math.abs) as [number, number, number];
      const [one, other] = z > x ? (['front', 'rear'] as const) : (['upper', 'lower'] as const);
      const axis = z > x ? 0 : 2;
      return `foot of ${number} ${place.end}, ${mark[axis] > centre[axis] ? one : other} ${mark[1] > centre[1] ? 'left' : 'right'} corner`;
    }
    case 'top':
      return `${number} half-way, ${place.face} face`;
    case 'spot':
      return `mark on the car for ${number} ${place.end}`;
  }
}

/** Every large figure, with what stands over it and the tube, end letter and side that its row begins with; of a bay's diagonal no such row. */
function figuresOf(pages: readonly ReadPage[], tubes: ReadonlySet<string>) {
  const large = (size: number) => Math.abs(size - 5.3) < 0.01;
  let tube = '';
  return pages.flatMap(({ texts }) => {
    const beside = (x: number, y: number, from: number, to: number) =>
      texts.filter((each) => Math.abs(each.x - x) < 0.5 && each.y - y > from && each.y - y < to);
    const left = Math.min(...texts.map(({ x }) => x));
    return texts.flatMap(({ text, x, y, size }) => {
      if (x === left && tubes.has(text) && !large(size)) tube = text;
      // Figures and end letters are the only letters of that size.
      if (!large(size) || !/\d/u.test(text)) return [];
      const row = x - left < 1 ? [] : beside(left, y, 4, 4.6).filter((each) => large(each.size));
      const over = beside(x, y, 5, 6);
      expect(over.length, text).toBe(1);
      const side = row.length === 0 ? [] : beside(left, y, -0.1, 0.1);
      return [{ row: row.length === 0 ? [] : [tube, row[0]!.text, side[0]!.text], to: over[0]!.text, figure: text }];
    });
  });
}

describe('the pages that a cage is set up by', () => {
  it.each(['in', 'mm'] as const)(
    'of the demo in %s have every tape, in build order, and the diagonals of every bay',
    async (unit) => {
      const demo = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), lengthUnit: unit }));
      const pages = await pagesOf(demo, unit === 'in' ? 'letter' : 'a4');
      expect(pages.length).toBeLessThanOrEqual(7);
      const { tackUp, tubes } = fabrication(demo);
      const called = (id: string) => `${demo.byId.get(id)!.number} ${demo.byId.get(id)!.name}`;
      const number = (id: string) => demo.byId.get(id)!.number;
      const corner = ({ on, meets, bend }: (typeof tackUp.bays)[number]['corners'][number]) =>
        meets === null ? `bend ${bend} of ${number(on)}` : `${number(meets)} on ${number(on)}`;
      const wanted = [
        ...tackUp.ends.flatMap(({ tube, end, from, tapes }) =>
          tapes.map(({ to, tape }) => ({
            row: [called(tube), end, SIDES[from.side]],
            to: placeSaid(
              tubes.find(({ id }) => id === to.tube)!,
              to,
            ),
            figure: lengthFigure(tape, unit),
          })),
        ),
        ...tackUp.bays.flatMap(({ corners: [a, b, c, d], tapes: [first, second] }) => [
          { row: [], to: `${corner(a!)} to ${corner(c!)}`, figure: lengthFigure(first, unit) },
          { row: [], to: `${corner(b!)} to ${corner(d!)}`, figure: lengthFigure(second, unit) },
        ]),
      ];
      expect(figuresOf(pages, new Set(demo.tubes.map(({ id }) => called(id))))).toEqual(wanted);
      for (const page of pages) {
        expect(overlapsOf(page)).toEqual([]);
        for (const { text, x, width } of page.texts) {
          expect(x + width, text).toBeLessThan(page.width - 9.5);
          expect(text).not.toContain('…');
        }
      }
      const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
      expect(said).toContain('Stands plumb');
      for (const { number, name } of demo.tubes) expect(said).toContain(`${number} ${name}`);
      for (const { to } of tackUp.ends[0]!.tapes)
        expect(said).toContain(`mark on the car for ${demo.byId.get(to.tube)!.number}`);
    },
  );

  it('of a job without a tube say so, on one page', async () => {
    const pages = await pagesOf(derived({ nodes: {}, members: [] }));
    expect(pages).toHaveLength(1);
    expect(pages[0]!.texts.map(({ text }) => text).join(' ')).toContain('There is no tube yet.');
  });

  it('say of an end that nothing fixes how it is set, and of a cage without bays that it has none', async () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [0, 0, 900], c: [0, 0, 500], d: [700, 0, 500] },
      members: [
        { id: 'post', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'rail', path: ['c', 'd'] },
      ],
    });
    const said = (await pagesOf(frame)).flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    expect(said).toContain('B: no three tapes fix this end. Set it as the first tube stands.');
    expect(said).toContain('A: no three tapes fix this end. Set it by its cut on the tube that it meets.');
    expect(said).toContain('B: no three tapes fix this end. Set it by the drawing.');
    expect(said).toContain(
      'No end of it stands on the car: set it by the drawing. Stands plumb, on the line between its ends.',
    );
    expect(said).toContain('close a bay');
  });

  it('say of a frame that begins with a level rail that it lies level, and of a leg that it stands on its foot', async () => {
    const frame = derived({
      feet: [{ id: 'pad', name: 'Pad', kind: 'plate', size: [100, 100], thickness: 3 }],
      nodes: { a: [0, 600, 900], b: [0, -600, 900], c: [0, 0, 900], d: [0, 0, 0] },
      members: [
        { id: 'rail', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        {
          id: 'leg',
          path: ['c', 'd'],
          ends: [
            { fit: 'cope', against: ['rail'] },
            { fit: 'foot', foot: 'pad', normal: [0, 0, 1] },
          ],
        },
      ],
    });
    const said = (await pagesOf(frame)).flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    expect(said).toContain('set it by the drawing. Lies level, on the line between its ends.');
    expect(said).not.toContain('plumb');
    expect(said).toContain(
      'B: no three tapes fix this end. Set it by its foot, the middle of which is struck on the car.',
    );
    const leg = frame.tubes.find(({ id }) => id === 'leg')!;
    expect(firstInWords(leg)).toBe('Set by its foot.');
  });
});
