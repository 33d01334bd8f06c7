/**
 * What to cut is one number, wherever it is read: in the fabrication file, in the table, on paper, on the screen and in the run, whichever
 * end the job hooks the tape over and whatever order it keeps.
 *
 * The demo on machines that hold 480 mm. By tests/golden/demo.txt the blank of the front leg is 1801.78 mm, its last straight 499.99 mm
 * and its first 460.19 mm with a tip of 0.00: fed from end A it has enough to hold, from end B 19.81 mm are wanted at end A.
 */
import papaparse from 'papaparse';
import { describe, expect, it } from 'vitest';
import { drawnTube } from '../../src/core/run/drawn.ts';
import { bendRun } from '../../src/core/run/run.ts';
import { tapeList } from '../../src/core/marks/tape.ts';
import { beginRun } from '../../src/core/edit/bent.ts';
import type { BendStep } from '../../src/core/job/kinds/bent.ts';
import { feedOf } from '../../src/core/solve/feed.ts';
import type { FabricationFile } from '../../src/exports/tables/fabrication.ts';
import { secondRoundText, runFab } from '../command-line.ts';
import { LONG } from '../draws.ts';
import { derivedFrom } from './jobs.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { readPdf } from './pdf.ts';
import { fonts } from './fonts.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';

const FROM_A = 1801.78;
const FROM_B = 1821.59;

interface Text {
  lengthUnit: string;
  dies: { leastGrip: number }[];
  members: { id: string; path: string[] }[];
  nodes: { id: string }[];
}

/** The front leg with the hoop that it is welded to: its length has nothing to do with the others. */
const TUBES = LONG ? null : ['hoop', 'leg'];

/** In millimetres, so that paper shows lengths in decimals. */
function gripping(more: object = {}): string {
  const job = JSON.parse(secondRoundText()) as Text;
  for (const die of job.dies) die.leastGrip = 480;
  const members = job.members.filter(({ id }) => TUBES?.includes(id) ?? true);
  const ends = new Set(members.flatMap(({ path }) => path.map((id) => id.replace(/'$/u, ''))));
  const nodes = job.nodes.filter(({ id }) => ends.has(id));
  return JSON.stringify({ ...job, members, nodes, feeds: [], seen: [], lengthUnit: 'mm', ...more });
}

const order = (...steps: readonly string[]): readonly BendStep[] =>
  steps.map((step) => ({ bend: Number(step[0]), front: step[1] as 'A' | 'B' }));

/** Of the leg, from the files of the command line. */
async function written(job: string) {
  const { exit, complaints, files } = await runFab(job, '--formats', 'csv');
  expect({ exit, complaints }).toEqual({ exit: 0, complaints: [] });
  const { tubes } = JSON.parse(files.get('fabrication.json')!) as FabricationFile;
  const rows = papaparse.parse<Record<string, string>>(files.get('tubes.csv')!, { header: true }).data;
  return {
    file: tubes.find(({ id }) => id === 'leg')!.cutLength,
    table: Number(rows.find(({ id }) => id === 'leg')!['cut_to_mm']),
  };
}

/** As its sheet says it. */
async function printed(job: string): Promise<number> {
  const derived = derivedFrom(job);
  const alone = { ...derived, tubes: derived.tubes.filter(({ id }) => id === 'leg') };
  const { pages } = await readPdf((await sheetsPdf(alone, fonts, plainPrint, unwatched)).bytes);
  const [words] = pages
    .map(({ texts }) => texts.map(({ text }) => text).join(' '))
    .filter((text) => /Tube \d+(?: of|:) /u.test(text) && text.includes('Cut the blank to'));
  return Number(/Cut the blank to\s+([\d.]+)\s*mm/u.exec(words!)![1]);
}

/** The same from what the Shop shows: its head and list, its blank, and the first step of a run. */
function shown(text: string) {
  const { job, byId } = derivedFrom(text);
  const tube = byId.get('leg')!;
  const feed = feedOf(job, tube);
  const begun = beginRun(job, 'leg', feed.order, drawnTube(tube)).bent.at(-1)!;
  const [cut] = bendRun(tube, begun, feed).steps;
  return {
    head: feed.cutLength,
    drawn: tapeList(tube, feed)!.blank,
    run: cut!.kind === 'cut' ? cut!.blank : Number.NaN,
  };
}

describe('what to cut', () => {
  it.each<[string, object, number]>([
    ['a job that says nothing of it', {}, FROM_A],
    ['from end A', { marking: { from: 'A' } }, FROM_A],
    ['from end B', { marking: { from: 'B', mark: 'clamp', fine: true } }, FROM_B],
    ['from end B on this tube alone', { feeds: [{ tube: 'leg', from: 'B' }] }, FROM_B],
    ['from end A on this tube alone', { marking: { from: 'B' }, feeds: [{ tube: 'leg', from: 'A' }] }, FROM_A],
    ['in an order kept for it', { feeds: [{ tube: 'leg', order: order('2B', '1B') }] }, FROM_B],
    ['in an order that is not its own', { feeds: [{ tube: "leg'", order: order('2B', '1B') }] }, FROM_A],
    [
      'in the order of its run, whatever is kept',
      { bent: [{ tube: 'leg', order: order('2B', '1B') }], feeds: [{ tube: 'leg', order: order('1A', '2A') }] },
      FROM_B,
    ],
    ['in an order that is of other bends now', { feeds: [{ tube: 'leg', order: order('3B', '2B', '1B') }] }, FROM_A],
  ])('%s', async (_, more, length) => {
    const text = gripping(more);
    const { file, table } = await written(text);
    expect(file).toBeCloseTo(length, 2);
    expect(table).toBe(file);
    const { head, drawn, run } = shown(text);
    expect({ head, drawn }).toEqual({ head: file, drawn: file });
    expect(run).toBeCloseTo(file, 9);
  });

  it.each(['A', 'B'])('on paper too, from end %s', async (from) => {
    const job = gripping({ marking: { from } });
    const { file } = await written(job);
    expect(Math.abs((await printed(job)) - file)).toBeLessThanOrEqual(0.05 + 1e-9);
  });
});
