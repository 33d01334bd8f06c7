/** What a fitting goes by: no guess, and none that stands in for the mirror image of what was measured. */
import { expect, it } from 'vitest';
import { measuredPlaces } from '../../../src/core/fitting/measured.ts';
import { derived } from '../frame.ts';

const placesOf = (right: object) =>
  measuredPlaces(
    derived({
      nodes: { a: [0, 0, 0], b: [0, 0, 500] },
      members: [{ id: 'post', name: 'post', path: ['a', 'b'] }],
      points: [
        { id: 'l', name: 'Roof, left', position: [0, 500, 1100] },
        { id: 'r', name: 'Roof, right', position: [3, -502, 1098], ...right },
      ],
      bodyLines: [{ id: 'across', name: 'Across', points: ['l', 'r'] }],
    }),
  ).map(({ trim }) => trim.id);

it('both sides where both were measured, and the lines through them', () => {
  expect(placesOf({})).toEqual(['l', 'r', 'across']);
});

it('the mirror image of the one where the other is a guess, and no line through that', () => {
  expect(placesOf({ guessed: true })).toEqual(['l', "l'"]);
});
