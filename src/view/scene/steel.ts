/**
 * The one material that tubes are drawn with: matt steel lit from over the left shoulder of whoever looks, with an ink
 * edge where the wall turns away, and a haze towards the ground's colour with depth, so that an orthographic view still
 * sets near apart from far. Needs no lights, no textures and no maps.
 */
import { Color, ShaderMaterial } from 'three';
import type { TubeRef } from '../../core/job/reference.ts';
import type { Palette } from '../canvas/palette.ts';

const VERTEX = /* glsl */ `
attribute float face;
varying vec3 vNormal;
varying float vFace;
varying float vDepth;
uniform float lift;
void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  vNormal = normalMatrix * normal;
  vFace = face;
  vDepth = -seen.z;
  seen.z += lift;
  gl_Position = projectionMatrix * seen;
}
`;

const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform vec3 ink;
uniform vec3 ground;
uniform vec2 hazeFromTo;
uniform float hazeMost;
uniform float edge;
varying vec3 vNormal;
varying float vFace;
varying float vDepth;
void main() {
  vec3 n = normalize(vNormal);
  float key = max(dot(n, normalize(vec3(-0.45, 0.75, 0.6))), 0.0);
  float fill = 0.5 + 0.5 * n.y;
  vec3 lit = colour * (0.42 + 0.24 * fill + 0.62 * key);
  lit += vec3(0.05) * pow(key, 6.0);
  if (vFace > 1.5) lit = mix(colour, vec3(1.0), 0.35);
  else if (vFace > 0.5) lit = mix(lit, ink, 0.45);
  float turned = 1.0 - smoothstep(0.08, 0.42, abs(n.z));
  if (vFace < 0.5) lit = mix(lit, ink, edge * turned);
  float haze = hazeMost * smoothstep(hazeFromTo.x, hazeFromTo.y, vDepth);
  gl_FragColor = vec4(mix(lit, ground, haze), 1.0);
  #include <colorspace_fragment>
}
`;

const EDGE_FRAGMENT = /* glsl */ `
uniform vec3 ink;
uniform vec3 ground;
uniform vec2 hazeFromTo;
uniform float hazeMost;
varying float vDepth;
void main() {
  float haze = hazeMost * smoothstep(hazeFromTo.x, hazeFromTo.y, vDepth);
  gl_FragColor = vec4(mix(ink, ground, haze), 0.8);
  #include <colorspace_fragment>
}
`;

const FINISHES = ['bare', 'live', 'pointed', 'failed', 'edge', 'machine', 'jaw'] as const;

/**
 * Bare steel; selected; under the pointer; with an error; the ink line round a cut face; and the bender's body and what it
 * holds the tube with.
 */
export type Finish = (typeof FINISHES)[number];

export type Finishes = Readonly<Record<Finish, ShaderMaterial>>;

/** Tubes that are not shown bare. */
export interface Marked {
  readonly live: ReadonlySet<TubeRef>;
  readonly pointed: TubeRef | null;
  readonly failed: ReadonlySet<TubeRef>;
}

/** Of a tube, and of what it stands on. */
export function finishOf({ id }: { readonly id: TubeRef }, { live, pointed, failed }: Marked): Finish {
  if (live.has(id)) return 'live';
  if (failed.has(id)) return 'failed';
  return id === pointed ? 'pointed' : 'bare';
}

/** How far the eye stands from the middle of what is seen; any distance does in an orthographic view. */
export const EYE_DISTANCE = 30_000;

const makeFinish = (fragmentShader: string, lift: number, inked = 0.75): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader,
    uniforms: {
      colour: { value: new Color() },
      ink: { value: new Color() },
      ground: { value: new Color() },
      hazeFromTo: { value: [EYE_DISTANCE, EYE_DISTANCE + 1] },
      hazeMost: { value: 0.55 },
      edge: { value: inked },
      lift: { value: lift },
    },
  });

/** The edges of cut faces lie on two walls at once: they are drawn this much nearer to the eye, mm. */
const EDGE_LIFT = 2;

export function makeFinishes(): Finishes {
  const steel = (): ShaderMaterial => makeFinish(FRAGMENT, 0);
  const edge = makeFinish(EDGE_FRAGMENT, EDGE_LIFT);
  edge.transparent = true;
  // The bender's faces are flat, its edges drawn: ink where they turn away would only darken them.
  const [machine, jaw] = [makeFinish(FRAGMENT, 0, 0.1), makeFinish(FRAGMENT, 0, 0.1)];
  return { bare: steel(), live: steel(), pointed: steel(), failed: steel(), edge, machine, jaw };
}

/** Sets the colours of the light the shop stands in. */
export function paintFinishes(finishes: Finishes, palette: Palette): void {
  const ground = new Color(palette['bay-ground']);
  const dark = ground.getHSL({ h: 0, s: 0, l: 0 }).l < 0.3;
  const steel = new Color(palette.steel);
  const colours: Record<Finish, Color> = {
    bare: steel,
    live: new Color(palette.dye),
    pointed: steel.clone().lerp(new Color(palette.dye), 0.45),
    failed: new Color(palette.oxide),
    edge: steel,
    machine: new Color(palette['rule-strong']).lerp(ground, 0.35),
    jaw: new Color(palette['ink-soft']).lerp(ground, 0.25),
  };
  for (const finish of FINISHES) {
    const { uniforms } = finishes[finish];
    uniforms['colour']!.value = colours[finish];
    // In a dim shop the ink is pale and would glow as an edge: there the ground itself draws it.
    uniforms['ink']!.value = dark ? ground : new Color(palette.ink);
    uniforms['ground']!.value = ground;
    uniforms['hazeMost']!.value = finish === 'bare' || finish === 'edge' ? 0.55 : 0.15;
  }
}

/** Lets the haze fall over `depth` mm round the middle of the frame, which lies `away` mm from the eye. */
export function hazeOver(finishes: Finishes, away: number, depth: number): void {
  for (const finish of FINISHES) {
    const range = finishes[finish].uniforms['hazeFromTo']!.value as number[];
    range[0] = away - depth * 0.15;
    range[1] = away + depth * 0.6;
  }
}
