/**
 * `npm test`: everything that is checked, in order; one run tells all, so a stage that fails does not stop the next.
 * Ends with `N passed, N failed` alone on a line: each test counts one, and so does each part of the torture run and each stage without
 * tests. `--long` (`npm run test:long`) is the tests alone, with all that they draw: docs/long-runs.md.
 */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { ensureInstalled, root } from '../src/scripts/install.mjs';
import { ensureEzdxf } from './debian.mjs';

/** @typedef {{ passed: number, failed: number }} Count */
/** @typedef {Record<string, string | undefined>} Settings */

ensureInstalled();
const { ensureChromium } = await import('./chromium.mjs'); // needs the packages
const browser = ensureChromium();
ensureEzdxf();
/** @type {Settings} colours only where a person looks on */
const plain = process.stdout.isTTY ? {} : { NO_COLOR: '1', FORCE_COLOR: undefined };
const reports = mkdtempSync(join(tmpdir(), 'cagewright-'));

/**
 * @param {string} title
 * @param {string} command with its arguments; a package's program is found by its name
 * @param {Settings} [settings] for its environment
 * @returns {boolean} whether it ended well
 */
function run(title, command, settings = {}) {
  console.log(`\n== ${title}`);
  const { status } = spawnSync(`npx --no-install ${command}`, {
    cwd: root,
    shell: true,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...plain, ...settings },
  });
  return status === 0;
}

/** @type {(title: string, command: string) => Count} */
const stage = (title, command) => (run(title, command) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 });

/**
 * A stage of tests, counted from the report it writes. A run that ends badly without a failed test (a file that does
 * not load, a crash), or in which no test ran, counts as one failure.
 *
 * @param {string} title
 * @param {string} command
 * @param {Settings} settings
 * @param {string} report
 * @param {(report: any) => Count} count
 * @returns {Count}
 */
function tests(title, command, settings, report, count) {
  const endedWell = run(title, command, settings);
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
 * @returns {Promise<Count>}
 */
async function torture() {
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
/** @type {(settings?: Settings) => Count} */
const units = (settings = {}) =>
  tests(
    'Layers, units, references',
    `vitest run --reporter=default --reporter=json --outputFile="${unitReport}"`,
    settings,
    unitReport,
    ({ numPassedTests, numFailedTests }) => ({ passed: numPassedTests, failed: numFailedTests }),
  );
/** @type {(settings?: Settings) => Count} */
const journeys = (settings = {}) =>
  tests(
    'Browser',
    'playwright test -c tests/browser --reporter=line,json',
    // The runner of these settles colours by itself, and warns of NO_COLOR.
    { PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport, CAGEWRIGHT_CHROMIUM: browser, NO_COLOR: undefined, ...settings },
    browserReport,
    ({ stats }) => ({ passed: stats.expected, failed: stats.unexpected + stats.flaky }),
  );
const ALL = { CAGEWRIGHT_LONG: '1' };
const counts = process.argv.includes('--long')
  ? [units(ALL), stage('Build', 'vite build'), journeys(ALL)]
  : [
      stage('Format', 'oxfmt --check'),
      stage('Lint', 'oxlint --report-unused-disable-directives'),
      stage('Types', 'tsc --noEmit'),
      units(),
      stage('Build', 'vite build'),
      await torture(),
      journeys(),
    ];
rmSync(reports, { recursive: true, force: true });

const passed = counts.reduce((sum, count) => sum + count.passed, 0);
const failed = counts.reduce((sum, count) => sum + count.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
