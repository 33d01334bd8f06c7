/** What the build itself promises: a small first load, nothing inline, no stranger's address, work without network. */
import { cpSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { headerPolicy, policy, policyOf, solidsPolicy, solverPolicy } from '../../src/scripts/policy.mjs';
import { portOf, serve } from '../../src/scripts/serve.mjs';
import { build as dist } from './build.ts';

const KERNEL = /^replicad_.*\.wasm$/;

const page = readFileSync(join(dist, 'index.html'), 'utf8');

/** The scripts loaded before the demo shows: those the page names, the bay that it asks for at once, and all that these import. */
function firstLoadScripts(): Set<string> {
  const found = new Set<string>();
  const visit = (file: string) => {
    if (found.has(file)) return;
    found.add(file);
    const code = readFileSync(join(dist, file), 'utf8');
    for (const [, from] of code.matchAll(/(?:\bfrom|\bimport)\s*["'](\.{1,2}\/[^"']+\.js)["']/g)) {
      visit(join(dirname(file), from!));
    }
  };
  for (const [, file] of page.matchAll(/(?:src|href)="\/([^"]+\.js)"/g)) visit(file!);
  const bay = readdirSync(join(dist, 'assets')).find((file) => /^Bay-.*\.js$/.test(file));
  visit(join('assets', bay!));
  return found;
}

test('the JavaScript of the first load is at most 400 kB gzipped', () => {
  const sizes = [...firstLoadScripts()].map((file) => gzipSync(readFileSync(join(dist, file))).length);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  console.log(`First load: ${(total / 1000).toFixed(1)} kB of JavaScript, gzipped, in ${sizes.length} files`);
  expect(total).toBeGreaterThan(50_000); // less would mean that the scripts were not found
  expect(total).toBeLessThanOrEqual(400_000);
});

test('the page states the policy and holds nothing inline', () => {
  const stated = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1]?.replaceAll('&#39;', "'");
  expect(stated).toBe(policy);
  expect(page).not.toMatch(/<script(?![^>]*\bsrc=)/);
  expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
  expect(page).not.toMatch(/(?:src|href)="(?:https?:)?\/\//);
});

test('only the worker that makes solids may put functions together from text, and only it and those that plan may run WebAssembly', async ({
  request,
}) => {
  expect(policy).not.toMatch(/unsafe|https?:/);
  expect(solidsPolicy).toContain("default-src 'none'");
  const scripts = readdirSync(join(dist, 'assets')).filter((file) => file.endsWith('.js'));
  for (const file of scripts) {
    const sent = (await request.get(`/assets/${file}`)).headers()['content-security-policy'];
    expect(sent, file).toBe(policyOf(`/assets/${file}`));
  }
  expect(solverPolicy).not.toMatch(/'unsafe|https?:/);
  const sentWith = (wanted: string) => scripts.filter((file) => policyOf(`/assets/${file}`) === wanted);
  expect(sentWith(solidsPolicy)).toEqual([expect.stringMatching(/^solids-/)]);
  expect(sentWith(solverPolicy)).toEqual([expect.stringMatching(/^make-/), expect.stringMatching(/^stages-/)]);
  expect(sentWith(headerPolicy)).toHaveLength(scripts.length - 3);
});

test('the kernel is a file of its own, beside its licence', async ({ request }) => {
  expect(readdirSync(join(dist, 'assets')).filter((file) => KERNEL.test(file))).toHaveLength(1);
  expect(await (await request.get('/licences/replicad-opencascadejs.txt')).text()).toContain(
    'GNU LESSER GENERAL PUBLIC LICENSE',
  );
});

test('the typefaces lie beside their licences too', async ({ request }) => {
  expect(await (await request.get('/licences/b612.txt')).text()).toMatch(/SIL OPEN FONT LICENSE/iu);
  expect(await (await request.get('/licences/dejavu-fonts-ttf.txt')).text()).toContain('Bitstream Vera');
});

test('the server sends the policy, and nothing from outside the build', async ({ request }) => {
  const answer = await request.get('/');
  expect(answer.status()).toBe(200);
  expect(answer.headers()['content-security-policy']).toBe(headerPolicy);
  expect(answer.headers()['x-content-type-options']).toBe('nosniff');
  expect((await request.get('/%2e%2e/package.json')).status()).toBe(404);
  expect((await request.post('/')).status()).toBe(405);
});

test('starts without an error, a refused resource or a request to another origin', async ({ page, baseURL }) => {
  const troubles: string[] = [];
  page.on('console', (message) => message.type() === 'error' && troubles.push(message.text()));
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('requestfailed', (request) => troubles.push(`failed: ${request.url()}`));
  page.on('response', (response) => response.status() >= 400 && troubles.push(`missing: ${response.url()}`));
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol !== 'data:' && protocol !== 'blob:' && origin !== baseURL) troubles.push(`outside: ${request.url()}`);
  });
  await page.goto('/');
  await expect(page.locator('#root')).not.toBeEmpty();
  await page.waitForLoadState('networkidle');
  expect(troubles).toEqual([]);
});

test.describe('kept by the browser', () => {
  test.use({ serviceWorkers: 'allow' });

  test('opens again with the server gone', async ({ page }) => {
    const server = await serve(dist, 0);
    await page.goto(`http://localhost:${portOf(server)}/`);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    const kept = await page.evaluate(async () => {
      const caches = await Promise.all((await self.caches.keys()).map((name) => self.caches.open(name)));
      const keys = await Promise.all(caches.map((cache) => cache.keys()));
      return keys.flat().map((request) => new URL(request.url).pathname);
    });
    const built = readdirSync(join(dist, 'assets')).filter((file) => !file.endsWith('.map'));
    const kernel = built.filter((file) => KERNEL.test(file));
    const others = built.filter((file) => !KERNEL.test(file));
    expect(kept).toEqual(expect.arrayContaining(others.map((file) => `/assets/${file}`)));
    // 23 MB are not loaded behind a person's back: they are kept once they have been asked for (exports.spec.ts).
    expect(kernel).toHaveLength(1);
    expect(kept).not.toContain(`/assets/${kernel[0]}`);

    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
    await page.reload();
    await expect(page.locator('#root')).not.toBeEmpty();
    await expect(page).toHaveTitle('Cagewright');
  });

  test('gives way to a new build within the next loads', async ({ page }, testInfo) => {
    const folder = testInfo.outputPath('build');
    cpSync(dist, folder, { recursive: true });
    const server = await serve(folder, 0);
    await page.goto(`http://localhost:${portOf(server)}/`);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);

    const edit = (file: string, from: RegExp, to: string) => {
      const text = readFileSync(join(folder, file), 'utf8');
      expect(text).toMatch(from);
      writeFileSync(join(folder, file), text.replace(from, to));
    };
    edit('index.html', /<title>[^<]*/, '<title>A newer build');
    edit('sw.js', /(["']?index\.html["']?,\s*revision:\s*["'])[0-9a-f]+/, '$1newer');

    await page.reload(); // still the old page, while the new build is fetched behind it
    await page.evaluate(
      () => new Promise((resolve) => navigator.serviceWorker.addEventListener('controllerchange', resolve)),
    );
    await page.reload();
    await expect(page).toHaveTitle('A newer build');
    server.closeAllConnections();
    server.close();
  });
});
