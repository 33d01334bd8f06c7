/**
 * The command line: derives everything from a job file without a browser, by the functions that the browser uses.
 *
 *   npm run -s fab -- JOB.json --out DIR [--formats pdf,csv,...] [--paper a4|letter] [--day 2026-03-02] [--forecast] [--layout NAME] [--photos DIR]
 *
 * Exit 0: derived, whatever the checks found. Exit 1: the job is invalid or cannot be derived, one line on standard
 * error for each fault. Exit 2: wrong usage, or a file that cannot be read or written. Every file is made in memory
 * before the first is written, so a refused job leaves nothing behind.
 */
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { counted } from './core/checks/counted.ts';
import { derive, type Derived } from './core/derive.ts';
import { faultLine, printable, quoted, type Fault } from './core/job/fault.ts';
import type { Photo } from './core/job/kinds/photo.ts';
import { parseJob } from './core/job/parse.ts';
import { GREATEST_PHOTO } from './core/photo/jpeg.ts';
import { sumOf } from './core/scan/sum.ts';
import { LAYOUTS } from './core/survey/spots.ts';
import { countInWords } from './core/words/groups.ts';
import { dayOf, isDay } from './exports/shared/day.ts';
import { withSlowFindings } from './core/stages/work.ts';
import type { Fonts } from './drawing/lettering.ts';
import { FORMATS, productsOf, type Format } from './exports/products/catalogue.ts';
import { plainPrint, type ExportFile } from './exports/shared/files.ts';
import { makeFiles, plainSetting, type Setting, type Supplies } from './exports/products/formats.ts';
import { startKernel } from './exports/solids/kernel.ts';
import { startSolver } from './exports/shared/solver.ts';

const PAPERS = ['a4', 'letter'] as const;
const USAGE = `usage: npm run -s fab -- JOB.json --out DIR [--formats ${FORMATS.join(',')}] [--paper ${PAPERS.join('|')}] [--day 2026-03-02] [--forecast] [--layout ${LAYOUTS.join('|')}] [--photos DIR]`;

/** A job of 2 000 tubes is a few MB. Far beyond that a file is no job, and reading it would only fill the memory. */
const GREATEST_FILE = 64 * 1024 * 1024;

/** What stopped the run: the exit code, and the lines that say why. */
interface Stop {
  readonly exit: 1 | 2;
  readonly lines: readonly string[];
}
type Step<Value> = { readonly value: Value } | { readonly stop: Stop };

const stopped = (exit: 1 | 2, ...lines: readonly string[]): { readonly stop: Stop } => ({ stop: { exit, lines } });
const refused = (faults: readonly Fault[]) => stopped(1, ...faults.map(faultLine));

type Write = (line: string) => void;

/**
 * Runs the command line; `say` and `complain` take each line for standard output and standard error. Resolves to the exit
 * code.
 */
export async function main(
  args: readonly string[],
  say: Write = toOutput,
  complain: Write = toError,
): Promise<0 | 1 | 2> {
  const outcome = await run(args);
  // Names of files and of tubes stand in these lines, and a terminal obeys what it is sent.
  if ('value' in outcome) {
    outcome.value.map(printable).forEach(say);
    return 0;
  }
  outcome.stop.lines.map(printable).forEach(complain);
  return outcome.stop.exit;
}

const toOutput: Write = (line) => void process.stdout.write(`${line}\n`);
const toError: Write = (line) => void process.stderr.write(`${line}\n`);

async function run(args: readonly string[]): Promise<Step<readonly string[]>> {
  const request = readArguments(args);
  if ('stop' in request) return request;
  const { job, out, formats, setting, photos } = request.value;
  const text = readText(job);
  if ('stop' in text) return text;
  const derived = deriveText(text.value);
  if ('stop' in derived) return derived;
  const kept = photos === undefined ? new Map() : readPhotos(photos, derived.value.job.photos);
  const files = await makeFiles(
    derived.value,
    productsOf(formats, derived.value.job),
    { ...setting, photos: kept },
    supplies,
  );
  const notes = files.flatMap(({ note }) => (note === undefined ? [] : [note]));
  return write(files, out, [summary(derived.value), ...notes]);
}

const packagePath = (name: string): string => createRequire(import.meta.url).resolve(name);
const packageFile = (name: string) => readFileSync(packagePath(name));

let typefaces: Fonts | undefined;

const supplies: Supplies = {
  async fonts() {
    typefaces ??= {
      regular: packageFile('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
      bold: packageFile('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
    };
    return typefaces;
  },
  async kernel() {
    const { default: initialise } = await import('replicad-opencascadejs');
    return startKernel(initialise, packageFile('replicad-opencascadejs/wasm'));
  },
  async solver() {
    const { default: load } = await import('highs');
    return startSolver(load, packagePath('highs/runtime'));
  },
};

/** What a person must hear although the run went well: tubes cut to a job with errors do not fit. */
function summary(derived: Derived): string {
  const count = counted(derived.findings, derived.job.seen, derived);
  const [errors, warnings, notes] = (['error', 'warning', 'note'] as const).map((each) => countInWords(count(each)));
  return `tubes: ${derived.tubes.length}, errors: ${errors}, warnings: ${warnings}, notes: ${notes}`;
}

interface Request {
  readonly job: string;
  readonly out: string;
  readonly formats: readonly Format[];
  readonly setting: Setting;
  /** The folder that holds the job's photos. */
  readonly photos?: string;
}

function readArguments(args: readonly string[]): Step<Request> {
  let parsed;
  try {
    const options = {
      out: { type: 'string' },
      formats: { type: 'string' },
      paper: { type: 'string' },
      day: { type: 'string' },
      forecast: { type: 'boolean' },
      layout: { type: 'string' },
      photos: { type: 'string' },
    } as const;
    parsed = parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    return stopped(2, messageOf(error), USAGE);
  }
  const { positionals, values } = parsed;
  const [job] = positionals;
  if (job === undefined || positionals.length > 1) return stopped(2, 'one job file is wanted', USAGE);
  if (!values.out) return stopped(2, '--out DIR is missing', USAGE);
  const names = values.formats?.split(',') ?? [];
  const unknown = names.find((name) => !isOneOf(FORMATS, name));
  if (unknown !== undefined) return stopped(2, `unknown format ${quoted(unknown)}; known: ${FORMATS.join(',')}`);
  const paper = values.paper ?? plainPrint.paper;
  if (!isOneOf(PAPERS, paper)) return stopped(2, `unknown paper ${quoted(paper)}; known: ${PAPERS.join(',')}`);
  const { day = dayOf(new Date()) } = values;
  if (!isDay(day)) return stopped(2, `no day: ${quoted(day)}; as 2026-03-02`);
  const { layout } = values;
  if (layout !== undefined && !isOneOf(LAYOUTS, layout)) {
    return stopped(2, `unknown layout ${quoted(layout)}; known: ${LAYOUTS.join(',')}`);
  }
  const { photos } = values;
  if (photos !== undefined && !isFolder(photos)) return stopped(2, `${photos}: no folder`);
  const formats = names.filter((name) => isOneOf(FORMATS, name));
  const setting: Setting = {
    ...plainSetting,
    print: { ...plainPrint, paper, day },
    forecast: values.forecast === true,
    ...(layout !== undefined && { layout }),
  };
  return { value: { job, out: values.out, formats, setting, ...(photos !== undefined && { photos }) } };
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

/** Those that are there and are what they are called; a sum holds no sign of a path. The others are said to be missing where they would be printed. */
function readPhotos(folder: string, photos: readonly Photo[]): ReadonlyMap<string, Uint8Array> {
  const found = new Map<string, Uint8Array>();
  for (const { sum } of photos) {
    const path = resolve(folder, `${sum}.jpg`);
    const file = statSync(path, { throwIfNoEntry: false });
    if (file?.isFile() !== true || file.size > GREATEST_PHOTO) continue;
    const bytes = readFileSync(path);
    if (sumOf(bytes) === sum) found.set(sum, bytes);
  }
  return found;
}

const isOneOf = <Name extends string>(known: readonly Name[], name: string): name is Name =>
  known.some((each) => each === name);

function readText(file: string): Step<string> {
  try {
    const found = statSync(file);
    if (!found.isFile()) return stopped(2, `${file}: not a file`);
    if (found.size > GREATEST_FILE) return stopped(2, `${file}: more than 64 MB, no job file`);
    return { value: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file)) };
  } catch (error) {
    return stopped(2, `${file}: ${systemReason(error)}`);
  }
}

function deriveText(text: string): Step<Derived> {
  const parsed = parseJob(text);
  if (!parsed.ok) return refused(parsed.faults);
  const derivation = derive(parsed.job);
  return derivation.ok ? { value: withSlowFindings(derivation.value) } : refused(derivation.faults);
}

/** Answers the lines to say once everything is written. */
function write(files: readonly ExportFile[], folder: string, done: readonly string[]): Step<readonly string[]> {
  try {
    for (const { fileName, bytes } of files) {
      const path = resolve(folder, fileName);
      makeFolder(dirname(path));
      writeFileSync(path, bytes);
    }
    return { value: done };
  } catch (error) {
    return stopped(2, `${folder}: ${systemReason(error)}`);
  }
}

/** One by one from the first that is missing: Node's own recursive way never ends where the system allows no new folder. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder);
}

const SYSTEM_REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  EACCES: 'not permitted',
  EPERM: 'not permitted',
  EEXIST: 'a file stands there',
  ENOTDIR: 'a file stands there',
  ENOSPC: 'the disk is full',
  EISDIR: 'a folder stands there',
  ERR_ENCODING_INVALID_ENCODED_DATA: 'not UTF-8 text',
  EROFS: 'the disk cannot be written to',
};

/** The system's reason in plain words where it is a common one, else the system's own message. */
function systemReason(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return SYSTEM_REASONS[code] ?? messageOf(error);
}

/** One line, whatever the error. */
const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error)).split('\n')[0]!;
