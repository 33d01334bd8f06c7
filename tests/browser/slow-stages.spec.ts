/** What is searched beside the page: by a worker, and by the page itself where that cannot be loaded. */
import type { Page } from '@playwright/test';
import { chooseTube, expect, goTo, savedText, start, test, undoKey } from './journey.ts';

const WORKER = /\/stages-[\w-]+\.js$/;

test('orders of bending are looked for in a worker', async ({ page }) => {
  const hired = page.waitForEvent('worker', (worker) => WORKER.test(worker.url()));
  await start(page);
  await hired;
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop', 'Bending');
  await expect(page.getByText('Free as it comes')).toBeVisible();
});

test('and by the page where the worker cannot be loaded', async ({ page, troubles }) => {
  let asked = 0;
  await page.route(WORKER, (route) => {
    asked += 1;
    return route.abort();
  });
  await start(page);
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop', 'Bending');
  await expect(page.getByText('Free as it comes')).toBeVisible();
  expect(asked).toBe(1);
  troubles.splice(0); // the browser says that it could not load it
});

/** The worker does not come until what is returned is called. */
async function heldBack(page: Page): Promise<() => void> {
  let arrive = (): void => {};
  const arrived = new Promise<void>((resolve) => (arrive = resolve));
  await page.route(WORKER, async (route) => {
    await arrived;
    await route.continue();
  });
  return () => arrive();
}

test('Checks says how many tubes are not rehearsed yet', async ({ page }) => {
  const arrive = await heldBack(page);
  await start(page);
  await goTo(page, 'Checks');
  const yet = page.getByText(/^\d+ tubes are not rehearsed at the bender yet/u);
  await expect(yet).toBeVisible();
  arrive();
  await expect(yet).toBeHidden();
  await expect(page.getByText('fault of the program')).toBeHidden();
});

test('the forecast of fit: it says what it waits for, stops where it is folded away, and a joint that gapes can be cured', async ({
  page,
}) => {
  const arrive = await heldBack(page);
  await start(page);
  await goTo(page, 'Checks');
  const fold = page.locator('summary').filter({ hasText: 'How the joints will fit' });
  await fold.click();
  const waits = page.getByText(
    /^Working out how the joints will fit, after the rehearsal of \d+ tubes at the bender…/u,
  );
  await waits.getByRole('button', { name: 'Stop' }).click();
  await expect(waits).toBeHidden();
  await expect(page.locator('.forecast-joint')).toHaveCount(0);
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(waits).toBeVisible();
  await fold.click();
  await expect(waits).toBeHidden();
  await expect(page.locator('.forecast-joint')).toHaveCount(0);
  await fold.click();
  await expect(waits).toBeVisible();
  arrive();

  const joints = page.locator('.forecast-joint');
  const joint = joints.filter({ has: page.getByRole('button', { name: /: leave it long$/u }) }).first();
  await expect(joint).toContainText(/gapes wide, \d\.\d{3} in/u);
  await expect(joint).toContainText(/Most from .* \(\d+\s%\)/u);
  const cure = joint.getByRole('button', { name: /: leave it long$/u });
  const name = await cure.getAttribute('aria-label');
  const said = await joint.getByText(/^Leave end [AB] .* long, and trim it on the car: /u).textContent();
  const before = await savedText(page);
  const places = await joints
    .getByRole('button', { name: /, end [AB] / })
    .first()
    .textContent();
  await cure.click();
  // The card stays where it is, has the focus and says what the cure gave.
  const card = joints.filter({ hasText: 'Done: leave end' });
  await expect(card).toBeFocused();
  await expect(card).toContainText(/It was \d\.\d{3} in; now it (shuts|is \d\.\d{3} in)\./u);
  expect(
    await joints
      .getByRole('button', { name: /, end [AB] / })
      .first()
      .textContent(),
  ).toBe(places);
  // Worked out anew: that joint gapes no more than the cure said, and the cure is gone.
  await expect(page.getByRole('button', { name: name! })).toHaveCount(0);
  await expect(joints.first()).toBeVisible();
  const after = JSON.parse(await savedText(page));
  const allowances = (job: { members: { ends: { allowance?: number }[] }[] }): number[] =>
    job.members.flatMap(({ ends }) => ends.map(({ allowance }) => allowance ?? 0));
  const long = allowances(after).filter((mm, i) => mm !== allowances(JSON.parse(before))[i]);
  expect(long).toEqual([6.35]);
  expect(said).toContain('1/4 in long');
  await undoKey(page).click();
  expect(await savedText(page)).toBe(before);
});
