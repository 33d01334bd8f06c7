/** A driver in the car by measured points, and boxes round what else wants room. */
import { choose, enter, expect, goTo, savedText, start, test, typeItsPlace } from './journey.ts';

test('a driver goes by points, is as near as they say, and keeps them; a box begins beside the driver', async ({
  page,
}) => {
  await start(page);
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
