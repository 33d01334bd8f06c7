/** The tubes themselves. A tube that a change did not touch is the same record, and its mesh is left alone. */
import { memo, useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
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
}

const Tube = memo(function Tube({ tube, finish, edge }: TubeProps) {
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
    <>
      <mesh geometry={walls} material={finish} dispose={null} />
      <lineSegments geometry={edges} material={edge} dispose={null} />
    </>
  );
});

interface Props extends Marked {
  readonly tubes: readonly SolvedTube[];
  readonly finishes: Finishes;
}

export function Tubes({ tubes, finishes, ...marked }: Props) {
  return tubes.map((tube) => (
    <Tube key={tube.id} tube={tube} finish={finishes[finishOf(tube, marked)]} edge={finishes.edge} />
  ));
}
