import { describe, expect, it } from 'vitest';
import type { Landing } from '../../../src/core/cope/landing.ts';
import { landingInShort, landingParts } from '../../../src/core/words/landing.ts';
import { derived, tube } from '../frame.ts';

const runTube = tube(
  derived({
    nodes: { a: [0, 0, 0], b: [800, 0, 0] },
    members: [{ id: 'run', name: 'Sill', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
  }),
  'run',
);
const straight: Landing = { runTube, fromTipA: 400, turn: 0, bend: null, fromTangent: 0, tangent: 'start' };
const quarter = Math.PI / 2;

describe('where a place comes to lie on its run tube', () => {
  it.each([
    [{}, '1 Sill, 400.0 mm from its tip A, on the scribed line'],
    [{ turn: Math.PI }, '1 Sill, 400.0 mm from its tip A, opposite the scribed line'],
    [
      { fromTipA: -3, turn: -quarter },
      '1 Sill, 3.0 mm beyond its tip A, 90.0° anticlockwise of the scribed line seen from A',
    ],
    [{ bend: 2, fromTangent: 40 }, '1 Sill, 400.0 mm from its tip A, on the inside of bend 2, 40.0 mm before it'],
    [
      { bend: 1, fromTangent: -12, tangent: 'end' },
      '1 Sill, 400.0 mm from its tip A, on the inside of bend 1, in that bend, 12.0 mm past its B side',
    ],
  ] as const)('%j', (fields, said) => {
    const landing: Landing = { ...straight, ...fields };
    expect(landingInShort(landing, 'mm')).toBe(said);
    // The table's cells are pieces of that very sentence.
    for (const part of Object.values(landingParts(landing, 'mm'))) expect(said).toContain(part);
  });
});
