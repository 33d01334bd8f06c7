/**
 * What an angle read after release says of a bend: within what the shop holds, short, too far, or no reading at all.
 *
 * A short bend is pulled on: the steel gives back its share again, so (target - net)(1 + b) more, b from the pulls,
 * or none of it where they cannot tell it from slack: pulling on twice costs less than a tube. One that went
 * too far cannot be opened on the bender: what it does to the far end is shown.
 */
import { toDegrees, type Degrees, type Radians } from '../geometry/angle.ts';
import { DEGREE_ROUNDING } from '../geometry/tolerance.ts';
import type { BentBend, BentTube } from '../job/kinds/bent.ts';
import type { SolvedTube } from '../solve/types.ts';
import { BEND_TOLERANCE, isBorne } from '../springback/pull-advice.ts';
import { isMisread, tellsSlackFromSpring, type PullLaw } from '../springback/pull-law.ts';
import { onStep } from '../units/angle.ts';
import { asBent } from './as-bent.ts';

export type Verdict =
  /** Opened to more than it was pulled to, or by more than steel and slack give: one of the two was misread. */
  | { readonly kind: 'impossible'; readonly opened: 'to-more' | 'by-too-much' }
  | { readonly kind: 'within'; readonly off: Degrees }
  /** `more` than was pulled, and what the machine then shows, on its scale. */
  | { readonly kind: 'short'; readonly by: Degrees; readonly more: Degrees; readonly pullTo: Degrees }
  /** `endMoves`: how far this bend by itself takes end B from its place, end A held; mm. */
  | { readonly kind: 'over'; readonly by: Degrees; readonly endMoves: number };

/** Share of what is missing that the steel gives back again. */
const springOf = (law: PullLaw | null, target: Radians): number =>
  law !== null && (law.from === 'estimate' || (tellsSlackFromSpring(law) && isBorne(law, target)))
    ? Math.max(0, law.b)
    : 0;

/** Of a reading of a bend; of one that was fitted to a tape's figures what it was pulled to says nothing. */
export function judge(
  tube: SolvedTube,
  order: BentTube['order'],
  { bend, pulled, net, fitted = false }: Pick<BentBend, 'bend' | 'pulled' | 'net' | 'fitted'>,
  pullStep: Degrees,
): Verdict {
  if (!fitted && isMisread(pulled, net))
    return { kind: 'impossible', opened: net > pulled ? 'to-more' : 'by-too-much' };
  const { angle } = tube.bends[bend - 1]!;
  const off = net - toDegrees(angle);
  if (Math.abs(off) <= Math.max(BEND_TOLERANCE, pullStep) + DEGREE_ROUNDING) return { kind: 'within', off };
  if (off > 0) {
    return {
      kind: 'over',
      by: off,
      endMoves: asBent(tube, { order, bends: [{ bend, pulled, net, fitted }] }).endMoves,
    };
  }
  const more = -off * (1 + springOf(tube.pullLaw, angle));
  return { kind: 'short', by: -off, more, pullTo: Math.max(onStep(pulled + more, pullStep), pulled + pullStep) };
}
