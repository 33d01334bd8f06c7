/** Verdicts on the job's rule sheets, as the fabrication file holds them. */
import { judge } from '../../core/rules/judge.ts';
import type { Verdict } from '../../core/rules/types.ts';
import { verdictInWords } from '../../core/words/rules.ts';
import type { Derived } from '../../core/derive.ts';

export type FabricationVerdict = Pick<Verdict, 'sheet' | 'verdict' | 'value' | 'limit' | 'margin' | 'concerns'> &
  Pick<Verdict['check'], 'article' | 'kind' | 'of' | 'mark'> & { readonly because: string };

/** One for each article, in the order of the sheets. */
export const fabricationRules = (derived: Derived): readonly FabricationVerdict[] =>
  judge(derived).map((each) => {
    const { sheet, check, verdict, value, limit, margin, concerns } = each;
    const { article, kind, of, mark } = check;
    return {
      sheet,
      article,
      kind,
      of,
      verdict,
      value,
      limit,
      margin,
      concerns,
      mark,
      because: verdictInWords(each, derived),
    };
  });
