/** Every reading on a line: what was measured, what was read, and by how much the others disagree. */
import { useMemo, useRef, type ReactNode } from 'react';
import { setReadingValue } from '../../core/edit/measurements.ts';
import type { Measurement } from '../../core/job/kinds/measurement.ts';
import type { Job } from '../../core/job/types.ts';
import type { Adjusted } from '../../core/survey/adjust.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { pictureOf, wayOf } from '../../core/survey/ways.ts';
import { capital } from '../../core/words/lists.ts';
import { leftOverInWords, offByInWords } from '../../core/words/residuals.ts';
import { measurementInWords, readInWords } from '../../core/words/survey.ts';
import { AngleField, LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { readUnseen } from '../fields/kinds.ts';
import type { Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { kindOfWay } from './line.ts';
import { WayPicture } from './WayPicture.tsx';

interface Props {
  readonly job: Job;
  readonly survey: Adjusted;
  readonly chosen: string | null;
  onChoose(id: string): void;
}

/** A reading with what the others say of it, made anew only when one of the two is another. */
interface Row {
  readonly reading: Measurement;
  readonly name: string;
  readonly off: string;
  readonly isSuspect: boolean;
}

const isSame = (a: Row, b: Row): boolean =>
  a.reading === b.reading && a.name === b.name && a.off === b.off && a.isSuspect === b.isSuspect;

export function ReadingsTable({ job, survey, chosen, onChoose }: Props): ReactNode {
  const before = useRef<readonly Row[]>([]);
  const rows = useMemo((): readonly Row[] => {
    const residuals = new Map(survey.residuals.map((each) => [each.index, each]));
    const suspects = new Map(survey.suspects.map(({ index, fits }) => [index, fits]));
    const known = new Map(before.current.map((row) => [row.reading.id, row]));
    before.current = job.measurements.map((reading, index): Row => {
      const left = residuals.get(index);
      // What is off pulls its point along, and seems less off than the others say it is.
      const fits = suspects.get(index);
      const row = {
        reading,
        name: capital(measurementInWords(job, reading)),
        off:
          left === undefined
            ? 'left out'
            : fits === undefined
              ? leftOverInWords(reading, left, job.lengthUnit)
              : offByInWords(reading, fits - reading.value, job.lengthUnit),
        isSuspect: fits !== undefined,
      };
      const was = known.get(reading.id);
      return was !== undefined && isSame(was, row) ? was : row;
    });
    return before.current;
  }, [job, survey]);
  const columns = useMemo(() => columnsIn(job.lengthUnit), [job.lengthUnit]);
  return (
    <EditTable
      tight
      caption="What was measured"
      rows={rows}
      columns={columns}
      rowId={({ reading }) => reading.id}
      rowName={({ name }) => name}
      selected={chosen}
      onSelect={({ reading }) => onChoose(reading.id)}
    />
  );
}

const columnsIn = (unit: LengthUnit): readonly Column<Row>[] => [
  {
    header: 'Measured',
    show: ({ reading, name }) => (
      <span className={reading.excluded ? 'reading-name reading-out' : 'reading-name'}>
        <WayPicture way={pictureOf(reading)} /> {name}
      </span>
    ),
  },
  {
    header: 'Reads',
    numeric: true,
    show: ({ reading }) => (
      <span className={reading.excluded ? 'figure reading-out' : 'figure'}>
        {readInWords(reading, reading.value, unit)}
      </span>
    ),
    edit: {
      open({ reading }, opening) {
        const props = { ...opening, ...readingEdit(reading), labelUnseen: true, takesFocus: true };
        return reading.kind === 'inclination' ? <AngleField {...props} /> : <LengthField {...props} />;
      },
      paste({ reading }, text) {
        const entered = readUnseen(text, kindOfWay(wayOf(reading), unit));
        return entered.ok
          ? { ok: true, change: (before) => setReadingValue(before, reading.id, entered.value) }
          : entered;
      },
    },
  },
  {
    header: 'Off',
    numeric: true,
    show: ({ off, isSuspect }) => (
      <span className={isSuspect ? 'reading-suspect' : 'small'}>
        {isSuspect && <span aria-hidden="true">▲ </span>}
        {off}
        {isSuspect && <span className="spoken-only">, does not agree</span>}
      </span>
    ),
  },
];

/** What was read, in a field: one undo step. */
export const readingEdit = ({ id, value }: Measurement) => ({
  value,
  ...jobEdit<number>('Change a reading', (job, next) => setReadingValue(job, id, next)),
});
