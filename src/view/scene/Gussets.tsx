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

function draw(made: MadeGusset, thickness: number) {
  const { shells, strokes } = gussetMesh(made, thickness);
  const faces = shells.map(({ positions, normals, indices }) => {
    const shell = new BufferGeometry();
    shell.setAttribute('position', new BufferAttribute(positions, 3));
    shell.setAttribute('normal', new BufferAttribute(normals, 3));
    shell.setAttribute('face', new BufferAttribute(new Float32Array(positions.length / 3).fill(FLAT), 1));
    return shell.setIndex(new BufferAttribute(indices, 1));
  });
  return { faces, edges: new BufferGeometry().setAttribute('position', new BufferAttribute(strokes, 3)) };
}

const Plate = memo(function Plate(props: { made: MadeGusset; thickness: number; finish: Material; edge: Material }) {
  const { made, thickness, finish, edge } = props;
  const { faces, edges } = useMemo(() => draw(made, thickness), [made, thickness]);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    invalidate();
    return () => [...faces, edges].forEach((geometry) => geometry.dispose());
  }, [faces, edges, invalidate]);
  return (
    <>
      {faces.map((shell, i) => (
        <mesh key={i} geometry={shell} material={finish} dispose={null} />
      ))}
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
