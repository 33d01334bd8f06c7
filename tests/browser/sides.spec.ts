/** Left and right: the pairs of the survey, and a mirrored member that follows the other side, the mean, or is made two. */
import { choose, expect, goTo, rowOf, start, test, undoKey } from './journey.ts';

const MEMBERS = 'Members in build order';

test('left and right are compared, and a leg follows the right points, the mean, or each side its own', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Survey');
  await page.getByText('Left and right', { exact: true }).click();
  const pairs = page.getByRole('table', { name: /^Pairs of points/ });
  await expect(pairs.getByRole('row')).toHaveCount(13);
  await expect(page.getByText(/^On average of 12 pairs the right side is/)).toBeVisible();
  // As a picture as well, with a number a pair, and the way to where the side is chosen.
  await expect(
    page.getByText(/^Arrows go from the mirror image of the left point to the right point, drawn \d+ times as long/u),
  ).toBeVisible();
  for (const view of ['above', 'behind'])
    await expect(page.getByRole('img', { name: new RegExp(`seen from ${view}`, 'u') }).locator('text')).toHaveCount(12);
  const goesBy = pairs
    .getByRole('row', { name: /Windscreen, lower corner, left/u })
    .getByRole('button', { name: /^left/u });
  await goesBy.click();
  await expect(page.getByRole('region', { name: 'Left and right' })).toContainText('Placed by the left points');
  await goTo(page, 'Survey');
  if (!(await pairs.isVisible())) await page.getByText('Left and right', { exact: true }).click();
  await pairs.getByRole('button', { name: 'Rear spring tower, right' }).click();
  await expect(page.getByRole('article', { name: 'Point Rear spring tower, right' })).toBeVisible();

  await goTo(page, 'Frame');
  await choose(page, MEMBERS, 'Front leg');
  const sides = page.getByRole('region', { name: 'Left and right' });
  await expect(sides).toContainText('Placed by the left points: Windscreen, top corner, left');
  const right = sides.getByRole('button', { name: 'Follow the right points' });
  await expect(sides.locator('.switch', { hasText: 'Follow the right points' })).toContainText(
    'Front leg, windscreen corner 0.1',
  );
  await right.click();
  await expect(sides).toContainText('Placed by the right points: Windscreen, top corner, right');
  await undoKey(page).click();
  await expect(sides).toContainText('Placed by the left points: Windscreen, top corner, left');
  await sides.getByRole('button', { name: 'Follow the mean of both sides' }).click();
  await expect(sides).toContainText('Placed by the mean of both sides');
  await sides.getByRole('button', { name: 'Each side its own' }).click();
  await expect(sides).toHaveCount(0);
  await expect(rowOf(page, MEMBERS, 'Front leg, right')).toBeVisible();
  // And back: the one on the left, whose image takes the place of the one on the right.
  await choose(page, MEMBERS, 'Front leg, left');
  const key = page.locator('.switch', { hasText: 'One for both sides' });
  await expect(key).toContainText('takes the place of Front leg, right, and its number');
  await key.getByRole('button').press('Enter');
  await expect(rowOf(page, MEMBERS, 'Front leg, right')).toHaveCount(0);
  await expect(rowOf(page, MEMBERS, 'Front leg').locator('.number-tag')).toHaveText(['11', '12']);
});

test('the car in the plane of the hoop is listed place by place, and a press goes there', async ({ page }) => {
  await start(page);
  await goTo(page, 'Survey');
  await page.getByText('Car in the hoop’s plane', { exact: true }).click();
  const hoop = page.getByRole('region', { name: '1 Main hoop' });
  await expect(hoop.getByRole('listitem')).toHaveCount(8);
  // Up on the left, down on the right, each with its gap.
  await expect(hoop.getByRole('listitem').first()).toContainText(/^Rocker, left: 4 \d+\/\d+ in/u);
  await expect(hoop.getByRole('listitem').last()).toContainText(/^Rocker, right: 4 \d+\/\d+ in/u);
  await hoop.getByRole('button', { name: 'Roof rail, left' }).click();
  await goTo(page, 'Frame');
  await expect(rowOf(page, MEMBERS, 'Main hoop')).toHaveAttribute('aria-selected', 'true');
});
