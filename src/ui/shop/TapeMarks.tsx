/** The marks as a tape shows them, in the order of bending, from the end and in the way that the person measures. */
import { Fragment, type ReactNode } from 'react';
import { isSymmetricHoop, tapeSheet, type TapeMark, type TapeSheet, type TapeStep } from '../../core/shop/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Angle, Length, Rounded } from '../fields/Readings.tsx';
import {
  FROM,
  readTapeView,
  roundingInWords,
  sideOf,
  STYLES,
  tapeReading,
  tapesOf,
  troubleOf,
  type TapeView,
} from '../../core/shop/mark-words.ts';
import { Picks } from './Picks.tsx';
import { useKept } from './useKept.ts';
import './marks.css';

export function TapeMarks({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const [kept, keep] = useKept('tape', readTapeView);
  const hoop = isSymmetricHoop(tube);
  // The choice is kept for the next hoop.
  const view: TapeView = kept.from === 'middle' && !hoop ? { ...kept, from: 'A' } : kept;
  const tapes = tapesOf(unit);
  const sheet = tapeSheet(tube, { ...view, step: tapes[view.fine ? 1 : 0] });
  if (sheet === null || sheet.steps.length === 0) return null;
  const rounding = roundingInWords(sheet.rounding, view.from, unit);
  return (
    <section className="marks" aria-label="Marks on the tape">
      <h3>Marks on the tape</h3>
      <Picks
        legend="From"
        value={view.from}
        choices={FROM}
        barred={hoop ? null : { value: 'middle', why: 'The middle is for hoops that read the same from both ends.' }}
        onPick={(from) => keep({ ...kept, from })}
      />
      <Picks
        legend="Mark each bend’s"
        value={view.style}
        choices={STYLES}
        onPick={(style) => keep({ ...kept, style })}
      />
      <Picks
        legend="Tape in"
        value={view.fine}
        choices={tapes.map((step, i) => ({ value: i === 1, label: <Division step={step} fine={i === 1} /> }))}
        onPick={(fine) => keep({ ...kept, fine })}
      />
      <Grip sheet={sheet} />
      <p>
        <Zero sheet={sheet} from={view.from} /> Bend in this order; a bend lies on its arrow’s side of the mark.
      </p>
      <table className="table table-plain marks-table">
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="number">
              Mark, {unit}
            </th>
            <th scope="col" className="number">
              Rotation
            </th>
            <th scope="col" className="number">
              Angle
            </th>
          </tr>
        </thead>
        <tbody>
          {sheet.steps.map((step, i) => (
            <Fragment key={step.bend}>
              {i > 0 && sheet.steps[i - 1]!.front !== step.front && (
                <tr>
                  <td colSpan={4} className="marks-flip">
                    <span aria-hidden="true">⇄ </span>Turn the tube end for end
                  </td>
                </tr>
              )}
              <BendRows step={step} view={view} />
            </Fragment>
          ))}
        </tbody>
      </table>
      {rounding !== null && (
        <p className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          {rounding}
        </p>
      )}
    </section>
  );
}

/** One row a mark; bend, rotation and angle stand once. */
function BendRows({ step, view }: { step: TapeStep; view: TapeView }): ReactNode {
  const rows = step.marks.length;
  return step.marks.map((mark, i) => (
    <tr key={mark.kind}>
      {i === 0 && (
        <th scope="rowgroup" rowSpan={rows}>
          {step.bend}
        </th>
      )}
      <td className="number">
        <Mark mark={mark} step={step} view={view} />
      </td>
      {i === 0 && (
        <>
          <td className="number" rowSpan={rows}>
            {step.rotationFrom === null ? (
              '–'
            ) : (
              <>
                <Angle radians={step.rotation} />
                <span className="small under">from bend {step.rotationFrom}</span>
              </>
            )}
          </td>
          <td className="number" rowSpan={rows}>
            <Angle radians={step.angle} />
          </td>
        </>
      )}
    </tr>
  ));
}

function Mark({ mark, step, view }: { mark: TapeMark; step: TapeStep; view: TapeView }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const shown = tapeReading(mark.at, unit, view.fine);
  const side = sideOf(mark, step);
  const trouble = troubleOf(mark);
  return (
    <>
      {view.style === 'tangents' && <span className="small">{mark.kind === 'start' ? 'starts ' : 'ends '}</span>}
      <span className="figure marks-figure">
        <span className="spoken-only">{`${shown.text} ${unit}, the bend lies `}</span>
        <span aria-hidden="true">
          <Rounded shown={shown} />
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

/** A tape's division, as the tape's name. */
function Division({ step, fine }: { step: number; fine: boolean }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const shown = tapeReading(step, unit, fine);
  return (
    <span>
      <span className="spoken-only">{`${shown.text} ${unit}`}</span>
      <span aria-hidden="true">
        <Rounded shown={shown} /> {unit}
      </span>
    </span>
  );
}

/** Where the tape's zero is. */
const Zero = ({ sheet, from }: { sheet: TapeSheet; from: TapeView['from'] }): ReactNode =>
  from === 'middle' ? (
    <>
      Draw a line round the tube <Length mm={sheet.zero} parts={32} withUnit /> from the blank’s end A, and measure both
      ways from it.
    </>
  ) : (
    `Hook the tape over the blank’s end ${from}.`
  );

/** What the blank has to be longer by; nothing where the clamp has enough to hold. */
function Grip({ sheet: { grip, blank } }: { sheet: TapeSheet }): ReactNode {
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
