/** What is selected anywhere is selected everywhere, and a finding leads to its place. */
import type { Page } from '@playwright/test';
import {
  FEW,
  IN_THE_BAY,
  bay,
  choose,
  expect,
  goTo,
  rowOf,
  spoken,
  start,
  stillBox,
  test,
  tubeRow,
} from './journey.ts';

const MEMBERS = 'Members in build order';

test(
  'a tube chosen in a table or in the bay is chosen everywhere, and a finding leads to its place',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    await choose(page, MEMBERS, 'Main diagonal');
    await expect(rowOf(page, MEMBERS, 'Main diagonal')).toHaveAttribute('aria-selected', 'true');
    await expect(spoken(page)).toContainText('Main diagonal');
    await expect(page.getByRole('article', { name: 'Member Main diagonal' })).toBeVisible();
    await goTo(page, 'Shop');
    await expect(tubeRow(page, 'Main diagonal')).toHaveAttribute('aria-selected', 'true');
    await expect(page.getByRole('article', { name: /^Tube .*Main diagonal/ })).toBeVisible();
    await expect(page.getByRole('grid', { name: /^Tubes/ }).getByRole('row', { selected: true })).toHaveCount(1);
    await goTo(page, 'Frame');
    await pressInTheBay(page);
    await findingLeads(page);
  },
);

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('after Escape a press on the same row selects it again', async ({ page }) => {
    await start(page);
    await goTo(page, 'Shop');
    const row = tubeRow(page, 'Main diagonal');
    await row.getByRole('gridcell').nth(1).click();
    await expect(row).toHaveAttribute('aria-selected', 'true');
    await page.keyboard.press('Escape');
    await expect(row).toHaveAttribute('aria-selected', 'false');
    await row.getByRole('gridcell').nth(1).click();
    await expect(row).toHaveAttribute('aria-selected', 'true');

    await goTo(page, 'Frame');
    await page.getByRole('tab', { name: /^Nodes/ }).click();
    await choose(page, /^Nodes/, 'Hoop foot');
    await page.keyboard.press('Escape');
    await expect(rowOf(page, /^Nodes/, 'Hoop foot')).toHaveAttribute('aria-selected', 'false');
    await choose(page, /^Nodes/, 'Hoop foot');
    await expect(rowOf(page, /^Nodes/, 'Hoop foot')).toHaveAttribute('aria-selected', 'true');
  });
});

/** A tube pressed in the bay is chosen in the table. */
async function pressInTheBay(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Front view' }).click();
  // Its number stands on the tube itself; from the front the hoop's is in nobody's way.
  await choose(page, MEMBERS, 'Main hoop');
  const number = await stillBox(bay(page).getByText('1', { exact: true }).filter({ visible: true }).first());
  await bay(page).press('Escape');
  await expect(spoken(page)).toBeEmpty();
  await page.mouse.click(number.x + number.width / 2, number.y + number.height / 2);
  await expect(spoken(page)).toContainText(/^Tube \d+/);
  const name = /^Tube \d+, (?<name>.*?)(?:, piece \d+ of \d+)?(?: \((?:left|right)\))?:/u.exec(
    await spoken(page).innerText(),
  )!.groups!['name']!;
  await expect(rowOf(page, MEMBERS, name)).toHaveAttribute('aria-selected', 'true');
}

/** A finding leads to its place and selects its tube. */
async function findingLeads(page: Page): Promise<void> {
  await goTo(page, 'Checks');
  const finding = page.getByRole('button', { name: /Warning.*Rear stay \(left\), end A/ });
  await finding.click();
  await expect(finding).toHaveAttribute('aria-current', 'true');
  await expect(spoken(page)).toContainText('Rear stay (left)');
  // The sign of the finding stands over its place, now in the middle of the bay.
  const ground = (await bay(page).boundingBox())!;
  await expect(async () => {
    const signs = await bay(page).getByText('!', { exact: true }).filter({ visible: true }).all();
    const away = await Promise.all(
      signs.map(async (sign) => {
        const box = (await sign.boundingBox())!;
        return Math.hypot(
          box.x + box.width / 2 - ground.x - ground.width / 2,
          box.y + box.height / 2 - ground.y - ground.height / 2,
        );
      }),
    );
    expect(Math.min(...away)).toBeLessThan(60);
  }).toPass({ timeout: 5_000 });
  await goTo(page, 'Frame');
  await expect(page.getByRole('article', { name: 'Member Rear stay' })).toBeVisible();
}
