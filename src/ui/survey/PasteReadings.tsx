/** Many readings at once, from a spreadsheet; what was read stands below before anything is added, as one undo step. */
import { useState, type ReactNode } from 'react';
import { addReading } from '../../core/edit/measurements.ts';
import { shownName } from '../../core/job/shown.ts';
import { kindRead } from '../../core/survey/ways.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { readWith, useInstruments } from './ReadWith.tsx';
import { readReadingList } from './readingList.ts';
import { RowsBox } from './RowsBox.tsx';

export default function PasteReadings(): ReactNode {
  const job = useDocument((state) => state.job);
  const [text, setText] = useState('');
  const instrumentFor = useInstruments();
  const { rows, refusals } = readReadingList(text, job);
  const count = `${rows.length} ${rows.length === 1 ? 'reading' : 'readings'}`;
  return (
    <div className="fields">
      <RowsBox label="Rows of a spreadsheet: kind, from, to, value" text={text} refusals={refusals} onText={setText} />
      {rows.length > 0 && (
        <ol className="read-rows" aria-label="What was read">
          {rows.map(({ said, inWords }, index) => {
            const instrument = instrumentFor(kindRead(said.way));
            return (
              <li key={index} className="small">
                {inWords}
                {instrument !== undefined && `, with ${shownName(instrument.name)}`}
              </li>
            );
          })}
        </ol>
      )}
      <Command
        step={`Add ${count}`}
        disabled={rows.length === 0}
        run={(before) =>
          rows.reduce(
            (done, { said }) => addReading(done, { ...said, ...readWith(instrumentFor(kindRead(said.way))) }),
            before,
          )
        }
        onDone={() => setText('')}
      >
        {rows.length === 0 ? 'Add the readings' : `Add ${count}`}
      </Command>
    </div>
  );
}
