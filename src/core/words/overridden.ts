/** What two devices wrote in one place, in words: of which thing it is, and what each wrote. */
import { isFields } from '../job/change.ts';
import { sameData } from '../job/equal.ts';
import { kindOf, LISTS } from '../job/kinds.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { fieldLines, type FieldLine } from './field-differs.ts';
import { capital } from './lists.ts';

/** The record's list, its name and the field within it, and the values; undefined: it was taken out. */
export interface WroteTwice {
  readonly list: string;
  readonly record: string;
  readonly field: string;
  readonly theirs: unknown;
  readonly counts: unknown;
}

export interface OverriddenWords {
  /** "Node N12", "Its bend run, Main hoop, bends 2". */
  readonly title: string;
  /** What counts stands under `here`, in the job's unit. */
  readonly lines: readonly FieldLine[];
}

export function overriddenInWords({ list, record, field, theirs, counts }: WroteTwice, job: Job): OverriddenWords {
  const known = LISTS.find((each) => each === list);
  const row = known === undefined ? undefined : kindOf(known);
  const name = shownName(record);
  const whole = row?.word !== undefined ? `${row.word} ${name}` : row?.inWords ? `${row.inWords}, ${name}` : name;
  const [first = '', ...item] = field.split(' ');
  return {
    title: list === '' ? 'The job' : `${capital(whole)}${item.length === 0 ? '' : `, ${field}`}`,
    lines: fieldLines(
      item.length > 0 ? figuresApart(counts, theirs, first) : [{ field: first, here: counts, there: theirs }],
      job,
      job,
    ),
  };
}

/** Of an item of a list within a record, a bend say, the figures that are not alike. */
function figuresApart(
  here: unknown,
  there: unknown,
  field: string,
): readonly { readonly field: string; readonly here: unknown; readonly there: unknown }[] {
  if (!isFields(here) || !isFields(there)) return [{ field, here, there }];
  const keys = [...new Set([...Object.keys(here), ...Object.keys(there)])];
  return keys
    .filter((key) => !sameData(here[key], there[key]))
    .map((key) => ({ field: key, here: here[key], there: there[key] }));
}
