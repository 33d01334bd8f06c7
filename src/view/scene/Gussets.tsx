/** Gussets, in the finish of the tube that their first leg runs along. A chunk of its own: few jobs have them. */
import { memo, useEffect, useMemo } from 'react';
import { useThree } from '@react-three/fiber';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
import { gussetsOf, isMade, type MadeGusset } from '../../core/gusset/gussets.ts';
import { gussetMesh } from '../../core/gusset/mesh.ts';
import { tubeNearest } from '../../core/solve/bar-tubes.ts';
import type { Frame } from '../../core/solve/types.ts';
import { finishOf, type Finishes, type Marked } from './steel.ts';

/** Neither wall nor bore nor cut: lit as it lies. */
const FLAT = 0.5;

/** Faces and edges share their vertices. */
function draw(made: MadeGusset, thickness: number) {
  const mesh = gussetMesh(made, thickness);
  const faces = new BufferGeometry();
  faces.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  faces.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  faces.setAttribute('face', new BufferAttribute(new Float32Array(mesh.positions.length / 3).fill(FLAT), 1));
  faces.setIndex(new BufferAttribute(mesh.indices, 1));
  const edges = new BufferGeometry();
  edges.attributes = faces.attributes;
  edges.setIndex(new BufferAttribute(mesh.edges, 1));
  return { faces, edges };
}

const Plate = memo(function Plate(props: { made: MadeGusset; thickness: number; finish: Material; edge: Material }) {
  const { made, thickness, finish, edge } = props;
  const { faces, edges } = useMemo(() => draw(made, thickness), [made, thickness]);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    invalidate();
    return () => [faces, edges].forEach((geometry) => geometry.dispose());
  }, [faces, edges, invalidate]);
  return (
    <>
      <mesh geometry={faces} material={finish} dispose={null} />
      <lineSegments geometry={edges} material={edge} dispose={null} />
    </>
  );
});

interface Props extends Marked {
  readonly frame: Frame;
  readonly finishes: Finishes;
}

export default function Gussets({ frame, finishes, ...marked }: Props) {
  return gussetsOf(frame).flatMap(({ id, gusset, made, ways, place }) =>
    isMade(made) ? (
      <Plate
        key={id}
        made={made}
        thickness={gusset.thickness}
        finish={finishes[finishOf(tubeNearest(frame.byId, ways[0].bar, place), marked)]}
        edge={finishes.edge}
      />
    ) : (
      []
    ),
  );
}
