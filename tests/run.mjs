/**
 * `npm test`: everything that is checked; one run shows all, so a stage that fails does not stop the next. What needs no browser runs beside what does.
 * Ends with `N passed, N failed` alone on a line: each test counts one, and so does each part of the torture run and each stage without
 * tests. `--long` (`npm run test:long`) is the tests alone, with all that they draw: docs/long-runs.md.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { ensureInstalled, root } from '../src/scripts/install.mjs';
import { ensureEzdxf } from './debian.mjs';

/** @typedef {{ passed: number, failed: number }} Count */
/** @typedef {Record<string, string | undefined>} Settings */

const LONG = process.argv.includes('--long');

ensureInstalled();
const { ensureChromium } = await import('./chromium.mjs'); // needs the packages
// From the network: what needs neither runs meanwhile.
const fetched = ensureChromium().then(async (found) => {
  await ensureEzdxf();
  return found;
});
/** @type {Settings} colours only where a person looks on */
const plain = process.stdout.isTTY ? {} : { NO_COLOR: '1', FORCE_COLOR: undefined };
const reports = mkdtempSync(join(tmpdir(), 'cagewright-'));

/**
 * @param {string} title
 * @param {string} command with its arguments; a package's program is found by its name
 * @param {Settings} [settings] for its environment
 * @param {boolean} [beside] another stage: what it says is shown once it has ended
 * @returns {Promise<boolean>} whether it ended well
 */
async function run(title, command, settings = {}, beside = false) {
  if (!beside) console.log(`\n== ${title}`);
  const child = spawn(`npx --no-install ${command}`, {
    cwd: root,
    shell: true,
    stdio: ['ignore', beside ? 'pipe' : 'inherit', beside ? 'pipe' : 'inherit'],
    env: { ...process.env, ...plain, ...settings },
  });
  /** @type {Buffer[]} */
  const said = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (piece) => said.push(piece));
  const [status] = await once(child, 'close');
  if (beside) console.log(`\n== ${title}\n${Buffer.concat(said).toString()}`);
  return status === 0;
}

/** @type {(title: string, command: string) => Promise<Count>} */
const stage = async (title, command) =>
  (await run(title, command)) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };

/**
 * A stage of tests, counted from the report it writes. A run that ends badly without a failed test (a file that does
 * not load, a crash), or in which no test ran, counts as one failure.
 *
 * @param {string} title
 * @param {string} command
 * @param {Settings} settings
 * @param {string} report
 * @param {(report: any) => Count} count
 * @param {boolean} [beside]
 * @returns {Promise<Count>}
 */
async function tests(title, command, settings, report, count, beside = false) {
  const endedWell = await run(title, command, settings, beside);
  let counted = { passed: 0, failed: 0 };
  try {
    counted = count(JSON.parse(readFileSync(report, 'utf8')));
  } catch {
    console.log(`${title}: no report was written`);
  }
  const { passed, failed } = counted;
  if (failed === 0 && (!endedWell || passed === 0)) {
    console.log(passed === 0 ? `${title}: no test ran` : `${title}: ended with an error outside the tests`);
    return { passed, failed: 1 };
  }
  return counted;
}

/**
 * A minute of the torture run, counted by the line that it ends with.
 *
 * @param {string | undefined} browser
 * @returns {Promise<Count>}
 */
async function torture(browser) {
  console.log('\n== Torture');
  const child = spawn(process.execPath, ['src/scripts/launch.mjs', 'tests/torture/main.ts', '--short'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...plain, CAGEWRIGHT_CHROMIUM: browser },
  });
  const ended = once(child, 'exit');
  /** @type {Count | undefined} */
  let counted;
  for await (const line of createInterface({ input: child.stdout })) {
    const [, passed, failed] = /^(\d+) passed, (\d+) failed$/u.exec(line) ?? [];
    if (passed === undefined) console.log(line);
    else counted = { passed: Number(passed), failed: Number(failed) };
  }
  const [status] = await ended;
  if (counted !== undefined && (status === 0 || counted.failed > 0)) return counted;
  console.log('Torture: ended with an error outside its parts');
  return { passed: counted?.passed ?? 0, failed: 1 };
}

const unitReport = join(reports, 'unit.json');
const browserReport = join(reports, 'browser.json');
/** @type {Settings} */
const draws = LONG ? { CAGEWRIGHT_LONG: '1' } : {};

const units = () =>
  tests(
    'Layers, units, references',
    `vitest run --reporter=default --reporter=json --outputFile="${unitReport}"`,
    draws,
    unitReport,
    ({ numPassedTests, numFailedTests }) => ({ passed: numPassedTests, failed: numFailedTests }),
    !LONG,
  );

/** @param {string | undefined} browser */
const journeys = (browser) =>
  tests(
    'Browser',
    'playwright test -c tests/browser --reporter=line,json',
    // The runner of these settles colours by itself, and warns of NO_COLOR.
    { PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport, CAGEWRIGHT_CHROMIUM: browser, NO_COLOR: undefined, ...draws },
    browserReport,
    ({ stats }) => ({ passed: stats.expected, failed: stats.unexpected + stats.flaky }),
  );

/** @type {Count[]} */
const counts = [];
if (!LONG) {
  counts.push(await stage('Format', 'oxfmt --check'));
  // What it needs to know of the types to lint is what tsc asks of them: one reading of all sources for both.
  counts.push(await stage('Lint and types', 'oxlint --type-check --report-unused-disable-directives'));
}
const browser = await fetched;
counts.push(await stage('Build', 'vite build'));
const browsers = async () => {
  if (!LONG) counts.push(await torture(browser));
  counts.push(await journeys(browser));
};
if (LONG) {
  counts.push(await units());
  await browsers();
} else {
  // A quarter of the processor is idle while the browsers wait for their pages: the tests that need none have it.
  const beside = units().then((count) => counts.push(count));
  await browsers();
  await beside;
}
rmSync(reports, { recursive: true, force: true });

const passed = counts.reduce((sum, count) => sum + count.passed, 0);
const failed = counts.reduce((sum, count) => sum + count.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
