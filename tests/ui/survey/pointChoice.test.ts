import { expect, it } from 'vitest';
import { offersFor } from '../../../src/ui/survey/pointChoice.ts';

const points = [
  ['a', 'Roof, left'],
  ['b', 'Roof, right'],
  ['c', 'Sill'],
  ['d', 'Sill at roof post, left'],
  ["a'", 'Roof, left, mirrored'],
].map(([ref, label]) => ({ ref: ref!, label: label! }));

const offered = (text: string): readonly string[] =>
  offersFor(text, points).map(({ ref, label }) => (ref === null ? `new ${label}` : ref));

it('a point is found by how the words of its name begin, in any order; the text may also be a new name', () => {
  expect(offered('ro l')).toEqual(['a', 'd', "a'", 'new ro l']);
  expect(offered('left roof')).toEqual(['a', 'd', "a'", 'new left roof']);
  expect(offered('roof, r')).toEqual(['b', 'new roof, r']);
  expect(offered('Tower, left')).toEqual(['new Tower, left']);
});

it('one that is called just so comes first, and then no new point is offered', () => {
  expect(offered('SILL')).toEqual(['c', 'd']);
  expect(offered('roof, left, mirrored')).toEqual(["a'"]);
});

it('an empty field offers what there is, and signs alone no name', () => {
  expect(offered(' ')).toEqual(['a', 'b', 'c', 'd', "a'"]);
  expect(offered('--')).not.toContain('new --');
});
