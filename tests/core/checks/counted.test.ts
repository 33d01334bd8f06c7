/** One way of counting: what a person sees as one thing is one, and where it is named is told beside it. */
import { expect, it } from 'vitest';
import { counted } from '../../../src/core/checks/counted.ts';
import { seenOf } from '../../../src/core/checks/seen.ts';
import { countInWords } from '../../../src/core/words/groups.ts';
import { derived } from '../frame.ts';

it('a thing at a tube and at its mirror image is one at two places; what was seen is left out', () => {
  const frame = derived({
    nodes: { a: [0, 300, 0], b: [0, 300, 900], c: [800, 0, 0], d: [800, 0, 900] },
    members: [
      { id: 'leg', path: ['a', 'b'], mirror: true, ends: [{ fit: 'auto' }, { fit: 'square' }] },
      { id: 'post', path: ['c', 'd'], ends: [{ fit: 'square' }, { fit: 'auto' }] },
    ],
  });
  const warnings = frame.findings.filter(({ severity }) => severity === 'warning');
  expect(warnings.map(({ id, tube }) => `${id} ${tube}`)).toEqual([
    'end/meets-nothing leg',
    "end/meets-nothing leg'",
    'end/meets-nothing post',
  ]);
  const count = counted(frame.findings, [], frame);
  expect(count('warning')).toEqual({ things: 2, places: 3 });
  expect(countInWords(count('warning'))).toBe('2 (3 places)');
  expect(countInWords(count('error'))).toBe('0');
  const left = counted(frame.findings, [seenOf(warnings[2]!)], frame);
  expect(left('warning')).toEqual({ things: 1, places: 2 });
});
