/** An envelope as a translucent box with its edges, and the shortest gap to a tube drawn as a dimension. */
import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry } from 'three';
import type { SolidBox } from '../../core/geometry/solid-box.ts';
import { BOX_EDGES, BOX_FACES, boxCorners } from '../meshes/box.ts';
import type { Palette } from '../canvas/palette.ts';
import { Spots } from './Spots.tsx';
import { Strokes, type Stroke } from './Strokes.tsx';
import type { Gap } from './gap.ts';

interface Props {
  readonly box: SolidBox;
  readonly gap: Gap | null;
  readonly live: boolean;
  readonly palette: Palette;
}

export function EnvelopeBox({ box, gap, live, palette }: Props) {
  const corners = useMemo(() => boxCorners(box), [box]);
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(Float32Array.from(corners.flat()), 3));
    made.setIndex(BOX_FACES.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]));
    return made;
  }, [corners]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const edges = useMemo(() => BOX_EDGES.map(([a, b]): Stroke => [corners[a]!, corners[b]!]), [corners]);
  const gapEnds = useMemo(() => (gap === null ? [] : [gap.onTube, gap.onEnvelope]), [gap]);
  const gapStrokes = useMemo((): Stroke[] => (gap === null ? [] : [[gap.onTube, gap.onEnvelope]]), [gap]);

  const failing = gap !== null && !gap.ok;
  const edgeColour = live ? palette.dye : failing ? palette.oxide : palette['ink-soft'];
  const gapColour = failing ? palette.oxide : palette.brass;
  return (
    <>
      <mesh geometry={geometry} renderOrder={5}>
        <meshBasicMaterial color={edgeColour} transparent opacity={0.1} depthWrite={false} />
      </mesh>
      <Strokes strokes={edges} colour={edgeColour} width={live ? 2.5 : 1.5} opacity={live ? 1 : 0.75} />
      <Strokes strokes={gapStrokes} colour={gapColour} width={2.5} onTop />
      <Spots places={gapEnds} sign="dot" colour={gapColour} halo={palette['bay-ground']} size={12} />
    </>
  );
}
