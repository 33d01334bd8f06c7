/** What every part of a sheet is drawn from. */
import type { Derived } from '../../core/derive.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { TapeView } from '../../core/shop/mark-words.ts';
import type { Lettering } from '../drawing/lettering.ts';
import type { Paper } from './page.ts';

export interface Context {
  readonly derived: Derived;
  readonly unit: LengthUnit;
  readonly letters: Lettering;
  readonly paper: Paper;
  /** How the person measures: the middle counts for symmetric hoops, others are then measured from end A. */
  readonly tape: TapeView;
  /** Width of the page between its margins. */
  readonly width: number;
}
