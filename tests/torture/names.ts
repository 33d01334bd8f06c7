/**
 * Hostile names through the command line into every file there is. Each file is read back by a program that is not ours: it is what it
 * should be, its name is fixed, the tubes' names are in it as far as they can be written, and nothing of them runs or is reckoned.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { unzipSync } from 'fflate';
import { faultLine, printable } from '../../src/core/job/fault.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { shownName } from '../../src/core/job/shown.ts';
import { FORMATS, PRODUCTS } from '../../src/exports/products/catalogue.ts';
import { startKernel } from '../../src/exports/solids/kernel.ts';
import { zipBytes } from '../../src/exports/products/zip.ts';
import { main } from '../../src/fab.ts';
import { fileNameFor } from '../../src/exports/shared/file-name.ts';
import { drawFrom, type Draw } from '../reference/oracles/seeded.ts';
import { deckOf, fitsId, HOSTILE, hostileJob } from './hostile.ts';
import type { Failure, Part } from './part.ts';
import {
  readCsvBack,
  readDxfBack,
  readGlbBack,
  readJsonBack,
  readPdfBack,
  readStlBack,
  readSvgsBack,
  type Given,
  type ReadBack,
} from './readers.ts';

const ROUNDS = 20;
/** Solids take a kernel of 23 MB: the whole run makes them in one round. */
const QUICK = FORMATS.filter((format) => format !== 'step');
/** So many letters of a name are looked for: on paper a long one is shortened, or goes on in the next line. */
const LETTERS = 8;

export const namesPart: Part = {
  name: 'names',
  about: 'hostile names and ids in every file, read back by other programs',
  async run(scale, seed) {
    const draw = drawFrom(seed);
    const [tubeName, name] = [deckOf(draw), deckOf(draw)];
    const failures: Failure[] = [];
    let tries = 0;
    const judge = (what: string, complaints: readonly string[]): void => {
      tries += 1;
      // The same complaint of one file is heard once.
      for (const why of new Set(complaints)) failures.push({ what, why });
    };
    for (const hostile of HOSTILE) judge(`a job saved as ${JSON.stringify(hostile.slice(0, 60))}`, savedAs(hostile));
    for (const hostile of HOSTILE) judge(`an id ${JSON.stringify(hostile.slice(0, 60))}`, asId(hostile));
    const rounds = scale < 1 ? 1 : ROUNDS;
    for (let round = 0; round < rounds; round += 1) {
      const withSolids = scale >= 1 && round === rounds - 1;
      const job = hostileJob(tubeName, name, draw);
      for (const [what, complaints] of await fromCommandLine(job, withSolids, draw))
        judge(`seed ${seed}, round ${round}: ${what}`, complaints);
    }
    return { tries, failures };
  },
};

type Judged = readonly [what: string, complaints: readonly string[]];

/** The name under which a browser saves the job. */
function savedAs(jobName: string): string[] {
  const file = fileNameFor(jobName);
  return [
    ...(/[\\/:*?"<>|\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(file) ? [`${printable(file)} is no name for a file`] : []),
    ...(/^[\s.]|[\s.]$|[\s.]\.cagewright\.json$/u.test(file) ? [`${file} is hidden, or loses its end`] : []),
    // Names that Windows keeps for itself, whatever follows the point (Microsoft, Naming Files, Paths, and Namespaces).
    ...(/^(?:con|prn|aux|nul|com\d|lpt\d)\s*\./iu.test(file) ? [`${file} is a device`] : []),
    ...(new TextEncoder().encode(file).length > 255 ? ['longer than file systems take: 255 bytes'] : []),
  ];
}

/** An id is taken as it is, or refused in one harmless line that names its place. */
function asId(id: string): string[] {
  const parsed = parseJob(
    JSON.stringify({ format: 'cagewright/job', version: 1, points: [{ id, position: [0, 0, 0] }] }),
  );
  if (parsed.ok) return fitsId(id) && parsed.job.points[0]!.id === id ? [] : ['is taken'];
  const lines = parsed.faults.map(faultLine);
  return [
    ...(fitsId(id) ? ['is refused'] : []),
    ...lines.flatMap((line) => (line.startsWith('points[0].id') ? [] : [`without its place: ${line}`])),
    ...lines.flatMap((line) => (line === printable(line) && line.length < 300 ? [] : ['in a line that obeys it'])),
  ];
}

async function fromCommandLine(
  job: Record<string, unknown>,
  withSolids: boolean,
  draw: Draw,
): Promise<readonly Judged[]> {
  const folder = mkdtempSync(join(tmpdir(), 'cagewright-'));
  try {
    const out = join(folder, 'out');
    const file = join(folder, 'job.json');
    writeFileSync(file, JSON.stringify(job));
    const said: string[] = [];
    const paper = draw.oneOf(['a4', 'letter']);
    const formats = (withSolids ? FORMATS : QUICK).join(',');
    const hear = (line: string): void => void said.push(line);
    const exit = await main([file, '--out', out, '--formats', formats, '--paper', paper], hear, hear);
    if (exit !== 0) return [['the command line', said]];
    const written = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
    const files = written
      .map((entry) => join(entry.parentPath, entry.name))
      .filter((path) => path !== file)
      .map((path): Given => ({ fileName: relative(out, path), bytes: new Uint8Array(readFileSync(path)) }));
    return [
      ['what the command line says', said.filter((line) => line !== printable(line)).map((line) => printable(line))],
      ['the names of the files', files.flatMap(({ fileName }) => (isFixed(fileName) ? [] : [printable(fileName)]))],
      ['all as one zip', zipped(files)],
      ...(await readBack(files, job)),
      ...(withSolids ? [await solids(files, job)] : []),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const isFixed = (fileName: string): boolean =>
  fileName in PRODUCTS || /^(?:wraps\/\d+-[AB]|feet\/\d+-[a-z-]+)\.svg$/u.test(fileName);

function zipped(files: readonly Given[]): string[] {
  const entries = unzipSync(zipBytes(files));
  const names = Object.keys(entries).toSorted();
  const same =
    names.join() ===
    files
      .map(({ fileName }) => fileName)
      .toSorted()
      .join();
  return [
    ...(same ? [] : [`holds ${names.length} entries of ${files.length}`]),
    ...files.flatMap(({ fileName, bytes }) =>
      Buffer.compare(bytes, entries[fileName] ?? Buffer.of()) === 0 ? [] : [`${fileName} differs`],
    ),
  ];
}

async function readBack(files: readonly Given[], job: Record<string, unknown>): Promise<readonly Judged[]> {
  const named = (job['members'] as { name: string }[]).map(({ name }) => name);
  const judged: Judged[] = [];
  const put = ({ words, complaints }: ReadBack, fileName: string, wants: 'names' | 'no names'): void => {
    judged.push([fileName, [...complaints, ...(wants === 'names' ? lost(named, words, fileName) : [])]]);
  };
  for (const file of files) {
    const { fileName } = file;
    if (fileName.endsWith('.json')) put(readJsonBack(file), fileName, 'names');
    if (fileName.endsWith('.csv')) put(readCsvBack(file), fileName, fileName === 'tubes.csv' ? 'names' : 'no names');
    // Of the planar tubes alone is there a layout; of ends without a cut no wrap.
    if (fileName.endsWith('.pdf'))
      put(await readPdfBack(file), fileName, fileName === 'sheets.pdf' ? 'names' : 'no names');
    if (fileName.endsWith('.dxf')) put(readDxfBack(file), fileName, 'no names');
    if (fileName.endsWith('.glb')) put(await readGlbBack(file), fileName, 'no names');
    if (fileName.endsWith('.stl')) put(readStlBack(file), fileName, 'no names');
  }
  const svgs = files.filter(({ fileName }) => fileName.endsWith('.svg'));
  readSvgsBack(svgs).forEach((back, i) => put(back, svgs[i]!.fileName, 'no names'));
  return judged;
}

/** Plain letters and figures: every format can write them. */
const plainLetters = (text: string): string => text.replace(/[^A-Za-z0-9]/gu, '');
const RIGHT_TO_LEFT = /[\u0590-\u08ff]/u;

/** Names of which nothing is left, as far as they hold plain letters; on paper words of right-to-left text change places. */
function lost(names: readonly string[], words: readonly string[], fileName: string): string[] {
  const all = plainLetters(words.join(''));
  return names
    .filter((name) => !(fileName.endsWith('.pdf') && RIGHT_TO_LEFT.test(name)))
    .filter((name) => !all.includes(plainLetters(shownName(name)).slice(0, LETTERS)))
    .map((name) => `the name ${JSON.stringify(name.slice(0, 60))} is lost`);
}

/** cage.step read by the kernel: as many bodies as the file names products, and nothing but printable ASCII in it. */
async function solids(files: readonly Given[], job: Record<string, unknown>): Promise<Judged> {
  const step = files.find(({ fileName }) => fileName === 'cage.step');
  if (step === undefined) return ['cage.step', ['is not there']];
  const { default: initialise } = await import('replicad-opencascadejs');
  const wasm = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
  const kernel = await startKernel(initialise, readFileSync(wasm));
  kernel.FS.writeFile('/back.step', new TextDecoder().decode(step.bytes));
  const reader = new kernel.STEPControl_Reader();
  const read = reader.ReadFile('/back.step');
  const text = new TextDecoder().decode(step.bytes);
  const products = text.match(/^#\d+ ?= ?PRODUCT\('.*$/gmu) ?? [];
  const names = (job['members'] as { name: string }[]).map(({ name }) => name);
  return [
    'cage.step',
    [
      ...(read === 'IFSelect_RetDone' ? [] : [`the kernel does not read it: ${read}`]),
      ...(/^[ -~\n\r]*$/u.test(text) ? [] : ['holds more than printable ASCII']),
      ...(reader.NbRootsForTransfer() > 0 ? [] : ['holds no body']),
      ...(products.length > 0 ? [] : ['names no product']),
      ...lost(
        names.filter((name) => /^[\w .-]+$/u.test(name)),
        products,
        'cage.step',
      ),
    ],
  ];
}
