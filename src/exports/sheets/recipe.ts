/** One cut of an end: how it is seen at the notcher, what is done in order, and what has to be known of it. */
import { middleOf } from '../../core/cope/landing.ts';
import type { Notching } from '../../core/cope/notching.ts';
import { landedOn } from '../../core/solve/bar-tubes.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { numbered, placesInWords } from '../../core/words/ends.ts';
import { landingInShort } from '../../core/words/landing.ts';
import {
  betweenInWords,
  recipeRows,
  saidOfCut,
  wayInWords,
  type RecipeFigure,
  type RecipeRow,
} from '../../core/words/notching.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { atNotcher, endAtNotcher } from '../../drawing/at-notcher.ts';
import { END_WIDTH } from '../../drawing/end-on/cope.ts';
import { lengthFigure, roundFigure } from '../../drawing/figures.ts';
import { PLAIN } from '../../drawing/ink.ts';
import { cells } from './cells.ts';
import type { Context } from './context.ts';
import { abreast, drawn, gap, paragraph, stacked, type Block } from './page.ts';

/** Of every cut of an end, a block each. `width`: of the end's column. */
export function cutBlocks(
  context: Context,
  tube: SolvedTube,
  which: 0 | 1,
  notching: Notching,
  width: number,
): Block[] {
  const { derived, letters, unit } = context;
  const end = tube.ends[which];
  const { notches } = notching;
  return notches.map((notch, i) => {
    const { cut } = notch;
    const runTube = landedOn(derived.byId, cut);
    const way = wayInWords(notch, notching, unit);
    // One cut is named by the end's own heading.
    const name =
      notches.length === 1
        ? []
        : [
            paragraph(letters, `Cut ${i + 1} of ${notches.length} to ${numbered(runTube)}`, width, {
              size: PLAIN,
              bold: true,
              after: 0.3,
              most: 3,
            }),
          ];
    const said = saidOfCut(tube, which, notching, i, unit);
    const last = i === notches.length - 1;
    const lies = `Middle on ${landingInShort(middleOf(derived, end, cut), unit)}.`;
    return stacked(
      gap(0.4),
      ...name,
      paragraph(letters, `${way} ${betweenInWords(cut)}`, width, { size: PLAIN, bold: true, after: 0.8 }),
      abreast(
        { left: 0, block: drawn(endAtNotcher(tube, notching, i)) },
        { left: END_WIDTH + 2, block: drawn(atNotcher(tube, which, notching, i)) },
      ),
      gap(0.4),
      ...steps(context, recipeRows(tube, notch, notching, unit), width),
      gap(0.8),
      ...(said.length === 0 ? [] : [paragraph(letters, said.join(' '), width, { size: PLAIN, after: 0.4 })]),
      paragraph(letters, `${lies}${last ? ` ${placesInWords(end, unit) ?? ''}` : ''}`, width, { after: 0.4 }),
    );
  });
}

/** A row holds so many steps. */
const ABREAST = 3;

/** What is done, in its order, each step with its number where there are several. */
function steps(context: Context, rows: readonly RecipeRow[], width: number): Block[] {
  const isSawn = rows.length > 2;
  const columns = rows.map(({ label, figure }, i): [string, string] => [
    isSawn ? `${i + 1} ${label}` : label,
    figureOf(figure, context.unit),
  ]);
  const split = isSawn ? ABREAST : columns.length;
  return [columns.slice(0, split), columns.slice(split)].flatMap((each) =>
    each.length === 0 ? [] : [cells(context, width, each, PLAIN)],
  );
}

function figureOf(figure: RecipeFigure, unit: LengthUnit): string {
  switch (figure.kind) {
    case 'length':
      return lengthFigure(figure.mm, unit);
    case 'round':
      return roundFigure(figure.mm, unit);
    case 'words':
      return figure.words;
  }
}
