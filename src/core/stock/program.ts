/**
 * How often each lay is cut, as a linear program (Gilmore and Gomory, A linear programming approach to the cutting stock problem, 1961): least cost, of every lot at least its parts, of no sort more than
 * its sticks. As text, in the format in which such programs are commonly written (LP), and its answer as lays.
 */
import type { Lay, Problem } from './lays.ts';

/** Solves such a program; a library, handed in by whoever runs it. Throws where that fails. */
export interface Solver {
  /** `mostLooks`: places of the search for whole numbers that it may look at; counted, not timed, so that the same program has the same answer everywhere. */
  solve(program: string, mostLooks: number): Solved;
}

export interface Solved {
  /** solved: nothing is better. none: nothing meets it. tired: the looks did not suffice; the values may be some or none. */
  readonly ended: 'solved' | 'none' | 'tired';
  /** By the names of the columns; those that are not 0. */
  readonly values: ReadonlyMap<string, number>;
  /** By the names of the rows, what one more would cost; only where the numbers need not be whole. */
  readonly prices: ReadonlyMap<string, number>;
}

/** Where each lay may be cut a part of a time: the rows are named p0, p1 ... for the lots and s0, s1 ... for the sorts that there are only so many sticks of. */
export function partialProgram({ lots, sorts }: Problem, lays: readonly Lay[]): string {
  const { parts, sticks } = termsOf(lots.length, sorts.length, lays);
  return [
    'Minimize',
    ` cost: ${summed(lays.map(({ sort }, i) => `${sorts[sort]!.cost} x${i}`))}`,
    'Subject To',
    ...lots.map(({ count }, lot) => ` p${lot}: ${summed(parts[lot]!)} >= ${count}`),
    ...sorts.flatMap(({ count }, sort) =>
      count === Infinity || sticks[sort]!.length === 0 ? [] : [` s${sort}: ${summed(sticks[sort]!)} <= ${count}`],
    ),
    'End',
    '',
  ].join('\n');
}

/** Where each is cut a whole number of times, and no plan costs less than `least`. How many sticks of each sort there are in all, y0, y1 ..., are numbers of their own, so that the solver decides on these first. */
export function wholeProgram({ lots, sorts }: Problem, lays: readonly Lay[], least: number): string {
  const { parts, sticks } = termsOf(lots.length, sorts.length, lays);
  const used = sorts.flatMap((_, sort) => (sticks[sort]!.length > 0 ? [sort] : []));
  const money = summed(used.map((sort) => `${sorts[sort]!.cost} y${sort}`));
  return [
    'Minimize',
    ` cost: ${money}`,
    'Subject To',
    ...lots.map(({ count }, lot) => ` p${lot}: ${summed(parts[lot]!)} >= ${count}`),
    ...used.map((sort) => ` s${sort}: ${summed(sticks[sort]!)} - y${sort} = 0`),
    ` least: ${money} >= ${least}`,
    'Bounds',
    ...used.map((sort) => ` 0 <= y${sort} <= ${sorts[sort]!.count === Infinity ? '+inf' : sorts[sort]!.count}`),
    'Generals',
    ` ${wrapped([...used.map((sort) => `y${sort}`), ...lays.map((_, i) => `x${i}`)], ' ')}`,
    'End',
    '',
  ].join('\n');
}

/** Of each lot the parts on the lays, and of each sort the lays. */
function termsOf(lots: number, sorts: number, lays: readonly Lay[]) {
  const parts = Array.from({ length: lots }, (): string[] => []);
  const sticks = Array.from({ length: sorts }, (): string[] => []);
  for (const [i, { sort, of }] of lays.entries()) {
    sticks[sort]!.push(`x${i}`);
    for (const [lot, count] of of.entries()) if (count > 0) parts[lot]!.push(`${count} x${i}`);
  }
  return { parts, sticks };
}

/** Readers of the format bear no lines without end. */
const summed = (terms: readonly string[]): string => wrapped(terms, ' + ');

const A_LINE = 20;

function wrapped(words: readonly string[], between: string): string {
  const lines: string[] = [];
  for (let i = 0; i < words.length; i += A_LINE) lines.push(words.slice(i, i + A_LINE).join(between));
  return lines.join(`${between}\n `);
}

/** The lays of an answer in whole numbers, each as often as it is cut, without the parts that are too many. */
export function laysFrom({ values }: Solved, { lots }: Problem, lays: readonly Lay[]): readonly Lay[] {
  const left = lots.map(({ count }) => count);
  return lays.flatMap(({ sort, of }, i) =>
    Array.from({ length: Math.round(values.get(`x${i}`) ?? 0) }, (): Lay => {
      const taken = of.map((count, lot) => Math.min(count, left[lot]!));
      for (const [lot, count] of taken.entries()) left[lot]! -= count;
      return { sort, of: taken };
    }).filter((lay) => lay.of.some((count) => count > 0)),
  );
}

/** What a part of each lot is worth, and what one more stick of each sort saves, in a program that need not be whole; 0 and more. */
export const pricesFrom = ({ prices }: Solved, { lots, sorts }: Problem) => ({
  worth: lots.map((_, lot) => Math.max(0, prices.get(`p${lot}`) ?? 0)),
  saved: sorts.map((_, sort) => Math.max(0, -(prices.get(`s${sort}`) ?? 0))),
});
