/** Many points at once, from a spreadsheet; what was read stands below before anything is added, as one undo step. */
import { useState, type ReactNode } from 'react';
import { addPoint } from '../../core/edit/points.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { readPointList } from './pointList.ts';
import { RowsBox } from './RowsBox.tsx';

export function PastePoints(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const [text, setText] = useState('');
  const { points, refusals } = readPointList(text, unit);
  const count = `${points.length} ${points.length === 1 ? 'point' : 'points'}`;
  return (
    <div className="fields">
      <RowsBox
        label="Rows from a spreadsheet: name, along, offset, height"
        text={text}
        refusals={refusals}
        onText={setText}
      />
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
