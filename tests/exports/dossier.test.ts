/** dossier.pdf, read back: what it lists told against the fabrication file, what it must say on every page, and what it must never say. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import { WHO_DECIDES } from '../../src/core/words/cautions.ts';
import { dossierPdf } from '../../src/exports/dossier/dossier.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { derived } from '../core/frame.ts';
import { inspectedText, photosBySum } from './dossier-job.ts';
import { fonts } from './fonts.ts';
import { derivedDemo, derivedFrom } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf, type ReadPage } from './pdf.ts';

const NONE: ReadonlyMap<string, Uint8Array> = new Map();
const make = (frame: ReturnType<typeof derivedFrom>, paper: 'a4' | 'letter' = 'a4', photos = NONE) =>
  dossierPdf(frame, fonts, { ...plainPrint, paper, day: '2026-03-05' }, unwatched, photos);

const wordsOn = ({ texts }: ReadPage): string => texts.map(({ text }) => text).join(' ');

/** The words of the rows under a part's heading, by the baseline that they begin on, up to the next heading of that size. */
function partOf(pages: readonly ReadPage[], title: string): readonly string[] {
  const rows: string[] = [];
  let inside = false;
  for (const page of pages) {
    // Nothing stands below the foot's line.
    const lines = page.texts.filter(({ y }) => y > 19).toSorted((a, b) => b.y - a.y || a.x - b.x);
    let last = NaN;
    for (const { text, y, size } of lines) {
      if (size > 4.9 && size < 5.1) inside = text === title;
      if (!inside) continue;
      if (Math.abs(y - last) < 0.2) rows.push(`${rows.pop()!} | ${text}`);
      else rows.push(text);
      last = y;
    }
  }
  return rows;
}

async function imagesOf(bytes: Uint8Array): Promise<number> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false, disableFontFace: true });
  const document = await task.promise;
  let count = 0;
  for (let number = 1; number <= document.numPages; number++) {
    const { fnArray } = await (await document.getPage(number)).getOperatorList();
    count += fnArray.filter((each) => each === OPS.paintImageXObject).length;
  }
  await task.destroy();
  return count;
}

const PHOTOS = photosBySum();
const frame = derivedFrom(inspectedText(1));
const onA4 = make(frame, 'a4', PHOTOS);

describe.each(['a4', 'letter'] as const)('the dossier on %s', async (paper) => {
  const { bytes, note } = await (paper === 'a4' ? onA4 : make(frame, paper, PHOTOS));
  const { pages, title } = await readPdf(bytes);
  const file = fabrication(frame);

  it('has its size, job, caution and number on every page, and nothing over anything else or over the edge', () => {
    expect(title).toBe(`Inspection dossier, ${frame.job.name}`);
    for (const [i, page] of pages.entries()) {
      expect(page.width).toBeCloseTo(paper === 'a4' ? 210 : 215.9, 1);
      const words = wordsOn(page);
      expect(words).toContain(WHO_DECIDES);
      expect(words).toContain(frame.job.name);
      expect(words).toContain(`page ${i + 1} of ${pages.length}`);
      expect(overlapsOf(page)).toEqual([]);
      // No page ends with a heading.
      const lowest = page.texts.filter(({ y }) => y > 19).toSorted((a, b) => a.y - b.y)[0]!;
      expect(lowest.size, lowest.text).toBeLessThan(3.9);
      for (const { text, x, width } of page.texts) {
        expect(x + width, text).toBeLessThan(page.width - 9.5);
        expect(text).not.toContain('…');
      }
    }
  });

  it('begins with every number on the drawing, the job’s name and the day', () => {
    const cover = pages[0]!.texts.map(({ text }) => text);
    for (const { number } of frame.tubes) expect(cover).toContain(String(number));
    expect(cover).toContain('Printed 2026-03-05');
  });

  it('lists every tube with its role, and with its heat and certificate where the job has one', () => {
    const rows = partOf(pages, 'Tubes');
    for (const { id, name, number, role } of [...frame.tubes].map((tube) => ({ ...tube, role: tube.member.role }))) {
      const row = rows.find((each) => each.startsWith(`${number} | `))!;
      expect(row, id).toContain(name.split(' ')[0]!);
      expect(row, id).toContain(role.split('-')[0]!);
      const heat = { hoop: 'M-1', stay: 'M-1', leg: 'M-2', dash: 'L-7' }[id.replace("'", '')];
      expect(row, id).toContain(`| ${heat ?? '–'} |`);
    }
    expect(rows.filter((row) => row.includes('Paper 4711'))).toHaveLength(3);
    const heats = partOf(pages, 'Batches and certificates').join('\n');
    expect(heats).toContain('M-1 | Paper 4711');
    expect(heats.match(/Paper/gu)).toHaveLength(2);
    expect(heats.match(/\| none/gu)).toBeNull();
    expect(heats).toContain('of which the job has no certificate');
    expect(heats).toContain('Without a batch');
  });

  it('has the bends as they were measured beside the drawing', () => {
    const rows = partOf(pages, 'Bends');
    const drawn = file.tubes.find(({ id }) => id === 'hoop')!.bends;
    const [first, second] = ['1', '2'].map((bend) =>
      rows.find((row) => row.startsWith(`${bend} | ${drawn[Number(bend) - 1]!.angle.toFixed(1)}°`))!,
    ) as [string, string];
    expect(first).toContain('| 13.2° | +0.2° | 15.0° |');
    // 2 mm of 44.45.
    expect(first).toContain('1.709–1.787, 4.5 %');
    expect(second).toContain('| 75.6° | −0.4° | 79.0° | 0.0° | 0.5° (+0.5°) |');
    const all = rows.join(' ');
    expect(all).toContain('Plus: the far leg stands clockwise');
    expect(rows.filter((row) => row.startsWith('B | '))).toHaveLength(
      file.tubes.filter(({ bends }) => bends.length > 0).length,
    );
    expect(all).toContain('end B lies');
    expect(all).toContain('Measured by tape: End to end');
    const bent = file.tubes.filter(({ bends }) => bends.length > 0);
    for (const { id } of bent) {
      const { number, name } = frame.byId.get(id)!;
      expect(rows, id).toContain(`${number} ${name}`);
    }
    expect(rows.filter((row) => row.startsWith('No bend run'))).toHaveLength(bent.length - 1);
  });

  it('lists each joint once: the ends of the fabrication file, numbered from 1', () => {
    const numbers = partOf(pages, 'Joints').flatMap((row) => /^(\d+) \| \d+ [AB]/u.exec(row)?.[1] ?? []);
    const welded = file.tubes
      .flatMap(({ ends }) => ends)
      .filter(({ fit, cuts }) => fit !== 'square' || cuts.length > 0);
    expect(numbers).toEqual(welded.map((_, i) => String(i + 1)));
    const ends = partOf(pages, 'Joints').flatMap((row) => /^\d+ \| (\d+ [AB])/u.exec(row)?.[1] ?? []);
    expect(new Set(ends)).toEqual(
      new Set(frame.tubes.flatMap(({ number }) => ['A', 'B'].map((end) => `${number} ${end}`))),
    );
  });

  it('names a place with room on the hoop, the stays and the legs', () => {
    const rows = partOf(pages, 'Places for a hole or a gauge').join('\n');
    for (const id of ['hoop', 'stay', "stay'", 'leg', "leg'"]) {
      const { number, name } = frame.byId.get(id)!;
      expect(rows).toContain(`${number} ${name} |`);
    }
    expect(rows.replaceAll('\n', ' ')).toContain('these are places with room');
  });

  it('has the feet with area, thickness and holes', () => {
    const rows = partOf(pages, 'Plates and boxes').join('\n');
    // 4 by 4 in less four holes of 13/32 in.
    expect(rows).toContain(`${(16 - 4 * (Math.PI / 4) * (13 / 32) ** 2).toFixed(2)} in²`);
    expect(rows).toContain('4 of 13/32 in');
  });

  it('has a verdict of every article of every sheet, as the fabrication file has them, with edition and reason', () => {
    const rows = partOf(pages, 'Rule books');
    const words = rows.join(' ');
    expect(words).toContain('Hill Club, 2026, as gone through on 2026-02-01');
    expect(words).toContain('Motorsport UK National Competition Rules, ch. 7 app. 3, 2026');
    expect(rows).toContain('Its articles: 1 not met, 1 not checked, 1 met, 1 for cars of another mass.');
    // One is answered there, and one is what an article of another form is about; the other sheet was not filled in on that page.
    expect(words.match(/\d+ of \d+ questions of [^:]*:/gu)).toEqual([
      '33 of 35 questions of Hill Club, 2026 are not answered:',
    ]);
    const club = file.rules!.filter(({ sheet }) => sheet === 'club');
    expect(club.map(({ verdict }) => verdict)).toEqual(['met', 'not-checked', 'not-met', 'not-checked']);
    const shown = rows.flatMap((row) => / \| (met|not met|not checked|for cars of) \| /u.exec(row)?.[1] ?? []);
    expect(shown.slice(0, -1)).toEqual(file.rules!.slice(0, -1).map(({ verdict }) => verdict.replace('-', ' ')));
    expect(shown.at(-1)).toBe('for cars of');
    expect(rows.find((row) => row.startsWith('4.2 | '))).toContain('Nobody has answered it.');
    // What is asked, in figures, and the inspector's word beside what was measured.
    const steep = words.slice(words.indexOf('4.3 | '), words.indexOf('4.4 | '));
    expect(steep).toContain('Stays steep. Rear stay: from end to |');
    expect(steep).toContain('at least 89.0°.');
    expect(steep).toContain('The inspector’s word: met.');
    expect(steep).toContain('Answered by Lee on 2026-03-03: seen at the car.');
    expect(wordsOn(pages.find((page) => wordsOn(page).includes('Not checked here'))!)).toContain(
      'What no sheet asks is yours to compare',
    );
  });

  it('holds every photo once, captioned, and names the one that is not there', async () => {
    expect(await imagesOf(bytes)).toBe(10);
    const words = pages.map(wordsOn).join(' ');
    for (let i = 0; i < 10; i++) expect(words).toContain(`${i + 1} View ${i}`);
    expect(words).toContain('2026-03-04. Shows tubes 1, 3.');
    expect(words).toContain('One photo is named in the job and not kept here: View 10.');
    expect(note).toBe('dossier.pdf: One photo is named in the job and not kept here: View 10.');
  });

  it('ends with lines to sign and says nothing for the builder', () => {
    const last = wordsOn(pages.at(-1)!);
    for (const word of ['Builder', 'Date', 'Place', 'Signature']) expect(last).toContain(word);
  });

  it('never says that a cage may be used', () => {
    const words = pages.map(wordsOn).join(' ');
    expect(
      words.match(/\b(approved|approves|safe|safely|legal|conforms?|certified|complies|compliant)\b/giu),
    ).toBeNull();
    expect(words.match(/approval/giu)!.length).toBe(words.match(/no approval|nothing here is an approval/giu)!.length);
  });
});

describe('the file', () => {
  const empty = derived({ nodes: {}, members: [] });
  /** The photos alone, all of them there. */
  const withPhotos = { ...empty, job: { ...empty.job, photos: frame.job.photos.slice(0, PHOTOS.size) } };

  it('is the same bytes each time', async () => {
    const again = await make(derivedFrom(inspectedText(1)), 'a4', PHOTOS);
    expect(Buffer.from(again.bytes).equals(Buffer.from((await onA4).bytes))).toBe(true);
  });

  it('holds nothing of what a camera notes', async () => {
    expect(Buffer.from((await onA4).bytes).includes('picture 3')).toBe(false);
  });

  it('has no note where every photo is there', async () => {
    expect(await make(withPhotos, 'a4', PHOTOS)).not.toHaveProperty('note');
  });

  it('says of a picture that is broken what it is', async () => {
    const photos = new Map([...PHOTOS].map(([sum, bytes], i) => [sum, i === 2 ? bytes.slice(0, 90) : bytes]));
    const { bytes, note } = await make(withPhotos, 'a4', photos);
    expect(note).toMatch(/^dossier\.pdf: View 2: broken/u);
    expect(await imagesOf(bytes)).toBe(9);
  });

  it('is made of the demo, and of a job with nothing in it', async () => {
    for (const one of [derivedDemo(), empty]) {
      const { pages } = await readPdf((await make(one)).bytes);
      expect(pages.length).toBeGreaterThan(1);
      for (const page of pages) expect(overlapsOf(page)).toEqual([]);
      expect(wordsOn(pages.at(-1)!)).toContain('Signature');
      const words = pages.map(wordsOn).join(' ');
      const [sheet] = one.job.rules;
      expect(words).toContain(sheet?.body ?? 'The job holds no rule sheet');
    }
  });

  it('can be stopped at each step', async () => {
    const one = { ...derivedDemo(), tubes: derivedDemo().tubes.slice(0, 2) };
    let asked = 0;
    await dossierPdf(one, fonts, plainPrint, async () => void (asked += 1), NONE);
    expect(asked).toBeGreaterThan(9);
    for (const stop of [1, 4, asked]) {
      let count = 0;
      const going = () => ((count += 1) === stop ? Promise.reject(new Error('stopped')) : Promise.resolve());
      await expect(dossierPdf(one, fonts, plainPrint, going, NONE)).rejects.toThrow('stopped');
    }
  });
});
