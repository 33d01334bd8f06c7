/** How the shipped sheets are written down: an article with what most of them have alike. */
import { RULE_KINDS, type RuleCheck, type RuleKind, type RuleMark } from '../../job/kinds/rule-check.ts';

/** What an article says beside its kind; see RuleCheck for units. */
type Rest = Partial<Omit<RuleCheck, 'kind' | 'of' | 'article' | 'text' | 'mark'>>;

/** An article of that kind; `what` is the kind, or the kind and what of it is measured: "tilt plane". */
export function article<K extends RuleKind>(
  number: string,
  mark: RuleMark,
  what: K | `${K} ${Extract<keyof (typeof RULE_KINDS)[K], string>}`,
  text: string,
  rest: Rest = {},
): RuleCheck {
  const [kind, of] = what.split(' ') as [K, string | undefined];
  const made = { roles: [], ...rest, article: number, mark, text, kind, of: of ?? Object.keys(RULE_KINDS[kind])[0]! };
  // That `of` is one of its kind's own is what the type of `what` says.
  return made as unknown as RuleCheck;
}

/** Three diameters, as most books have it. */
export const threeDiameters = (number: string, mark: RuleMark): RuleCheck =>
  article(number, mark, 'bend-radius', 'Bends: centreline radius three diameters at least.', { least: 3 });

/** How far from round a bend may come out. */
export const roundEnough = (number: string, mark: RuleMark): RuleCheck =>
  article(number, mark, 'bend-radius roundness', 'Bends: least over greatest diameter 0.9 at least.', { least: 0.9 });
