/** How the command line is used, and what it does when it is used wrongly or a file cannot be read or written. */
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../src/fab.ts';
import type { FabricationFile } from '../src/exports/tables/fabrication.ts';
import { demoText, runFab, secondRoundText } from './command-line.ts';
import { inspectedText, photosBySum } from './exports/dossier-job.ts';
import { readPdf } from './exports/pdf.ts';
import { LONG } from './draws.ts';
import { fewTubes } from './few-tubes.ts';
import { BRACKETS_COST, cheaperBySolver } from './stock-jobs.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
let folder: string;
let demo: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cagewright-'));
  demo = join(folder, 'demo.json');
  writeFileSync(demo, few);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function complaintsOf(...args: readonly string[]): Promise<{ exit: number; complaints: readonly string[] }> {
  const complaints: string[] = [];
  const exit = await main(
    args,
    () => {},
    (line) => complaints.push(line),
  );
  return { exit, complaints };
}

const EVERY = 'pdf,csv,dxf,svg,step,gltf,stl,dossier,quote';

/** Beside the flat pattern of each end. */
const FILES = [
  'fabrication.json',
  'sheets.pdf',
  'wraps.pdf',
  'layout.pdf',
  'tack-up.pdf',
  'measuring.pdf',
  'feet.pdf',
  'tubes.csv',
  'bends.csv',
  'xyz.csv',
  'copes.csv',
  'wraps.dxf',
  'layout.dxf',
  'feet.dxf',
  'gussets.dxf',
  'cage.step',
  'cage.glb',
  'cage.stl',
  'dossier.pdf',
  'quote.pdf',
  'quote-shop.pdf',
  'order.pdf',
  'order.csv',
];

const few = fewTubes();

/** Every file of it, made once. */
let every: ReturnType<typeof runFab> | undefined;
const everything = () => (every ??= runFab(few, '--formats', EVERY, '--paper', 'letter'));

describe('fab', () => {
  it('writes the fabrication file alone unless asked for more', async () => {
    const { exit, said, complaints, files } = await runFab(demoText());
    expect({ exit, complaints }).toEqual({ exit: 0, complaints: [] });
    expect([...files.keys()]).toEqual(['', 'fabrication.json']);
    expect(said).toEqual([
      expect.stringMatching(/^tubes: \d+, errors: 0, warnings: \d+( \(\d+ places\))?, notes: \d+( \(\d+ places\))?$/u),
    ]);
  });

  it('says how the joints will fit with --forecast', async () => {
    const { exit, files } = await runFab(few, '--forecast');
    expect(exit).toBe(0);
    expect(JSON.parse(files.get('fabrication.json')!).forecast.joints.length).toBeGreaterThan(0);
  });

  it('asks on the measuring sheet for the places of --layout, and for no layout that there is not', async () => {
    const nothing = JSON.stringify({ format: 'cagewright/job', version: 1, name: 'Nothing' });
    const wordsOf = async (...args: readonly string[]) => {
      const { bytes } = await runFab(nothing, '--formats', 'pdf', ...args);
      const { pages } = await readPdf(bytes.get('measuring.pdf')!);
      return pages.flatMap(({ texts }) => texts.map(({ text }) => text));
    };
    expect(await wordsOf('--layout', 'roll-bar')).toContain('For: Roll bar');
    expect(await wordsOf()).toContain('For: Six-point');
    const { exit, complaints } = await runFab(nothing, '--layout', 'dome');
    expect({ exit, complaints }).toEqual({
      exit: 2,
      complaints: ['unknown layout "dome"; known: roll-bar,six-point,two-hoops,roof-ring,side-hoops'],
    });
  });

  it('prints the photos that lie in --photos under their sums, and no other file there', async () => {
    const photos = mkdtempSync(join(folder, 'photos-'));
    const [first, second, third] = [...photosBySum()] as [
      [string, Uint8Array],
      [string, Uint8Array],
      [string, Uint8Array],
    ];
    writeFileSync(join(photos, `${first[0]}.jpg`), first[1]);
    // Another picture under its name.
    writeFileSync(join(photos, `${second[0]}.jpg`), third[1]);
    mkdirSync(join(photos, `${third[0]}.jpg`));
    const { exit, said } = await runFab(inspectedText(), '--formats', 'dossier', '--photos', photos);
    expect(exit).toBe(0);
    expect(said[1]).toMatch(/^dossier\.pdf: 9 photos are named in the job and not kept here: View 1; View 2; /u);
    const missing = await runFab(inspectedText(), '--formats', 'dossier', '--photos', join(folder, 'nowhere'));
    expect({ exit: missing.exit, complaints: missing.complaints.length }).toEqual({ exit: 2, complaints: 1 });
  });

  it('writes the tables with --formats csv, a format once however often it is named', async () => {
    const { files } = await runFab(demoText(), '--formats', 'csv,csv');
    expect([...files.keys()]).toEqual([
      '',
      'bends.csv',
      'copes.csv',
      'fabrication.json',
      'stock.csv',
      'tubes.csv',
      'xyz.csv',
    ]);
  });

  it('has the plan that the solver finds where the own search does not prove its own', async () => {
    const { files } = await runFab(cheaperBySolver(fewTubes()), '--formats', 'csv');
    const { stock } = JSON.parse(files.get('fabrication.json')!) as FabricationFile;
    expect([stock!.cost, stock!.leastCost]).toEqual([BRACKETS_COST, BRACKETS_COST]);
    const rows = files.get('stock.csv')!.trim().split('\r\n').slice(1);
    expect(rows).toHaveLength(stock!.plan.flatMap(({ cuts }) => cuts).length);
    expect(rows).toHaveLength(80);
  });

  it('writes every file of every format, and nothing else', async () => {
    const { exit, complaints, files } = await everything();
    expect({ exit, complaints }).toEqual({ exit: 0, complaints: [] });
    const { tubes } = JSON.parse(files.get('fabrication.json')!) as FabricationFile;
    const wraps = tubes.flatMap(({ number, ends }) =>
      ['A', 'B'].filter((_, i) => ends[i]!.tip !== null).map((end) => `wraps/${number}-${end}.svg`),
    );
    expect(new Set(files.keys())).toEqual(new Set(['', 'wraps', ...FILES, ...wraps]));
    // US Letter, 8.5 by 11 in.
    for (const name of FILES.filter((each) => each.endsWith('.pdf'))) {
      expect(files.get(name), name).toMatch(/\/MediaBox \[0 0 612 792\]/u);
    }
    expect(files.get('cage.stl')).toMatch(/^Cagewright/u);
    expect(files.get('cage.glb')).toMatch(/^glTF/u);
    expect(files.get('cage.step')).toMatch(/^ISO-10303-21;/u);
  });

  it('writes every format for a job without a tube', async () => {
    const nothing = JSON.stringify({ format: 'cagewright/job', version: 1, name: 'Nothing' });
    const { exit, complaints, files } = await runFab(nothing, '--formats', EVERY);
    expect({ exit, complaints }).toEqual({ exit: 0, complaints: [] });
    expect([...files.keys()]).toEqual(expect.arrayContaining([...FILES]));
  });

  it('keeps to its folder and to its names of files whatever the names in the job are', async () => {
    const names = [
      `it's "quoted"`,
      'two\r\nlines',
      '🏁 \u{1F469}\u200D\u{1F527}',
      'קורה \u202e ראשית',
      'bar '.repeat(75),
      '=cmd()',
      '../../x',
      '<script>alert(1)</script>&amp;',
    ];
    const job = JSON.parse(secondRoundText());
    job.name = names.join(' ');
    // One bar of each name, all in the place of the hoop's first leg, the first bent once.
    const [hoop] = job.members;
    job.members = names.map((_, i) => ({ ...hoop, id: `bar${i}`, path: hoop.path.slice(0, i === 0 || LONG ? 3 : 2) }));
    job.nodes = job.nodes.filter(({ id }: { id: string }) => hoop.path.includes(id));
    for (const list of [job.members, job.nodes, job.points, job.sections, job.dies, job.envelopes])
      list.forEach((record: { name: string }, i: number) => (record.name = names[i % names.length]!));
    job.sections.forEach((section: { material: string }, i: number) => (section.material = names[i % names.length]!));
    // Solids have a test of such names of their own (exports/solids), and a kernel that takes seconds to start.
    const { exit, complaints, files } = await runFab(JSON.stringify(job), '--formats', EVERY.replace('step,', ''));
    expect({ exit, complaints }).toEqual({ exit: 0, complaints: [] });
    const { tubes } = JSON.parse(files.get('fabrication.json')!) as FabricationFile;
    // Of 300 characters, 199 and three dots.
    expect(tubes.map((tube) => tube.name)).toEqual(
      names.map((name) => (name.length <= 200 ? name : `${name.slice(0, 199)}…`)),
    );
    const wraps = names.flatMap((_, i) => [`wraps/${i + 1}-A.svg`, `wraps/${i + 1}-B.svg`]);
    expect(new Set(files.keys())).toEqual(
      new Set(['', 'wraps', ...wraps, ...FILES.filter((name) => name !== 'cage.step')]),
    );
    for (const name of wraps) expect(files.get(name)).not.toContain('<script');
  });

  it('says which tube a model is without', async () => {
    const job = JSON.parse(secondRoundText());
    job.nodes.find(({ id }: { id: string }) => id === 'dash-corner').at.position[1] = 10;
    job.members.find(({ name }: { name: string }) => name === 'Dash bar').name = 'Dash\u001b[2J bar';
    const { exit, said } = await runFab(JSON.stringify(job), '--formats', 'gltf,stl');
    expect(exit).toBe(0);
    expect(said.slice(1)).toEqual([
      expect.stringMatching(/^cage\.glb is without 14 Dash\\u001b\[2J bar: /u),
      expect.stringMatching(/^cage\.stl is without 14 Dash\\u001b\[2J bar: /u),
    ]);
  });

  it('derives a frame that cannot be made, exit 0, and says that there are errors', async () => {
    const job = JSON.parse(secondRoundText());
    const dash = job.nodes.find(({ id }: { id: string }) => id === 'dash-corner');
    dash.at.position[1] = 10; // the dash bar's two corners are now nearer than their set-backs
    const { exit, said, files } = await runFab(JSON.stringify(job));
    expect(exit).toBe(0);
    expect(said[0]).toMatch(/errors: [1-9]/u);
    const { tubes } = JSON.parse(files.get('fabrication.json')!);
    expect(tubes.find(({ id }: { id: string }) => id === 'dash').straights[1]).toBeLessThan(0);
  });

  it('gives the same bytes for the same job', async () => {
    const formats = 'pdf,csv,dxf,svg,gltf,stl,dossier,quote';
    const again = (await runFab(few, '--formats', formats, '--paper', 'letter')).files;
    const { files } = await everything();
    for (const [name, text] of again) expect(text === files.get(name), name).toBe(true);
  });

  it.each<[what: string, args: () => string[], first: RegExp]>([
    ['no job', () => ['--out', join(folder, 'x')], /^one job file is wanted$/u],
    ['two jobs', () => [demo, demo, '--out', join(folder, 'x')], /^one job file is wanted$/u],
    ['no folder', () => [demo], /^--out DIR is missing$/u],
    ['an option it does not know', () => [demo, '--out', join(folder, 'x'), '--fast'], /--fast/u],
    ['an option without its value', () => [demo, '--out'], /--out/u],
    [
      'a format it does not know',
      () => [demo, '--out', join(folder, 'x'), '--formats', 'csv,xls'],
      /^unknown format "xls"; known: pdf,csv,dxf,svg,step,gltf,stl,dossier,quote$/u,
    ],
    [
      'a paper it does not know',
      () => [demo, '--out', join(folder, 'x'), '--paper', 'a3'],
      /^unknown paper "a3"; known: a4,letter$/u,
    ],
    ['no day', () => [demo, '--out', join(folder, 'x'), '--day', '3/2/26'], /^no day: "3\/2\/26"; as 2026-03-02$/u],
    [
      'an empty format',
      () => [demo, '--out', join(folder, 'x'), '--formats', ''],
      /^unknown format ""; known: pdf,csv,dxf,svg,step,gltf,stl,dossier,quote$/u,
    ],
    [
      'a job that is not there',
      () => [join(folder, 'none.json'), '--out', join(folder, 'x')],
      /none\.json: no such file$/u,
    ],
    ['a folder for a job', () => [folder, '--out', join(folder, 'x')], /: not a file$/u],
  ])('refuses %s with exit 2 and writes nothing', async (_, args, first) => {
    const { exit, complaints } = await complaintsOf(...args());
    expect(exit).toBe(2);
    expect(complaints[0]).toMatch(first);
    expect(existsSync(join(folder, 'x'))).toBe(false);
  });

  it('sends a terminal nothing that it would obey, whatever files and options are called', async () => {
    const hostile = 'a\u001b]0;title\u0007\n\u009b31m\u202eb';
    for (const args of [
      [join(folder, hostile), '--out', 'x'],
      [demo, '--out', 'x', `--${hostile}`],
      [demo, '--out', 'x', '--paper', hostile],
    ]) {
      const { exit, complaints } = await complaintsOf(...args);
      expect(exit).toBe(2);
      for (const line of complaints) expect(line).not.toMatch(/[\p{Cc}\p{Cf}]/u);
    }
    const { complaints } = await complaintsOf(join(folder, hostile), '--out', 'x');
    expect(complaints).toEqual([
      `${join(folder, String.raw`a\u001b]0;title\u0007\u000a\u009b31m\u202eb`)}: no such file`,
    ]);
  });

  it('refuses text that is not UTF-8', async () => {
    const { exit, complaints, files } = await runFab(Uint8Array.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x7d]));
    expect({ exit, complaints, files: files.size }).toEqual({
      exit: 2,
      complaints: ['FOLDER/job.json: not UTF-8 text'],
      files: 0,
    });
  });

  it('reads a file that begins with a byte order mark', async () => {
    expect((await runFab(`\uFEFF${few}`)).exit).toBe(0);
  });

  it('refuses a file beyond 64 MB without reading it', async () => {
    const large = join(folder, 'large.json');
    writeFileSync(large, '');
    truncateSync(large, 64 * 1024 * 1024 + 1);
    const { exit, complaints } = await complaintsOf(large, '--out', join(folder, 'x'));
    expect({ exit, complaints }).toEqual({ exit: 2, complaints: [`${large}: more than 64 MB, no job file`] });
  });

  it('says so when the folder cannot be made or a file cannot be written', async () => {
    expect(await complaintsOf(demo, '--out', demo)).toEqual({ exit: 2, complaints: [`${demo}: a file stands there`] });
    // Where no folder can be made it says so, and ends (Linux: /proc takes none).
    if (process.platform === 'linux') expect((await complaintsOf(demo, '--out', '/proc/none/x')).exit).toBe(2);
    const out = join(folder, 'taken');
    mkdirSync(join(out, 'fabrication.json'), { recursive: true });
    expect(await complaintsOf(demo, '--out', out)).toEqual({ exit: 2, complaints: [`${out}: a folder stands there`] });
  });

  it('makes the folder, with those above it', async () => {
    const out = join(folder, 'a', 'b');
    expect((await complaintsOf(demo, '--out', out)).exit).toBe(0);
    expect(readdirSync(out)).toEqual(['fabrication.json']);
  });
});

describe('npm run -s fab', () => {
  const npm = (...args: string[]) =>
    spawnSync('npm', ['run', '-s', 'fab', '--', ...args], {
      cwd: root,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });

  it('writes what the functions write', async () => {
    const out = join(folder, 'spawned');
    const { status, stderr } = npm(demo, '--out', out);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(readFileSync(join(out, 'fabrication.json'), 'utf8')).toBe((await runFab(few)).files.get('fabrication.json'));
  });

  it('reports a fault on standard error, in one line, and exits 1', () => {
    const bad = join(folder, 'bad.json');
    writeFileSync(bad, few.replace('"version":1', '"version":9'));
    const out = join(folder, 'unwritten');
    const { status, stderr, stdout } = npm(bad, '--out', out);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toBe('version: 9 was made by a later version of the program, which reads up to 1\n');
    expect(existsSync(out)).toBe(false);
  });
});
