/** A tube as it is marked out: the person's way of measuring, as far as this tube allows it, and the tape that comes of it. */
import { isSymmetricHoop, tapeSheet, type TapeMark, type TapeSheet, type TapeStep } from '../../core/shop/tape.ts';
import type { TapeView } from '../../core/shop/mark-words.ts';
import { tapesOf } from '../../core/units/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Context } from './context.ts';

export interface Measured {
  readonly view: TapeView;
  readonly sheet: TapeSheet;
}

/** From end A where the middle is asked for and the tube is no symmetric hoop; in the order that the job holds for this tube, if any. */
export function measured(
  tube: SolvedTube,
  { derived, unit, tape }: Pick<Context, 'derived' | 'unit' | 'tape'>,
): Measured {
  const view: TapeView = tape.from === 'middle' && !isSymmetricHoop(tube) ? { ...tape, from: 'A' } : tape;
  const setting = { from: view.from, style: view.style, step: tapesOf(unit)[view.fine ? 1 : 0] };
  const order = derived.job.bent.find((bent) => bent.tube === tube.id)?.order;
  const inOrder = order === undefined ? null : tapeSheet(tube, { ...setting, order });
  return { view, sheet: inOrder ?? tapeSheet(tube, setting)! };
}

/** Where a mark lies on the blank, mm from its end A. */
export const onBlank = ({ view, sheet }: Measured, step: TapeStep, mark: TapeMark): number =>
  sheet.zero + (view.from === 'B' || step.towards === 'A' ? -mark.at : mark.at);

/** Where the tape's zero is, as an instruction. */
export const zeroInWords = ({ view }: Measured, zero: string): string =>
  view.from === 'middle'
    ? `Draw a line round the tube ${zero} from the blank’s end A and measure both ways from it.`
    : `Hook the tape over the blank’s end ${view.from}: that is zero.`;
