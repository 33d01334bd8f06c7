/** A driver in the car by measured points, and boxes round what else wants room. */
import { choose, enter, expect, goTo, openFile, savedText, start, test, typeItsPlace } from './journey.ts';

test('a driver goes by points, is as near as they say, and keeps them; a box begins beside the driver', async ({
  page,
}) => {
  await start(page);
  // Nobody sits in the car yet.
  const demo = JSON.parse(await savedText(page));
  const points = demo.points.filter(({ name }: { name: string }) => !name.endsWith('driver'));
  await openFile(page, 'nobody.json', JSON.stringify({ ...demo, name: 'Nobody in it', points, envelopes: [] }));
  const card = page.getByRole('article', { name: 'Driver', exact: true });
  const gap = card.locator('.gap-figure');
  await test.step('begins with a guess that says so', async () => {
    await goTo(page, 'Checks');
    await page.getByRole('button', { name: 'Add a driver' }).click();
    await expect(card).toContainText('That point is a guess');
    await expect(card).toContainText('ANSUR II');
    await expect(page.getByRole('button', { name: 'Add a co-driver' })).toBeVisible();
  });

  await test.step('the room that the head moves in counts', async () => {
    const before = await gap.innerText();
    await enter(card.getByRole('textbox', { name: 'Up, off the seat' }), '1');
    await expect(gap).not.toHaveText(before);
  });

  await test.step('one shoulder waits for the other; both are two points', async () => {
    const [left, right] = [/^3 Left shoulder/, /^3 Right shoulder/].map((name) => card.getByRole('combobox', { name }));
    const driverOf = (text: string) =>
      JSON.parse(text).envelopes.find(({ kind }: { kind: string }) => kind === 'driver');
    await left!.selectOption({ index: 1 });
    expect(driverOf(await savedText(page))).not.toHaveProperty('shoulders');
    await right!.selectOption({ index: 1 });
    await expect(card.getByRole('alert').or(card.locator('.entry-refused')).first()).toContainText('first shoulder');
    await left!.selectOption({ index: 1 });
    await right!.selectOption({ index: 2 });
    expect(driverOf(await savedText(page)).shoulders).toHaveLength(2);
  });

  await test.step('follows its point, which stays as long as the driver does', async () => {
    const before = await gap.innerText();
    await goTo(page, 'Survey');
    await choose(page, /^Measured points/, 'Driver: helmet top');
    const point = page.getByRole('article', { name: 'Point Driver: helmet top' });
    await expect(point).toContainText('1 driver keeps it');
    await typeItsPlace(page);
    await enter(point.getByRole('textbox', { name: 'Height' }), '38');
    await goTo(page, 'Checks');
    await expect(gap).not.toHaveText(before);
    await expect(card).not.toContainText('That point is a guess');
  });

  await test.step('a box is asked what it is for', async () => {
    await page.getByRole('button', { name: 'Add a box' }).click();
    await page.getByRole('button', { name: 'Wheel and hands' }).click();
    const box = page.getByRole('article', { name: 'Wheel and hands' });
    await box.getByRole('heading', { name: 'The box' }).click();
    await expect(box.getByRole('textbox', { name: 'Gap to keep' })).toBeVisible();
  });
});

test('articles on head and belts go by the driver: what to pad is listed, and a key puts the harness bar right', async ({
  page,
}) => {
  await start(page);
  const job = JSON.parse(await savedText(page));
  // Shoulders so high over the bar that the belts go down too steeply.
  job.points.push(
    { id: 'dt', name: 'Helmet top', position: [250, 336, 1003] },
    { id: 'dl', name: 'Left shoulder', position: [170, 436, 760] },
    { id: 'dr', name: 'Right shoulder', position: [170, 236, 760] },
  );
  job.envelopes = [{ id: 'd', name: 'Driver', kind: 'driver', helmetTop: 'dt', shoulders: ['dl', 'dr'] }];
  job.rules = [
    {
      sheet: 'own',
      body: 'Own book',
      checks: [
        { article: '1', kind: 'harness', of: 'strap-angle', least: -20, most: 10 },
        { article: '2', kind: 'head-room', of: 'padding', least: 150 },
      ],
    },
  ];
  await openFile(page, 'belts.json', JSON.stringify(job));
  await goTo(page, 'Checks');
  const book = page.getByRole('region', { name: 'Rule book' });
  await book.getByText('Where to pad, tube by tube').click();
  await expect(book.getByRole('row').filter({ hasText: 'Main hoop' })).toBeVisible();

  const straps = book.getByRole('button', { name: /Straps from the shoulders/ });
  await expect(straps).toContainText('not met');
  await straps.click();
  await book
    .getByRole('button', { name: /^Move Harness bar .* up, to about −5\.0°, the middle of what the sheet allows$/ })
    .click();
  await expect(straps).toContainText(/(?<!not )met:/u);
  const moved = JSON.parse(await savedText(page));
  const heightOf = (of: { nodes: { id: string; at: { until: { value: number } } }[] }): number =>
    of.nodes.find(({ id }) => id === 'harness-end')!.at.until.value;
  expect(heightOf(moved)).toBeGreaterThan(heightOf(job));
});
