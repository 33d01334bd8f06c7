/** A sheet as it goes from job to job: what was answered was answered of one car. */
import type { RuleSheet } from './kinds/rule-sheet.ts';
import { mapKeeping } from './map-keeping.ts';

/** The sheet without a person's answers; the same one where there are none. */
export function blankSheet(sheet: RuleSheet): RuleSheet {
  const checks = mapKeeping(sheet.checks, (check) => {
    if (check.answer === undefined) return check;
    const { answer: _answer, ...rest } = check;
    return rest;
  });
  return checks === sheet.checks ? sheet : { ...sheet, checks };
}
