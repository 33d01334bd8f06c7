/** The built program in a Chromium with a profile of its own, which outlives the browser: what is kept can be looked at after a kill. */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type BrowserContext, type Page } from '@playwright/test';
import { portOf, serve } from '../../src/scripts/serve.mjs';
import { smallBuild } from '../browser/small-build.ts';
import { findChromium, FLAGS } from '../chromium.mjs';

/** Where the build lies: npm starts its scripts in the project's folder. */
const build = resolve(process.env['CAGEWRIGHT_BUILD'] ?? 'dist');

const DRAWING = {
  bay: ['--use-gl=angle', '--use-angle=swiftshader-webgl', '--enable-unsafe-swiftshader'], // drawn in software, and it alone
  'no bay': ['--disable-gpu', '--disable-3d-apis'],
} as const;

type LaunchOptions = Parameters<typeof chromium.launchPersistentContext>[1];

export interface Program {
  readonly origin: string;
  /**
   * Starts a browser on a profile: a folder that `profile()` made. What needs no bay is quicker in one that cannot draw in 3D. Without the
   * program's own service worker unless it is asked for: it fills a store at each start, and has no part in what is kept.
   */
  launch(profile: string, view?: 'bay' | 'no bay', also?: LaunchOptions): Promise<BrowserContext>;
  profile(): string;
}

/** Serves the build, in a short run (scale < 1) the one with few tubes, for as long as `work` goes, on one port, so that the origin stays through every restart of the browser. */
export async function withProgram<T>(work: (program: Program) => Promise<T>, scale: number): Promise<T> {
  if (!existsSync(join(build, 'index.html'))) throw new Error('There is no build to torture: npm run build');
  const small = scale < 1 ? smallBuild(build) : null;
  const server: Server = await serve(small?.folder ?? build, 0);
  const folders: string[] = [];
  const contexts: BrowserContext[] = [];
  const executablePath = findChromium();
  const origin = `http://localhost:${portOf(server)}`;
  try {
    return await work({
      origin,
      async launch(profile, view = 'bay', also = {}) {
        const context = await chromium.launchPersistentContext(profile, {
          ...(executablePath && { executablePath }),
          baseURL: origin,
          viewport: { width: 1024, height: 700 },
          reducedMotion: 'reduce',
          acceptDownloads: true,
          serviceWorkers: 'block',
          ...also,
          args: [...FLAGS, ...DRAWING[view]],
        });
        context.setDefaultTimeout(30_000);
        context.setDefaultNavigationTimeout(120_000); // a machine that starts a browser beside two other test runs takes its time
        contexts.push(context);
        return context;
      },
      profile() {
        const folder = mkdtempSync(join(tmpdir(), 'cagewright-profile-'));
        folders.push(folder);
        return folder;
      },
    });
  } finally {
    await Promise.allSettled(contexts.map((context) => context.close()));
    for (const folder of folders) rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    server.closeAllConnections();
    server.close();
    small?.takeAway();
  }
}

/** Ends the browser as a crash does: it gets to write nothing more. Answers when, by the machine's clock, ms. */
export async function kill(context: BrowserContext, page: Page): Promise<number> {
  const session = await context.browser()!.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const browser = processInfo.find(({ type }) => type === 'browser')!;
  const closed = new Promise((resolve) => void page.once('close', resolve));
  const at = Date.now();
  process.kill(browser.id, 'SIGKILL');
  await closed;
  return at;
}

/** What the page complains of, and whatever it asks of another origin. */
export function complaintsOf(page: Page, origin: string): string[] {
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`thrown: ${String(error)}`));
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol !== 'data:' && url.protocol !== 'blob:' && url.origin !== origin) {
      complaints.push(`outside the origin: ${request.url()}`);
    }
  });
  return complaints;
}
