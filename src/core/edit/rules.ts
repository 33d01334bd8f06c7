/** Edits of the rule sheets of a job, of their articles, and of what was answered to them. An article is known by its sheet and its place in it. */
import { mapKeeping } from '../job/map-keeping.ts';
import type { RuleAnswer, RuleCheck } from '../job/kinds/rule-check.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import type { Job } from '../job/types.ts';
import { patched } from './records.ts';

/** The first of `name`, `name-2`, `name-3` ... that no sheet of the list goes by. */
export function freeSheetId(sheets: readonly Pick<RuleSheet, 'sheet'>[], name: string): string {
  const taken = new Set(sheets.map(({ sheet }) => sheet));
  for (let at = 1; ; at++) {
    const id = at === 1 ? name : `${name}-${at}`;
    if (!taken.has(id)) return id;
  }
}

/** The job with that sheet too, under an id of its own where another goes by its. */
export const addSheet = (job: Job, sheet: RuleSheet): Job => ({
  ...job,
  rules: [...job.rules, { ...sheet, sheet: freeSheetId(job.rules, sheet.sheet) }],
});

export const removeSheet = (job: Job, id: string): Job => {
  const rest = job.rules.filter(({ sheet }) => sheet !== id);
  return rest.length === job.rules.length ? job : { ...job, rules: rest };
};

export const updateSheet = (job: Job, id: string, fields: Partial<RuleSheet>): Job =>
  changeSheet(job, id, (sheet) => patched(sheet, fields));

/** An article at the end of the sheet. */
export const addCheck = (job: Job, id: string, check: RuleCheck): Job =>
  changeSheet(job, id, (sheet) => ({ ...sheet, checks: [...sheet.checks, check] }));

/** Another article in the place of that one. */
export const setCheck = (job: Job, id: string, at: number, check: RuleCheck): Job =>
  changeChecks(job, id, (each, i) => (i === at ? check : each));

export const removeCheck = (job: Job, id: string, at: number): Job =>
  changeSheet(job, id, (sheet) =>
    at in sheet.checks ? { ...sheet, checks: sheet.checks.filter((_, i) => i !== at) } : sheet,
  );

/** What was said of an article; undefined: nothing any more. */
export const setAnswer = (job: Job, id: string, at: number, answer: RuleAnswer | undefined): Job =>
  changeChecks(job, id, (check, i) => {
    if (i !== at) return check;
    const { answer: _before, ...rest } = check;
    return answer === undefined ? rest : { ...rest, answer };
  });

/** kg; undefined: nobody has said. */
export function setCarMass(job: Job, carMass: number | undefined): Job {
  if (job.carMass === carMass) return job;
  const { carMass: _before, ...rest } = job;
  return carMass === undefined ? rest : { ...rest, carMass };
}

/** The job with that sheet changed: filled in further, say. */
export function changeSheet(job: Job, id: string, change: (sheet: RuleSheet) => RuleSheet): Job {
  const rules = mapKeeping(job.rules, (sheet) => (sheet.sheet === id ? change(sheet) : sheet));
  return rules === job.rules ? job : { ...job, rules };
}

function changeChecks(job: Job, id: string, change: (check: RuleCheck, at: number) => RuleCheck): Job {
  return changeSheet(job, id, (sheet) => {
    const checks = mapKeeping(sheet.checks, change);
    return checks === sheet.checks ? sheet : { ...sheet, checks };
  });
}
