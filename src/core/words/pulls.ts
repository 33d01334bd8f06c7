/** The number that a bend is pulled to in words: what kind of number it is, where it comes from, how sure it is, what would mend it. */
import { batchKey } from '../job/batch.ts';
import { toDegrees, type Degrees, type Radians } from '../geometry/angle.ts';
import { shownName } from '../job/shown.ts';
import { formatAngle } from '../units/angle.ts';
import { MET_WITH, type PullAdvice, type Unborne } from '../springback/pull-advice.ts';
import type { PullLaw } from '../springback/pull-law.ts';

/** "92.0°": as it is set on the machine's scale, with the digits that the scale has. */
export const pullFigure = ({ pullTo }: Pick<PullAdvice, 'pullTo'>): string =>
  `${formatAngle(pullTo, Number(pullTo.toFixed(1)) === pullTo ? 1 : 2)}°`;

/** "13.0° (1/2° scale; exactly 13.2°)": the one to set, and what the law or the estimate asks, where the machine's scale shows something else; else null. */
export function workedOut(advice: PullAdvice, step: Degrees): string | null {
  const scale = onScale(advice, step);
  return scale === null ? null : `${pullFigure(advice)} (${scale})`;
}

/** "1/2° scale; exactly 13.2°", where the one to set stands beside it; null likewise. */
export function onScale(advice: PullAdvice, step: Degrees): string | null {
  const exact = exactly(advice);
  return exact === null ? null : `${divisionInWords(step)} scale; exactly ${exact}`;
}

function exactly(advice: PullAdvice): string | null {
  if (advice.kind === 'first') return null;
  const exact = formatAngle(toDegrees(advice.exact), 1);
  return Number(exact) === advice.pullTo ? null : `${exact}°`;
}

/** "1/2°", "0.2°": a division of the machine's scale. */
const divisionInWords = (step: Degrees): string =>
  `${step === 0.5 ? '1/2' : step === 0.25 ? '1/4' : Number(step.toFixed(3))}°`;

/** What the number is for: an estimate reads low, and is no number to pull to. */
export const pullHead = (advices: readonly PullAdvice[]): string =>
  advices.length > 0 && advices.every(({ kind }) => kind === 'estimate') ? START_AT : 'Pull to';

export const START_AT = 'Start at';

/** What stands under the number; '' where it needs nothing. */
export function kindInWords(advice: PullAdvice): string {
  switch (advice.kind) {
    case 'law':
      return '';
    case 'first':
      return 'first pull: read, then go on';
    case 'estimate':
      return `an estimate, up to ${shortBy(advice.short)} short`;
  }
}

const shortBy = (short: Degrees): string => `${formatAngle(short, 1)}°`;

/** What is done at a first pull. */
export const GO_ON = 'let go, read, then go on';

/** Why no more than a first pull is known. */
export function whyInWords(why: Unborne, law: PullLaw | null): string {
  switch (why) {
    case 'nothing-known':
      return 'no pulls are logged, and the section names no steel that is known here';
    case 'disagree':
      return 'the pulls in the log disagree';
    case 'slack-or-spring':
      return law?.from === 'pulls'
        ? 'pulls this close together cannot tell slack from spring'
        : 'pulls at one angle cannot tell slack from spring';
    case 'too-far':
      return 'the pulls in the log do not reach that far';
    case 'coarse-scale':
      return 'the machine’s scale has no division near what is asked';
  }
}

/** What would mend it, as a sentence; `near` is the net angle at which one more pull would, see mendingPull. */
export function mendInWords(why: Unborne, law: PullLaw | null, near: Degrees): string {
  if (why === 'nothing-known') return `Pull a test piece to a finished angle near ${near}° and log it.`;
  if (why === 'coarse-scale') return 'Read between two divisions, and set in Frame how fine the scale is read.';
  if (why !== 'disagree')
    return `One more pull to a finished angle near ${near}° mends that: this first pull, read and logged, is one.`;
  const batches = new Set(law?.pulls.map(({ batch }) => batchKey(batch)));
  const mixed = batches.size > 1 ? ' Batches differ: name the one that the tube is cut from, and log its own.' : '';
  return `Look the log through and take out what was misread, or pull one more to a finished angle near ${near}° to see which is right.${mixed}`;
}

/** What an estimate leaves out, and what that does to the bend: slack of dies and pins only ever takes from it. */
export const estimateInWords = (short: Degrees): string =>
  `${ESTIMATE}: it may be up to ${shortBy(short)} short, and the bend comes out under-bent; ${MET} (common practice).`;

const ESTIMATE = 'an estimate from the steel’s spring alone, without the machine’s slack';

const MET = `${MET_WITH.least}° to ${MET_WITH.greatest}° in all are met with`;

/** Under a table of bends: where its numbers come from. `advices` are those of the table, `near` as in mendInWords. */
export function pullNote(law: PullLaw | null, advices: readonly PullAdvice[], near: Degrees): string {
  const first = advices.find((advice) => advice.kind === 'first');
  if (first === undefined && law?.from === 'estimate')
    return `“${START_AT}”: the steel’s spring alone; ${MET}. Log a test piece.`;
  const known = advices.filter((advice) => advice.kind === 'law');
  const sure = known.some(({ within }) => within !== null) ? `; ${SURE}` : '';
  return [
    ...(law === null || known.length === 0 ? [] : [`“Pull to” is from ${pullsInWords(law)} in the log${sure}.`]),
    ...(first === undefined
      ? []
      : [
          `A first pull is short of what is right, as ${whyInWords(first.why, law)}: ${GO_ON}. ${mendInWords(first.why, law, near)}`,
        ]),
  ].join(' ');
}

/** "known to 0.5°": how sure the pull is, which is no leave to be off by as much. */
export const sureInWords = (halfWidth: Radians): string => `known to ${halfWidthInWords(halfWidth)}`;

/** What that means. */
export const SURE = '“known to”: 95 % of further pulls lie as near';

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
