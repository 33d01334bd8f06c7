/** Faults beside a job: names for ids. */
import { expect, it } from 'vitest';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { inNames } from '../../../src/core/job/in-names.ts';
import type { Job } from '../../../src/core/job/types.ts';

const NAMED = {
  ...emptyJob('mm'),
  members: [{ id: 'm16', name: 'Door bar' }],
  nodes: [
    { id: 'n1', name: 'Sill "front"' },
    { id: 'n2', name: '' },
  ],
} as unknown as Job;

const said = (message: string) => inNames(NAMED, [{ place: 'members[0]', message }]);

it('says names for quoted ids, and leaves what has none', () => {
  expect(said('"m16" comes nearest to "m16\'" there')).toEqual([
    { place: 'members[0]', message: '"Door bar" comes nearest to "Door bar", mirrored there' },
  ]);
  expect(said('"n1" and "n2", no node "n3"')[0]!.message).toBe('"Sill \\"front\\"" and "n2", no node "n3"');
});
