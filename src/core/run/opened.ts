/**
 * What the marks of a run take a bend for, beside what it was: of a die that is laid out with its own radius bends come out wider than the
 * marks say, each by pulled / net. The run judges by what was laid down; in the frame the tube stands by its marks.
 */
import { distance } from '../geometry/vector.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import { NOTABLE_LENGTH } from '../marks/tape.ts';
import { asStanding, type OnBlank } from '../solve/as-built.ts';
import type { SolvedTube } from '../solve/types.ts';
import { asBent, type AsBent } from './as-bent.ts';
import type { CheckDimension } from './check-dimensions.ts';

export interface Opened {
  /** The tube's overall width, and how much more that is than by the radius that its marks follow; mm, below zero where it is less. */
  readonly width: CheckDimension;
  readonly wider: number;
  /** How far end B lies from where that radius would have it, end A held, mm. */
  readonly endMoves: number;
}

/** Null where the two are the same, or no tape shows the difference. `tube` and `blank` as for asBent. */
export function openedBeyondMarks(
  tube: SolvedTube,
  run: Pick<BentTube, 'order' | 'bends'>,
  blank?: OnBlank,
): Opened | null {
  if (tube.die?.radius !== 'nominal' || run.bends.length === 0) return null;
  const real = asBent(tube, run, blank);
  const marked = asBent(tube, run, blank, asStanding(tube.die));
  const [width, asMarked] = [widthOf(real), widthOf(marked)];
  const opened = { width, wider: width.value - asMarked.value, endMoves: distance(real.endB, marked.endB) };
  return Math.max(Math.abs(opened.wider), opened.endMoves) > NOTABLE_LENGTH ? opened : null;
}

/** Of a bent tube. */
export const widthOf = ({ checks }: Pick<AsBent, 'checks'>): CheckDimension => checks.find(({ id }) => id === 'width')!;
