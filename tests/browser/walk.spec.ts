/** A car measured with a telephone in hand: one figure after another, by finger and by key, in reach on every screen; a slip of the tape is named at the end. */
import type { Locator, Page } from '@playwright/test';
import { expect, FEW, goTo, savedText, SIZES, start, test, undoKey } from './journey.ts';

test.use(FEW);

/** A car of our own, mm: the places of a roll bar, left and right. */
const CAR: readonly (readonly [number, number, number])[] = [
  [12, 631, 4],
  [10, -628, 2],
  [-6, 668, 640],
  [-4, -671, 644],
  [-20, 522, 1131],
  [-22, -526, 1128],
  [-812, 480, 515],
  [-806, -486, 518],
];
const apart = (one: number, other: number): number =>
  Math.round(Math.hypot(...CAR[one]!.map((part, axis) => part - CAR[other]![axis]!)));

/** What is read at each place and of the tapes across, in the order of the walk: off the centreline always plus. */
const FIGURES = [
  ...[0, 2, 4, 6].flatMap((left) => [
    ...[left, left + 1].flatMap((at) => {
      const [along, offset, height] = CAR[at]!;
      return [along, Math.abs(offset), height];
    }),
    apart(left, left + 1),
  ]),
  ...(
    [
      [0, 2],
      [0, 4],
      [4, 6],
    ] as const
  ).flatMap(([from, to]) => [apart(from, to + 1), apart(from + 1, to)]),
];

const walk = (page: Page): Locator => page.getByRole('dialog', { name: 'Measure at the car' });
const field = (page: Page): Locator => walk(page).getByRole('textbox');

async function begin(page: Page, layout: string): Promise<void> {
  await start(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New job' }).click();
  await goTo(page, 'Survey');
  await page.getByRole('combobox', { name: 'Places for' }).selectOption(layout);
  await page.getByRole('button', { name: 'Measure at the car' }).click();
  await expect(field(page)).toBeFocused();
}

test('a roll bar’s places, read one after another; a slip is named, read again, and all agrees', async ({ page }) => {
  test.slow();
  await page.setViewportSize({ width: 390, height: 844 });
  await begin(page, 'Roll bar');
  await expect(walk(page).getByText(`1 of ${FIGURES.length}`)).toBeVisible();
  // The first by finger: twelve millimetres is 7/16 and a bit.
  await expect(field(page)).toHaveAccessibleName(/^Floor at the hoop, left\s*Station, along from the cross line$/u);
  for (const key of [
    '1',
    'Half an inch',
    'A quarter',
    'Take back the last',
    'Take back the last',
    'A quarter',
    'An eighth',
    'A sixteenth',
  ])
    await walk(page).getByRole('button', { name: key, exact: true }).click();
  await expect(field(page)).toHaveValue('7/16');
  await walk(page).getByRole('button', { name: 'Next' }).click();
  const slip = FIGURES.length - 3;
  for (const [i, figure] of FIGURES.entries()) {
    if (i === 0) continue;
    await expect(walk(page).getByText(`${i + 1} of ${FIGURES.length}`)).toBeVisible();
    await page.keyboard.type(`${i === slip ? figure + 50 : figure}mm`);
    await page.keyboard.press('Enter');
    if (i !== slip) continue;
    await expect(walk(page).getByText(/the others say .* Read it again, or press Next to go on\.$/u)).toBeVisible();
    await page.keyboard.press('Enter');
  }
  await expect(walk(page).getByText('Every figure was read.')).toBeVisible();
  await expect(walk(page).getByText(/does not agree with the others/u)).toBeVisible();
  await expect(
    walk(page).getByText(/^▲\s*The tape from Floor at the hoop, right to Roof rail at the hoop, left reads/u),
  ).toBeVisible();
  await walk(page).getByRole('button', { name: 'Read it again' }).click();
  await expect(walk(page).getByText(`${slip + 1} of ${FIGURES.length}`)).toBeVisible();
  await expect(walk(page).getByText(/^Read: /u)).toBeVisible();
  await page.keyboard.type(`${FIGURES[slip]}mm`);
  await page.keyboard.press('Enter');
  // What was read already is gone past with Enter.
  for (let i = slip + 1; i < FIGURES.length; i++) await page.keyboard.press('Enter');
  await expect(walk(page).getByText(/^All readings agree within/u)).toBeVisible();
  await walk(page).getByRole('button', { name: 'Done' }).click();
  await expect(walk(page)).toHaveCount(0);

  const job = JSON.parse(await savedText(page));
  expect(job.points.map(({ name, by }: Record<string, string>) => [name!.endsWith('left'), by])).toEqual(
    CAR.map((_, i) => [i % 2 === 0, 'survey']),
  );
  const kinds = job.survey.measurements.map(({ kind }: { kind: string }) => kind);
  expect(kinds.filter((kind: string) => kind === 'coordinate')).toHaveLength(24);
  expect(kinds.filter((kind: string) => kind === 'distance')).toHaveLength(10);
  await expect(undoKey(page)).toContainText('tape, 1 r to 3 l');
});

test('everything is in reach without scrolling, on a telephone, a tablet and a laptop', async ({ page }) => {
  await begin(page, 'Hoop and roof ring');
  for (const size of [...SIZES, { width: 390, height: 664 }]) {
    await page.setViewportSize({ width: size.width, height: size.height });
    const keys = walk(page).getByRole('button');
    for (const key of await keys.all()) {
      const box = (await key.boundingBox())!;
      expect(
        Math.min(box.x, box.y, size.width - box.x - box.width, size.height - box.y - box.height),
      ).toBeGreaterThanOrEqual(0);
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    }
    const sketch = (await walk(page).getByRole('img').boundingBox())!;
    expect(sketch.height).toBeGreaterThan(80);
    const hidden = await walk(page).evaluate(
      (element) =>
        [element, ...element.querySelectorAll('form, div')].filter(
          (each) => each.scrollHeight > each.clientHeight + 1 || each.scrollWidth > each.clientWidth + 1,
        ).length,
    );
    expect(hidden).toBe(0);
  }
  await walk(page).getByRole('button', { name: 'Next' }).click();
  await expect(walk(page).getByText('Give the figure, or skip it.')).toBeVisible();
  await walk(page).getByRole('button', { name: 'Skip' }).click();
  await expect(field(page)).toHaveAccessibleName(/Offset/u);
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await expect(walk(page).getByText('has to be more than 0')).toBeVisible();
  await walk(page).getByRole('combobox', { name: 'Go to' }).selectOption('Tapes across');
  await expect(field(page)).toHaveAccessibleName(/Tape, 1 L to 2 R$/u);
  // A height is shown from the side and from behind.
  await walk(page).getByRole('combobox', { name: 'Go to' }).selectOption('1 Floor at the hoop');
  await expect(walk(page).getByRole('img')).toHaveCount(1);
  for (let i = 0; i < 2; i++) await walk(page).getByRole('button', { name: 'Skip' }).click();
  await expect(walk(page).getByRole('img')).toHaveCount(2);
  for (const sketch of await walk(page).getByRole('img').all())
    expect((await sketch.boundingBox())!.height).toBeGreaterThan(80);
  await page.keyboard.press('Escape');
  await expect(walk(page)).toHaveCount(0);
});
