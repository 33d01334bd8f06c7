/**
 * The torture run: `npm run torture [-- --short] [-- PART ...] [-- --seed N]`. Prints one table of tries and failures and answers 1 on any
 * failure. `--short` does a tenth of each part, of names and mutants less: that is what `npm test` runs. Each part stands in a file of its own.
 */
import { editsPart } from './edits.ts';
import { killPart } from './kill.ts';
import { mutantsPart } from './mutants.ts';
import { namesPart } from './names.ts';
import { atOnce, type Outcome, type Part } from './part.ts';
import { sessionPart } from './session.ts';
import { storagePart } from './storage.ts';
import { tabsPart } from './tabs.ts';

/**
 * In the order in which they begin: in the whole run one after the other, in the short one three at a time, since beside a browser that
 * waits another reckons. The longest come first.
 */
const PARTS: readonly Part[] = [sessionPart, storagePart, tabsPart, namesPart, killPart, editsPart, mutantsPart];

const SHORT = 0.1;
const SEED = 20260301;
/** Failures that are printed whole, of each part. */
const SHOWN = 20;

const say = (line: string): void => void process.stdout.write(`${line}\n`);

export async function main(given: readonly string[]): Promise<number> {
  const short = given.includes('--short');
  const seedAt = given.indexOf('--seed');
  const seed = seedAt < 0 ? SEED : Number(given[seedAt + 1]);
  const named = given.filter((word, at) => !word.startsWith('--') && (seedAt < 0 || at !== seedAt + 1));
  const unknown = named.filter((name) => !PARTS.some((part) => part.name === name));
  if (unknown.length > 0 || !Number.isInteger(seed)) {
    say(`torture [--short] [--seed N] [PART ...], parts: ${PARTS.map(({ name }) => name).join(', ')}`);
    return 2;
  }

  const parts = PARTS.filter(({ name }) => named.length === 0 || named.includes(name));
  const rows: { part: Part; outcome: Outcome; seconds: number }[] = [];
  await atOnce(short ? 3 : 1, parts, async (part) => {
    const start = performance.now();
    const outcome = await part
      .run(short ? SHORT : 1, seed)
      .catch((error: unknown): Outcome => ({ tries: 1, failures: [{ what: 'the part itself', why: String(error) }] }));
    rows.push({ part, outcome, seconds: (performance.now() - start) / 1000 });
    for (const { what, why } of outcome.failures.slice(0, SHOWN)) say(`${part.name}: ${what}\n    ${why}`);
  });
  rows.sort((a, b) => PARTS.indexOf(a.part) - PARTS.indexOf(b.part));

  say(`\nSeed ${seed}${short ? ', a tenth of each part, of names and mutants less' : ''}`);
  say(`${'part'.padEnd(12)}${'tries'.padStart(9)}${'failures'.padStart(10)}${'seconds'.padStart(9)}  what is tried`);
  for (const { part, outcome, seconds } of rows) {
    const figures = [outcome.tries, outcome.failures.length].map((n) => n.toLocaleString('en'));
    say(
      `${part.name.padEnd(12)}${figures[0]!.padStart(9)}${figures[1]!.padStart(10)}${seconds.toFixed(0).padStart(9)}  ${part.about}${outcome.note === undefined ? '' : `: ${outcome.note}`}`,
    );
  }
  const failed = rows.filter(({ outcome }) => outcome.tries === 0 || outcome.failures.length > 0).length;
  say(`\n${rows.length - failed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}
