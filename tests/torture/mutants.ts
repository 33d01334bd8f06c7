/**
 * Mutants of job files through the door, the derivation and the fabrication file, in two processes. A process that ends before it
 * is done, by a loop, a crash or for want of memory, is a failure of the mutant it was at; another goes on behind it.
 */
import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { corpus } from './mutants/corpus.ts';
import { mutantText } from './mutants/mutate.ts';
import { seedJobs } from './mutants/seeds.ts';
import { MOST_SECONDS, type Message } from './mutants/worker.ts';
import type { Failure, Part } from './part.ts';

const MUTANTS = 60_000;
const PROCESSES = 2;
/** MB: a mutant that asks for more has failed, and does not take the machine with it. */
const MEMORY = '--max-old-space-size=1024';
/** Beyond so many there is no sense in going on. */
const MOST_FAILURES = 200;

export const mutantsPart: Part = {
  name: 'mutants',
  about: 'mutants of job files, through the door, derived, written',
  async run(scale, seed) {
    const count = Math.round(MUTANTS * scale);
    const folder = mkdtempSync(join(tmpdir(), 'cagewright-mutants-'));
    const known = corpus();
    const failures: Failure[] = known.flatMap(({ name, wrong }) =>
      wrong === null ? [] : [{ what: `tests/fixtures/torture/${name}`, why: wrong }],
    );
    const jobs = seedJobs(seed);
    const failed = (index: number, why: string): void => {
      const file = join(tmpdir(), `cagewright-mutant-${seed}-${index}.json`);
      writeFileSync(file, mutantText(jobs, seed, index));
      failures.push({ what: `mutant ${index} of seed ${seed}, kept in ${file}`, why });
    };
    const chain = async (first: number): Promise<void> => {
      let from = first;
      while (from < count && failures.length < MOST_FAILURES) {
        const progress = join(folder, `at-${first}`);
        const ended = await worked([seed, from, count, PROCESSES, progress].map(String), failed);
        if (ended === 'done') return;
        const index = Number(readFileSync(progress, 'utf8'));
        failed(index, ended);
        from = index + PROCESSES;
      }
    };
    try {
      await Promise.all(Array.from({ length: PROCESSES }, (_, first) => chain(first)));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
    return { tries: count + known.length, failures };
  },
};

/** Runs one process; 'done', or how it ended before that. */
function worked(args: readonly string[], failed: (index: number, why: string) => void): Promise<string> {
  return new Promise((resolve) => {
    const child = fork('src/scripts/launch.mjs', ['tests/torture/mutants/worker.ts', ...args], { execArgv: [MEMORY] });
    let done = false;
    child.on('message', (message: Message) => {
      if (message.kind === 'done') done = true;
      else failed(message.index, message.why);
    });
    child.on('error', (error) => resolve(`the process could not be started: ${error.message}`));
    child.on('exit', (code, signal) => {
      if (done) resolve('done');
      else if (signal === 'SIGKILL') resolve(`took more than ${MOST_SECONDS} s of the processor`);
      else resolve(`the process ended before it was done, ${signal ?? `exit ${code}`}`);
    });
  });
}
