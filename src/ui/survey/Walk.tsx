/**
 * The walk round the car with a telephone: one figure after another, the sketch shows what is read next, big keys take it. Each goes into the job as it
 * is read, a step of undo each; it ends with whether they agree.
 */
import { useEffect, useId, useLayoutEffect, useRef, useState, type FormEvent, type ReactNode } from 'react';
import { readStep } from '../../core/edit/read-step.ts';
import { shownName } from '../../core/job/shown.ts';
import type { LayoutName } from '../../core/survey/spots.ts';
import {
  isBeyondZero,
  leftOutOf,
  readingOf,
  stepsOf,
  toMeasure,
  wayRound,
  type Step,
} from '../../core/survey/to-measure.ts';
import {
  AT_THE_CAR,
  minusInWords,
  newPointName,
  placeName,
  stepName,
  stepPlace,
  TAPES_ACROSS,
} from '../../core/words/measuring.ts';
import { readInWords } from '../../core/words/survey.ts';
import { askedOnCar, viewsOf } from '../../drawing/car/picture.ts';
import { suspectInWords } from '../../core/words/survey-advice.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { lengthKind, readBackOf, sizeKind } from '../fields/kinds.ts';
import { Drawn } from '../kit/Drawn.tsx';
import { Refused } from '../kit/Refused.tsx';
import { KEYS, pressed, type Key } from './keypad.ts';
import { readWith, useInstrument } from './ReadWith.tsx';
import { WalkEnd } from './WalkEnd.tsx';
import './walk.css';

interface Props {
  readonly layout: LayoutName | null;
  closed(): void;
}

export default function Walk({ layout, closed }: Props): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const job = useDocument((state) => state.job);
  const all = toMeasure(job, layout);
  const steps = stepsOf(all);
  const [at, setAt] = useState(() => firstOpen(steps.map((step) => readingOf(job, step) === null)));
  const titleId = useId();
  // Before the field takes the focus, which opening gives to the first key.
  useLayoutEffect(() => {
    if (!dialog.current!.open) dialog.current!.showModal();
  }, []);
  const step = steps[at];
  return (
    <dialog ref={dialog} className="walk" aria-labelledby={titleId} onClose={closed}>
      <header className="walk-head">
        <h2 id={titleId} className="spoken-only">
          {AT_THE_CAR}
        </h2>
        <select
          className="entry-input entry-select"
          aria-label="Go to"
          value={step === undefined ? END : chapterOf(step)}
          onChange={(event) => setAt(beginsAt(steps, event.currentTarget.value))}
        >
          {all.places.map((place) => (
            <option key={place.number} value={place.number}>
              {place.number} {placeName(place)}
            </option>
          ))}
          {all.crossed.length > 0 && <option value={ACROSS}>{TAPES_ACROSS}</option>}
          <option value={END}>Whether they agree</option>
        </select>
        {step !== undefined && (
          <span className="figure">
            {at + 1} of {steps.length}
          </span>
        )}
        <button type="button" className="press press-quiet" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      {step === undefined ? (
        <WalkEnd steps={steps} goTo={setAt} close={() => dialog.current?.close()} />
      ) : (
        <OneStep key={at} step={step} all={all} isFirst={at === 0} go={(by) => setAt(at + by)} />
      )}
    </dialog>
  );
}

const ACROSS = 'across';
const END = 'end';

/** The place that is read at, or the tapes across. */
const chapterOf = (step: Step): string => {
  if (step.kind === 'coordinate') return String(step.place.number);
  return step.from[0] === step.to[0] ? String(step.from[0].number) : ACROSS;
};

function beginsAt(steps: readonly Step[], chapter: string): number {
  return chapter === END ? steps.length : steps.findIndex((step) => chapterOf(step) === chapter);
}

/** The first that is open; the first of all where none is, so that all can be read again. */
const firstOpen = (open: readonly boolean[]): number => Math.max(0, open.indexOf(true));

/** mm: of the sketches, which are shown as large as there is room. */
const SKETCHES = {
  side: { width: 150, height: 66 },
  behind: { width: 80, height: 66 },
  above: { width: 150, height: 84 },
} as const;

const KEY_NAMES: Readonly<Partial<Record<Key, readonly [shown: string, said: string]>>> = {
  back: ['⌫', 'Take back the last'],
  minus: ['±', 'The other way'],
  '1/2': ['+ ½', 'Half an inch'],
  '1/4': ['+ ¼', 'A quarter'],
  '1/8': ['+ ⅛', 'An eighth'],
  '1/16': ['+ ¹⁄₁₆', 'A sixteenth'],
};

/** What does not agree now that this was read; null where nothing speaks against it, or no more than before. */
function offAt(step: Step, known: number): string | null {
  const { job, derived } = jobDocument.getState();
  if ((derived.survey?.suspects.length ?? 0) <= known) return null;
  const reading = readingOf(job, step);
  const index = reading === null ? -1 : job.measurements.indexOf(reading);
  const off = derived.survey?.suspects.find((each) => each.index === index || each.or.includes(index));
  return off === undefined ? null : suspectInWords(job, off);
}

function OneStep({
  step,
  all,
  isFirst,
  go,
}: {
  readonly step: Step;
  readonly all: Parameters<typeof stepsOf>[0];
  readonly isFirst: boolean;
  go(by: 1 | -1): void;
}): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const reading = useDocument((state) => readingOf(state.job, step));
  const out = useDocument((state) => leftOutOf(state.job, step));
  const instrument = useInstrument(step.kind === 'tape' ? 'distance' : 'coordinate');
  const [text, setText] = useState('');
  const [refusal, setRefusal] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  useEffect(() => field.current?.focus(), []);
  const last = reading ?? out;
  const isTape = isBeyondZero(step);
  const kind = isTape ? sizeKind(unit) : lengthKind(unit);
  const entered = kind.read(text);
  const [place, what] = [stepPlace(step), stepName(step)];

  const type = (next: string): void => {
    setText(next);
    setRefusal('');
  };

  function enter(event: FormEvent): void {
    event.preventDefault();
    if (text.trim() === '' && reading !== null) return go(1);
    if (!entered.ok) return setRefusal(text.trim() === '' ? 'Give the figure, or skip it.' : entered.why);
    const { edit, derived } = jobDocument.getState();
    const known = derived.survey?.suspects.length ?? 0;
    const faults = edit(`Read ${what.toLowerCase()}, ${place}`, (job) =>
      readStep(job, step, entered.value, newPointName, readWith(instrument)),
    );
    if (faults.length > 0) return setRefusal(faults.map(({ message }) => message).join('; '));
    const off = offAt(step, known);
    if (off === null) return go(1);
    // The tape is still in hand: now it is soonest read again.
    setText('');
    setRefusal(`${off} Read it again, or press Next to go on.`);
  }

  return (
    <form className="walk-step" noValidate onSubmit={enter}>
      <div className="walk-sketch">
        {viewsOf(step).map((view) => (
          <Drawn
            key={view}
            {...askedOnCar({ ...all, view, ...SKETCHES[view] }, step)}
            scale={1}
            label={SEEN_FROM[view]}
          />
        ))}
      </div>
      <div className="walk-asked">
        <label htmlFor={id}>
          <span className="walk-place">{place}</span>
          <span>{what}</span>
        </label>
        <div className="walk-value">
          <input
            ref={field}
            id={id}
            type="text"
            className="entry-input"
            inputMode="none"
            autoComplete="off"
            spellCheck={false}
            value={text}
            aria-describedby={`${id}-note`}
            aria-invalid={refusal !== '' || undefined}
            onChange={(event) => type(event.currentTarget.value)}
          />
          <span className="entry-unit">{unit}</span>
        </div>
        <p id={`${id}-note`} className="small walk-note">
          {text !== '' && entered.ok
            ? readBackOf(entered, kind)
            : last === null
              ? `Not read yet. ${minusInWords(step)}`.trim()
              : `${reading === null ? 'Left out' : 'Read'}: ${readInWords(last, wayRound(step) * last.value, unit)}. Type it to read it again.`}
          {instrument !== undefined && ` With ${shownName(instrument.name)}.`}
        </p>
        <Refused why={refusal} />
      </div>
      <div className="walk-keys" role="group" aria-label="Number keys">
        {KEYS[unit].flat().map((key) => {
          const [shown, said] = KEY_NAMES[key] ?? [key, key];
          return (
            <button
              key={key}
              type="button"
              className={`walk-key${key.includes('/') ? ' walk-fraction' : ''}${unit === 'mm' && key === '0' ? ' walk-wide' : ''}`}
              aria-label={said}
              disabled={key === 'minus' && isTape}
              onClick={() => type(pressed(text, key))}
            >
              {shown}
            </button>
          );
        })}
      </div>
      <div className="walk-on">
        <button type="button" className="press press-quiet" disabled={isFirst} onClick={() => go(-1)}>
          Back
        </button>
        <button type="button" className="press press-quiet" onClick={() => go(1)}>
          Skip
        </button>
        <button type="submit" className="press press-live">
          Next
        </button>
      </div>
    </form>
  );
}

const SEEN_FROM = {
  side: 'The car from the side, what is asked in brass',
  behind: 'The car from behind, what is asked in brass',
  above: 'The car from above, what is asked in brass',
} as const;
