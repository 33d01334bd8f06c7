/**
 * A whole session as a shop would have it, every file taken, then once more with the network off: nothing is asked beyond the origin,
 * the page's policy is never broken, and the page logs no error.
 */
import type { Page } from '@playwright/test';
import { choose, chooseTube, enter, goTo, showPart, untilKept, untilThere, typeItsPlace } from '../browser/journey.ts';
import { complaintsOf, withProgram } from './browser.ts';
import type { Failure, Part } from './part.ts';

/** Steps by name, so that a failure says how far it came. */
type Step = readonly [name: string, does: (page: Page) => Promise<void>];

const key = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first();

/** Files made in the page or a worker; the exact solids take a kernel of 23 MB and stand in the whole run alone. */
const QUICK = [
  'tubes.csv',
  'bends.csv',
  'xyz.csv',
  'copes.csv',
  'fabrication.json',
  'sheets.pdf',
  'wraps.pdf',
  'wraps.dxf',
];
const SLOW = ['cage.step', 'cage.glb', 'cage.stl', 'layout.pdf', 'layout.dxf'];

const take =
  (files: readonly string[]) =>
  async (page: Page): Promise<void> => {
    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    for (const name of files) {
      const download = page.waitForEvent('download', { timeout: 180_000 });
      await page.getByRole('button', { name, exact: true }).click();
      await (await download).path();
    }
  };

const survey = async (page: Page): Promise<void> => {
  await goTo(page, 'Survey');
  await choose(page, /^Measured points/, 'Floor at B-pillar, left');
  await typeItsPlace(page);
  const height = page.getByRole('article', { name: /^Point/ }).getByRole('textbox', { name: 'Height' });
  await enter(height, '2 9/16');
};

const rehearse = async (page: Page): Promise<void> => {
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop', 'Bending');
  await key(page, 'Rehearse on the bender').click();
  for (let step = 0; step < 4; step += 1) await key(page, 'Step forward').click();
  await page.keyboard.press('Escape');
};

const bendRun = async (page: Page): Promise<void> => {
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop');
  await key(page, 'Bend this tube').click();
  await key(page, 'Begin').click();
  await key(page, 'It is cut').click();
  await key(page, 'They are marked').click();
  await page.locator('.run-back').click();
};

const offline = async (page: Page): Promise<void> => {
  await page.evaluate(async () => (await navigator.serviceWorker.ready).scope);
  await page.context().setOffline(true);
  await page.reload();
  await untilThere(page);
  await survey(page);
  await page.context().setOffline(false);
};

const stepsOf = (whole: boolean): readonly Step[] => [
  ['survey', survey],
  ['frame', (page) => goTo(page, 'Frame')],
  ['checks', (page) => goTo(page, 'Checks')],
  ['files', take(QUICK)],
  ['rehearsal', rehearse],
  ['bend run', bendRun],
  ['kept', untilKept],
  ['offline', offline],
  ['stays kept', untilKept],
  ...(whole ? ([['large files', take(SLOW)]] as const) : []),
];

export const sessionPart: Part = {
  name: 'session',
  about: 'a whole session, offline too: no request beyond the origin, no breach of the policy, no error',
  async run(scale) {
    const failures: Failure[] = [];
    const steps = stepsOf(scale >= 1);
    await withProgram(async (program) => {
      // Drawn only in the whole run: in the short one the browser tests with the bay hear what it asks for and complains of.
      const view = scale >= 1 ? 'bay' : 'no bay';
      const context = await program.launch(program.profile(), view, { serviceWorkers: 'allow' });
      await context.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
          console.error(`policy: ${violatedDirective} ${blockedURI}`);
        });
      });
      const page = context.pages()[0] ?? (await context.newPage());
      const complaints = complaintsOf(page, program.origin);
      // Workers and the service worker as well.
      context.on('request', (request) => {
        const { protocol, origin } = new URL(request.url());
        if (/^https?:$/.test(protocol) && origin !== program.origin) complaints.push(`outside: ${request.url()}`);
      });
      await page.goto(program.origin);
      await untilThere(page);
      await page.getByRole('button', { name: 'Got it' }).click();
      for (const [name, does] of steps) {
        const wrong = await does(page).then(
          () => complaints.splice(0),
          (error: unknown) => [String(error), ...complaints.splice(0)],
        );
        failures.push(...wrong.map((why) => ({ what: name, why })));
      }
    }, scale);
    return { tries: steps.length, failures };
  },
};
