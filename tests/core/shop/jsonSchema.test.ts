import { expect, it } from 'vitest';
import { shopSchema } from '../../../src/core/shop/schema.ts';
import { jsonSchemaOf, laidOut } from '../job/jsonSchema.ts';

// After a change of the validator: npx vitest run tests/core/shop/jsonSchema.test.ts -u
it('docs/shop.schema.json says what the validator says', async () => {
  await expect(`${laidOut(jsonSchemaOf(shopSchema))}\n`).toMatchFileSnapshot('../../../docs/shop.schema.json');
});
