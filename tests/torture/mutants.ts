/**
 * Mutants of job files through the door, the derivation and the fabrication file, in two processes (one in the short run). A process that ends before it
 * is done, by a loop, a crash or for want of memory, is a failure of the mutant it was at; another goes on behind it.
 */
import { fork } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { corpus } from './mutants/corpus.ts';
import type { Fate } from './mutants/judge.ts';
import { mutantText } from './mutants/mutate.ts';
import { seedJobs } from './mutants/seeds.ts';
import { MOST_SECONDS, slowMark, type Message } from './mutants/worker.ts';
import type { Failure, Part } from './part.ts';

const MUTANTS = 60_000;
/** Of their share in the short run this much is done, of fewer frames and in one process: each takes long to start. */
const OF_SHORT = 0.05;
const SHORT_FRAMES = 12;
const FRAMES = 40;
/** Fewer derived than this share, and the run has tried the door alone. */
const LEAST_DERIVED = 0.25;
const PROCESSES = 2;
/** MB: a mutant that asks for more has failed, and does not take the machine with it. */
const MEMORY = '--max-old-space-size=1024';
const FATES: readonly Fate[] = ['refused', 'no frame', 'derived'];
/** Beyond so many there is no sense in going on. */
const MOST_FAILURES = 200;

export const mutantsPart: Part = {
  name: 'mutants',
  about: 'mutants of job files, through the door, derived, written',
  async run(scale, seed) {
    const isShort = scale < 1;
    const count = Math.round(MUTANTS * scale * (isShort ? OF_SHORT : 1));
    const frames = isShort ? SHORT_FRAMES : FRAMES;
    const processes = isShort ? 1 : PROCESSES;
    const folder = mkdtempSync(join(tmpdir(), 'cagewright-mutants-'));
    // In npm test, which is where the short run stands, corpus.test.ts judges these.
    const known = isShort ? [] : corpus();
    const failures: Failure[] = known.flatMap(({ name, wrong }) =>
      wrong === null ? [] : [{ what: `tests/fixtures/torture/${name}`, why: wrong }],
    );
    const fates: Record<Fate, number> = { refused: 0, 'no frame': 0, derived: 0 };
    const failed = (index: number, why: string): void => {
      const file = join(tmpdir(), `cagewright-mutant-${seed}-${index}.json`);
      writeFileSync(file, mutantText(seedJobs(seed, frames), seed, index));
      failures.push({ what: `mutant ${index} of seed ${seed}, kept in ${file}`, why });
    };
    const chain = async (first: number): Promise<void> => {
      let from = first;
      while (from < count && failures.length < MOST_FAILURES) {
        const progress = join(folder, `at-${first}`);
        const ended = await worked([seed, from, count, processes, progress, frames].map(String), failed, fates);
        if (ended === 'done') return;
        const index = Number(readFileSync(progress, 'utf8'));
        failed(index, ended);
        rmSync(slowMark(progress), { force: true });
        from = index + processes;
      }
    };
    try {
      await Promise.all(Array.from({ length: processes }, (_, first) => chain(first)));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
    if (failures.length < MOST_FAILURES && fates.derived < LEAST_DERIVED * count)
      failures.push({
        what: `${fates.derived} of ${count} mutants derived`,
        why: 'too few to have tried more than the door',
      });
    const met = Object.entries(fates).map(([fate, met]) => `${met.toLocaleString('en')} ${fate}`);
    return { tries: count + known.length, failures, note: met.join(', ') };
  },
};

/** Runs one process; 'done', or how it ended before that. */
function worked(
  args: readonly string[],
  failed: (index: number, why: string) => void,
  fates: Record<Fate, number>,
): Promise<string> {
  return new Promise((resolve) => {
    const child = fork('src/scripts/launch.mjs', ['tests/torture/mutants/worker.ts', ...args], { execArgv: [MEMORY] });
    let done = false;
    child.on('message', (message: Message) => {
      if (message.kind === 'wrong') return failed(message.index, message.why);
      for (const fate of FATES) fates[fate] += message.fates[fate];
      done ||= message.kind === 'done';
    });
    child.on('error', (error) => resolve(`the process could not be started: ${error.message}`));
    child.on('exit', (code, signal) => {
      if (done) resolve('done');
      else if (existsSync(slowMark(args[4]!))) resolve(`took more than ${MOST_SECONDS} s of the processor`);
      else resolve(`the process ended before it was done, ${signal ?? `exit ${code}`}`);
    });
  });
}
