/** Random jobs for the laws: any records under any ids, in any order, with blocks that the program does not know. */
import fc from 'fast-check';
import type { Job } from '../../src/core/job/types.ts';
import { COLLECTIONS } from '../../src/core/job/kinds.ts';

const id = fc.constantFrom('a', 'b', 'c', 'd', 'e', '__proto__', 'constructor', '1');
const record = fc.record(
  { id, name: fc.constantFrom('x', 'y'), extra: fc.constantFrom(1, null, [1, 2], { deep: [0] }) },
  { requiredKeys: ['id', 'name'] },
);
const records = fc.uniqueArray(record, { selector: (item) => item.id, maxLength: 6 });

/** Records are bare (an id, a name, something more): a diff does not look inside them. */
export const anyJob: fc.Arbitrary<Job> = fc
  .record(
    {
      name: fc.constantFrom('one', 'two'),
      lengthUnit: fc.constantFrom('in', 'mm'),
      stock: fc.constantFrom({ sticks: [] }, { sticks: [{ length: 1 }] }, null),
      pulls: fc.constantFrom([], [{ die: 'd1', section: 'main', pulled: 63.2, net: 60, on: '' }]),
      ...Object.fromEntries(COLLECTIONS.map((collection) => [collection, records])),
    },
    { requiredKeys: ['name', 'lengthUnit', ...(COLLECTIONS as readonly string[] as never[])], noNullPrototype: true },
  )
  .map((job) => structuredClone({ ...job, format: 'cagewright/job', version: 1 }) as unknown as Job);

export function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}
