/** A plan that the own search does not prove: a cheaper one is looked for in a worker while the plan is looked at, by a part of the program that is loaded only then. */
import { fewTubes } from '../few-tubes.ts';
import { cheaperBySolver } from '../stock-jobs.ts';
import { expect, goTo, openFile, start, test } from './journey.ts';

const SOLVER = /\/highs-[\w-]+\.wasm$/;

test('a cheaper plan is looked for while one looks, can be stopped, and then stands in place of the first', async ({
  page,
}) => {
  const asked: string[] = [];
  let arrive = (): void => {};
  const arrived = new Promise<void>((resolve) => (arrive = resolve));
  await page.route(SOLVER, async (route) => {
    asked.push(route.request().url());
    await arrived;
    await route.continue();
  });
  await start(page);
  await goTo(page, 'Stock');
  await expect(page.getByText('Proven: no plan').first()).toBeVisible();
  expect(asked, 'every plan is proven without it').toEqual([]);

  await openFile(page, 'brackets.cagewright.json', cheaperBySolver(fewTubes()));
  await goTo(page, 'Stock');
  const state = page.getByRole('status').filter({ hasText: /cheaper plan|Stopped/u });
  await expect(state).toHaveText(/^Looking for a cheaper plan for Brackets…/u);
  await expect(page.getByText(/^Perhaps not the best/u)).toBeVisible();
  await state.getByRole('button', { name: 'Stop' }).click();
  await expect(state).toHaveText(/^Stopped/u);
  await state.getByRole('button', { name: 'Look on' }).click();
  arrive();
  await expect(state).toBeHidden();
  await expect(page.getByText('Proven: no plan costs less.')).toBeVisible();
  expect(asked.length).toBeGreaterThan(0);
});
