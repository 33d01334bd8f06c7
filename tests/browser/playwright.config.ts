/** The browser tests: the built program (`npm run build`), as `npm start` serves it, in Chromium. */
import { defineConfig } from '@playwright/test';
import { findChromium, FLAGS } from '../chromium.mjs';

const executablePath = findChromium();

/**
 * A test that needs the bay is tagged with IN_THE_BAY. All others run in a browser that cannot draw in 3D, as some shops' do: the
 * program must work there as well, and drawing in software is most of what a test costs.
 */
const IN_THE_BAY = /@bay\b/u;

const program = (args: readonly string[]) => ({
  launchOptions: { ...(executablePath && { executablePath }), args: [...FLAGS, ...args] },
});

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: '../../test-results',
  globalSetup: './serve-build.ts',
  workers: 3,
  fullyParallel: true,
  retries: 0,
  // Room for a busy machine: how long a test takes is never what it asserts.
  timeout: 120_000,
  expect: { timeout: 15_000 },
  forbidOnly: !!process.env.CI,
  reporter: 'line',
  use: {
    baseURL: process.env.CAGEWRIGHT_URL ?? '', // set by serve-build.ts before the tests' own process starts
    viewport: { width: 1440, height: 900 },
    // One page serves test after test, emptied of all it has stored: a new one costs as much as many a test. What is about storage,
    // tabs, or a page that ends asks for one of its own.
    reuseContext: true,
    serviceWorkers: 'block', // each test would fill a store with the whole build; what works offline allows it
    contextOptions: { reducedMotion: 'reduce' }, // the bay turns at once: nothing to wait for
    actionTimeout: 20_000,
    screenshot: 'only-on-failure',
  },
  projects: [
    {
      name: 'with the bay',
      grep: IN_THE_BAY,
      // The bay alone is drawn by a graphics card made of software, and without smooth edges, which are a third of its work; the page
      // round it is put together as where there is no card, at half the cost.
      use: program([
        '--use-gl=angle',
        '--use-angle=swiftshader-webgl',
        '--enable-unsafe-swiftshader',
        '--webgl-antialiasing-mode=none',
      ]),
    },
    { name: 'without WebGL', grepInvert: IN_THE_BAY, use: program(['--disable-gpu', '--disable-3d-apis']) },
  ],
});
