/** The shop record in the second copy. */
import { expect, it } from 'vitest';
import { createSecondCopy } from '../../../src/store/storage/secondCopy.ts';
import { createShopFile } from '../../../src/store/storage/shopFile.ts';
import { folder } from './folder.ts';

const kept = (savedAt: number) => ({ text: `written at ${savedAt}`, savedAt });

it('is the one written last; one that was cut short leaves the one before', async () => {
  const files = folder();
  const file = createShopFile(files);
  expect(await file.readShop()).toBeNull();
  for (const at of [1, 2, 3]) await file.writeShop(kept(at));
  expect(await file.readShop()).toEqual(kept(3));
  const [last] = await files.list();
  files.texts.set(last!, files.texts.get(last!)!.slice(0, -3));
  expect(await file.readShop()).toEqual(kept(2));
  await file.writeShop(kept(4));
  expect(await file.readShop()).toEqual(kept(4));
  expect(files.texts.size).toBe(2);
});

it('is no document of the folder that it lies in', async () => {
  const files = folder();
  await createShopFile(files).writeShop(kept(1));
  expect(await createSecondCopy(files).slots()).toEqual([]);
});
