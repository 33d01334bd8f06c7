/** Marks of a drawing at full size, in few words: its pens, and lines, shapes and words on a named layer. */
import type { Grey, Line, Pen, Place2, Words } from './types.ts';

export const HAIR: Pen = { width: 0.15, grey: 0 };
export const FAINT: Pen = { width: 0.15, grey: 0.5 };
export const FINE: Pen = { width: 0.25, grey: 0 };
/** What is cut along: thin enough to see its middle. */
export const FIRM: Pen = { width: 0.4, grey: 0 };
export const DASHED: Pen = { width: 0.2, grey: 0, dash: [3, 1.5] };

export const line = (layer: string, places: readonly Place2[], pen: Pen): Line => ({
  kind: 'line',
  layer,
  places,
  closed: false,
  pen,
  fill: null,
});

/** An upright cross, its arms so long to each side. */
export const cross = (layer: string, { x, y }: Place2, arm: number): Line[] => [
  line(
    layer,
    [
      { x: x - arm, y },
      { x: x + arm, y },
    ],
    FINE,
  ),
  line(
    layer,
    [
      { x, y: y - arm },
      { x, y: y + arm },
    ],
    FINE,
  ),
];

export const shape = (layer: string, places: readonly Place2[], pen: Pen | null, fill: Grey | null = null): Line => ({
  kind: 'line',
  layer,
  places,
  closed: true,
  pen,
  fill,
});

/** Anticlockwise from its lower left corner. */
export const rectangle = (left: number, bottom: number, width: number, height: number): Place2[] => [
  { x: left, y: bottom },
  { x: left + width, y: bottom },
  { x: left + width, y: bottom + height },
  { x: left, y: bottom + height },
];

export const words = (
  layer: string,
  x: number,
  y: number,
  text: string,
  size: number,
  more: Partial<Pick<Words, 'anchor' | 'turn' | 'bold' | 'grey'>> = {},
): Words => ({
  kind: 'words',
  layer,
  text,
  at: { x, y },
  size,
  anchor: 'start',
  turn: 0,
  bold: false,
  grey: 0,
  ...more,
});
