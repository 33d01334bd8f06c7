/** What the program's own checks found, and what was not checked. */
import { grouped } from '../../core/checks/grouped.ts';
import { CAUTIONS, NOT_CHECKED } from '../../core/words/cautions.ts';
import type { Context } from '../sheets/context.ts';
import { groupInWords, NOTHING } from '../sheets/cover.ts';
import type { Part } from '../sheets/page.ts';
import { opened, said } from '../sheets/parts.ts';

export function foundParts(context: Context): readonly Part[] {
  const { derived } = context;
  const { findings } = derived;
  const found =
    findings.length === 0 ? [NOTHING] : grouped(findings, derived).map((each) => groupInWords(each, derived));
  return [
    opened(context, 'Found by the program’s own checks', [], said(context, ...found)),
    opened(context, 'Not checked here', [], said(context, ...NOT_CHECKED.map(([what, why]) => `${what} ${why}`))),
    opened(context, 'To be borne in mind', [], said(context, ...CAUTIONS)),
  ];
}
