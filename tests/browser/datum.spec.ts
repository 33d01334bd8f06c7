/** A car that stands askew: its axes are laid by its points, and these do not go unasked. */
import { LONG } from '../draws.ts';
import { choose, expect, goTo, savedText, SIZES, start, test, undoKey } from './journey.ts';

for (const size of LONG ? SIZES : SIZES.slice(-1)) {
  test(`the axes are laid, lost with a point that lays them, and found again, ${size.width} wide`, async ({ page }) => {
    await page.setViewportSize(size);
    await start(page);
    await goTo(page, 'Survey');
    const atFirst = await savedText(page);
    await page.getByText('Where the car’s axes are', { exact: true }).click();
    const floor = page.getByRole('button', { name: 'Take the lines on the floor' });
    const lost = page.getByText('The car’s axes are not laid');
    await expect(page.getByText('taken as the car’s own')).toBeVisible();
    await expect(floor).toHaveCount(0);
    await page.getByLabel('Zero along the car is counted from').selectOption('Boot lid, rear corner, left');
    await page.getByRole('button', { name: 'Lay the axes so' }).click();
    await expect(page.getByText(/^The car stands/u)).toBeVisible();
    await expect(lost).toHaveCount(0);

    await choose(page, /points/u, 'Boot lid, rear corner, left');
    const card = page.getByRole('article', { name: 'Point Boot lid, rear corner, left' });
    await card.getByRole('button', { name: 'Type its place' }).click();
    const question = card.getByRole('region', { name: 'Before: Type where Boot lid, rear corner, left is' });
    await expect(question).toContainText('go by this: station of Boot lid, rear corner, left.');
    await question.press('Escape');
    await expect(question).toHaveCount(0);
    await expect(lost).toHaveCount(0);
    await card.getByRole('button', { name: 'Type its place' }).click();
    await question.getByRole('button', { name: 'Type its place all the same' }).click();

    const notice = page.getByText('The car’s axes are not laid: five of six coordinates are held.').first();
    await expect(notice).toBeVisible();
    await page.getByText('Where the car’s axes are', { exact: true }).click();
    await expect(floor).toHaveCount(0);
    await page.getByRole('button', { name: 'To where the car’s axes are' }).click();
    await expect(page.getByText('This lets go what is held now: height of')).toBeVisible();
    await floor.click();
    await expect(lost).toHaveCount(0);
    await expect(page.getByText('taken as the car’s own')).toBeVisible();

    // Laid, typed and laid again: three steps back to the first byte.
    for (let step = 0; step < 3; step += 1) await undoKey(page).click();
    await expect(undoKey(page)).toBeDisabled();
    expect(await savedText(page)).toBe(atFirst);
  });
}
