/** Drawing a tube in the bay: by mouse with numbers typed on the way, by keys alone, and every way back out of it. */
import type { Page } from '@playwright/test';
import { derive } from '../../src/core/derive.ts';
import { distance } from '../../src/core/geometry/vector.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { bay, expect, FEW, goTo, IN_THE_BAY, savedText, start, test, undoKey } from './journey.ts';

test.use(FEW);

interface File {
  readonly nodes: readonly { readonly id: string; readonly at: { readonly kind: string } }[];
  readonly members: readonly { readonly path: readonly string[]; readonly mirror: boolean; readonly die?: string }[];
}

/** Where nodes stand, which may be in line with others. */
function placesOf(text: string, nodes: readonly string[]) {
  const parsed = parseJob(text);
  const derived = parsed.ok ? derive(parsed.job) : parsed;
  if (!derived.ok) throw new Error(JSON.stringify(derived.faults));
  return nodes.map((id) => derived.value.nodes.get(id)!);
}

const strip = (page: Page) => page.getByRole('region', { name: 'Draw a tube' });
/** At the pointer: the name of what is aimed at, and the leg. */
const beside = (page: Page) => page.locator('.draw-beside');
/** The places drawn so far, as dots over the picture. */
const places = (page: Page) => page.locator('.draw-place');
const length = (page: Page) => page.getByRole('textbox', { name: /^Length/ });

/** By Tab to the nearest place that others line up with. */
async function walkToNode(page: Page): Promise<void> {
  await expect(async () => {
    await page.keyboard.press('Tab');
    expect(await beside(page).innerText()).toMatch(/^(?:Node|Point)/u);
  }).toPass({ intervals: [50] });
}

/** A place of the bay, in shares of its width and height. */
async function at(page: Page, across: number, down: number): Promise<[number, number]> {
  const box = (await bay(page).boundingBox())!;
  return [box.x + box.width * across, box.y + box.height * down];
}

test('by mouse, with a length typed; Escape and undo take back step by step', IN_THE_BAY, async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  const atFirst = await savedText(page);
  await page.getByRole('button', { name: 'Draw a tube' }).click();
  await expect(strip(page)).toContainText('Press where it begins');
  await page.getByRole('button', { name: 'Top view' }).click();

  await page.mouse.move(...(await at(page, 0.3, 0.85)));
  await expect(beside(page)).toContainText('On the floor');
  await page.mouse.click(...(await at(page, 0.3, 0.85)));
  await expect(places(page)).toHaveCount(1);
  await page.mouse.click(...(await at(page, 0.3, 0.85)));
  await expect(strip(page).getByRole('alert')).toContainText('The tube is there already');
  await expect(places(page)).toHaveCount(1);

  await page.mouse.move(...(await at(page, 0.5, 0.8)));
  await page.keyboard.press('2');
  await expect(length(page)).toHaveValue('2');
  await page.keyboard.type('0,5');
  await page.keyboard.press('Enter');
  await expect(beside(page).getByRole('alert')).toContainText('use a point: 20.5');
  await page.keyboard.press('Escape');
  await expect(length(page)).toBeHidden();
  await expect(places(page)).toHaveCount(1);
  // Looked at from elsewhere on the way, by a key of the views and by the chord: neither takes the keys from the tube, nor moves a place of it.
  await page.getByRole('button', { name: 'Three-quarter view' }).click();
  await page.getByRole('button', { name: 'Top view' }).click();
  await page.mouse.move(...(await at(page, 0.5, 0.8)));
  const words = await beside(page).innerText();
  const stood = await page.locator('.draw-place').getAttribute('transform');
  await page.keyboard.press('Alt+ArrowLeft');
  await expect(page.locator('.draw-place')).not.toHaveAttribute('transform', stood!);
  expect(await beside(page).innerText()).toBe(words);
  await page.keyboard.press('Alt+ArrowRight');
  await page.keyboard.type('20 1/2');
  await page.keyboard.press('Enter');
  await expect(places(page)).toHaveCount(2);

  await page.mouse.click(...(await at(page, 0.5, 0.6)));
  await expect(places(page)).toHaveCount(3);
  await page.keyboard.press('Escape');
  await expect(places(page)).toHaveCount(2);
  await page.mouse.click(...(await at(page, 0.55, 0.6)));
  await expect(places(page)).toHaveCount(3);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(places(page)).toHaveCount(2);
  await page.mouse.click(...(await at(page, 0.5, 0.6)));
  await expect(places(page)).toHaveCount(3);
  await expect(undoKey(page)).toContainText('The last place');
  await undoKey(page).click();
  await expect(places(page)).toHaveCount(2);

  await goTo(page, 'Survey');
  await expect(strip(page)).toBeHidden();
  await expect(undoKey(page), 'nothing of it is in the job').toBeDisabled();
  await goTo(page, 'Frame');
  await expect(places(page)).toHaveCount(2);
  await page.mouse.click(...(await at(page, 0.55, 0.6)));
  await page.mouse.dblclick(...(await at(page, 0.35, 0.65)));
  await expect(strip(page)).toBeHidden();
  await expect(undoKey(page)).toContainText('Draw a tube');

  const text = await savedText(page);
  const { members }: File = JSON.parse(text);
  const { path, die } = members.at(-1)!;
  expect(path).toHaveLength(4);
  expect(die).toBeDefined();
  const [a, b] = placesOf(text, path);
  expect(distance(a!, b!)).toBeCloseTo(20.5 * 25.4, 9);
  await undoKey(page).click();
  expect(await savedText(page)).toBe(atFirst);
});

test('by keys alone, from one named place to another and in steps from there', IN_THE_BAY, async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  const before: File = JSON.parse(await savedText(page));
  await page.keyboard.press('t');
  await expect(bay(page)).toBeFocused();
  await walkToNode(page);
  await page.keyboard.press('PageUp');
  await expect(beside(page)).toContainText('Plumb over');
  await page.keyboard.press('Enter');
  await expect(places(page)).toHaveCount(1);
  await expect(beside(page)).toContainText('The place before');
  // After the last of the places near, Tab leads on to the keys of the tool; a press of Shift+Tab, and one is back.
  for (let i = 0; i < 40 && (await bay(page).evaluate((each) => each === document.activeElement)); i += 1) {
    await page.keyboard.press('Tab');
  }
  await expect(strip(page).getByRole('button', { name: 'By numbers' })).toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await expect(bay(page)).toBeFocused();
  await page.keyboard.type('30');
  await page.keyboard.press('Tab');
  await page.keyboard.type('90');
  await expect(beside(page)).toContainText('plumb');
  await page.keyboard.press('Enter');
  await expect(places(page)).toHaveCount(2);
  await expect(bay(page)).toBeFocused();
  const end = (await places(page).last().boundingBox())!;
  // Once more without walking anywhere: it ends here.
  await page.keyboard.press('Enter');
  await expect(strip(page)).toBeHidden();
  const after: File = JSON.parse(await savedText(page));
  expect(after.members).toHaveLength(before.members.length + 1);
  const [first, second] = after.nodes.slice(-2);
  expect([first!.at.kind, second!.at]).toEqual([
    'lined-up',
    { kind: 'lined-up', x: { node: first!.id, plus: 0 }, y: { node: first!.id, plus: 0 }, z: expect.anything() },
  ]);

  // What was drawn in line with others is not moved by hand until it is told to stand for itself.
  await page.keyboard.press('Escape'); // the grip of the whole tube lies over its end
  await page.mouse.click(end.x + end.width / 2, end.y + end.height / 2);
  await page.getByRole('button', { name: 'To move it: place it at fixed figures' }).click();
  await expect(page.getByRole('button', { name: /^To move it/u })).toBeHidden();
  const freed: File = JSON.parse(await savedText(page));
  expect(freed.nodes.at(-1)!.at.kind).toBe('fixed');
  expect(placesOf(JSON.stringify(freed), [second!.id])).toEqual(placesOf(JSON.stringify(after), [second!.id]));

  // Escape with nothing drawn puts the pencil away.
  await page.keyboard.press('t');
  await expect(strip(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(strip(page)).toBeHidden();
});

test(
  'from press to release: from one named place to another, plumb over one that was rested on, and Escape lets go of it',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    await goTo(page, 'Frame');
    await page.keyboard.press('t');
    await expect(strip(page)).toBeVisible();
    /** What the keys led to, in pixels of the page. */
    const aimed = async (): Promise<[number, number]> => {
      const box = (await page.locator('.draw-aim').boundingBox())!;
      return [box.x + box.width / 2, box.y + box.height / 2];
    };
    await walkToNode(page);
    const from = await aimed();
    // With nothing drawn yet, only what the aim has rested on is there to be plumb over.
    await page.mouse.move(...from);
    await expect(page.locator('.draw-lately')).toHaveCount(1);
    const passed: string[] = [];
    for (let up = 15; up <= 120; up += 15) {
      await page.mouse.move(from[0], from[1] - up);
      passed.push(await beside(page).innerText());
    }
    expect(passed.join()).toContain('Plumb over');
    await page.mouse.move(...from);
    for (let i = 0; i < 5; i += 1) await page.keyboard.press('Tab');
    const to = await aimed();
    await page.mouse.down();
    await page.mouse.move(...to, { steps: 3 });
    await expect(places(page), 'it begins at the press').toHaveCount(1);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect(places(page)).toHaveCount(1);
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move(...to, { steps: 3 });
    await page.mouse.up();
    await expect(places(page)).toHaveCount(2);
  },
);

test('a station that is chosen while a finger aims puts no place', IN_THE_BAY, async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  await page.keyboard.press('t');
  await expect(strip(page)).toBeVisible();
  await page.mouse.click(...(await at(page, 0.3, 0.85)));
  await expect(places(page)).toHaveCount(1);
  const [x, y] = await at(page, 0.5, 0.8);
  const session = await page.context().newCDPSession(page);
  const touch = (type: string, ...points: readonly [number, number][]) =>
    session.send('Input.dispatchTouchEvent', {
      type: type as 'touchMove',
      touchPoints: points.map(([px, py]) => ({ x: px, y: py })),
    });
  await touch('touchStart', [x, y]);
  await touch('touchMove', [x + 20, y + 10]);
  await expect(page.locator('.draw-finger')).toBeVisible();
  await page.keyboard.press('Alt+1');
  await expect(strip(page)).toBeHidden();
  await touch('touchEnd');
  await goTo(page, 'Frame');
  await expect(places(page)).toHaveCount(1);
  await session.detach();
});

test('by finger: a cross stands above it, and where it is lifted the place is put', IN_THE_BAY, async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  await page.keyboard.press('t');
  await expect(strip(page)).toBeVisible();
  const session = await page.context().newCDPSession(page);
  const touch = (type: string, ...points: readonly [number, number][]) =>
    session.send('Input.dispatchTouchEvent', {
      type: type as 'touchMove',
      touchPoints: points.map(([x, y]) => ({ x, y })),
    });
  const [from, to] = [await at(page, 0.3, 0.85), await at(page, 0.35, 0.8)];
  await touch('touchStart', from);
  await touch('touchMove', to);
  await expect(page.locator('.draw-finger')).toBeVisible();
  await expect(beside(page)).not.toBeEmpty();
  const cross = (await page.locator('.draw-aim').boundingBox())!;
  expect(to[1] - (cross.y + cross.height / 2)).toBeGreaterThan(35);
  await touch('touchEnd');
  await expect(places(page)).toHaveCount(1);
  await expect(page.locator('.draw-finger')).toBeHidden();
  // With nothing aimed at, the fields stand by the last place, where a finger reaches them.
  await strip(page).getByRole('button', { name: 'By numbers' }).click();
  await length(page).click();
  await expect(length(page)).toBeFocused();
  await session.detach();
});
