/**
 * A process that judges mutants: number FROM, FROM + STEP ... below UNTIL. It reports to its parent of each that is wrong and, at the
 * end, how many met which fate. The number it is at stands in a file, so that the parent can name the mutant that ended it; a
 * mutant that takes too much of the processor ends it too, watched from a thread of its own, since a loop hears nothing.
 */
import { openSync, writeSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { judge, type Fate } from './judge.ts';
import { mutantText } from './mutate.ts';
import { seedJobs } from './seeds.ts';

export type Message =
  | { readonly kind: 'wrong'; readonly index: number; readonly why: string }
  | { readonly kind: 'so far' | 'done'; readonly fates: Readonly<Record<Fate, number>> };

/** Seconds of the processor that one mutant may take; a common one takes some thousandths. */
export const MOST_SECONDS = 10;

const NONE: Readonly<Record<Fate, number>> = { refused: 0, 'no frame': 0, derived: 0 };
/** A process that is ended takes the fates of this many with it at most. */
const REPORTED_EVERY = 200;

/** One mutant in so many is also rehearsed and wrapped, and its seed derived again after it. */
const SLOW_EVERY = 20;

/** The file that the watch leaves where it ended the process: another killer, for want of memory, leaves none. */
export const slowMark = (progress: string): string => `${progress}-slow`;

/** Of the process as a whole: this thread sleeps, and the mutant's is the only other one. */
const WATCH = `
  const { writeFileSync } = require('node:fs');
  const { workerData } = require('node:worker_threads');
  const at = new Int32Array(workerData.at);
  let [last, since] = [-1, 0];
  setInterval(() => {
    const { user, system } = process.cpuUsage();
    const now = user + system;
    if (at[0] !== last) [last, since] = [at[0], now];
    else if (now - since > workerData.most * 1e6) {
      writeFileSync(workerData.mark, String(at[0]));
      process.kill(process.pid, 'SIGKILL');
    }
  }, 250);
`;

export async function main([seed, from, until, step, progress, frames]: readonly string[]): Promise<number> {
  const jobs = seedJobs(Number(seed), Number(frames));
  const before = jobs.map((job) => derivedFrom(JSON.stringify(job)));
  const at = new Int32Array(new SharedArrayBuffer(4)).fill(-1);
  const watch = new Worker(WATCH, {
    eval: true,
    workerData: { at: at.buffer, most: MOST_SECONDS, mark: slowMark(progress!) },
  });
  const file = openSync(progress!, 'w');
  let fates = NONE;
  for (let index = Number(from); index < Number(until); index += Number(step)) {
    at[0] = index;
    writeSync(file, String(index).padEnd(12), 0);
    const text = mutantText(jobs, Number(seed), index);
    const result = judge(text, before[index % before.length]!, index % SLOW_EVERY === 0);
    if ('fate' in result) fates = { ...fates, [result.fate]: fates[result.fate] + 1 };
    else await report({ kind: 'wrong', index, why: result.wrong });
    if ((index - Number(from)) % REPORTED_EVERY !== 0) continue;
    await report({ kind: 'so far', fates });
    fates = NONE;
  }
  await watch.terminate();
  await report({ kind: 'done', fates });
  process.disconnect();
  return 0;
}

const report = (message: Message): Promise<void> =>
  new Promise((resolve, reject) =>
    process.send!(message, (error: Error | null) => (error ? reject(error) : resolve())),
  );

function derivedFrom(text: string) {
  const parsed = parseJob(text);
  const derivation = parsed.ok ? derive(parsed.job) : parsed;
  if (!derivation.ok) throw new Error(`a seed that is no frame: ${JSON.stringify(derivation.faults)}`);
  return derivation.value;
}
