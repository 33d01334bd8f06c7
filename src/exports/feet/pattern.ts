/**
 * The flat pattern of one piece of a foot for a machine, seen from the tube's side: along to the right, across up, full size. Layers: CUT the
 * edge and the holes, BEND where a press brake bends (the middle line; the bend's two ends dashed on paper), MARK where the tube stands, TEXT.
 */
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import type { Blank } from '../../core/feet/blanks.ts';
import type { Outline } from '../../core/feet/outline.ts';
import { shrunk } from '../../drawing/fit.ts';
import { moved } from '../../drawing/move.ts';
import { unknownFace } from '../../drawing/unknown-face.ts';
import { DASHED, FINE, FIRM, line, rectangle, shape, words } from '../../drawing/strokes.ts';
import type { Arc, Mark, Pen, Place2, Sheet } from '../../drawing/types.ts';
import type { Piece } from './pieces.ts';

const SMALL = 2.8;

/** As a sheet that just holds it. */
export function footPattern(piece: Piece): Sheet {
  const { width, height } = extentOf(piece.blank);
  const space = Math.max(width - 6, 20);
  const lines = [piece.title, piece.count].map((text) => shrunk(unknownFace, text, space, SMALL, false, SMALL).text);
  return {
    name: piece.title,
    width,
    height,
    marks: [
      ...lineMarks(piece),
      ...lines.map((text, i) => words('TEXT', 3, 3 + SMALL * 1.3 * (lines.length - 1 - i), text, SMALL)),
    ],
  };
}

export const extentOf = ({ along, across }: Blank): { readonly width: number; readonly height: number } => ({
  width: along[1] - along[0],
  height: across[1] - across[0],
});

/** Edge, holes, bend and the tubes' outlines, from the piece's lower left corner. */
export function lineMarks({ blank, outlines }: Pick<Piece, 'blank' | 'outlines'>): Mark[] {
  const { width, height } = extentOf(blank);
  const [left, bottom] = [blank.along[0], blank.across[0]];
  const inside = [
    ...blank.holes.map(({ at, diameter }) => circle('CUT', { x: at[0], y: at[1] }, diameter / 2, FIRM)),
    ...bendMarks(blank),
    ...outlines.map(({ outline }) => outlineMark(outline)),
  ];
  return [shape('CUT', rectangle(0, 0, width, height), FIRM), ...moved(inside, -left, -bottom)];
}

function bendMarks({ bend, along, across }: Blank): Mark[] {
  if (bend === null) return [];
  return bend.lines.map((at, i) => {
    const places = bend.axis === 0 ? across.map((y) => ({ x: at, y })) : along.map((x) => ({ x, y: at }));
    return line(i === 1 ? 'BEND' : 'MARK', places, i === 1 ? FINE : DASHED);
  });
}

const circle = (layer: string, centre: Place2, radius: number, pen: Pen): Arc => ({
  kind: 'arc',
  layer,
  centre,
  radius,
  from: 0,
  to: 2 * Math.PI,
  pen,
});

/** Sides of the polygon that an ellipse is drawn as: of a leaning tube of 60 mm it lies within 0.01 mm. */
const SIDES = 180;

function outlineMark({ centre: [x, y], half: [long, short], lean: [a, c] }: Outline): Mark {
  if (long - short < ROUNDING) return circle('MARK', { x, y }, short, FINE);
  const places = Array.from({ length: SIDES }, (_, i) => {
    const turn = (2 * Math.PI * i) / SIDES;
    const [p, q] = [long * Math.cos(turn), short * Math.sin(turn)];
    return { x: x + p * a - q * c, y: y + p * c + q * a };
  });
  return shape('MARK', places, FINE);
}
