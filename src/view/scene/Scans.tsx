/** Scans of the car, as ghosts that the frame shows through, and where the chosen tube's plane cuts them. A chunk of its own: few jobs have one. */
import { memo, useEffect, useMemo } from 'react';
import { useThree } from '@react-three/fiber';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  Matrix4,
  MeshBasicMaterial,
  PointsMaterial,
  Quaternion,
  ShaderMaterial,
} from 'three';
import type { Derived } from '../../core/derive.ts';
import { interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import type { Scan } from '../../core/job/kinds/scan.ts';
import { planeOfTube } from '../../core/run/tube-plane.ts';
import { inCar, placingOf, reachOf } from '../../core/scan/place.ts';
import { sectionOf, slabOf } from '../../core/scan/section.ts';
import type { ScanData } from '../../core/scan/types.ts';
import { useScans } from '../../store/scan-page.ts';
import type { Palette } from '../canvas/palette.ts';
import { Spots } from './Spots.tsx';
import { Strokes, strokesAlong } from './Strokes.tsx';

/** Lit as it is turned to the eye, each triangle for itself: a scan's surface is rough, and has no normals of its own. */
const VERTEX = /* glsl */ `
varying vec3 vSeen;
void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  vSeen = seen.xyz;
  gl_Position = projectionMatrix * seen;
}
`;
const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform vec3 ground;
uniform float opacity;
varying vec3 vSeen;
void main() {
  vec3 n = normalize(cross(dFdx(vSeen), dFdy(vSeen)));
  float turned = abs(n.z);
  gl_FragColor = vec4(mix(colour, mix(colour, ground, 0.65), turned), opacity);
  #include <colorspace_fragment>
}
`;

/** After the tubes, so that these show through; before what is drawn over everything. */
const [DEPTH, SKIN] = [9, 10];

function shapeOf(data: ScanData): { readonly geometry: BufferGeometry; readonly middle: Vec3 } {
  const { low, high } = reachOf(data);
  // The card reckons in 32 bits: counted from the middle these hold a hundredth of a millimetre of a car.
  const middle = interpolate(low, high, 0.5);
  const places = new Float32Array(data.positions.length);
  for (let i = 0; i < places.length; i++) places[i] = data.positions[i]! - middle[i % 3]!;
  const geometry = new BufferGeometry().setAttribute('position', new BufferAttribute(places, 3));
  if (data.kind === 'triangles') geometry.setIndex(new BufferAttribute(data.triangles, 1));
  return { geometry, middle };
}

function makeMaterials() {
  const ghost = new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: { colour: { value: new Color() }, ground: { value: new Color() }, opacity: { value: 1 } },
    transparent: true,
    side: DoubleSide,
  });
  // Drawn first, unseen: so of a skin over a skin only the one in front is laid over the frame.
  const depth = new MeshBasicMaterial({ colorWrite: false, transparent: true, side: DoubleSide });
  const dots = new PointsMaterial({ size: 2, sizeAttenuation: false, transparent: true, depthWrite: false });
  return { ghost, depth, dots };
}

type Materials = ReturnType<typeof makeMaterials>;

interface GhostProps {
  readonly scan: Scan;
  readonly data: ScanData;
  readonly materials: Materials;
}

const Ghost = memo(function Ghost({ scan, data, materials }: GhostProps) {
  const { geometry, middle } = useMemo(() => shapeOf(data), [data]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const lies = useMemo(() => {
    const placing = placingOf(scan);
    const [x, y, z] = placing.rows;
    const turn = new Matrix4().set(...x, 0, ...y, 0, ...z, 0, 0, 0, 0, 1);
    return {
      position: inCar(placing, middle),
      quaternion: new Quaternion().setFromRotationMatrix(turn),
      scale: placing.mm,
    };
  }, [scan, middle]);
  if (data.kind === 'points')
    return <points geometry={geometry} material={materials.dots} renderOrder={SKIN} dispose={null} {...lies} />;
  return (
    <>
      <mesh geometry={geometry} material={materials.depth} renderOrder={DEPTH} dispose={null} {...lies} />
      <mesh geometry={geometry} material={materials.ghost} renderOrder={SKIN} dispose={null} {...lies} />
    </>
  );
});

const Section = memo(function Section(props: {
  scan: Scan;
  data: ScanData;
  derived: Derived;
  tube: string;
  palette: Palette;
}) {
  const { scan, data, derived, tube, palette } = props;
  const plane = useMemo(() => {
    const found = derived.byId.get(tube);
    return found === undefined ? null : planeOfTube(found);
  }, [derived, tube]);
  const cut = useMemo(() => {
    if (plane === null) return { strokes: [], dots: [] };
    const placing = placingOf(scan);
    return data.kind === 'points'
      ? { strokes: [], dots: slabOf(data, placing, plane) }
      : { strokes: sectionOf(data, placing, plane).flatMap(strokesAlong), dots: [] };
  }, [scan, data, plane]);
  return (
    <>
      <Strokes strokes={cut.strokes} colour={palette.brass} width={2.5} onTop />
      <Spots places={cut.dots} sign="dot" colour={palette.brass} halo={palette['bay-ground']} size={6} />
    </>
  );
});

export default function Scans({ derived, palette }: { readonly derived: Derived; readonly palette: Palette }) {
  const { scans } = derived.job;
  const data = useScans((state) => state.data);
  const opacity = useScans((state) => state.opacity);
  const section = useScans((state) => state.section);
  const invalidate = useThree((state) => state.invalidate);
  const materials = useMemo(makeMaterials, []);
  useEffect(() => () => Object.values(materials).forEach((each) => each.dispose()), [materials]);
  useEffect(() => {
    const { ghost, dots } = materials;
    ghost.uniforms['colour']!.value = new Color(palette['ink-soft']);
    ghost.uniforms['ground']!.value = new Color(palette['bay-ground']);
    ghost.uniforms['opacity']!.value = opacity;
    dots.color = new Color(palette['ink-soft']);
    dots.opacity = opacity;
  }, [materials, palette, opacity]);
  useEffect(() => invalidate());
  return scans.map((scan) => {
    const found = data.get(scan.data);
    if (!scan.shown || found == null) return null;
    return (
      <group key={scan.id}>
        <Ghost scan={scan} data={found} materials={materials} />
        {section !== null && <Section scan={scan} data={found} derived={derived} tube={section} palette={palette} />}
      </group>
    );
  });
}
