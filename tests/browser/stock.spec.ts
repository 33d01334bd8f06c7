/** The fifth station: the plan at first sight, a stick sawn and put back, the rack edited, and what has no stick. */
import { expect, goTo, start, test, undoKey } from './journey.ts';

test('the cutting plan: proven at first sight, sawn stick by stick, and made anew when the rack changes', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Stock');
  const first = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: /^Stick 1:/u }) });

  await test.step('every section has its plan, hoop first, above the fold', async () => {
    await expect(page.getByText('Proven: no plan costs less.')).toHaveCount(2);
    await expect(first.getByRole('heading')).toHaveText('Stick 1: 20 ft, batch M-4102, from the rack');
    await expect(first.getByRole('img')).toBeInViewport({ ratio: 1 });
    await expect(first.getByRole('button', { name: 'Main hoop' })).toBeInViewport({ ratio: 1 });
    await expect(page.getByText(/at each cut the blade is reckoned to eat .* “S” is a spare\./u)).toHaveCount(2);
    await expect(page.getByRole('heading', { name: /^Stick \d/u })).toHaveCount(6);
  });

  await test.step('a part chosen here is chosen everywhere', async () => {
    await first.getByRole('button', { name: 'Main diagonal' }).click();
    await expect(first.getByRole('button', { name: 'Main diagonal' })).toHaveAttribute('aria-pressed', 'true');
    await goTo(page, 'Shop');
    await expect(page.getByRole('heading', { name: 'Main diagonal' })).toBeVisible();
    await goTo(page, 'Stock');
  });

  await test.step('sawn: its tubes are cut, and the plan is of what is left', async () => {
    await page.getByRole('button', { name: 'Stick 1 is sawn' }).click();
    await expect(page.getByRole('heading', { name: /^Stick \d/u })).toHaveCount(5);
    await expect(page.getByRole('status').filter({ hasText: /is sawn/u })).toHaveText(
      /^Stick 1 is sawn: Main hoop, .* and Main diagonal\. .* left, scrap\.$/u,
    );
    await expect(page.getByRole('heading', { name: /^Stick 2:/u })).toBeFocused();
    await expect(page.getByRole('button', { name: 'Main hoop' })).toBeHidden();
    await page.getByText('Sawn so far').click();
    await expect(
      page.getByRole('listitem').filter({ hasText: 'Main hoop, Front leg (left), Main diagonal' }),
    ).toBeVisible();
    await page.getByRole('button', { name: 'it was not sawn' }).click();
    await expect(page.getByRole('heading', { name: /^Stick \d/u })).toHaveCount(6);
    await expect(page.getByRole('group', { name: 'What was sawn' })).toBeFocused();
    await undoKey(page).click();
    await expect(page.getByRole('heading', { name: /^Stick \d/u })).toHaveCount(5);
    await undoKey(page).click();
    await expect(page.getByRole('heading', { name: /^Stick \d/u })).toHaveCount(6);
  });

  await test.step('a rack without the batch says what to get', async () => {
    await page.getByRole('tab', { name: 'Sticks' }).click();
    const cell = page
      .getByRole('grid', { name: 'Sticks to cut from' })
      .getByRole('row')
      .nth(1)
      .getByRole('gridcell')
      .nth(2);
    await cell.click();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('1');
    await page.keyboard.press('Enter');
    await page.getByRole('tab', { name: 'Cutting plan' }).click();
    await expect(page.getByText(/No stick for .*: get 1 more of 20 ft, of batch M-4102\./u)).toBeVisible();
    await goTo(page, 'Checks');
    await expect(page.getByText(/too little of 1 3\/4 x \.120 is there of batch M-4102/u).first()).toBeVisible();
  });
});

test('a variant is kept, held against the job as it stands, and gone back to', async ({ page }) => {
  await start(page);
  await goTo(page, 'Stock');
  await page.getByRole('tab', { name: 'Variants' }).click();
  await page.getByRole('button', { name: 'Keep the job as it stands' }).click();
  const row = (title: string) =>
    page.getByRole('region', { name: 'Side by side' }).getByRole('row').filter({ hasText: title });
  await expect(row('Sticks, sawn ones').getByRole('cell')).toHaveText(['6', '6'], { timeout: 60_000 });

  await page.getByRole('tab', { name: 'Cutting plan' }).click();
  await page.getByRole('button', { name: 'Stick 6 is sawn' }).click();
  await page.getByRole('tab', { name: 'Sticks' }).click();
  await page.getByRole('button', { name: 'Add a spare' }).click();
  await page.getByRole('tab', { name: 'Variants' }).click();
  await expect(row('Errors').getByRole('cell')).toHaveText(['0', '0']);
  await page.getByRole('button', { name: 'Go back to it' }).click();
  await page.getByRole('tab', { name: 'Cutting plan' }).click();
  // Steel does not come whole again.
  await expect(page.getByText('Sawn so far')).toBeVisible();
  await undoKey(page).click();
  await undoKey(page).click();
  await undoKey(page).click();
  await expect(page.getByText('Sawn so far')).toBeHidden();
});
