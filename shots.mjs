import { chromium } from '@playwright/test';
import { serve, portOf } from './src/scripts/serve.mjs';
import { writeFileSync } from 'fs';
const server = await serve('dist', 0);
const base = `http://localhost:${portOf(server)}/`;
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium-headless-shell',
  args: ['--no-sandbox', '--disable-gpu', '--disable-3d-apis'],
});
const ctx = await browser.newContext({ serviceWorkers: 'block', viewport: { width: 1440, height: 900 } });
const page = await ctx.newPage();
const cdp = await ctx.newCDPSession(page);
await cdp.send('Performance.enable');
for (let i = 0; i < 8; i++) {
  if (i === 6) {
    await cdp.send('Profiler.enable');
    await cdp.send('Profiler.setSamplingInterval', { interval: 200 });
    await cdp.send('Profiler.start');
  }
  const t = Date.now();
  await page.goto(base);
  await page.getByRole('heading', { name: 'No 3D view here' }).waitFor();
  await page.waitForTimeout(700);
  const m = Object.fromEntries((await cdp.send('Performance.getMetrics')).metrics.map((x) => [x.name, x.value]));
  console.log(
    Date.now() - t - 700,
    'task',
    m.TaskDuration?.toFixed(3),
    'script',
    m.ScriptDuration?.toFixed(3),
    'layout',
    m.LayoutDuration?.toFixed(3),
    'style',
    m.RecalcStyleDuration?.toFixed(3),
    'proc',
    m.ProcessTime?.toFixed(3),
    'compile',
    m.V8CompileDuration?.toFixed(3),
  );
  if (i === 6) {
    const { profile } = await cdp.send('Profiler.stop');
    writeFileSync('/tmp/prof/x.json', JSON.stringify(profile));
  }
}
await browser.close();
server.close();
