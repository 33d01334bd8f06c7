/**
 * The first load without the shaders that nothing in the bay is drawn with: three keeps its library of shaders in one record, of
 * which no bundler can leave anything out, and most of it is for materials that are lit, which the bay has none of.
 */
import { ShaderChunk } from 'three';

/** Every shader of three by its name. @type {Readonly<Record<string, string>>} */
const SHADERS = ShaderChunk;

/**
 * The shaders of the materials in src/view, and what three's own code puts before every shader. What is written in src/view
 * and in LineMaterial includes nothing that these do not (a test holds that).
 */
const DRAWN_WITH = [
  'meshbasic_vert',
  'meshbasic_frag',
  'points_vert',
  'points_frag',
  'colorspace_pars_fragment',
  'tonemapping_pars_fragment',
];

/**
 * What the text of a shader includes.
 *
 * @param {string} shader
 */
export const includedIn = (shader) => [...shader.matchAll(/#include <(\w+)>/gu)].flatMap(([, name]) => name ?? []);

/** The names in three's library of all that is drawn with. */
export function shadersNeeded() {
  const needed = new Set(DRAWN_WITH);
  for (const name of needed) for (const included of includedIn(SHADERS[name] ?? '')) needed.add(included);
  return needed;
}

/** A plugin of the build. Stops it where three writes its shaders otherwise than it did. */
export const leanThree = {
  name: 'lean-three',
  apply: 'build',
  transform: {
    filter: { id: /\/three\/build\/three\.module\.js$/u },
    /** @param {string} code */
    handler(code) {
      const needed = shadersNeeded();
      let lean = code;
      for (const [name, shader] of Object.entries(SHADERS)) {
        if (needed.has(name)) continue;
        const literal = JSON.stringify(shader);
        if (!lean.includes(literal)) throw new Error(`three writes its shader ${name} otherwise than it did`);
        lean = lean.replace(literal, '""');
      }
      return { code: lean, map: null };
    },
  },
};
