/** Figures in a row, each under its name. */
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import { LEAST_SIZE, shrunk } from '../../drawing/fit.ts';
import { LENGTH, SMALL, text } from '../../drawing/ink.ts';
import type { Context } from './context.ts';
import type { Block } from './page.ts';

/**
 * Figures in a row, each under its name, in columns alike where all have room. Else names and fractions, which could not be read any
 * smaller, keep the room that they need, and other figures are set smaller.
 */
export function cells(
  { letters }: Context,
  width: number,
  columns: readonly (readonly [string, string])[],
  names = SMALL,
): Block {
  const wanted = columns.map(([name, value]) =>
    Math.max(letters.width(name, names, false) + 1.6, letters.width(value, LENGTH, true) + 2.5),
  );
  // Names that were set large to be read stay so.
  const smallest = names === SMALL ? LEAST_SIZE : names;
  const least = columns.map(([name, value], i) =>
    value.includes('⁄') ? wanted[i]! : letters.width(name, smallest, false) + 1.6,
  );
  const alike = wanted.every((each) => each <= width / columns.length);
  // What all leave over parts them.
  const between = Math.max(0, width - total(wanted)) / columns.length;
  const more = wanted.map((each, i) => each - least[i]!);
  const spare = Math.max(0, width - total(least)) / Math.max(total(more), ROUNDING);
  return {
    height: names === SMALL ? 9.5 : 10.3,
    draw: (left, top) => {
      let at = left;
      return columns.flatMap(([name, value], i) => {
        const each = alike ? width / columns.length : least[i]! + Math.min(spare, 1) * more[i]! + between;
        const head = shrunk(letters, name, each - 1.5, names);
        const figure = shrunk(letters, value, each - 2.4, LENGTH, true);
        const from = at;
        at += each;
        return [
          text(from, top - 3, head.text, { size: head.size }),
          text(from, top - 8.4, figure.text, { size: figure.size, bold: true }),
        ];
      });
    },
  };
}

const total = (lengths: readonly number[]): number => lengths.reduce((sum, each) => sum + each, 0);
