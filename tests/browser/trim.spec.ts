/** How near tubes come to what was measured of the car: a number beside each point, and a warning where more is wanted. */
import { choose, enter, expect, goTo, rowOf, start, stationKey, test, undoKey } from './journey.ts';

test('the gap at a point: in its row, with its tube on its card; more wanted than there is warns in the Checks', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Survey');
  const row = rowOf(page, /^Measured points/, 'Windscreen, top corner, left');
  await expect(row.getByRole('gridcell').last()).toContainText('in');
  await choose(page, /^Measured points/, 'Windscreen, top corner, left');
  const card = page.getByRole('article', { name: /^Point Windscreen, top corner, left/ });
  await expect(card).toContainText('Front leg (left)');
  const wanted = card.getByRole('textbox', { name: /^Least gap wanted/ });
  await expect(wanted).toHaveValue('1 1/4');
  await enter(wanted, '3');
  await goTo(page, 'Checks');
  const warning = page.getByRole('listitem').filter({ hasText: '3.000 in is wanted there' });
  await expect(warning.first()).toContainText('Windscreen, top corner, left');
  await undoKey(page).click();
  await expect(warning).toHaveCount(0);
  // Each station says what the job stands at, and leads to the next.
  await goTo(page, 'Survey');
  for (const [says, next] of [
    ['The frame follows these points.', 'Frame'],
    ['The checks found 2 warnings.', 'Checks'],
    ['30 tubes to make.', 'Shop'],
  ] as const) {
    await expect(page.getByText(says)).toBeVisible();
    await page.getByRole('button', { name: `On to the ${next}` }).click();
    await expect(stationKey(page, next)).toHaveAttribute('aria-current', 'step');
  }

  await test.step('a gap of less than nothing is refused beside the field', async () => {
    await goTo(page, 'Survey');
    await choose(page, /^Measured points/, 'Roof rail at B-pillar, left');
    const wanted = page.getByRole('textbox', { name: /^Least gap wanted/ });
    await enter(wanted, '-1');
    await expect(page.getByRole('article').getByRole('alert')).toBeVisible();
    await wanted.press('Escape');
    await expect(wanted).toHaveValue('2');
  });
});
