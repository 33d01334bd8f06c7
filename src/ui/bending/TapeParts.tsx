/** What every list of tape marks is made of: where the zero is, each mark with its side, the scrap. */
import { Fragment, type ReactNode } from 'react';
import type { Marking } from '../../core/job/kinds/marking.ts';
import { zeroOfTape } from '../../core/words/blank.ts';
import { leansInWords, sideOf, troubleOf } from '../../core/words/marks.ts';
import type { TapeMark, TapeList, TapeStep } from '../../core/marks/tape.ts';
import { spokenReading, tapeReading } from '../../core/units/tape.ts';
import { useDocument } from '../../store/page.ts';
import { Length, Reading } from '../fields/Readings.tsx';
import './marks.css';

/** The mark's place on the tape, and the side that its bend lies on. */
export function MarkPlace(props: { mark: TapeMark; step: TapeStep; view: Marking; withUnit?: boolean }): ReactNode {
  const { mark, step, view } = props;
  const unit = useDocument((state) => state.job.lengthUnit);
  const reading = tapeReading(mark.exact, unit, view.fine);
  const side = sideOf(mark, step);
  const trouble = troubleOf(mark);
  return (
    <>
      {view.mark === 'tangents' && <span className="small">{mark.kind === 'start' ? 'starts ' : 'ends '}</span>}
      <span className="figure marks-figure">
        <span className="spoken-only">{`${spokenReading(reading, unit)}, the bend lies `}</span>
        <span aria-hidden="true">
          <Reading reading={reading} />
          {props.withUnit && <span className="figure-unit"> {unit}</span>}
        </span>
      </span>
      <span className="small under">
        <span className="marks-arrow" aria-hidden="true">
          {side.arrow}
        </span>
        {side.words}
      </span>
      {trouble !== null && (
        <span className={mark.onBlank ? 'under marks-note' : 'sign-error under marks-note'}>
          {!mark.onBlank && <span aria-hidden="true">▲ </span>}
          {trouble}
        </span>
      )}
    </>
  );
}

/** What the signs after the marks mean, where any has one. */
export function Leans({ steps, view }: { steps: readonly TapeStep[]; view: Marking }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const words = leansInWords(steps, unit, view.fine);
  return words === null ? null : <p className="small">{words}</p>;
}

/** Where the tape's zero is. */
export function Zero({ tape, from }: { tape: TapeList; from: Marking['from'] }): ReactNode {
  const [before, after] = zeroOfTape(from);
  return (
    <>
      {before}
      {from === 'middle' && <Length mm={tape.zero} withUnit />}
      {after}
    </>
  );
}

/** What of the blank is there for the machine alone; nothing where no grip is left. */
export function Scrap({ grip }: { grip: readonly [number, number] }): ReactNode {
  const ends = grip.flatMap((length, i) => (length > 0 ? [{ end: i === 0 ? 'A' : 'B', length }] : []));
  if (ends.length === 0) return null;
  return (
    <p className="small">
      {ends.map(({ end, length }, i) => (
        <Fragment key={end}>
          {i > 0 && ' and '}
          <Length mm={length} withUnit /> at end {end}
        </Fragment>
      ))}{' '}
      of it {ends.length > 1 ? 'are' : 'is'} scrap for the machine to hold: saw it off after bending.
    </p>
  );
}
