/** Many points at once, from a spreadsheet; what was read stands below before anything is added, as one undo step. */
import { useId, useState, type ReactNode } from 'react';
import { addPoint } from '../../core/edit/points.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { readPointList } from './pointList.ts';

export function PastePoints(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const [text, setText] = useState('');
  const id = useId();
  const { points, refusals } = readPointList(text, unit);
  const count = `${points.length} ${points.length === 1 ? 'point' : 'points'}`;
  return (
    <div className="fields">
      <div className="entry">
        <label htmlFor={id} className="entry-label">
          Rows from a spreadsheet: name, along, offset, height
        </label>
        <textarea
          id={id}
          className="entry-input paste-box"
          rows={4}
          spellCheck={false}
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        {refusals.length > 0 && (
          <ul className="entry-note entry-note-refused paste-refusals" role="alert">
            {refusals.map((line) => (
              <li key={line}>
                <span aria-hidden="true">▲ </span>
                {line}
              </li>
            ))}
          </ul>
        )}
      </div>
      <Command
        step={`Add ${count}`}
        disabled={points.length === 0}
        run={(job) => points.reduce((done, { name, position }) => addPoint(done, name, position), job)}
        onDone={() => setText('')}
      >
        {points.length === 0 ? 'Add the points' : `Add ${count}`}
      </Command>
    </div>
  );
}
