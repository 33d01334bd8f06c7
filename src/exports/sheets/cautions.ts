/** What every sheet carries at its foot: who decides, which job and sheet it is, and when it was printed. */
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { revisionInWords } from '../../core/words/revision.ts';
import { shrunk } from '../../drawing/fit.ts';
import type { Mark } from '../../drawing/types.ts';
import type { Context } from './context.ts';
import { FINE, SMALL, stroke, text } from '../../drawing/ink.ts';
import type { Block } from './page.ts';

/** Where there would be a drawing or a list. */
export const NO_TUBE = 'There is no tube yet.';

export const FOOT_HEIGHT = 10.6;

/** `which` sheet it is; `code` is the revision of what stands on it, null where nothing was derived for it. */
export function foot(context: Context, which: string, code: string | null): Block {
  const { width } = context;
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
      whoDecides(context, left, top - 5.8, width),
      ...whichSheet(context, which, code)(left, top - 9.7, width),
    ],
  };
}

/** In one line on this baseline, no wider than `space`. */
export function whoDecides({ letters }: Context, left: number, baseline: number, space: number): Mark {
  const caution = shrunk(letters, WHO_DECIDES, space, SMALL, true);
  return text(left, baseline, caution.text, { size: caution.size, bold: true });
}

/** Job, day, revision and sheet in one line on that baseline; a long name of the job is cut short. */
export const whichSheet =
  ({ derived, letters, day }: Context, which: string, code: string | null) =>
  (left: number, baseline: number, width: number): readonly Mark[] => {
    const printed = day === undefined ? '' : `printed ${day}`;
    const revision = code === null ? '' : revisionInWords(code);
    const atRight = letters.width(which, SMALL, false) + 4;
    const before = atRight + letters.width(revision, SMALL, true) + 4;
    const job = shrunk(letters, derived.job.name, width - before - letters.width(printed, SMALL, false) - 4, SMALL);
    return [
      text(left, baseline, job.text, { size: job.size }),
      text(left + width - before, baseline, printed, { anchor: 'end' }),
      text(left + width - atRight, baseline, revision, { anchor: 'end', bold: true }),
      text(left + width, baseline, which, { anchor: 'end' }),
    ];
  };
