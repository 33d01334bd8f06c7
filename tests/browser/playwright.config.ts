/** The browser tests: the built program (`npm run build`), as `npm start` serves it, in one Chromium. */
import { defineConfig } from '@playwright/test';
import { findChromium } from '../chromium.mjs';

const executablePath = findChromium();

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: '../../test-results',
  globalSetup: './serve-build.ts',
  workers: 1,
  retries: 0,
  timeout: 60_000,
  forbidOnly: !!process.env.CI,
  reporter: 'line',
  use: {
    baseURL: process.env.CAGEWRIGHT_URL ?? '', // set by serve-build.ts before the tests' own process starts
    viewport: { width: 1440, height: 900 },
    contextOptions: { reducedMotion: 'reduce' }, // the bay turns at once: nothing to wait for
    actionTimeout: 10_000,
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(executablePath && { executablePath }),
      args: [
        '--no-sandbox', // a container's root has none
        '--use-angle=swiftshader',
        '--enable-unsafe-swiftshader',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
