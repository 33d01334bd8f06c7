/** The tubes themselves. A tube that a change did not touch is the same record, and its mesh is left alone. */
import { memo, useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { TubeRef } from '../../core/job/types.ts';
import { buildTubeMesh } from '../meshes/tube.ts';
import type { Finish, Finishes } from './steel.ts';

function toGeometry(tube: SolvedTube): BufferGeometry {
  const mesh = buildTubeMesh(tube);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  geometry.setAttribute('face', new BufferAttribute(mesh.faces, 1));
  geometry.setIndex(new BufferAttribute(mesh.indices, 1));
  return geometry;
}

const Tube = memo(function Tube({ tube, material }: { readonly tube: SolvedTube; readonly material: Material }) {
  const geometry = useMemo(() => toGeometry(tube), [tube]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  // Picking is worked out from the centrelines: the renderer's own ray casting never runs.
  return <mesh geometry={geometry} material={material} dispose={null} />;
});

interface Props {
  readonly tubes: readonly SolvedTube[];
  readonly finishes: Finishes;
  readonly live: ReadonlySet<TubeRef>;
  readonly pointed: TubeRef | null;
  readonly failed: ReadonlySet<TubeRef>;
}

export function Tubes({ tubes, finishes, live, pointed, failed }: Props) {
  const finishOf = (tube: SolvedTube): Finish => {
    if (live.has(tube.id)) return 'live';
    if (failed.has(tube.id)) return 'failed';
    return tube.id === pointed ? 'pointed' : 'bare';
  };
  return tubes.map((tube) => <Tube key={tube.id} tube={tube} material={finishes[finishOf(tube)]} />);
}
