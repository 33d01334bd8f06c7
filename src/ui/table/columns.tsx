/**
 * Columns of an editable table. Each is made from a kind of value, and can show a row's cell, open a field in it, and
 * read a pasted text into a change of the job.
 */
import type { ReactNode } from 'react';
import type { Job } from '../../core/job/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { remembered } from '../../core/remembered.ts';
import { EntryField, type Leaving, type Note } from '../fields/EntryField.tsx';
import {
  BendAngleField,
  DayField,
  LengthField,
  SelectField,
  SizeOrNothingField,
  TextField,
  WallField,
  type Choice,
  type FieldProps,
} from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import {
  bendAngleKind,
  dayKind,
  lengthKind,
  numberKind,
  orNothing,
  readUnseen,
  sizeKind,
  textKind,
  wallKind,
  type ValueKind,
} from '../fields/kinds.ts';
import { Length } from '../fields/Readings.tsx';
import type { PasteRead } from './block.ts';

/** What the table hands to a field that it opens in a cell. */
export interface Opening {
  readonly label: string;
  readonly startWith?: string;
  onLeave(how: Leaving): void;
  onNote(note: Note | null): void;
}

export interface Column<Row> {
  readonly header: string;
  /** Said with the header, never drawn: "Along" is forward positive. */
  readonly means?: string;
  readonly numeric?: boolean;
  /** Set small, on one line: a word that names something said elsewhere. */
  readonly small?: boolean;
  show(row: Row): ReactNode;
  /** Rows in which the cell is only read all the same. */
  isRead?(row: Row): boolean;
  /** Absent: a column that is only read. */
  readonly edit?: {
    open(row: Row, opening: Opening): ReactNode;
    paste(row: Row, text: string): PasteRead;
  };
}

/** How the cell is edited; undefined where it is only read. */
export const editIn = <Row,>(column: Column<Row> | undefined, row: Row): Column<Row>['edit'] =>
  column?.isRead?.(row) ? undefined : column?.edit;

interface Stored<Row, T> {
  readonly header: string;
  readonly means?: string;
  readonly small?: boolean;
  /** Names the step in undo. */
  readonly step: string;
  value(row: Row): T;
  change(job: Job, row: Row, value: T): Job;
}

/** A length in mm. `size`: only more than zero will do. */
export function lengthColumn<Row>(unit: LengthUnit, given: Stored<Row, number> & { size?: boolean }): Column<Row> {
  return {
    ...heading(given),
    numeric: true,
    show: (row) => <Length mm={given.value(row)} stored />,
    edit: {
      open: (row, opening) => <LengthField {...bound(row, given, opening)} size={given.size ?? false} />,
      paste: pasteWith(given.size ? sizeKind(unit) : lengthKind(unit), given),
    },
  };
}

/** A length above zero in mm, or nothing where it is not said. */
export function sizeOrNothingColumn<Row>(unit: LengthUnit, given: Stored<Row, number | null>): Column<Row> {
  return {
    ...heading(given),
    numeric: true,
    show(row) {
      const mm = given.value(row);
      return mm === null ? '–' : <Length mm={mm} stored />;
    },
    edit: {
      open: (row, opening) => <SizeOrNothingField {...bound(row, given, opening)} />,
      paste: pasteWith(orNothing(sizeKind(unit)), given),
    },
  };
}

/** The wall of a tube, mm, shown in decimals. */
export function wallColumn<Row>(unit: LengthUnit, given: Stored<Row, number>): Column<Row> {
  const kind = wallKind(unit);
  return {
    ...heading(given),
    numeric: true,
    show: (row) => <span className="figure">{kind.show(given.value(row))}</span>,
    edit: { open: (row, opening) => <WallField {...bound(row, given, opening)} />, paste: pasteWith(kind, given) },
  };
}

/** An angle at the bender, degrees. */
export function bendAngleColumn<Row>(given: Stored<Row, number>): Column<Row> {
  return {
    ...heading(given),
    numeric: true,
    show: (row) => <span className="figure">{`${bendAngleKind.show(given.value(row))}°`}</span>,
    edit: {
      open: (row, opening) => <BendAngleField {...bound(row, given, opening)} />,
      paste: pasteWith(bendAngleKind, given),
    },
  };
}

/** A day, or nothing. */
export function dayColumn<Row>(given: Stored<Row, string>): Column<Row> {
  return {
    ...heading(given),
    show: (row) => <span className="figure">{given.value(row)}</span>,
    edit: { open: (row, opening) => <DayField {...bound(row, given, opening)} />, paste: pasteWith(dayKind, given) },
  };
}

/** A plain number between two limits. */
export function numberColumn<Row>(
  limits: { least: number; greatest: number; step: number },
  given: Stored<Row, number>,
): Column<Row> {
  return valueColumn(numberKind(limits.least, limits.greatest, limits.step), given);
}

/** A figure of whatever kind, as the kind shows it; a dash where that is nothing. */
export function valueColumn<Row, T>(kind: ValueKind<T>, given: Stored<Row, T>): Column<Row> {
  return {
    ...heading(given),
    numeric: true,
    show: (row) => <span className="figure">{kind.show(given.value(row)) || '–'}</span>,
    edit: {
      open: (row, opening) => <EntryField {...bound(row, given, opening)} kind={kind} numeric />,
      paste: pasteWith(kind, given),
    },
  };
}

export function textColumn<Row>(
  given: Stored<Row, string> & { mayBeEmpty?: boolean; suggestions?: readonly string[] },
): Column<Row> {
  const { mayBeEmpty = false, suggestions } = given;
  const kind = textKind(mayBeEmpty);
  return {
    ...heading(given),
    show: (row) => kind.show(given.value(row)),
    edit: {
      open: (row, opening) => (
        <TextField {...bound(row, given, opening)} mayBeEmpty={mayBeEmpty} {...(suggestions && { suggestions })} />
      ),
      paste: pasteWith(kind, given),
    },
  };
}

/** One of a list; pasted by its label or its value. */
export function choiceColumn<Row>(given: Stored<Row, string> & { choices(row: Row): readonly Choice[] }): Column<Row> {
  const chosen = (row: Row, text: string): Choice | undefined =>
    given.choices(row).find((choice) => choice.label === text.trim() || choice.value === text.trim());
  return {
    ...heading(given),
    show: (row) => labels(given.choices(row)).get(given.value(row)) ?? given.value(row),
    edit: {
      open: (row, opening) => (
        <SelectField
          label={opening.label}
          labelUnseen
          takesFocus
          value={given.value(row)}
          choices={given.choices(row)}
          onLeave={opening.onLeave}
          onChoose={(value) => {
            const faults = jobEdit<string>(given.step, (job, next) => given.change(job, row, next)).commit(value);
            const refused = faults.map((fault) => fault.message).join('; ');
            opening.onNote(faults.length === 0 ? null : { refused: true, text: refused });
          }}
        />
      ),
      paste(row, text) {
        const choice = chosen(row, text);
        if (choice === undefined) return { ok: false, why: 'not one of the choices' };
        return { ok: true, change: (job) => given.change(job, row, choice.value) };
      },
    },
  };
}

/** Every row of a long table looks its label up in the same list. */
const labels = remembered(
  (choices: readonly Choice[]) => new Map(choices.map(({ value, label }) => [value, label] as const)),
);

const heading = <Row, T>({
  header,
  means,
  small,
}: Stored<Row, T>): Pick<Column<Row>, 'header' | 'means' | 'small'> => ({
  header,
  ...(means !== undefined && { means }),
  ...(small !== undefined && { small }),
});

function bound<Row, T>(row: Row, given: Stored<Row, T>, opening: Opening): FieldProps<T> {
  return {
    ...opening,
    ...jobEdit<T>(given.step, (job, value) => given.change(job, row, value)),
    value: given.value(row),
    labelUnseen: true,
    takesFocus: true,
  };
}

const pasteWith =
  <Row, T>(kind: ValueKind<T>, given: Stored<Row, T>) =>
  (row: Row, text: string): PasteRead => {
    const entered = readUnseen(text, kind);
    return entered.ok ? { ok: true, change: (job) => given.change(job, row, entered.value) } : entered;
  };
