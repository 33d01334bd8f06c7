/** The chosen reading: what was read, where, how sure, and whether it counts. */
import { useEffect, useRef, type ReactNode } from 'react';
import { leaveOut, removeReadings, setReadingPoint, setReadingSigma } from '../../core/edit/measurements.ts';
import { GREATEST_SIGMA, pointsOf, sigmaOf, type Measurement } from '../../core/job/kinds/measurement.ts';
import type { Job } from '../../core/job/types.ts';
import { capital } from '../../core/words/lists.ts';
import { measurementInWords } from '../../core/words/survey.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField } from '../fields/EntryField.tsx';
import { AngleField, LengthField } from '../fields/Fields.tsx';
import { deviationKind } from '../fields/kinds.ts';
import { jobEdit } from '../fields/jobEdit.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { Command } from '../kit/Command.tsx';
import { withImages } from '../kit/names.ts';
import { readingEdit } from './ReadingsTable.tsx';

const KEYS = { point: 'At', from: 'From', to: 'To' } as const;

/** `again`: it is to be measured again, so the field of what it reads takes the focus; another number asks anew. */
export function ReadingCard({
  job,
  reading,
  again,
}: {
  job: Job;
  reading: Measurement;
  again: number | null;
}): ReactNode {
  const card = useRef<HTMLElement>(null);
  useEffect(() => {
    if (again !== null) card.current?.querySelector('input')?.focus();
  }, [again]);
  const name = measurementInWords(job, reading);
  const isOut = reading.excluded === true;
  const props = { label: 'Reads', ...readingEdit(reading) };
  return (
    <article ref={card} className="card chosen-card" aria-label={`Reading: ${name}`}>
      <h4>{capital(name)}</h4>
      <div className="fields">
        {reading.kind === 'inclination' ? <AngleField {...props} /> : <LengthField {...props} />}
        {pointsOf(reading).map(([key, ref]) => (
          <JobSelect
            key={key}
            label={KEYS[key]}
            value={ref}
            choices={withImages(job.points)}
            step="Change where it was measured"
            change={(before, to) => setReadingPoint(before, reading.id, key, to)}
          />
        ))}
        <SigmaField reading={reading} />
        {reading.instrument !== undefined && <p className="small">Read with {reading.instrument}.</p>}
      </div>
      <div className="row">
        <Command
          quiet
          step={isOut ? `Take back ${name}` : `Leave out ${name}`}
          run={(before) => leaveOut(before, reading.id, !isOut)}
        >
          {isOut ? 'Take it back' : 'Leave it out'}
        </Command>
        <Command
          quiet
          destroys={reading.id}
          step={`Delete ${name}`}
          run={(before) => removeReadings(before, [reading.id])}
        >
          Delete the reading
        </Command>
      </div>
    </article>
  );
}

function SigmaField({ reading }: { reading: Measurement }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const props = {
    label: 'Sure to, about',
    value: sigmaOf(reading),
    ...jobEdit<number>('Say how sure a reading is', (job, sigma) => setReadingSigma(job, reading.id, sigma)),
  };
  return reading.kind === 'inclination' ? (
    <AngleField {...props} />
  ) : (
    <EntryField {...props} kind={deviationKind(unit, GREATEST_SIGMA)} unit={unit} numeric />
  );
}
