/** A full cage where the points are measured already, and five changes made where one looks. Actions are counted as a person counts them. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import {
  enter,
  expect,
  FEW,
  goTo,
  IN_THE_BAY,
  openFile,
  savedText,
  start,
  stillBox,
  test,
  undoKey,
} from './journey.ts';

test.use(FEW);

interface File {
  readonly nodes: readonly {
    readonly id: string;
    readonly at: { readonly kind: string; readonly distance?: number };
  }[];
  readonly members: readonly { readonly id: string; readonly name: string; readonly path: readonly string[] }[];
}

/** The car of the demo, measured, with the shop's tube and dies: no frame in it, and no head box yet. */
const KEPT = ['format', 'version', 'lengthUnit', 'points', 'bodyLines', 'sections', 'dies'];
const demo = JSON.parse(readFileSync('public/demo.cagewright.json', 'utf8'));
const MEASURED = JSON.stringify({
  ...Object.fromEntries(KEPT.map((key) => [key, demo[key]])),
  name: 'Gravel saloon, measured',
  nodes: [],
  members: [],
});

/** Where a tube's number stands in the bay: on the tube. */
async function onTube(page: Page, number: number): Promise<[number, number]> {
  return middleOf(page.locator('.bay-label-number').getByText(`${number}`, { exact: true }));
}

async function middleOf(thing: Locator): Promise<[number, number]> {
  const { x, y, width, height } = await stillBox(thing);
  return [x + width / 2, y + height / 2];
}

const placeOf = ({ nodes }: File, id: string) => nodes.find((node) => node.id === id)!.at;

const fileOf = async (page: Page): Promise<File> => JSON.parse(await savedText(page)) as File;

test(
  'a full cage on measured points, and five changes in the bay: at most 60 actions',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    await openFile(page, 'measured.cagewright.json', MEASURED);
    let actions = 0;
    const act = async (...does: Promise<unknown>[]): Promise<void> => {
      actions += 1;
      await Promise.all(does);
    };

    await act(goTo(page, 'Frame'));
    await act(page.getByRole('button', { name: /^New hoop and roof ring/ }).click());
    await act(enter(page.getByRole('textbox', { name: /^Harness bar/ }), '24'));
    await act(enter(page.getByRole('textbox', { name: /^Gap/ }), '1 1/4'));
    await expect(page.getByRole('form')).toContainText('Every figure is yours.');
    await act(page.getByRole('button', { name: 'Build it' }).click());
    await expect(page.getByRole('grid', { name: /^Members/ })).toBeVisible();
    const whole = await savedText(page);
    const built: File = JSON.parse(whole);
    expect(built.members.map(({ name }) => name)).toContain('Roof ring');
    await expect(page.getByRole('button', { name: /^Checks/ })).not.toContainText('×');
    console.log(`A full cage on measured points: ${actions} actions.`);

    // 1: a brace from the dash bar down to the sill; both off the middle of the car, so it has a twin.
    await act(page.keyboard.press('t'));
    const [x, y] = await onTube(page, 14);
    await act(page.mouse.click(x + 44, y + 16));
    await act(page.mouse.dblclick(...(await onTube(page, 21))));
    await expect(undoKey(page)).toContainText('Draw');
    const drawn = await fileOf(page);
    expect(drawn.members).toHaveLength(built.members.length + 1);
    const ends = drawn.members.at(-1)!.path.map((id) => placeOf(drawn, id).kind);
    expect(ends, 'both ends follow the bars that they stand on').toEqual(['on', 'on']);

    // 2: its lower end slid along the sill, by its grip.
    await act(page.getByRole('button', { name: 'Show the node of End B' }).click());
    const [one, other] = await Promise.all([0, 1].map((nth) => middleOf(page.locator('.bay-label-clear').nth(nth))));
    const along = (share: number): [number, number] => [
      one![0] + share * (other![0] - one![0]),
      one![1] + share * (other![1] - one![1]),
    ];
    await act(drag(page, along(0.8), along(1.1)));
    await expect(undoKey(page)).toContainText('Move');
    const slid = await fileOf(page);
    const low = drawn.members.at(-1)!.path[1]!;
    expect(placeOf(slid, low)).toMatchObject({ ...placeOf(drawn, low), distance: expect.any(Number) });
    expect(placeOf(slid, low).distance).not.toBeCloseTo(placeOf(drawn, low).distance!, 0);

    // 3 and 4: a bend in it, half-way, and its corner drawn up.
    await act(
      page
        .getByRole('article')
        .getByRole('button', { name: drawn.members.at(-1)!.name })
        .click(),
    );
    await act(page.getByRole('button', { name: 'Put a corner in there' }).click());
    await act(page.getByRole('combobox', { name: 'Placed' }).selectOption({ label: 'at fixed figures' }));
    const up = await middleOf(page.locator('.bay-label-grip').getByText('up', { exact: true }));
    await act(drag(page, [up[0], up[1] + 30], [up[0], up[1] - 10]));
    const bent = await fileOf(page);
    expect(bent.members.at(-1)!.path).toHaveLength(3);
    await expect(page.getByRole('article')).toContainText('at fixed figures');

    // 5: a bar taken out.
    await act(page.mouse.click(...(await onTube(page, 25))));
    await act(page.keyboard.press('Delete'));
    await expect(undoKey(page)).toContainText('Delete');
    console.log(`With five changes: ${actions} actions.`);
    expect(actions).toBeLessThanOrEqual(60);
    await expect(page.getByRole('button', { name: /^Checks/ })).not.toContainText('×');

    // Each change is a step, but for the corner, which was placed another way first; all the way back the file is what was built.
    for (let steps = 0; steps < 6; steps += 1) await undoKey(page).click();
    await expect(undoKey(page)).toContainText('New hoop');
    expect(await savedText(page)).toBe(whole);
  },
);

async function drag(page: Page, from: [number, number], to: [number, number]): Promise<void> {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  await page.mouse.move(...to);
  await page.mouse.up();
}
