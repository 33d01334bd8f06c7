/**
 * The tube on the bender, and what turns with the die, set by refs with every frame: what swings in front, what is laid
 * round the die, what slides behind.
 */
import { useEffect, useMemo, useRef, type RefObject } from 'react';
import { useFrame, useThree } from '@react-three/fiber';
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Matrix4, Vector3, type Group, type Mesh } from 'three';
import type { Path } from '../../core/geometry/path.ts';
import { ANGLE_ROUNDING } from '../../core/geometry/tolerance.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Finishes } from '../scene/steel.ts';
import { onTheWay } from './motion.ts';
import type { Player } from './player.ts';
import type { Stage } from './rehearsed.ts';
import { momentAt, type Timeline } from './timeline.ts';
import { layWall, makeWall, ringsOf, type Wall } from './wall.ts';

/** One of the tube's ends in the frame that is drawn, and the direction that leads off it. */
export interface TubeEnd {
  readonly at: Vec3;
  readonly off: Vec3;
}

export interface TubeEnds {
  front: TubeEnd;
  rear: TubeEnd;
}

interface Props {
  readonly stages: readonly Stage[];
  readonly timeline: Timeline;
  readonly player: Player;
  readonly radius: number;
  readonly finishes: Finishes;
  /** What goes round with the die, the die's axis, and the sense it turns in about z. */
  readonly turning: RefObject<Group | null>;
  readonly axis: Vec3;
  readonly side: 1 | -1;
  readonly ends: RefObject<TubeEnds>;
}

/** A wall and the geometry that draws it. */
interface Drawn {
  readonly wall: Wall;
  readonly geometry: BufferGeometry;
}

function makeDrawn(rings: number): Drawn {
  const wall = makeWall(rings);
  const geometry = new BufferGeometry();
  const live = (values: Float32Array, size: number): BufferAttribute =>
    new BufferAttribute(values, size).setUsage(DynamicDrawUsage);
  geometry.setAttribute('position', live(wall.positions, 3));
  geometry.setAttribute('normal', live(wall.normals, 3));
  geometry.setAttribute('face', live(wall.faces, 1));
  geometry.setIndex(new BufferAttribute(wall.indices, 1));
  return { wall, geometry };
}

function lay({ wall, geometry }: Drawn, path: Path | null, radius: number): void {
  geometry.setDrawRange(0, path === null ? 0 : layWall(wall, path, radius));
  for (const attribute of Object.values(geometry.attributes)) (attribute as BufferAttribute).needsUpdate = true;
}

export function TubeOnMachine(props: Props) {
  const { stages, timeline, player, radius, finishes, turning, axis, side, ends } = props;
  const invalidate = useThree((state) => state.invalidate);
  const steps = useMemo(() => stages.map(({ step }) => step), [stages]);
  const tube = useRef<Group>(null);
  const meshes = useRef<Record<'front' | 'rear', Mesh | null>>({ front: null, rear: null });

  const drawn = useMemo(() => {
    // Pulled the farthest a path has the most rings.
    const poses = stages.map(({ step, poseAt }) => poseAt(step.pulled));
    const buffers = (of: (pose: (typeof poses)[number]) => Path | null): Drawn =>
      makeDrawn(Math.max(...poses.map((pose) => ringsOf(of(pose)!))));
    return { front: buffers(({ front }) => front), arc: buffers(({ arc }) => arc), rear: buffers(({ rear }) => rear) };
  }, [stages]);
  useEffect(() => () => Object.values(drawn).forEach(({ geometry }) => geometry.dispose()), [drawn]);

  useEffect(() => {
    invalidate();
    return player.listen(() => invalidate());
  }, [player, invalidate]);

  useFrame((_, seconds) => {
    if (player.advance(seconds)) invalidate();
    const { step: index, phase, angle, way: part } = momentAt(timeline, steps, player.place());
    const { step, poseAt, way } = stages[index]!;
    const pose = poseAt(angle);
    lay(drawn.front, pose.front, radius);
    lay(drawn.arc, pose.arc, radius);
    lay(drawn.rear, pose.rear, radius);

    const moved = way === null ? STILL : onTheWay(way, part);
    tube.current?.matrix.copy(moved);
    tube.current?.updateMatrixWorld(true);
    const placed = ({ pieces }: Path): TubeEnd => {
      const { to, endTangent } = pieces.at(-1)!;
      return {
        at: new Vector3(...to).applyMatrix4(moved).toArray(),
        off: new Vector3(...endTangent).transformDirection(moved).toArray(),
      };
    };
    ends.current = { front: placed(pose.front), rear: placed(pose.rear) };

    // On the way to the next bend the die goes back, ahead of the tube that comes in.
    const back = index === 0 ? 0 : steps[index - 1]!.net * Math.max(0, 1 - 2 * part);
    const turned = phase === 'set' ? back : angle;
    if (turning.current !== null) {
      turning.current.matrix
        .makeTranslation(...axis)
        .multiply(new Matrix4().makeRotationZ(side * turned))
        .multiply(new Matrix4().makeTranslation(-axis[0], -axis[1], -axis[2]));
      turning.current.updateMatrixWorld(true);
    }

    const touched =
      phase === 'bend' && step.hit !== null && angle >= step.hit.angle - ANGLE_ROUNDING ? step.hit.by : null;
    for (const which of ['front', 'rear'] as const) {
      const mesh = meshes.current[which];
      if (mesh !== null) mesh.material = touched === which ? finishes.failed : finishes.bare;
    }
  });

  return (
    <group ref={tube} matrixAutoUpdate={false}>
      {(['front', 'rear'] as const).map((part) => (
        <mesh
          key={part}
          ref={(mesh) => void (meshes.current[part] = mesh)}
          geometry={drawn[part].geometry}
          material={finishes.bare}
          frustumCulled={false}
          dispose={null}
        />
      ))}
      <mesh geometry={drawn.arc.geometry} material={finishes.live} frustumCulled={false} dispose={null} />
    </group>
  );
}

const STILL = new Matrix4();
