/** Whom an article means where it names no roles: head room and harness are measured to bars that a book never needs to name. */
import type { RuleCheck } from '../job/kinds/rule-check.ts';

/** What stands in front of the driver, the likeliest first: the first of these roles that there is counts. */
export const FRONT = ['front-hoop', 'windscreen-header', 'roof-ring', 'front-leg', 'side-hoop'] as const;

/** The roles that it is about, and those that it is measured to. */
export interface Meant {
  readonly roles: readonly string[];
  readonly onto: readonly string[];
}

/** The article's own; else those of its kind. */
export function meantBy({ kind, of, roles, onto = [] }: RuleCheck): Meant {
  const own = (given: readonly string[], else_: readonly string[]) => (given.length > 0 ? given : else_);
  if (kind === 'harness') return { roles: own(roles, ['harness-bar']), onto };
  if (kind !== 'head-room') return { roles, onto };
  if (of === 'line-front') return { roles: own(roles, ['main-hoop']), onto: own(onto, FRONT) };
  if (of === 'line-stay') return { roles: own(roles, ['main-hoop']), onto: own(onto, ['rear-stay']) };
  return { roles, onto };
}
