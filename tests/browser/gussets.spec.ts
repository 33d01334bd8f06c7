/** A gusset on the screen: added in a corner of the joint at a node, sized, folded, and taken out again. */
import { choose, enter, expect, goTo, savedText, start, test, undoKey } from './journey.ts';

test('a gusset is added at a node, sized and folded; one that cannot be says why', async ({ page }) => {
  await start(page);
  await page.setViewportSize({ width: 390, height: 844 });
  const saved = async (): Promise<readonly Record<string, unknown>[]> =>
    (JSON.parse(await savedText(page)) as { readonly gussets: readonly Record<string, unknown>[] }).gussets;
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /^Nodes/ }).click();
  await choose(page, 'Nodes', 'Harness bar at the hoop');
  const card = page.getByRole('article', { name: 'Node Harness bar at the hoop' });
  await card.getByRole('button', { name: 'Add a gusset' }).click();
  expect(await saved()).toMatchObject([{ name: 'Gusset 1', kind: 'flat', node: 'harness-end' }]);
  const gusset = card.getByRole('region', { name: 'Gusset 1' });
  await expect(gusset).toContainText('Cut 2, 1/8 in thick.');

  await enter(gusset.getByRole('textbox', { name: 'Along Harness bar' }), '5');
  await gusset.getByLabel('Sheet', { exact: true }).selectOption('folded');
  await expect(gusset).toContainText('Bend 90° on both middle lines');
  expect(await saved()).toMatchObject([
    { kind: 'bent', between: [{ member: 'hoop' }, { member: 'harness', leg: 127 }] },
  ]);
  await enter(gusset.getByRole('textbox', { name: 'Width over both faces' }), '3');
  await expect(gusset.getByRole('status')).toContainText('Make it narrower');
  await gusset.getByRole('checkbox').click();
  expect(await saved()).toMatchObject([{ mirror: false }]);
  for (const part of await gusset.locator('input, select, svg').all()) {
    const box = (await part.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(390);
  }

  await gusset.getByRole('button', { name: 'Delete Gusset 1' }).click();
  await expect(gusset).toHaveCount(0);
  await undoKey(page).click();
  await expect(gusset).toBeVisible();

  // A bar that it is welded to takes it along, and says so first.
  await page.getByRole('tab', { name: /^Members/ }).click();
  await choose(page, 'Members', 'Harness bar');
  await page.getByRole('button', { name: 'Delete the member' }).click();
  const ask = page.getByRole('region', { name: 'Before deleting Harness bar' });
  await expect(ask).toContainText('deleted with it: Gusset 1');
  await ask.getByRole('button', { name: /^Keep/ }).click();
  expect(await saved()).toHaveLength(1);
});
