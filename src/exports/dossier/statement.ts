/** Room for the builder's own words, and lines to sign on; nothing is said for anybody. */
import { STATEMENT, STATEMENT_IS } from '../../core/words/dossier.ts';
import { FAINT, FINE, stroke, text } from '../../drawing/ink.ts';
import type { Context } from '../sheets/context.ts';
import { paragraph, part, stacked, type Block, type Part } from '../sheets/page.ts';

const LINES = 8;
const PITCH = 9;
const SIGNED = ['Builder', 'Date', 'Place', 'Signature'] as const;
const TO_SIGN = 15;

export function statementPart({ letters, width }: Context): Part {
  const across = (left: number, y: number, pen = FAINT) =>
    stroke(
      [
        { x: left, y },
        { x: left + width, y },
      ],
      pen,
    );
  const ruled: Block = {
    height: LINES * PITCH + 4,
    draw: (left, top) => Array.from({ length: LINES }, (_, i) => across(left, top - (i + 1) * PITCH)),
  };
  const signed: Block = {
    height: SIGNED.length * TO_SIGN,
    draw: (left, top) =>
      SIGNED.flatMap((name, i) => {
        const y = top - (i + 1) * TO_SIGN + 3;
        return [text(left, y + 1.4, name, { bold: true }), across(left, y, FINE)];
      }),
  };
  return part(
    stacked(
      paragraph(letters, STATEMENT, width, { size: 5, bold: true, most: 1, after: 1.6 }),
      paragraph(letters, STATEMENT_IS, width, { after: 2 }),
      ruled,
      signed,
    ),
  );
}
