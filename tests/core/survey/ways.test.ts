import { expect, it } from 'vitest';
import { pictureOf, readingsOf, WAYS } from '../../../src/core/survey/ways.ts';

it('each way of measuring has its own picture; what is further forward by some is no plumb line', () => {
  for (const way of WAYS) {
    for (const reading of readingsOf(way, 'a', 'b', 12)) expect(pictureOf({ id: 'r', ...reading })).toBe(way);
  }
  const [along] = readingsOf('plumb', 'a', 'b', 0);
  expect(pictureOf({ id: 'r', ...along!, value: 5 })).toBe('apart');
});
