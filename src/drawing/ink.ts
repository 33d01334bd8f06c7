/** Short ways to make the marks of a sheet: all of one layer, y up. */
import type { Arc, Grey, Line, Mark, Pen, Place2, Words } from './types.ts';

const LAYER = 'sheet';

export const HAIR: Pen = { width: 0.15, grey: 0 };
export const FINE: Pen = { width: 0.25, grey: 0 };
export const FIRM: Pen = { width: 0.5, grey: 0 };
export const FAINT: Pen = { width: 0.2, grey: 0.5 };

export const stroke = (places: readonly Place2[], pen: Pen = FINE): Line => ({
  kind: 'line',
  layer: LAYER,
  places,
  closed: false,
  pen,
  fill: null,
});

export const shape = (places: readonly Place2[], pen: Pen | null, fill: Grey | null): Line => ({
  kind: 'line',
  layer: LAYER,
  places,
  closed: true,
  pen,
  fill,
});

/** `left` and `top` are its upper left corner. */
export const box = (
  left: number,
  top: number,
  width: number,
  height: number,
  pen: Pen | null = FINE,
  fill: Grey | null = null,
): Line =>
  shape(
    [
      { x: left, y: top },
      { x: left + width, y: top },
      { x: left + width, y: top - height },
      { x: left, y: top - height },
    ],
    pen,
    fill,
  );

/** A filled circle: a polygon of sides too short to be seen. */
export const disc = (centre: Place2, radius: number, pen: Pen | null, fill: Grey): Line =>
  shape(
    Array.from({ length: 48 }, (_, i) => around(centre, radius, (i * Math.PI) / 24)),
    pen,
    fill,
  );

export const arc = (centre: Place2, radius: number, from: number, to: number, pen: Pen = FINE): Arc => ({
  kind: 'arc',
  layer: LAYER,
  centre,
  radius,
  from,
  to,
  pen,
});

/** A place on a circle, radians anticlockwise from the x axis. */
export const around = ({ x, y }: Place2, radius: number, angle: number): Place2 => ({
  x: x + radius * Math.cos(angle),
  y: y + radius * Math.sin(angle),
});

export interface Setting {
  /** Height of the letter's body, mm. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly anchor?: Words['anchor'];
  readonly grey?: Grey;
}

/** Text on a baseline. */
export const text = (x: number, y: number, words: string, setting: Setting = {}): Words => ({
  kind: 'words',
  layer: LAYER,
  at: { x, y },
  text: words,
  size: setting.size ?? SMALL,
  anchor: setting.anchor ?? 'start',
  turn: 0,
  bold: setting.bold ?? false,
  grey: setting.grey ?? 0,
});

/** Solid, with its tip at `tip`, pointing along `angle`, radians. */
export const arrowhead = (tip: Place2, angle: number, size: number): Line =>
  shape([tip, around(tip, size, angle + 2.75), around(tip, size, angle - 2.75)], null, 0);

/** Heights of the letter's body, mm: figures are 0.73 of it, those of a fraction 0.42. */
export const SMALL = 3.3;
export const PLAIN = 4;
/** Lengths with fractions: the fraction's figures are 2.2 mm high. */
export const LENGTH = 5.3;
/** What is set, cut and marked: 5 mm figures. */
export const MAIN = 7;

export const circle = (centre: Place2, radius: number, pen: Pen = FINE): Arc =>
  arc(centre, radius, 0, 2 * Math.PI, pen);

/** The same marks on a layer of their own, by which the screen colours them. */
export const onLayer = (layer: string, ...marks: readonly Mark[]): Mark[] =>
  marks.map((mark): Mark => ({ ...mark, layer }));
