/** What every sheet carries at its foot: who decides, and which job and sheet it is. */
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { revisionInWords } from '../../core/words/revision.ts';
import { shrunk } from '../../drawing/fit.ts';
import type { Context } from './context.ts';
import { FINE, SMALL, stroke, text } from '../../drawing/ink.ts';
import type { Block } from './page.ts';

export const FOOT_HEIGHT = 10.6;

/** `which` sheet it is; `code` is the revision of what stands on it. */
export function foot({ derived, letters, width }: Context, which: string, code: string): Block {
  const caution = shrunk(letters, WHO_DECIDES, width, SMALL, true);
  const revision = revisionInWords(code);
  const atRight = letters.width(which, SMALL, false) + 4;
  const space = width - atRight - letters.width(revision, SMALL, true) - 6;
  const job = shrunk(letters, derived.job.name, space, SMALL);
  return {
    height: FOOT_HEIGHT,
    draw: (left, top) => [
      stroke(
        [
          { x: left, y: top - 2 },
          { x: left + width, y: top - 2 },
        ],
        FINE,
      ),
      text(left, top - 6, caution.text, { size: caution.size, bold: true }),
      text(left, top - 10.4, job.text, { size: job.size }),
      text(left + width - atRight, top - 10.4, revision, { anchor: 'end', bold: true }),
      text(left + width, top - 10.4, which, { anchor: 'end' }),
    ],
  };
}
