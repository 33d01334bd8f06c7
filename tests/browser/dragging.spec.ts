/** Moving a node in the bay, by mouse and by key: what hangs on it follows at once, and Escape takes it all back. */
import type { Page } from '@playwright/test';
import {
  IN_THE_BAY,
  bay,
  choose,
  enter,
  expect,
  goTo,
  redoKey,
  savedText,
  spoken,
  start,
  stillBox,
  test,
  undoKey,
} from './journey.ts';

const FOOT = 'Tower strut foot';
const NODES = /^Nodes/;

/** In the view square from the left: forward is to the left on the screen. */
async function takeUp(page: Page, node: string): Promise<void> {
  await start(page);
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /^Nodes/ }).click();
  await choose(page, NODES, node);
  await page.getByRole('button', { name: 'Left side view' }).click();
}

/** In view of the foot alone. */
async function takeUpFoot(page: Page): Promise<void> {
  await takeUp(page, FOOT);
  await page.getByRole('button', { name: 'Fit what is selected' }).click();
}

/** Where the word at the end of one of the node's bars stands on the page. */
async function wordAt(page: Page, word: string): Promise<{ x: number; y: number }> {
  const box = await stillBox(
    bay(page)
      .locator('.bay-label-grip', { hasText: new RegExp(`^${word}$`, 'u') })
      .filter({ visible: true }),
  );
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Takes hold of the bar that leads up, just under its word. */
async function grabUp(page: Page): Promise<{ x: number; y: number }> {
  const { x, y } = await wordAt(page, 'up');
  const bar = { x, y: y + 30 };
  await page.mouse.move(bar.x, bar.y);
  await page.mouse.down();
  return bar;
}

/** Where the node is said to be, on its card. */
const place = (page: Page) =>
  page
    .getByRole('article', { name: `Node ${FOOT}` })
    .getByRole('definition')
    .last();

const offsetInFile = (text: string): number[] =>
  JSON.parse(text).nodes.find((node: { name: string }) => node.name === FOOT).at.offset;

test(
  'a node drags along an axis, numbers change on the way, and it is one step to undo',
  IN_THE_BAY,
  async ({ page }) => {
    await takeUpFoot(page);
    const atFirst = await savedText(page);
    const said = (await place(page).textContent())!;
    const word = await wordAt(page, 'up');
    const bar = await grabUp(page);
    await page.mouse.move(bar.x + 3, bar.y - 20);
    await expect(place(page)).not.toHaveText(said);
    const onTheWay = (await place(page).textContent())!;
    await page.mouse.move(bar.x + 3, bar.y - 40);
    await expect(place(page)).not.toHaveText(onTheWay);
    await expect(undoKey(page), 'nothing is entered before the button is let go').toBeDisabled();
    await page.mouse.up();

    const moved = await savedText(page);
    const [before, after] = [offsetInFile(atFirst), offsetInFile(moved)];
    [0, 1].forEach((axis) => expect(after[axis], 'the other two axes stay').toBeCloseTo(before[axis]!, 9));
    expect(after[2]).toBeGreaterThan(before[2]!);
    // The node went where the pointer went, but for the snap: 1/8 in, or 4 pixels to a neighbour.
    await expect(async () => {
      const went = word.y - (await wordAt(page, 'up')).y;
      expect(went).toBeGreaterThan(30);
      expect(went).toBeLessThan(50);
    }).toPass({ timeout: 10_000 });

    await undoKey(page).click();
    expect(await savedText(page)).toBe(atFirst);
    await expect(undoKey(page)).toBeDisabled();
    await redoKey(page).click();
    expect(await savedText(page)).toBe(moved);
    await undoKey(page).click();
    await page.getByRole('button', { name: 'Fit what is selected' }).click();
    await leftByEscape(page);
    await savedInTheMiddle(page);
  },
);

test(
  'the tubes on a dragged node change with it, and arrow keys move it by a step a tape can show',
  IN_THE_BAY,
  async ({ page }) => {
    await takeUpFoot(page);
    const atFirst = offsetInFile(await savedText(page));
    await bay(page).focus();
    await page.keyboard.press('PageUp');
    // What a selection is held by comes with the first one: the step is made once it is there.
    const stepped = async () => offsetInFile(await savedText(page))[2]! - atFirst[2]!;
    await expect.poll(stepped).not.toBe(0);
    const after = offsetInFile(await savedText(page));
    expect(after[2]! - atFirst[2]!).toBeCloseTo(25.4 / 8, 9);
    [0, 1].forEach((axis) => expect(after[axis]).toBeCloseTo(atFirst[axis]!, 9));

    const lengthOfStrut = async (): Promise<string> => {
      await page
        .getByRole('article', { name: `Node ${FOOT}` })
        .getByRole('button', { name: 'Tower strut' })
        .click();
      await expect(spoken(page)).toContainText('Tower strut');
      return spoken(page).innerText();
    };
    const before = await lengthOfStrut();
    await page.getByRole('tab', { name: /^Nodes/ }).click();
    await choose(page, NODES, FOOT);
    await page.getByRole('button', { name: 'Fit what is selected' }).click();
    const bar = await grabUp(page);
    await page.mouse.move(bar.x, bar.y - 40);
    await page.mouse.up();
    expect(await lengthOfStrut()).not.toBe(before);
  },
);

test(
  'a whole bar is drawn up by its middle, or by a figure on its card; it is one step',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    await goTo(page, 'Frame');
    await choose(page, /^Members/, 'Harness bar');
    const height = page.getByRole('group', { name: 'Middle of the bar' }).getByRole('textbox', { name: /^Height/ });
    await expect(height).toHaveValue('26 1/2');
    const atFirst = await savedText(page);
    const box = await stillBox(page.locator('.bay-label-grip').getByText('up', { exact: true }));
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y + 30);
    await page.mouse.down();
    await page.mouse.move(x, y + 10);
    await page.mouse.move(x, y);
    await expect(height).not.toHaveValue('26 1/2');
    await page.mouse.up();
    await undoKey(page).click();
    expect(await savedText(page)).toBe(atFirst);
    await enter(height, '28');
    await expect(height).toHaveValue('28');
    // Both ends of it stand on the hoop, which leans: they have slid to that height.
    await page.getByRole('button', { name: 'Show the node of End B' }).click();
    await expect(page.getByRole('article', { name: /^Node Harness bar/ })).toContainText('28');
  },
);

/** Escape in the middle of a drag leaves everything as it was. */
async function leftByEscape(page: Page): Promise<void> {
  const [atFirst, said] = [await savedText(page), (await place(page).textContent())!];
  const bar = await grabUp(page);
  await page.mouse.move(bar.x, bar.y - 40);
  await expect(place(page)).not.toHaveText(said);
  await page.keyboard.press('Escape');
  await expect(place(page)).toHaveText(said);
  await page.mouse.move(bar.x, bar.y - 60);
  await page.mouse.up();
  await expect(place(page)).toHaveText(said);
  expect(await savedText(page)).toBe(atFirst);
  await expect(undoKey(page)).toBeDisabled();
}

/** Saving in the middle of a drag saves what one sees, and ends the drag there. */
async function savedInTheMiddle(page: Page): Promise<void> {
  const atFirst = await savedText(page);
  const said = (await place(page).textContent())!;
  const bar = await grabUp(page);
  await page.mouse.move(bar.x, bar.y - 40);
  await expect(place(page)).not.toHaveText(said);
  const seen = (await place(page).textContent())!;
  const saved = await savedText(page);
  expect(offsetInFile(saved)[2]).toBeGreaterThan(offsetInFile(atFirst)[2]!);
  await page.mouse.move(bar.x, bar.y - 80);
  await page.mouse.up();
  await expect(place(page)).toHaveText(seen);
  expect(await savedText(page)).toBe(saved);
}

test('a key that asks for a place beyond a tube says so, on the screen and in words', IN_THE_BAY, async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /^Nodes/ }).click();
  await choose(page, NODES, 'Sill bar at the hoop');
  const distance = page
    .getByRole('article', { name: /^Node Sill bar/ })
    .getByRole('textbox', { name: 'Along the tube' });
  await enter(distance, '3/8');
  await bay(page).focus();
  const refusal = page.locator('.bay-refused');
  await expect(refusal).toBeHidden();
  for (let press = 0; press <= 3; press += 1) await page.keyboard.press('ArrowDown');
  await expect(refusal).toContainText('Goes no further');
  await expect(spoken(page)).toContainText('Goes no further');
  const stays = await savedText(page);
  await bay(page).focus();
  await page.keyboard.press('ArrowDown');
  expect(await savedText(page)).toBe(stays);
  await page.keyboard.press('ArrowUp');
  await expect(refusal).toBeHidden();
  await expect(spoken(page)).not.toContainText('Goes no further');
});

test(
  'the shortest gap to each helmet is written in the bay while a node is dragged, and changes on the way',
  IN_THE_BAY,
  async ({ page }) => {
    await takeUp(page, 'Front leg, windscreen corner');
    const gaps = bay(page).locator('.bay-label-dimension');
    const atFirst = await gaps.allTextContents();
    expect(atFirst.length).toBeGreaterThan(0);
    const bar = await grabUp(page);
    await page.mouse.move(bar.x, bar.y + 20);
    await expect(gaps).not.toHaveText(atFirst);
    const onTheWay = await gaps.allTextContents();
    expect(onTheWay).toHaveLength(atFirst.length);
    await page.mouse.move(bar.x, bar.y + 40);
    await expect(gaps).not.toHaveText(onTheWay);
    await expect(undoKey(page), 'the button is still down').toBeDisabled();
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect(gaps).toHaveText(atFirst);
  },
);
