/** The build leaves out shaders of three: none that anything in the bay is drawn with. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { includedIn, shadersNeeded } from '../src/scripts/lean-three.mjs';

const LINES = 'node_modules/three-stdlib/lines/LineMaterial.js';
const VIEW = readdirSync('src/view', { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/u.test(file))
  .map((file) => readFileSync(`src/view/${file}`, 'utf8'));

it('what our shaders and those of wide lines include is kept', () => {
  const included = [readFileSync(LINES, 'utf8'), ...VIEW].flatMap(includedIn);
  expect(included).toContain('fog_fragment');
  expect(included).toContain('colorspace_fragment');
  const needed = shadersNeeded();
  expect(included.filter((name) => !needed.has(name))).toEqual([]);
});

it('nothing in the bay asks for what the renderer has stand-ins for', () => {
  const asked =
    /(?:ambient|directional|hemisphere|point|rectArea|spot)Light\b|\w+Shadow\b|shadow\w*|\.environment\b|envMap|morph\w+|uniformsGroups|setEffects|\.xr\b|Animation(?:Mixer|Clip)|\w*KeyframeTrack/giu;
  expect('a DirectionalLight casts: castShadow').toMatch(asked);
  expect(VIEW.flatMap((text) => text.match(asked) ?? [])).toEqual([]);
});

it('no material of three is made in the bay but those that are kept', () => {
  const made = VIEW.flatMap((text) => text.match(/(?<=<)[a-z]+Material\b|(?<=new )\w+Material\b/giu) ?? []);
  expect([...new Set(made)].toSorted()).toEqual([
    'MeshBasicMaterial',
    'PointsMaterial',
    'ShaderMaterial',
    'meshBasicMaterial',
  ]);
});
