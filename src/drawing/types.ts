/**
 * A drawing on paper, whoever writes it: PDF, SVG and DXF are three writers of it. Millimetres at full size on the sheet, the
 * origin at its lower left corner, y up. Everything is black, or a grey that a shop's printer can make.
 */

export interface Place2 {
  readonly x: number;
  readonly y: number;
}

/** 0 = black, 1 = white. */
export type Grey = number;

export interface Pen {
  /** mm. */
  readonly width: number;
  readonly grey: Grey;
  /** Lengths of dash and gap in turn, mm. */
  readonly dash?: readonly number[];
}

/** Straight from place to place. */
export interface Line {
  readonly kind: 'line';
  readonly layer: string;
  readonly places: readonly Place2[];
  readonly closed: boolean;
  readonly pen: Pen | null;
  readonly fill: Grey | null;
}

/** Part of a circle, anticlockwise from `from` to `to`, radians from the x axis; a full turn is a circle. */
export interface Arc {
  readonly kind: 'arc';
  readonly layer: string;
  readonly centre: Place2;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
  readonly pen: Pen;
}

export interface Words {
  readonly kind: 'words';
  readonly layer: string;
  /** On the baseline, at the anchor. */
  readonly at: Place2;
  readonly text: string;
  /** Height of the letter's body, mm (a 10 point letter is 3.53). */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Radians, anticlockwise. */
  readonly turn: number;
  readonly bold: boolean;
  readonly grey: Grey;
}

export type Mark = Line | Arc | Words;

export interface Sheet {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Drawn in this order. */
  readonly marks: readonly Mark[];
}

/** A drawing to be put on a sheet or a screen, its lower left corner at the origin; mm. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Drawn in this order. */
  readonly marks: readonly Mark[];
}
