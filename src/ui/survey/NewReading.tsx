/** One measurement after another, by keyboard alone: Enter goes on to the next field, after the last one the next line begins with the same kind. */
import { useEffect, useId, useRef, useState, type FormEvent, type ReactNode } from 'react';
import { addReading } from '../../core/edit/measurements.ts';
import type { Job } from '../../core/job/types.ts';
import { measurementInWords } from '../../core/words/survey.ts';
import { kindRead, WAYS, type Way } from '../../core/survey/ways.ts';
import { WAY_MEANS, WAY_WORDS } from '../../core/words/ways.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { readBackOf } from '../fields/kinds.ts';
import { Refused } from '../kit/Refused.tsx';
import { FIRST_LINE, kindOfWay, saidOf, slotsOf, type Line, type Slot } from './line.ts';
import type { PointChoice } from './pointChoice.ts';
import { NOT_PICKED, PointPick, takenOf } from './PointPick.tsx';
import { ReadWith, readWith, useInstrument } from './ReadWith.tsx';
import { WayPicture } from './WayPicture.tsx';

/** `begun`: the line as it was begun elsewhere, by what would fix a point best. */
export function NewReading({ points, begun }: { points: readonly PointChoice[]; begun: Line | null }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const [line, setLine] = useState<Line>(begun ?? FIRST_LINE);
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const [added, setAdded] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const wayId = useId();
  const { way } = line;
  const kind = kindOfWay(way, unit);
  const value = kind.read(line.value);
  const slots = slotsOf(way);
  const instrument = useInstrument(kindRead(way));

  const focus = (slot: Slot): void => {
    const field = form.current?.querySelector<HTMLElement>(
      slot === 'value' ? '.reading-value input' : slot === 'way' ? 'select' : `[data-slot="${slot}"]`,
    );
    field?.focus();
  };

  useEffect(() => {
    if (begun !== null) form.current?.querySelector<HTMLInputElement>('.reading-value input')?.focus();
  }, [begun]);

  const change = (part: Partial<Line>): void => {
    setLine((before) => ({ ...before, ...part }));
    setRefusal('');
    setAdded('');
  };

  const nextAfter = (slot: Slot): void => {
    const next = slots[slots.indexOf(slot) + 1];
    if (next !== undefined) focus(next);
    // What was chosen with that key is in the line once it is drawn.
    else requestAnimationFrame(() => form.current?.requestSubmit());
  };

  function add(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    const from = takenOf(line.from, points);
    const to = slots.includes('to') ? takenOf(line.to, points) : null;
    const read = slots.includes('value') ? value : ({ ok: true, value: 0 } as const);
    if (from === null) return focus('from');
    if (slots.includes('to') && to === null) return focus('to');
    if (!read.ok) return focus('value');
    const { edit, job } = jobDocument.getState();
    const after = addReading(job, {
      way,
      from: saidOf(from),
      to: to === null ? undefined : saidOf(to),
      value: read.value,
      ...readWith(instrument),
    });
    const faults = edit(stepOf(after, way), () => after);
    setRefusal(faults.map((fault) => fault.message).join('; '));
    if (faults.length > 0) return;
    setAdded(stepOf(after, way));
    setAsked(false);
    // A tape is often run from one point to many: that one stays, ready to be typed over.
    setLine({ way, from: slots.includes('to') ? line.from : NOT_PICKED, to: NOT_PICKED, value: '' });
    focus('from');
    form.current?.querySelector<HTMLInputElement>('[data-slot="from"]')?.select();
  }

  return (
    <form ref={form} className="fields new-reading" aria-label="Measure" noValidate onSubmit={add}>
      <div className="reading-way">
        <WayPicture way={way} />
        <div className="entry">
          <label htmlFor={wayId} className="entry-label">
            What is measured
          </label>
          <select
            id={wayId}
            className="entry-input entry-select"
            value={way}
            onChange={(event) => change({ way: event.currentTarget.value as Way, value: '' })}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return;
              event.preventDefault();
              focus('from');
            }}
          >
            {WAYS.map((each) => (
              <option key={each} value={each}>
                {WAY_WORDS[each]}
              </option>
            ))}
          </select>
        </div>
      </div>
      <p className="small">{WAY_MEANS[way]}</p>
      <PointPick
        label={slots.includes('to') ? 'From' : 'Point'}
        slot="from"
        points={points}
        picked={line.from}
        asked={asked}
        onPick={(from) => change({ from })}
        onNext={() => nextAfter('from')}
      />
      {slots.includes('to') && (
        <PointPick
          label="To"
          slot="to"
          points={points}
          picked={line.to}
          asked={asked}
          onPick={(to) => change({ to })}
          onNext={() => nextAfter('to')}
        />
      )}
      {slots.includes('value') && (
        <div className="reading-value">
          <DraftField
            label="Reads"
            unit={way === 'slope' ? '°' : unit}
            inputMode={kind.inputMode}
            text={line.value}
            entered={value}
            asked={asked}
            readBack={value.ok ? readBackOf(value, kind) : ''}
            onType={(text) => change({ value: text })}
          />
        </div>
      )}
      <ReadWith kind={kindRead(way)} />
      <button type="submit" className="press">
        Add it
      </button>
      <Refused why={refusal} />
      <p className="spoken-only" role="status">
        {added}
      </p>
    </form>
  );
}

/** "Add the height of Roof, left". */
const stepOf = (job: Job, way: Way): string =>
  way === 'plumb' ? 'Add a plumb line' : `Add ${measurementInWords(job, job.measurements.at(-1)!)}`;
