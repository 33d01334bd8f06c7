/** The figures of an article: which ones its kind has, what each counts, and the article with another in one of them. */
import { quantityOf, type Quantity, type RuleCheck, type RuleMark, type RuleSize } from '../job/kinds/rule-check.ts';

/** The fields of an article that are typed as figures. */
export type FigureName =
  | 'sizes'
  | 'outerDiameter'
  | 'wall'
  | 'area'
  | 'secondMoment'
  | 'allowance'
  | 'least'
  | 'most'
  | 'aim'
  | 'within'
  | 'diameter'
  | 'massFrom'
  | 'massUpTo';

/** What is typed: a number, or tubes of which one is to be met. */
export type FigureValue = number | readonly RuleSize[];

/** In the order in which they are typed. */
export function figuresOf({ kind, of }: Pick<RuleCheck, 'kind' | 'of'>): readonly FigureName[] {
  switch (kind) {
    case 'section':
      return ['sizes', 'outerDiameter', 'wall', 'area', 'secondMoment', 'allowance', 'massFrom', 'massUpTo'];
    case 'support':
      return ['most', 'within', 'massFrom', 'massUpTo'];
    case 'head-room':
      return of === 'circle'
        ? ['least', 'diameter', 'massFrom', 'massUpTo']
        : ['least', 'most', 'massFrom', 'massUpTo'];
    case 'one-piece':
      return ['massFrom', 'massUpTo'];
    case 'ask':
      return [];
    default:
      return kind === 'harness'
        ? ['least', 'most', 'aim', 'massFrom', 'massUpTo']
        : ['least', 'most', 'massFrom', 'massUpTo'];
  }
}

/** What the figure counts. */
export function quantityOfFigure(check: RuleCheck, name: FigureName): Quantity | 'mass' | 'sizes' {
  switch (name) {
    case 'least':
    case 'most':
    case 'aim':
      return quantityOf(check);
    case 'massFrom':
    case 'massUpTo':
      return 'mass';
    case 'sizes':
      return 'sizes';
    case 'area':
    case 'secondMoment':
      return name;
    default:
      return 'length';
  }
}

/** The article with that figure, or without it where nothing is typed. */
export function withFigure(check: RuleCheck, name: FigureName, value: FigureValue | null): RuleCheck {
  const { [name]: _before, ...rest } = check;
  const isNothing = value === null || (typeof value !== 'number' && value.length === 0);
  return isNothing ? rest : { ...rest, [name]: value };
}

/** The same as somebody types it: what is new is as sure as `mark` says; a figure that stays as it was changes nothing. */
export function withTyped(check: RuleCheck, name: FigureName, value: FigureValue | null, mark: RuleMark): RuleCheck {
  const typed = withFigure(check, name, value);
  return JSON.stringify(typed[name]) === JSON.stringify(check[name]) ? check : { ...typed, mark };
}

/** Whether any of these is typed. */
export const hasAny = (check: RuleCheck, names: readonly FigureName[]): boolean =>
  names.some((name) => check[name] !== undefined);
