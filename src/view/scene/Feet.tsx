/** What tubes stand on, in the finish of the tube: plates and boxes without their holes. A chunk of its own: few jobs have them. */
import { memo, useEffect, useMemo } from 'react';
import { useThree } from '@react-three/fiber';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
import { footMeshes } from '../../core/feet/mesh.ts';
import { standsOf, type Stand } from '../../core/feet/stand.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { finishOf, type Finishes, type Marked } from './steel.ts';

/** Neither wall nor bore nor cut: lit as it lies. */
const FLAT = 0.5;

/** Faces and edges of each piece share their vertices. */
const draw = (stand: Stand) =>
  footMeshes(stand).map((mesh) => {
    const faces = new BufferGeometry();
    faces.setAttribute('position', new BufferAttribute(mesh.positions, 3));
    faces.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
    faces.setAttribute('face', new BufferAttribute(new Float32Array(mesh.positions.length / 3).fill(FLAT), 1));
    faces.setIndex(new BufferAttribute(mesh.indices, 1));
    const edges = new BufferGeometry();
    edges.attributes = faces.attributes;
    edges.setIndex(new BufferAttribute(mesh.edges, 1));
    return { faces, edges };
  });

const Foot = memo(function Foot(props: { stand: Stand; finish: Material; edge: Material }) {
  const { stand, finish, edge } = props;
  const pieces = useMemo(() => draw(stand), [stand]);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    invalidate();
    return () => pieces.forEach(({ faces, edges }) => [faces, edges].forEach((geometry) => geometry.dispose()));
  }, [pieces, invalidate]);
  return pieces.map(({ faces, edges }, i) => (
    <group key={i}>
      <mesh geometry={faces} material={finish} dispose={null} />
      <lineSegments geometry={edges} material={edge} dispose={null} />
    </group>
  ));
});

interface Props extends Marked {
  readonly tubes: readonly SolvedTube[];
  readonly finishes: Finishes;
}

export default function Feet({ tubes, finishes, ...marked }: Props) {
  return tubes.flatMap((tube) =>
    standsOf(tube).map((stand) => (
      <Foot
        key={keyOf(tube.id, stand.which)}
        stand={stand}
        finish={finishes[finishOf(tube, marked)]}
        edge={finishes.edge}
      />
    )),
  );
}

const keyOf = (tube: TubeRef, which: 0 | 1): string => `${which} ${tube}`;
