/** What was found is said in the row of stations too, and nothing there lies over anything else: a hoop that leads brings errors beside the warnings. */
import { expect, openFile, savedText, start, stationKey, test } from './journey.ts';

const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
] as const;

test('the counts of Checks lie over neither its number nor its name', async ({ page }) => {
  await start(page);
  const job = JSON.parse(await savedText(page));
  const [order, bends] = [
    [1, 2, 3, 4],
    [14, 75, 76.5, 13],
  ];
  job.name = 'Led';
  job.bent = [
    {
      tube: 'hoop',
      stands: true,
      order: order.map((bend) => ({ bend, front: 'A' })),
      done: [],
      checks: [],
      bends: bends.map((net, i) => ({ bend: i + 1, pulled: net + 4, net, ...(i === 1 && { rotation: 1 }) })),
    },
  ];
  await openFile(page, 'led.cagewright.json', JSON.stringify(job));
  const checks = stationKey(page, 'Checks');
  await expect(checks).toHaveAccessibleName(/Checks ?\d+ errors?, \d+ articles? not met ?\d+ warnings/u);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const [number, name, ...counts] = await Promise.all(
      ['.station-number', '.station-name', '.tally-error', '.tally-warning'].map(
        async (part) => (await checks.locator(part).boundingBox())!,
      ),
    );
    for (const count of counts) {
      for (const other of [number!, name!]) {
        const across = Math.min(count.x + count.width, other.x + other.width) - Math.max(count.x, other.x);
        const down = Math.min(count.y + count.height, other.y + other.height) - Math.max(count.y, other.y);
        // A line of text has some air above its letters.
        expect(Math.min(across, down), `${size.width} px`).toBeLessThanOrEqual(4);
      }
    }
  }
});
