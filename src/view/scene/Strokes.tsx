/** Lines a given number of pixels wide, drawn in one go. */
import { useEffect, useMemo } from 'react';
import { useThree } from '@react-three/fiber';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import type { Vec3 } from '../../core/geometry/vector.ts';

export type Stroke = readonly [Vec3, Vec3];

interface Props {
  readonly strokes: readonly Stroke[];
  readonly colour: string;
  /** Pixels. */
  readonly width: number;
  readonly opacity?: number;
  /** Drawn over the tubes that stand before it. */
  readonly onTop?: boolean;
}

/** The pairs of neighbours along a chain of places. */
export const strokesAlong = (chain: readonly Vec3[]): readonly Stroke[] =>
  chain.slice(1).map((place, i) => [chain[i]!, place]);

/** Unseen until strokes are laid: a line without any would be drawn without end. */
function startLine(): LineSegments2 {
  const line = new LineSegments2(new LineSegmentsGeometry(), new LineMaterial());
  line.visible = false;
  return line;
}

function layStrokes(line: LineSegments2, strokes: readonly Stroke[]): LineSegmentsGeometry {
  const geometry = new LineSegmentsGeometry();
  geometry.setPositions(Float32Array.from(strokes.flatMap(([from, to]) => [...from, ...to])));
  line.geometry = geometry;
  line.visible = strokes.length > 0;
  return geometry;
}

function paintStrokes(
  line: LineSegments2,
  { colour, width, opacity = 1, onTop = false }: Omit<Props, 'strokes'>,
): void {
  const { material } = line;
  material.color.set(colour);
  material.linewidth = width;
  material.opacity = opacity;
  material.transparent = opacity < 1 || onTop;
  material.depthTest = !onTop;
  material.depthWrite = false;
  line.renderOrder = onTop ? 20 : 0;
}

export function Strokes({ strokes, colour, width, opacity, onTop }: Props) {
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const line = useMemo(() => startLine(), []);

  useEffect(() => {
    const geometry = layStrokes(line, strokes);
    // The line is changed behind the reconciler's back: it would not ask for the frame.
    invalidate();
    return () => geometry.dispose();
  }, [line, strokes, invalidate]);
  useEffect(() => {
    paintStrokes(line, {
      colour,
      width,
      ...(opacity !== undefined && { opacity }),
      ...(onTop !== undefined && { onTop }),
    });
    line.material.resolution.set(size.width, size.height);
    invalidate();
  }, [line, colour, width, opacity, onTop, size, invalidate]);
  useEffect(() => () => line.material.dispose(), [line]);
  return <primitive object={line} dispose={null} />;
}
