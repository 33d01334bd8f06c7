/** Where the angle that a bend is pulled to comes from and how sure it is: never told without. */
import { shownName } from '../job/shown.ts';
import { toDegrees, type Radians } from '../geometry/angle.ts';
import { disagree, GREATEST_SHARE, type PullLaw } from '../springback/pull-law.ts';
import { formatAngle } from '../units/angle.ts';

/** Where the machine's angle comes from: never shown without it. */
export function pullNote(law: PullLaw | null): string {
  if (law === null)
    return 'No angle to pull to: the section names no steel that is known here, and no pulls are logged.';
  if (law.from === 'estimate')
    return '“Pull to” is an estimate from the steel’s spring alone and reads low: pull a test piece, and log it.';
  const sure =
    law.from === 'one-angle'
      ? ', at one angle: that cannot tell slack from spring.'
      : law.fit?.scatter == null
        ? '.'
        : '; ± holds 95 % of further pulls.';
  const doubt = inDoubt(law) ? ' They cannot all be right: see the pull log before you bend.' : '';
  return `“Pull to” is from ${pullsInWords(law)} in the log${sure}${doubt}`;
}

/** "1.4°", the half-width of an interval; one that rounds to nothing is not called nothing. */
export function halfWidthInWords(halfWidth: Radians): string {
  const shown = formatAngle(toDegrees(halfWidth), 1);
  return Number(shown) === 0 ? 'less than 0.1°' : `${shown}°`;
}

/** "4 pulls", "1 pull of batch H-204": what the law rests on. */
export function pullsInWords({ pulls, batch }: PullLaw): string {
  const of = batch === null ? '' : ` of batch ${shownName(batch)}`;
  return `${pulls.length} ${pulls.length === 1 ? 'pull' : 'pulls'}${of}`;
}

/** True when the law rests on pulls that cannot all be right: 64 pulled does not come back to 6. */
export const inDoubt = ({ a, b, pulls }: PullLaw): boolean =>
  a < 0 || b < 0 || 1 + b > GREATEST_SHARE || disagree(pulls);
