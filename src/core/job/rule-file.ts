/**
 * The file of rule sheets alone, so that a shop can keep them, hand them on and read them back: text -> sheets, or all that is wrong with it, each fault naming
 * its place, by the same door as a job's. Nothing throws. A sheet is the same record here and in a job.
 */
import * as v from 'valibot';
import { onePerPlace, shapeOf, type FileFormat } from './door.ts';
import { capped, type Fault } from './fault.ts';
import { joinedOrder } from './joined-order.ts';
import { ruleSheetKind, type RuleSheet } from './kinds/rule-sheet.ts';
import { textWriter } from './text.ts';
import { listFaults } from './validate.ts';

export interface RuleFile {
  readonly format: 'cagewright/rules';
  readonly version: 1;
  readonly rules: readonly RuleSheet[];
}

export type ParsedRules =
  | { readonly ok: true; readonly sheets: readonly RuleSheet[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** docs/rules.schema.json is made from this schema. */
export const ruleFileSchema = v.looseObject({
  format: v.literal('cagewright/rules'),
  version: v.literal(1),
  rules: v.pipe(v.array(ruleSheetKind.shape), v.minLength(1, 'holds no sheet')),
});

const RULE_FILE: FileFormat<RuleFile> = {
  format: 'cagewright/rules',
  word: 'rule sheet',
  strangers: {
    'cagewright/job': 'a job file: open it as a job; its rule sheets are in it',
    'cagewright/shop': 'a shop record: open it under Shop record',
    'cagewright/fabrication': 'made from a job and never read back',
  },
  present: 1,
  migrate: (file) => file,
  shape: ruleFileSchema,
  finished: (shaped) => shaped as RuleFile,
};

/** The sheets in a file's text. Faults as of a job's: in the order in which they are found, one a place, at most 50 and a count. */
export function parseRules(text: string): ParsedRules {
  const { read: file, faults } = shapeOf(text, RULE_FILE);
  const all =
    file === null
      ? faults
      : [...faults, ...listFaults([{ place: 'rules', kind: ruleSheetKind, records: file.rules }], {})];
  if (file !== null && all.length === 0) return { ok: true, sheets: file.rules };
  return { ok: false, faults: capped(onePerPlace(all)) };
}

const KEYS = joinedOrder([['format', 'version', 'rules'], ...ruleSheetKind.keys.map((line) => line.split(' '))]);
const writeText: (file: RuleFile) => string = textWriter(KEYS);

/** The file's text. parseRules gives equal sheets back. */
export const serialiseRules = (rules: readonly RuleSheet[]): string =>
  writeText({ format: 'cagewright/rules', version: 1, rules });
