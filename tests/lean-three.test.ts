/** The build leaves out shaders of three: none that anything in the bay is drawn with. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { includedIn, shadersNeeded } from '../src/scripts/lean-three.mjs';

const VIEW = readdirSync('src/view', { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/u.test(file))
  .map((file) => readFileSync(`src/view/${file}`, 'utf8'));

it('what our shaders include is kept', () => {
  const included = VIEW.flatMap(includedIn);
  expect(included).toContain('colorspace_fragment');
  const needed = shadersNeeded();
  expect(included.filter((name) => !needed.has(name))).toEqual([]);
});

it('no material of three is made in the bay but those that are kept', () => {
  const made = VIEW.flatMap((text) => text.match(/(?<=new (?:three\.)?)\w+Material\b/gu) ?? []);
  expect([...new Set(made)].toSorted()).toEqual(['MeshBasicMaterial', 'PointsMaterial', 'ShaderMaterial']);
});
