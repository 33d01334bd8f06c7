/**
 * The selected node's handles, drawn over everything: brass bars with a diamond at the end for an axis, small brass
 * plates for a plane, all of one size on the screen. Size, place and what is usable are set frame by frame by refs.
 */
import { useMemo, useRef, type ReactNode } from 'react';
import type * as three from 'three';
import { DoubleSide, Matrix4, OctahedronGeometry, PlaneGeometry, Quaternion, Vector3 } from 'three';
import { add, scale, type Vec3 } from '../../core/geometry/vector.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import { Group, Mesh, useEachFrame, usePlain } from '../canvas/parts.tsx';
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

export function Gizmo({ viewpoint, place, grips, live, palette }: Props) {
  const group = useRef<three.Group>(null);
  useEachFrame(() => void group.current?.scale.setScalar(1 / viewpoint.projection().pixelsPerMm));
  return (
    <Group ref={group} position={place}>
      {grips.map((grip) => (
        <WhereUsable key={grip.key} grip={grip} viewpoint={viewpoint}>
          {grip.kind === 'bar' ? (
            <Bar grip={grip} colour={grip.key === live ? palette.dye : palette.brass} halo={palette['bay-ground']} />
          ) : (
            <Plate grip={grip} colour={grip.key === live ? palette.dye : palette.brass} lit={grip.key === live} />
          )}
        </WhereUsable>
      ))}
    </Group>
  );
}

function WhereUsable(props: { readonly grip: Grip; readonly viewpoint: Viewpoint; readonly children: ReactNode }) {
  const { grip, viewpoint, children } = props;
  const group = useRef<three.Group>(null);
  useEachFrame(() => {
    if (group.current !== null) group.current.visible = isUsable(grip, viewpoint.projection());
  });
  return <Group ref={group}>{children}</Group>;
}

interface PartProps {
  readonly grip: Grip;
  readonly colour: string;
}

function Bar({ grip, colour, halo }: PartProps & { readonly halo: string }) {
  const direction = grip.along[0]!;
  const brass = usePlain({ color: colour, depthTest: false });
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
        <Mesh
          key={sense}
          geometry={DIAMOND}
          material={brass}
          position={scale(direction, sense * BAR.to)}
          quaternion={turn}
          scale={[7, 7, 13]}
          renderOrder={41}
        />
      ))}
    </>
  );
}

function Plate({ grip, colour, lit }: PartProps & { readonly lit: boolean }) {
  const [u, v] = grip.along as readonly [Vec3, Vec3];
  const brass = usePlain({ color: colour, opacity: lit ? 0.6 : 0.28, depthTest: false, side: DoubleSide });
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
      <Mesh geometry={SQUARE} material={brass} position={scale(add(u, v), middle)} quaternion={turn} renderOrder={40} />
      <Strokes strokes={outline} colour={colour} width={1.5} onTop />
    </>
  );
}
