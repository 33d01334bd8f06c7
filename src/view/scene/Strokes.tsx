/** Lines a given number of pixels wide with round ends, drawn in one go: a strip of two triangles for each, laid out on the screen. */
import { useEffect, useMemo, useState, useLayoutEffect } from 'react';
import { BufferAttribute, Color, InstancedBufferAttribute, InstancedBufferGeometry, ShaderMaterial } from 'three';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { Mesh, useStage } from '../canvas/parts.tsx';
import type { Stage } from '../canvas/stage.ts';

export type Stroke = readonly [Vec3, Vec3];

/** `position` says which corner of the strip it is: x 0 at the start and 1 at the end, y the side. No point of an orthographic view is behind the eye. */
const VERTEX = /* glsl */ `
attribute vec3 start;
attribute vec3 end;
uniform vec2 pixels;
uniform float width;
varying vec2 vAt;
varying float vLong;
void main() {
  mat4 seen = projectionMatrix * modelViewMatrix;
  vec4 a = seen * vec4(start, 1.0);
  vec4 b = seen * vec4(end, 1.0);
  vec2 way = (b.xy - a.xy) * pixels * 0.5;
  vLong = length(way);
  vec2 along = vLong > 0.0 ? way / vLong : vec2(1.0, 0.0);
  vec2 past = 0.5 * width * vec2(2.0 * position.x - 1.0, position.y);
  vAt = vec2(position.x * vLong + past.x, past.y);
  gl_Position = mix(a, b, position.x);
  gl_Position.xy += (past.x * along + past.y * vec2(-along.y, along.x)) * 2.0 / pixels;
}
`;

const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float opacity;
uniform float width;
varying vec2 vAt;
varying float vLong;
void main() {
  float past = max(0.0, max(-vAt.x, vAt.x - vLong));
  // Beside the line its edge is left to the card, which smooths it.
  if (past > 0.0 && length(vec2(past, vAt.y)) > 0.5 * width) discard;
  gl_FragColor = vec4(colour, opacity);
  #include <colorspace_fragment>
}
`;

const CORNERS = new BufferAttribute(Float32Array.of(0, -1, 0, 1, -1, 0, 0, 1, 0, 1, 1, 0), 3);
const STRIP = new BufferAttribute(Uint16Array.of(0, 1, 2, 2, 1, 3), 1);

function layOut(strokes: readonly Stroke[]): InstancedBufferGeometry {
  const geometry = new InstancedBufferGeometry();
  geometry.setIndex(STRIP);
  geometry.setAttribute('position', CORNERS);
  const ends = (which: 0 | 1) => Float32Array.from(strokes.flatMap((stroke) => stroke[which]));
  geometry.setAttribute('start', new InstancedBufferAttribute(ends(0), 3));
  geometry.setAttribute('end', new InstancedBufferAttribute(ends(1), 3));
  return geometry;
}

const makeMaterial = ({ pixels }: Stage): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: { colour: { value: new Color() }, opacity: { value: 1 }, width: { value: 1 }, pixels },
    depthWrite: false,
  });

interface Props {
  readonly strokes: readonly Stroke[];
  readonly colour: string;
  /** Pixels. */
  readonly width: number;
  readonly opacity?: number;
  /** Drawn over the tubes that stand before it. */
  readonly onTop?: boolean;
}

/** The pairs of neighbours along a chain of places. */
export const strokesAlong = (chain: readonly Vec3[]): readonly Stroke[] =>
  chain.slice(1).map((place, i) => [chain[i]!, place]);

export function Strokes({ strokes, colour, width, opacity = 1, onTop = false }: Props) {
  const stage = useStage();
  const geometry = useMemo(() => layOut(strokes), [strokes]);
  const [material] = useState(() => makeMaterial(stage));
  useLayoutEffect(() => {
    const { uniforms } = material;
    uniforms['colour']!.value.set(colour);
    uniforms['opacity']!.value = opacity;
    uniforms['width']!.value = width;
    material.transparent = opacity < 1 || onTop;
    material.depthTest = !onTop;
  });
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => material.dispose(), [material]);
  if (strokes.length === 0) return null;
  // Where the strips lie is known on the card alone.
  return <Mesh geometry={geometry} material={material} renderOrder={onTop ? 20 : 0} frustumCulled={false} />;
}
