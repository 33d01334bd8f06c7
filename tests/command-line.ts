/** The command line, run in this process on a job given as text, in a folder of its own that is gone afterwards. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { main } from '../src/fab.ts';

export interface Run {
  readonly exit: number;
  readonly said: readonly string[];
  readonly complaints: readonly string[];
  /** Whatever stands beside the job afterwards: its path, seen from DIR, and its text (of a folder, ''). */
  readonly files: ReadonlyMap<string, string>;
  /** The same as it stands on the disk, folders left out. */
  readonly bytes: ReadonlyMap<string, Uint8Array>;
}

/** Runs `fab job.json --out DIR` and what else is given. The job goes into its file as it is, bytes too. */
export async function runFab(job: string | Uint8Array, ...more: readonly string[]): Promise<Run> {
  const folder = mkdtempSync(join(tmpdir(), 'cagewright-'));
  const out = join(folder, 'out');
  try {
    const file = join(folder, 'job.json');
    writeFileSync(file, job);
    const said: string[] = [];
    const complaints: string[] = [];
    const exit = await main(
      [file, '--out', out, ...more],
      (line) => said.push(line),
      (line) => complaints.push(line.replaceAll(folder, 'FOLDER')),
    );
    const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
    const bytes = new Map<string, Uint8Array>();
    const files = entries.map((entry): [string, string] => {
      const path = join(entry.parentPath, entry.name);
      const name = relative(out, path);
      if (!entry.isFile()) return [name, ''];
      const read = readFileSync(path);
      bytes.set(name, new Uint8Array(read));
      return [name, read.toString('utf8')];
    });
    files.sort(([a], [b]) => (a < b ? -1 : 1));
    return { exit, said, complaints, files: new Map(files.filter(([name]) => name !== join('..', 'job.json'))), bytes };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The text of the demo job; tests start in the project's folder, also those that are bundled into another. */
/** An earlier demo, whose points are typed: what is asked of it has nothing to do with how they were measured. */
export const typedDemoText = (): string => readFileSync('tests/fixtures/demo-typed.cagewright.json', 'utf8');

export const demoText = (): string => readFileSync('public/demo.cagewright.json', 'utf8');

/** The demo of an earlier build, in which halves of bars were drawn as two and feet were plates: a file that goes on to be read as it was. */
export const secondRoundText = (): string => readFileSync('tests/fixtures/demo-second-round.cagewright.json', 'utf8');
