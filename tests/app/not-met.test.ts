/** What the bar of the stations says of the Checks. */
import { expect, it } from 'vitest';
import { amissInWords } from '../../src/app/not-met.ts';

it.each([
  [0, 0, ''],
  [1, 0, '1 error'],
  [0, 2, '2 articles not met'],
  [3, 1, '3 errors, 1 article not met'],
] as const)('%d errors and %d articles not met: %s', (errors, notMet, words) =>
  expect(amissInWords(errors, notMet)).toBe(words),
);
