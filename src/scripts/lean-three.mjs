/**
 * The first load without what nothing in the bay is drawn with. three's renderer makes all that it could ever draw with, and writes
 * to classes that nobody asks for, so that no bundler can leave anything of it out: shaders for lit materials, which are most of its
 * library, headsets, shadows, surroundings that steel mirrors, animation.
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

/**
 * In place of parts of the renderer: as much of each as is asked of it where no session of a headset begins and no scene has lights, shadows,
 * a surrounding, morphs, blocks of uniforms or effects.
 *
 * @type {Readonly<Record<string, string>>}
 */
const STAND_INS = {
  WebXRManager: `class WebXRManager {
    enabled = false;
    isPresenting = false;
    getEnvironmentBlendMode() {}
    hasDepthSensing() { return false; }
    addEventListener() {}
    removeEventListener() {}
    setAnimationLoop() {}
    dispose() {}
  }`,
  WebGLShadowMap: 'class WebGLShadowMap { enabled = false; render() {} }',
  WebGLEnvironments: 'class WebGLEnvironments { get(texture) { return texture; } dispose() {} }',
  WebGLMorphtargets: 'class WebGLMorphtargets {}',
  WebGLUniformsGroups: 'class WebGLUniformsGroups { dispose() {} }',
  WebGLOutput: 'class WebGLOutput {}',
  getDFGLUT: 'function getDFGLUT() { return null; }',
  DATA: 'const DATA = null;',
};

/** Classes of animation, which nothing makes: what is written to them after they are declared keeps them in the bundle. */
const WRITTEN_TO = /^(?:\w*KeyframeTrack|PropertyBinding)$/u;

/**
 * @typedef {{ type: string, start: number, end: number, id?: { name: string } | null, declarations?: readonly { id: { name: string } }[], expression?: any }} Statement
 * @typedef {{ parse: (code: string) => { body: readonly Statement[] } }} Parsing
 */

/**
 * @param {string} code
 * @param {readonly { start: number, end: number, text: string }[]} edits in the order of the code
 */
const edited = (code, edits) =>
  edits.toReversed().reduce((text, { start, end, text: put }) => text.slice(0, start) + put + text.slice(end), code);

/**
 * @param {string} code
 * @returns {string}
 */
function withoutShaders(code) {
  const needed = shadersNeeded();
  let lean = code;
  for (const [name, shader] of Object.entries(SHADERS)) {
    if (needed.has(name)) continue;
    const literal = JSON.stringify(shader);
    if (!lean.includes(literal)) throw new Error(`three writes its shader ${name} otherwise than it did`);
    lean = lean.replace(literal, '""');
  }
  return lean;
}

/**
 * @param {readonly Statement[]} statements
 * @param {string} code
 */
function withStandIns(statements, code) {
  const edits = statements.flatMap(({ start, end, id, declarations }) => {
    const text = STAND_INS[(id ?? declarations?.[0]?.id)?.name ?? ''];
    return text === undefined ? [] : [{ start, end, text }];
  });
  if (edits.length < Object.keys(STAND_INS).length)
    throw new Error('three names a part of its renderer otherwise than it did');
  return edited(code, edits);
}

/**
 * @param {readonly Statement[]} statements
 * @param {string} code
 */
function withoutAnimation(statements, code) {
  const edits = statements.flatMap(({ type, start, end, expression }) => {
    let written = type === 'ExpressionStatement' && expression.type === 'AssignmentExpression' ? expression.left : null;
    while (written?.type === 'MemberExpression') written = written.object;
    return WRITTEN_TO.test(written?.name) ? [{ start, end, text: '' }] : [];
  });
  if (edits.length === 0) throw new Error('three writes to its classes of animation otherwise than it did');
  return edited(code, edits);
}

/** A plugin of the build. Stops it where three is written otherwise than it was. */
export const leanThree = {
  name: 'lean-three',
  apply: 'build',
  transform: {
    filter: { id: /\/three\/build\/three\.(?:module|core)\.js$/u },
    /**
     * @this {Parsing}
     * @param {string} code
     * @param {string} id
     */
    handler(code, id) {
      if (id.endsWith('core.js')) return { code: withoutAnimation(this.parse(code).body, code), map: null };
      return { code: withoutShaders(withStandIns(this.parse(code).body, code)), map: null };
    },
  },
};
