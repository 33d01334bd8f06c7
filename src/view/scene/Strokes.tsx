/** Lines a given number of pixels wide, drawn in one go. */
import { useMemo } from 'react';
import { Line } from '@react-three/drei/core/Line';
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

export function Strokes({ strokes, colour, width, opacity = 1, onTop = false }: Props) {
  const places = useMemo(
    () => strokes.flatMap(([from, to]) => [[...from], [...to]] as [number, number, number][]),
    [strokes],
  );
  // A line without strokes would be drawn without end.
  if (places.length === 0) return null;
  return (
    <Line
      segments
      points={places}
      color={colour}
      lineWidth={width}
      opacity={opacity}
      transparent={opacity < 1 || onTop}
      depthTest={!onTop}
      depthWrite={false}
      renderOrder={onTop ? 20 : 0}
    />
  );
}
