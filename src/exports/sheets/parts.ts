/** Headings and paragraphs of papers that are read from the top. */
import type { Context } from './context.ts';
import { gap, paragraph, part, stacked, type Block, type Part } from './page.ts';

/** A part under its heading, with what its figures are. */
export const opened = (
  { letters, width }: Context,
  title: string,
  sentences: readonly string[],
  first: Part,
): Part => ({
  ...first,
  opening: stacked(
    gap(5),
    paragraph(letters, title, width, { size: 5, bold: true, most: 1, after: 1.6 }),
    ...sentences.map((words) => paragraph(letters, words, width, { after: 1.4 })),
    ...(first.opening === undefined ? [] : [first.opening]),
  ),
});

/** Sentences one under another; a heading over the first stays with it. */
export const said = ({ letters, width }: Context, ...sentences: readonly string[]): Part =>
  part(
    ...sentences.map((words, i) => {
      const row = paragraph(letters, words, width, { after: 1.2 });
      return i === 0 ? stacked(gap(2), row) : row;
    }),
  );

/** A heading within a part, bold, with a line of words under it that stays with it. */
export const under = ({ letters, width }: Context, title: string, ...sentences: readonly string[]): Block =>
  stacked(
    gap(4),
    paragraph(letters, title, width, { size: 4, bold: true, most: 2, after: 0.6 }),
    ...sentences.map((words) => paragraph(letters, words, width, { after: 0.8 })),
  );
