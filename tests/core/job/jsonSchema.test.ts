import { expect, it } from 'vitest';
import { jobSchema } from '../../../src/core/job/schema.ts';
import { jsonSchemaOf, laidOut } from './jsonSchema.ts';

// After a change of the validator: npx vitest run tests/core/job/jsonSchema.test.ts -u
it('docs/job.schema.json says what the validator says', async () => {
  await expect(`${laidOut(jsonSchemaOf(jobSchema))}\n`).toMatchFileSnapshot('../../../docs/job.schema.json');
});
