import { expect, it } from 'vitest';
import { jobSchema } from '../../../src/core/job/schema.ts';
import { jsonSchemaOf, laidOut } from './jsonSchema.ts';

// After a change of the validator: npx vitest run -u tests/core/job/jsonSchema.test.ts
it('docs/job.schema.json says what the validator says', async () => {
  await expect(`${laidOut(jsonSchemaOf(jobSchema))}\n`).toMatchFileSnapshot('../../../docs/job.schema.json');
});
