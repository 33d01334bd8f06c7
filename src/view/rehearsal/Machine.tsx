/** The bender and the room round it: quiet solids with their edges drawn, walls and benches seen through. */
import { useEffect, useMemo, type RefObject } from 'react';
import { BufferAttribute, BufferGeometry, type Group } from 'three';
import type { Solid } from '../../core/rehearse/types.ts';
import type { Palette } from '../canvas/palette.ts';
import type { Finishes } from '../scene/steel.ts';
import { Strokes } from '../scene/Strokes.tsx';
import { solidMesh } from './solids.ts';

interface Props {
  readonly solids: readonly Solid[];
  /** How far a wall is drawn to each side, mm. */
  readonly reach: number;
  readonly finishes: Finishes;
  readonly palette: Palette;
  /** Holds what goes round with the die. */
  readonly turning: RefObject<Group | null>;
}

export function Machine({ solids, reach, finishes, palette, turning }: Props) {
  // Two benches may have one name.
  const draw = (solid: Solid, index: number) => (
    <SolidDrawn key={index} solid={solid} reach={reach} finishes={finishes} palette={palette} />
  );
  // The floor is drawn as a grid.
  const drawn = solids.filter(({ id }) => id.part !== 'floor');
  return (
    <>
      <group ref={turning} matrixAutoUpdate={false}>
        {drawn.filter((solid) => solid.turning).map(draw)}
      </group>
      {drawn.filter((solid) => !solid.turning).map(draw)}
    </>
  );
}

interface SolidProps {
  readonly solid: Solid;
  readonly reach: number;
  readonly finishes: Finishes;
  readonly palette: Palette;
}

function SolidDrawn({ solid, reach, finishes, palette }: SolidProps) {
  const { geometry, edges } = useMemo(() => {
    const mesh = solidMesh(solid, reach);
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(mesh.positions, 3));
    made.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
    made.setAttribute('face', new BufferAttribute(new Float32Array(mesh.positions.length / 3), 1));
    made.setIndex(new BufferAttribute(mesh.indices, 1));
    return { geometry: made, edges: mesh.edges };
  }, [solid, reach]);
  useEffect(() => () => geometry.dispose(), [geometry]);

  if (solid.id.part === 'room') {
    // A wall is not in the way of who looks from behind it: there only its edge is drawn.
    return (
      <>
        <mesh geometry={geometry} renderOrder={5}>
          <meshBasicMaterial color={palette['ink-soft']} transparent opacity={0.12} depthWrite={false} />
        </mesh>
        <Strokes strokes={edges} colour={palette['ink-soft']} width={1.5} opacity={0.6} />
      </>
    );
  }
  const held = solid.id.part === 'clamp' || solid.id.part === 'follower';
  return (
    <>
      <mesh geometry={geometry} material={held ? finishes.jaw : finishes.machine} dispose={null} />
      <Strokes strokes={edges} colour={palette['ink-soft']} width={1.25} opacity={0.8} />
    </>
  );
}
