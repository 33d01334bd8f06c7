/**
 * Findings that a person has seen and leaves as they are. The mark is for a finding with its numbers: where these change, it is shown
 * as new. An error is never left: it stands until it is mended.
 */
import type { Seen } from '../job/kinds/seen.ts';
import { remembered } from '../remembered.ts';
import type { Finding } from './types.ts';

/** Whether it can be left as it is. */
export const canBeSeen = ({ severity }: Finding): boolean => severity !== 'error';

/** The mark for it. */
export function seenOf(finding: Finding): Seen {
  const { id, tube, end, bend } = finding;
  return {
    finding: id,
    tube,
    ...(end !== undefined && { end }),
    ...(bend !== undefined && { bend }),
    as: numbersOf(finding),
  };
}

/** Whether it stands among the marks, with the numbers that it has. */
export const isSeen = (finding: Finding, seen: readonly Seen[]): boolean =>
  seen.length > 0 && canBeSeen(finding) && textsOf(seen).has(textOf(seenOf(finding)));

/** What is not seen yet, in the same order. */
export const unseen = (findings: readonly Finding[], seen: readonly Seen[]): readonly Finding[] =>
  seen.length === 0 ? findings : findings.filter((finding) => !isSeen(finding, seen));

const textOf = ({ finding, tube, end, bend, as }: Seen): string => JSON.stringify([finding, tube, end, bend, as]);

const textsOf = remembered((seen: readonly Seen[]): ReadonlySet<string> => new Set(seen.map(textOf)));

/** Digits after the point: a thousandth of a mm, and of a radian 0.06 degrees; where the finding is in the car does not count. */
const DIGITS = 3;

/** What a mark names beside its text, and what says nothing of the matter. */
const BESIDE: ReadonlySet<string> = new Set(['id', 'tube', 'end', 'bend', 'severity', 'source', 'at']);

const numbersOf = remembered((finding: Finding): string => {
  const shown = (_key: string, value: unknown): unknown =>
    typeof value === 'number' ? Number(value.toFixed(DIGITS)) : value;
  const facts = Object.entries(finding)
    .filter(([key]) => !BESIDE.has(key))
    .toSorted(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify(Object.fromEntries(facts), shown);
});
