/**
 * The selected node's handles, drawn over everything: brass bars with a diamond at the end for an axis, small brass
 * plates for a plane, all of one size on the screen. Size, place and what is usable are set frame by frame by refs.
 */
import { useMemo, useRef } from 'react';
import { useFrame } from '@react-three/fiber';
import { Matrix4, OctahedronGeometry, PlaneGeometry, Quaternion, Vector3, type Group } from 'three';
import { scale, type Vec3 } from '../../core/geometry/vector.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Palette } from '../canvas/palette.ts';
import { Strokes, type Stroke } from '../scene/Strokes.tsx';
import { BAR, isUsable, PLATE, type Grip } from './grips.ts';

const DIAMOND = new OctahedronGeometry(1);
const SQUARE = new PlaneGeometry(PLATE.to - PLATE.from, PLATE.to - PLATE.from);

interface Props {
  readonly viewpoint: Viewpoint;
  readonly place: Vec3;
  readonly grips: readonly Grip[];
  readonly live: string | null;
  readonly palette: Palette;
}

export default function Gizmo({ viewpoint, place, grips, live, palette }: Props) {
  const group = useRef<Group>(null);
  useFrame(() => {
    const view = viewpoint.projection();
    group.current?.scale.setScalar(1 / view.pixelsPerMm);
    group.current?.children.forEach((child, i) => {
      const grip = grips[i];
      child.visible = grip !== undefined && isUsable(grip, view);
    });
  });
  return (
    <group ref={group} position={place}>
      {grips.map((grip) => (
        <group key={grip.key}>
          {grip.kind === 'bar' ? (
            <Bar grip={grip} colour={grip.key === live ? palette.dye : palette.brass} halo={palette['bay-ground']} />
          ) : (
            <Plate grip={grip} colour={grip.key === live ? palette.dye : palette.brass} lit={grip.key === live} />
          )}
        </group>
      ))}
    </group>
  );
}

interface PartProps {
  readonly grip: Grip;
  readonly colour: string;
}

function Bar({ grip, colour, halo }: PartProps & { readonly halo: string }) {
  const direction = grip.along[0]!;
  const senses = grip.bothWays ? [1, -1] : [1];
  const shafts = useMemo(
    () =>
      (grip.bothWays ? [1, -1] : [1]).map((sense): Stroke => [
        scale(direction, sense * BAR.from),
        scale(direction, sense * (BAR.to - 8)),
      ]),
    [direction, grip.bothWays],
  );
  const turn = useMemo(
    () => new Quaternion().setFromUnitVectors(new Vector3(0, 0, 1), new Vector3(...direction)),
    [direction],
  );
  return (
    <>
      <Strokes strokes={shafts} colour={halo} width={7} onTop />
      <Strokes strokes={shafts} colour={colour} width={3} onTop />
      {senses.map((sense) => (
        <mesh
          key={sense}
          geometry={DIAMOND}
          position={scale(direction, sense * BAR.to) as [number, number, number]}
          quaternion={turn}
          scale={[7, 7, 13]}
          renderOrder={41}
        >
          <meshBasicMaterial color={colour} depthTest={false} transparent />
        </mesh>
      ))}
    </>
  );
}

function Plate({ grip, colour, lit }: PartProps & { readonly lit: boolean }) {
  const [u, v] = grip.along as readonly [Vec3, Vec3];
  const middle = (PLATE.from + PLATE.to) / 2;
  const turn = useMemo(() => {
    const [x, y] = [new Vector3(...u), new Vector3(...v)];
    return new Quaternion().setFromRotationMatrix(new Matrix4().makeBasis(x, y, x.clone().cross(y)));
  }, [u, v]);
  const outline = useMemo((): readonly Stroke[] => {
    const corner = (a: number, b: number): Vec3 => [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
    const corners = [
      corner(PLATE.from, PLATE.from),
      corner(PLATE.to, PLATE.from),
      corner(PLATE.to, PLATE.to),
      corner(PLATE.from, PLATE.to),
    ];
    return corners.map((from, i): Stroke => [from, corners[(i + 1) % 4]!]);
  }, [u, v]);
  return (
    <>
      <mesh
        geometry={SQUARE}
        position={[0, 1, 2].map((axis) => middle * (u[axis]! + v[axis]!)) as [number, number, number]}
        quaternion={turn}
        renderOrder={40}
      >
        <meshBasicMaterial color={colour} transparent opacity={lit ? 0.6 : 0.28} depthTest={false} side={2} />
      </mesh>
      <Strokes strokes={outline} colour={colour} width={1.5} onTop />
    </>
  );
}
