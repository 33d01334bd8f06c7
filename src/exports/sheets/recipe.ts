/** One cut of an end: how it is seen at the notcher, what is done in order, and what has to be known of it. */
import { deepSide, type EndMark } from '../../core/cope/end-mark.ts';
import { middleOf } from '../../core/cope/landing.ts';
import type { Notching } from '../../core/cope/notching.ts';
import { landedOn } from '../../core/solve/bar-tubes.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { bothInWords, offsetInWords, throatInWords } from '../../core/words/cope-mark.ts';
import { numbered, turnInWords } from '../../core/words/ends.ts';
import { wrapHalfTurn } from '../../core/geometry/angle.ts';
import { landingInShort } from '../../core/words/landing.ts';
import {
  betweenInWords,
  gapInWords,
  headInWords,
  recipeRows,
  sawsInWords,
  wayInWords,
  type RecipeFigure,
  type RecipeRow,
} from '../../core/words/notching.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { atNotcher } from '../../drawing/at-notcher.ts';
import { END_WIDTH, endPicture } from '../../drawing/end-on/cope.ts';
import { angleFigure, lengthFigure, roundFigure } from '../../drawing/figures.ts';
import { PLAIN } from '../../drawing/ink.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
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
  const marks = notches.map(({ cut }) => deepSide(tube, cut));
  const firstByWrap = notches.findIndex(({ way }) => way === 'wrap');
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
    const last = i === notches.length - 1;
    const said = [
      i === 0 ? null : `${turnInWords(wrapHalfTurn(cut.clocking - notches[0]!.cut.clocking))} from cut 1.`,
      bothInWords(marks[i]!),
      offsetInWords(cut) === null ? null : `${offsetInWords(cut)} By ${lengthInWords(Math.abs(cut.axisOffset), unit)}.`,
      i === firstByWrap && end.high !== null ? throatInWords(tube, which, end.high.phi) : null,
      i === 0 ? headInWords(notching) : null,
      last ? gapInWords(notching, unit) : null,
      last ? sawsInWords(notching, unit) : null,
    ].flatMap((words) => words ?? []);
    return stacked(
      gap(0.8),
      ...name,
      paragraph(letters, `${way} ${betweenInWords(cut)}`, width, { size: PLAIN, bold: true, after: 0.8 }),
      pictures(marks, i, atNotcher(tube, which, notching, i), tube.bends.length > 0),
      gap(1),
      ...steps(context, recipeRows(tube, notch), width),
      gap(0.8),
      ...(said.length === 0 ? [] : [paragraph(letters, said.join(' '), width, { size: PLAIN, after: 0.4 })]),
      paragraph(letters, `Middle on ${landingInShort(middleOf(derived, end, cut), unit)}.`, width, { after: 0.4 }),
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

/** End-on beside the first cut, for all of them; from above beside each. */
function pictures(marks: readonly EndMark[], index: number, above: ReturnType<typeof atNotcher>, bent: boolean): Block {
  const seen = drawn(above);
  return index === 0
    ? abreast({ left: 0, block: drawn(endPicture(marks, bent)) }, { left: END_WIDTH + 2, block: seen })
    : abreast({ left: END_WIDTH + 2, block: seen });
}

function figureOf(figure: RecipeFigure, unit: LengthUnit): string {
  switch (figure.kind) {
    case 'length':
      return lengthFigure(figure.mm, unit);
    case 'round':
      return roundFigure(figure.mm, unit);
    case 'angle':
      return angleFigure(figure.radians);
    case 'words':
      return figure.words;
  }
}
