/** The tubes themselves. A tube that a change did not touch is the same record, and its mesh is left alone. */
import { memo, useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { buildTubeMesh } from '../../core/mesh/tube.ts';
import { finishOf, type Finishes, type Marked } from './steel.ts';

interface Drawn {
  readonly walls: BufferGeometry;
  readonly edges: BufferGeometry;
}

/** Walls and edges share their vertices. */
function draw(tube: SolvedTube): Drawn {
  const mesh = buildTubeMesh(tube);
  const walls = new BufferGeometry();
  walls.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  walls.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  walls.setAttribute('face', new BufferAttribute(mesh.faces, 1));
  walls.setIndex(new BufferAttribute(mesh.indices, 1));
  const edges = new BufferGeometry();
  edges.attributes = walls.attributes;
  edges.setIndex(new BufferAttribute(mesh.edges, 1));
  return { walls, edges };
}

interface TubeProps {
  readonly tube: SolvedTube;
  readonly finish: Material;
  readonly edge: Material;
  readonly shift: Vec3;
}

const Tube = memo(function Tube({ tube, finish, edge, shift }: TubeProps) {
  const { walls, edges } = useMemo(() => draw(tube), [tube]);
  useEffect(
    () => () => {
      walls.dispose();
      edges.dispose();
    },
    [walls, edges],
  );
  // Picking is worked out from the centrelines: the renderer's own ray casting never runs.
  return (
    <group position={shift}>
      <mesh geometry={walls} material={finish} dispose={null} />
      <lineSegments geometry={edges} material={edge} dispose={null} />
    </group>
  );
});

interface Props extends Marked {
  readonly tubes: readonly SolvedTube[];
  readonly finishes: Finishes;
  /** Of a joint that is drawn apart. */
  readonly shifts: ReadonlyMap<TubeRef, Vec3>;
}

const UNMOVED: Vec3 = [0, 0, 0];

export function Tubes({ tubes, finishes, shifts, ...marked }: Props) {
  return tubes.map((tube) => (
    <Tube
      key={tube.id}
      tube={tube}
      finish={finishes[finishOf(tube, marked)]}
      edge={finishes.edge}
      shift={shifts.get(tube.id) ?? UNMOVED}
    />
  ));
}
