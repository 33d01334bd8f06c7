/** What is searched beside the page: by a worker, and by the page itself where that cannot be loaded. */
import { chooseTube, expect, goTo, start, test } from './journey.ts';

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

test('Checks says how many tubes are not rehearsed yet', async ({ page }) => {
  let arrive = (): void => {};
  const arrived = new Promise<void>((resolve) => (arrive = resolve));
  await page.route(WORKER, async (route) => {
    await arrived;
    await route.continue();
  });
  await start(page);
  await goTo(page, 'Checks');
  const yet = page.getByText(/^\d+ tubes are not rehearsed at the bender yet/u);
  await expect(yet).toBeVisible();
  arrive();
  await expect(yet).toBeHidden();
  await expect(page.getByText('fault of the program')).toBeHidden();
});
