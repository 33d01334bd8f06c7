/** Lines of the body, drawn through points in order so that one sees where the cage stands. Nothing stands on them. */
import { shownName } from '../../core/job/shown.ts';
import { useState, type ReactNode } from 'react';
import { addBodyLine, removeBodyLine, updateBodyLine } from '../../core/edit/bodyLines.ts';
import type { TrimGaps } from '../../core/gaps/measure-trim.ts';
import type { BodyLine } from '../../core/job/kinds/body-line.ts';
import type { PointRef } from '../../core/job/reference.ts';
import { useDocument } from '../../store/page.ts';
import { setLineGap } from '../../core/edit/least-gap.ts';
import { Command } from '../kit/Command.tsx';
import { ChainField } from '../fields/ChainField.tsx';
import { SizeOrNothingField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { pointName } from '../../core/solve/names.ts';
import { withImages } from '../kit/names.ts';
import { TrimGapList } from './TrimGapList.tsx';
import type { TrimOf } from './useTrim.ts';

export function BodyLines({ trimOf }: { trimOf: TrimOf }): ReactNode {
  const lines = useDocument((state) => state.job.bodyLines);
  return (
    <>
      {lines.length === 0 && (
        <p className="small">
          None yet. Draw one through the points of a pillar, a sill or a roof rail: it shows in the bay and changes
          nothing.
        </p>
      )}
      <ul className="lines">
        {lines.map((line) => (
          <Line key={line.id} line={line} all={trimOf('bodyLine', line.id)} />
        ))}
      </ul>
      <NewLine />
    </>
  );
}

function Line({ line, all }: { line: BodyLine; all: readonly TrimGaps[] }): ReactNode {
  const job = useDocument((state) => state.job);
  return (
    <li className="line">
      <TextField
        label="Body line"
        labelUnseen
        value={line.name}
        {...jobEdit<string>('Rename a body line', (before, name) => updateBodyLine(before, line.id, { name }))}
      />
      <p className="small">{line.points.map((reference) => pointName(job, reference)).join(' → ')}</p>
      <Command
        quiet
        destroys={line.id}
        step={`Delete ${line.name}`}
        label={`Delete body line ${shownName(line.name)}`}
        run={(before) => removeBodyLine(before, line.id)}
      >
        Delete
      </Command>
      <div className="line-gap">
        <SizeOrNothingField
          label="Least gap wanted"
          value={line.leastGap ?? null}
          {...jobEdit<number | null>(`Least gap at ${line.name}`, (before, gap) => setLineGap(before, line.id, gap))}
        />
        <TrimGapList all={all} />
      </div>
    </li>
  );
}

function NewLine(): ReactNode {
  const job = useDocument((state) => state.job);
  const [points, setPoints] = useState<readonly PointRef[]>([]);
  if (job.points.length === 0) return null;
  const name = `Line ${job.bodyLines.length + 1}`;
  return (
    <div className="fields">
      <ChainField
        first="New line from"
        next="then to"
        chain={points}
        choices={withImages(job.points)}
        onChange={setPoints}
      />
      {points.length > 0 && (
        <div className="row">
          <Command
            step={`Add ${name}`}
            disabled={points.length < 2}
            run={(before) => addBodyLine(before, name, points)}
            onDone={() => setPoints([])}
          >
            Draw it
          </Command>
          <button
            type="button"
            className="press press-quiet"
            onClick={() => setPoints((before) => before.slice(0, -1))}
          >
            Remove the last point
          </button>
        </div>
      )}
    </div>
  );
}
