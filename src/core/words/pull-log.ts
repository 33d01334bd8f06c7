/** What the log of pulls says, in the words of the shop: the law, how sure it is, and which pulls do not agree. */
import { batchKey } from '../job/batch.ts';
import { listed, uncapital } from './lists.ts';
import { shownName } from '../job/shown.ts';
import { toDegrees, toRadians, type Degrees } from '../geometry/angle.ts';
import type { Pull } from '../job/kinds/pull.ts';
import { borneRange, mendingPull, pullAdvice } from '../springback/pull-advice.ts';
import { contradictions, type PullLaw } from '../springback/pull-law.ts';
import {
  GO_ON,
  START_AT,
  estimateInWords,
  halfWidthInWords,
  mendInWords,
  pullFigure,
  pullsInWords,
  whyInWords,
  workedOut,
} from './pulls.ts';
import { formatAngle } from '../units/angle.ts';
import { fixedText } from '../units/typed.ts';

/** The angle that stands for all in the sentence, degrees. */
const SHOWN = 90;

const SMALL_AND_LARGE = 'Log a small bend and a large one.';

/** What is pulled, where that comes from and how sure it is; `batch` is the one that the tube is cut from, `step` the machine's scale. */
export function lawInWords(law: PullLaw | null, batch: string | undefined, step: Degrees): string {
  const net = toRadians(SHOWN);
  const advice = pullAdvice(law, net, step);
  const exact = workedOut(advice, step);
  const pulled = exact ?? pullFigure(advice);
  if (law === null)
    return `No pulls yet, and the section names no steel that is known here. Pull to the finished angle, ${GO_ON}. ${SMALL_AND_LARGE}`;
  if (advice.kind === 'estimate')
    return `No pulls yet: ${past(law)}. For a finished ${SHOWN}° ${uncapital(START_AT)} ${pulled}. That is ${estimateInWords(advice.short)} ${SMALL_AND_LARGE}`;
  return [
    ...(advice.kind === 'law'
      ? [
          `From ${pullsInWords(law)}: ${past(law)}.`,
          `For a finished ${SHOWN}° pull to ${pulled}${sureInWords(advice.within)}.`,
        ]
      : [
          `From ${pullsInWords(law)}.`,
          `For a finished ${SHOWN}° first pull to ${pulled}, ${GO_ON}: ${whyInWords(advice.why, law)}.`,
          mendInWords(advice.why, law, mendingPull(law, [net])),
        ]),
    ...reachInWords(law),
    ...(batch !== undefined && batchKey(batch) !== null && law.batch === null
      ? [`Batch ${shownName(batch)} has no pulls of its own: all of this die and tube count.`]
      : []),
  ].join(' ');
}

const sureInWords = (within: number | null): string =>
  within === null ? '' : `, give or take ${halfWidthInWords(within)}`;

/** For which bends the pulls are enough. */
function reachInWords(law: PullLaw): readonly string[] {
  const range = borneRange(law);
  return range === null ? [] : [`These pulls are enough for bends of ${range.least}° to ${range.greatest}°.`];
}

/** "pull 1.4° plus 4.2 % past the finished angle"; a part that is below zero is taken off. */
function past({ a, b }: PullLaw): string {
  const slack = formatAngle(Math.abs(toDegrees(a)), 1);
  const spring = `${fixedText(Math.abs(100 * b), 1)} %`;
  if (a < 0 && b < 0) return `pull ${slack}° and ${spring} short of the finished angle`;
  if (a < 0) return `pull ${spring} past the finished angle, less ${slack}°`;
  if (b < 0) return `pull ${slack}° past the finished angle, less ${spring} of it`;
  return Number(slack) === 0
    ? `pull ${spring} past the finished angle`
    : `pull ${slack}° plus ${spring} past the finished angle`;
}

export interface Disagreement {
  /** Indices in the pulls that were given. */
  readonly pulls: readonly number[];
  readonly words: string;
}

/** The pulls that cannot be right as they stand, each with the reason; pulls are numbered from 1 as in the list. */
export const disagreements = (pulls: readonly Pull[]): readonly Disagreement[] =>
  Array.from(contradictions(pulls), (indices) => ({ pulls: indices, words: reason(pulls, indices) }));

function reason(pulls: readonly Pull[], indices: readonly number[]): string {
  const numbers = listed(indices.map((index) => String(index + 1)));
  const meant = indices.map((index) => pulls[index]!);
  const [one] = meant;
  if (meant.length === 1)
    return `Pull ${numbers} reads ${plain(one!.net)} from ${plain(one!.pulled)} pulled: a bend opens when it is let go, it does not close. Read it again.`;
  const opened = listed(meant.map(({ pulled, net }) => plain(pulled - net)));
  return `Pulls ${numbers} do not agree: at nearly the same finished angle they opened by ${opened}. Pull one more to see which is right.`;
}

const plain = (angle: number): string => `${formatAngle(angle, 1)}°`;
