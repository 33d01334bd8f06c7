/** The page opened by the code on a printed sheet: it shows the tube, and says what the paper is worth. */
import type { Page } from '@playwright/test';
import { sheetHash } from '../../src/core/job/sheet-address.ts';
import { revisionOf } from '../../src/core/solve/revision.ts';
import { derivedFrom } from '../exports/jobs.ts';
import { FEW_TUBES_NAME, fewTubes } from '../few-tubes.ts';
import { expect, FEW, SIZES, stationKey, test, untilThere } from './journey.ts';

test.use(FEW);

const few = derivedFrom(fewTubes());
const revisionNow = (id: string): string => revisionOf(few.job, few.byId.get(id)!);
const notices = (page: Page) => page.locator('.notices');

async function openBy(page: Page, hash: string): Promise<void> {
  await page.addInitScript(() => window.localStorage.setItem('cagewright.hints', 'true'));
  await page.goto(`/${hash}`);
  await untilThere(page);
}

/** A code scanned while the page is open. */
const scan = (page: Page, hash: string): Promise<void> => page.evaluate((next) => void (location.hash = next), hash);
const of = (id: string, revision = revisionNow(id), job = FEW_TUBES_NAME): string =>
  sheetHash({ job, tubes: [{ id, revision }] });

test('the code on a sheet opens its tube in the Shop, and says whether the paper still goes', async ({ page }) => {
  await openBy(page, of('hoop'));
  const [first, second] = few.tubes as unknown as readonly [(typeof few.tubes)[0], (typeof few.tubes)[0]];
  await expect(page.getByRole('article', { name: `Tube ${first.number}, ${first.name}` })).toBeVisible();
  await expect(stationKey(page, 'Shop')).toHaveAttribute('aria-current', /.+/u);
  await expect(notices(page)).toContainText(`revision ${revisionNow('hoop')}, and so is the tube`);

  await test.step('closed, it is gone, from the address too', async () => {
    await notices(page).getByRole('button', { name: 'Close this message' }).click();
    await expect(notices(page)).toBeEmpty();
    expect(new URL(page.url()).hash).toBe('');
  });

  await test.step('another revision is waste paper; another tube is shown when its code is scanned', async () => {
    await scan(page, of(second.id, 'VHBJ'));
    await expect(page.getByRole('article', { name: `Tube ${second.number}, ${second.name}` })).toBeVisible();
    await expect(notices(page)).toContainText(
      `The sheet is of revision VHBJ; the tube is ${revisionNow(second.id)} now: the sheet is waste paper`,
    );
  });

  await test.step('of a sheet of two tubes either is a press away', async () => {
    const tubes = [first.id, second.id].map((id) => ({ id, revision: revisionNow(id) }));
    await scan(page, sheetHash({ job: FEW_TUBES_NAME, tubes }));
    await expect(page.getByRole('article', { name: `Tube ${first.number}, ${first.name}` })).toBeVisible();
    await notices(page)
      .getByRole('button', { name: `Show tube ${second.number}` })
      .click();
    await expect(page.getByRole('article', { name: `Tube ${second.number}, ${second.name}` })).toBeVisible();
  });

  await test.step('an unknown tube, another job and a script are words, and choose nothing', async () => {
    await scan(page, of('gone', 'VHBJ'));
    await expect(notices(page)).toContainText('Tube “gone”. ▲ This job has no such tube');
    await scan(page, of(first.id, 'VHBJ', 'Another car'));
    await expect(notices(page)).toContainText(`of the job “Another car”; open here is “${FEW_TUBES_NAME}”`);
    await expect(page.getByRole('article', { name: `Tube ${second.number}, ${second.name}` })).toBeVisible();
    await scan(page, of('<img src=x onerror=alert(1)>', '<b>VHBJ</b>'));
    await expect(notices(page)).toContainText('Tube “<img src=x onerror=alert(1)>”.');
    await expect(notices(page).locator('img, b')).toHaveCount(0);
    await scan(page, '#tube=');
    await expect(notices(page)).not.toContainText('sheet');
  });

  await test.step('it keeps within the page at each size', async () => {
    const tubes = [first.id, second.id].map((id) => ({ id, revision: 'VHBJ' }));
    await scan(page, sheetHash({ job: FEW_TUBES_NAME, tubes }));
    for (const size of SIZES) {
      await page.setViewportSize(size);
      const box = (await notices(page).boundingBox())!;
      expect(box.x + box.width).toBeLessThanOrEqual(size.width);
    }
  });
});
