/**
 * The browser of the browser tests: an installed Chromium, Chrome or Edge; else Debian's package, where we may install
 * it; else the test library's own download.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { fetching, installDebian } from './debian.mjs';

const programs = process.env.PROGRAMFILES ?? 'C:\\Program Files';
const programs86 = process.env['PROGRAMFILES(X86)'] ?? 'C:\\Program Files (x86)';
const local = process.env.LOCALAPPDATA ?? '';

const usualPlaces = {
  linux: [
    '/usr/bin/chromium-headless-shell', // no window to keep: the whole run takes half as long
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/opt/google/chrome/chrome',
    '/usr/bin/microsoft-edge',
    '/usr/bin/chromium-browser',
    '/usr/lib/chromium/chromium',
  ],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    `${programs}\\Google\\Chrome\\Application\\chrome.exe`,
    `${programs86}\\Google\\Chrome\\Application\\chrome.exe`,
    `${local}\\Google\\Chrome\\Application\\chrome.exe`,
    `${programs86}\\Microsoft\\Edge\\Application\\msedge.exe`,
    `${programs}\\Microsoft\\Edge\\Application\\msedge.exe`,
  ],
};

/** What every browser of the tests is started with. */
export const FLAGS = [
  '--no-sandbox', // a container's root has none
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // To optimise what is run a few times costs more than it saves: the kernel that makes solids is large, and a page of a test lives for
  // seconds. Without the second, a quarter to a third of what a page does is compiling.
  '--js-flags=--wasm-tiering-budget=1000000000,--invocation-count-for-maglev=40000',
];

/**
 * True if the file is a browser that starts: some systems keep a script in its place that only says how to get one.
 *
 * @param {string} path
 */
function works(path) {
  if (!existsSync(path)) return false;
  if (process.platform === 'win32') return true; // there --version opens a window
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0;
}

/**
 * @returns {string | undefined} the executable; CAGEWRIGHT_CHROMIUM names one outright
 */
export function findChromium() {
  const named = process.env.CAGEWRIGHT_CHROMIUM;
  if (named) return named;
  const places = usualPlaces[/** @type {keyof typeof usualPlaces} */ (process.platform)] ?? [];
  return [...places, chromium.executablePath()].find(works);
}

/**
 * Makes a browser present.
 *
 * @returns {Promise<string | undefined>} its executable; undefined if none could be installed either
 */
export async function ensureChromium() {
  const present = findChromium();
  if (present) return present;
  console.log('No browser for the tests is installed: installing Chromium ...');
  for (const name of ['chromium-headless-shell', 'chromium']) {
    // The second only where there is no first.
    if (!findChromium()) await installDebian(name);
  }
  if (!findChromium()) await fetching('npx playwright install chromium');
  return findChromium();
}
