/** What every list of tape marks is made of: where the zero is, each mark with its side, the scrap. */
import { Fragment, type ReactNode } from 'react';
import type { Marking } from '../../core/job/kinds/marking.ts';
import { leansInWords, sideOf, troubleOf } from '../../core/words/marks.ts';
import type { TapeMark, TapeSheet, TapeStep } from '../../core/marks/tape.ts';
import { spokenReading, tapeReading } from '../../core/units/tape.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Length, Reading } from '../fields/Readings.tsx';
import './marks.css';

/** The mark's place on the tape, and the side that its bend lies on. */
export function MarkPlace(props: { mark: TapeMark; step: TapeStep; view: Marking; withUnit?: boolean }): ReactNode {
  const { mark, step, view } = props;
  const unit = useWorkspace((state) => state.job.lengthUnit);
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
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const words = leansInWords(steps, unit, view.fine);
  return words === null ? null : <p className="small">{words}</p>;
}

/** Where the tape's zero is. */
export const Zero = ({ sheet, from }: { sheet: TapeSheet; from: Marking['from'] }): ReactNode =>
  from === 'middle' ? (
    <>
      Draw a line round the tube <Length mm={sheet.zero} parts={32} withUnit /> from the blank’s end A, and measure both
      ways from it.
    </>
  ) : (
    `Hook the tape over the blank’s end ${from}.`
  );

/** What the blank has to be longer by; nothing where the clamp has enough to hold. */
export function Grip({ sheet: { grip, blank } }: { sheet: TapeSheet }): ReactNode {
  const ends = grip.flatMap((length, i) => (length > 0 ? [{ end: i === 0 ? 'A' : 'B', length }] : []));
  if (ends.length === 0) return null;
  return (
    <p className="advice">
      <strong>
        Cut the blank to <Length mm={blank} parts={32} withUnit /> for the grip.
      </strong>{' '}
      {ends.map(({ end, length }, i) => (
        <Fragment key={end}>
          {i > 0 && ' and '}
          <Length mm={length} parts={32} withUnit /> at end {end}
        </Fragment>
      ))}{' '}
      {ends.length > 1 ? 'are' : 'is'} scrap for the clamp to hold: saw it off after bending.
    </p>
  );
}
