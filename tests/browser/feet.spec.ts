/** Feet on the screen: an end is put on a new one in one step, its slope is typed as a level shows it, its holes and kink are drawn. */
import type { Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { choose, enter, expect, goTo, openFile, savedText, start, test } from './journey.ts';

interface Saved {
  readonly members: readonly { readonly name: string; readonly ends: readonly Record<string, unknown>[] }[];
  readonly feet: readonly Record<string, unknown>[];
}
const saved = async (page: Page): Promise<Saved> => JSON.parse(await savedText(page)) as Saved;

const MEMBERS = 'Members in build order';
const STAY = 'Rear stay';

/** How far the tower under it falls forward, in radians. */
const FORWARD = (25 * Math.PI) / 180;
const BARE = 'No feet';

/** The demo with none of its feet: where it has one, the end is cut to a plate that lies as the foot did. */
function withoutFeet(): string {
  const { feet: _, ...job } = JSON.parse(demoText()) as Saved;
  const bare = ({ foot, ...end }: Record<string, unknown>) => (foot === undefined ? end : { ...end, fit: 'plate' });
  const members = job.members.map((member) => ({ ...member, ends: member.ends.map(bare) }));
  return JSON.stringify({ ...job, name: BARE, members });
}

async function startWithoutFeet(page: Page): Promise<void> {
  await start(page);
  await openFile(page, 'bare.cagewright.json', withoutFeet());
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(BARE);
}

test('an end stands on a new foot in one step; its slope is two angles of a level, never a vector', async ({
  page,
}) => {
  await startWithoutFeet(page);
  await page.setViewportSize({ width: 390, height: 844 });
  const before = await savedText(page);
  await goTo(page, 'Frame');
  await choose(page, MEMBERS, STAY);
  const end = page.getByRole('article', { name: `Member ${STAY}` }).getByRole('region', { name: 'End B' });
  const cut = end.getByLabel('Cut', { exact: true });
  await cut.focus();
  await cut.selectOption({ label: 'on a new foot plate' });
  const endB = async () => (await saved(page)).members.find(({ name }) => name === STAY)!.ends[1]!;
  const { feet } = await saved(page);
  expect(feet).toEqual([expect.objectContaining({ name: 'Foot plate 1', kind: 'plate' })]);
  // Turned as its plate was.
  expect(await endB()).toMatchObject({
    fit: 'foot',
    foot: feet[0]!['id'],
    normal: [Math.sin(FORWARD), 0, Math.cos(FORWARD)].map((part) => expect.closeTo(part, 9)),
  });
  await expect(end).toContainText('cut to its foot, Foot plate 1');

  await enter(end.getByRole('textbox', { name: /^Falls forward/ }), '-3');
  await enter(end.getByRole('textbox', { name: /^Falls left/ }), '2.5');
  const normal = (await endB())['normal'] as number[];
  expect(normal[0]! / normal[2]!).toBeCloseTo(Math.tan((-3 * Math.PI) / 180), 12);
  expect(normal[1]! / normal[2]!).toBeCloseTo(Math.tan((2.5 * Math.PI) / 180), 12);
  await expect(end).toContainText('falls 3.0° back and 2.5° left');
  await expect(end.getByRole('img', { name: /The plate against a level/ })).toBeVisible();
  await expect(end.getByRole('img', { name: /Foot plate 1 from the tube/ })).toBeVisible();

  // What is further belongs to another way that it faces; the last good value stays.
  const forward = end.getByRole('textbox', { name: /^Falls forward/ });
  await forward.fill('75');
  await forward.press('Enter');
  await expect(end.getByRole('alert')).toContainText('another way that it faces');
  await forward.press('Escape');
  await expect(forward).toHaveValue('−3');
  for (const part of await end.locator('input, select, svg').all()) {
    const box = (await part.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(390);
  }

  await end.getByRole('button', { name: 'New box here' }).click();
  expect((await saved(page)).feet.map((foot) => foot['kind'])).toEqual(['plate', 'box']);
  expect(await endB()).toMatchObject({ foot: (await saved(page)).feet[1]!['id'], normal });
  for (let step = 0; step < 4; step += 1) await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await savedText(page)).toBe(before);
});

test('feet are listed with what they are made of: added, drilled, bent, and kept while something stands on them', async ({
  page,
}) => {
  await startWithoutFeet(page);
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: 'Tube & dies' }).click();
  await page.getByRole('button', { name: 'Add a plate', exact: true }).click();
  await expect(page.getByRole('grid', { name: 'Feet' })).toBeVisible();
  await page.getByText('Foot plate 1', { exact: true }).last().click();
  for (let hole = 0; hole < 3; hole += 1) await page.getByRole('button', { name: 'Add a hole', exact: true }).click();
  const holes = (await saved(page)).feet[0]!['holes'] as { at: [number, number] }[];
  expect(holes).toHaveLength(3);
  expect(new Set(holes.map(({ at }) => at.join())).size).toBe(3);
  await page.getByRole('button', { name: 'Delete hole 3', exact: true }).click();
  expect((await saved(page)).feet[0]!['holes']).toHaveLength(2);
  await page.getByRole('button', { name: 'Bend it over a kink', exact: true }).click();
  await expect(page.getByText(/Bend down 15\.0°/)).toBeVisible();
  const ahead = page.getByRole('textbox', { name: /^Ahead of the middle/ });
  await ahead.fill('0');
  await ahead.press('Enter');
  await expect(page.getByRole('alert')).toContainText('does not lie between the middle of the plate and its edge');
  await ahead.press('Escape');
  await page.getByRole('button', { name: 'Make it flat', exact: true }).click();
  expect((await saved(page)).feet[0]).not.toHaveProperty('kink');
  await page.getByRole('button', { name: 'Delete Foot plate 1', exact: true }).click();
  expect((await saved(page)).feet ?? []).toEqual([]);
});
