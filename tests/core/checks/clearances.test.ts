import { expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { jobOf } from '../frame.ts';

/** Two boxes and two tubes whose ids run together to the same text whatever stands between them. */
function alike(between: string): Job {
  const job = jobOf({
    nodes: { a: [0, 0, 0], b: [600, 0, 0], c: [0, 300, 0], d: [600, 300, 0] },
    members: [
      { id: 'first', path: ['a', 'b'] },
      { id: 'second', path: ['c', 'd'] },
    ],
    envelopes: [
      { id: 'near', kind: 'box', centre: [300, 0, 400], size: [100, 100, 100] },
      { id: 'far', kind: 'box', centre: [300, 0, 900], size: [100, 100, 100] },
    ],
  });
  const renamed = <R extends { readonly id: string }>(record: R, id: string): R => ({ ...record, id });
  return {
    ...job,
    members: [renamed(job.members[0]!, `x${between}y`), renamed(job.members[1]!, 'y')],
    envelopes: [renamed(job.envelopes[0]!, 'e'), renamed(job.envelopes[1]!, `e${between}x`)],
  };
}

it.each(['\n', ' ', ',', '/', '\u0000'])('no pair is given the distance of another, with %j within ids', (between) => {
  const job = alike(between);
  const first = derive(job);
  if (!first.ok) throw new Error('derives');
  expect(new Set(first.value.clearances.map(({ distance }) => distance)).size).toBe(4);
  // Everything unchanged is handed on by what is remembered of `first`.
  const again = derive({ ...job, name: 'again' }, first.value);
  expect(again.ok && again.value.clearances).toEqual(first.value.clearances);
  expect(again.ok && again.value.clearances.every((each, i) => each === first.value.clearances[i])).toBe(true);
});
