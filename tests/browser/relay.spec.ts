/** The page's policy lets it speak to the relay of its own server, and to no other. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { serveOnNetwork } from '../../src/scripts/network/serve.mjs';
import { openFolder } from '../../src/scripts/relay/folder.mjs';
import { build } from './build.ts';

test('the policy lets the page speak to its own relay, and to no other', async ({ page }) => {
  const shared = mkdtempSync(join(tmpdir(), 'cagewright-'));
  const folder = openFolder(shared);
  const [own, other] = [await serveOnNetwork(build, 0, folder), await serveOnNetwork(build, 0, folder)];
  await page.goto(`http://localhost:${own.port}/`);
  const answers = await page.evaluate(
    async ([ports, secret]) => {
      const refused = new Set<string>(); // by the policy in the page and by the one in its header
      document.addEventListener('securitypolicyviolation', ({ blockedURI }) => refused.add(new URL(blockedURI).host));
      const opened: boolean[] = [];
      for (const port of ports) {
        const socket = new WebSocket(`ws://localhost:${port}/together/${'a'.repeat(20)}`, ['cagewright', secret]);
        opened.push(
          await new Promise<boolean>((resolve) => {
            socket.addEventListener('open', () => resolve(true));
            socket.addEventListener('error', () => resolve(false));
          }),
        );
        socket.close();
      }
      return { opened, refused: [...refused] };
    },
    [[own.port, other.port], folder.secret()] as const,
  );
  expect(answers).toEqual({ opened: [true, false], refused: [`localhost:${other.port}`] });

  // From this machine the page is told what lets another device in.
  const offer = await page.evaluate(async () => {
    const answer = await fetch('/pairing', { headers: { 'X-Cagewright': '1' } });
    return (await answer.json()) as unknown;
  });
  expect(offer).toEqual({ secret: folder.secret(), addresses: own.addresses() });
  const renewed = await page.evaluate(
    async () => (await fetch('/pairing', { method: 'POST', headers: { 'X-Cagewright': '1' } })).status,
  );
  expect(renewed).toBe(200);
  expect(folder.secret()).not.toBe((offer as { secret: string }).secret);

  for (const { close } of [own, other]) close();
  rmSync(shared, { recursive: true });
});
