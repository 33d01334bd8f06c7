/** The marks as a tape shows them, in the order of bending, from the end and in the way that the person measures. */
import { Fragment, type ReactNode } from 'react';
import { findRun } from '../../core/edit/bent.ts';
import { roundingInWords, type TapeView } from '../../core/shop/mark-words.ts';
import { rotationReading, type RotationReading } from '../../core/shop/rotation-reading.ts';
import { isScribed } from '../../core/shop/scribed-line.ts';
import { FIRST_BEND, turnSentence } from '../../core/shop/turn-words.ts';
import { isOrderOf, tapeSheet, type TapeStep } from '../../core/shop/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Angle } from '../fields/Readings.tsx';
import { Grip, Leans, MarkPlace, TapePicks, useTape, Zero } from './TapeParts.tsx';
import { TurnFigure, TurnTold } from './TurnTold.tsx';
import './marks.css';

export function TapeMarks({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const tape = useTape(tube);
  const { view } = tape;
  const order = useWorkspace((state) => findRun(state.job, tube.id)?.order);
  const inRun = order !== undefined && isOrderOf(order, tube.bends.length);
  const sheet = tapeSheet(tube, inRun ? { ...tape.setting, order } : tape.setting);
  if (sheet === null || sheet.steps.length === 0) return null;
  const turned = isScribed(tube, sheet.steps);
  const rounding = roundingInWords(sheet.rounding, view.from, unit);
  return (
    <section className="marks" aria-label="Marks on the tape">
      <h3>Marks on the tape</h3>
      <TapePicks tube={tube} tape={tape} />
      <Grip sheet={sheet} />
      <p>
        <Zero sheet={sheet} from={view.from} /> Bend in this order; a bend lies on its arrow’s side of the mark.
        {turned && ` ${FIRST_BEND}`}
      </p>
      <table className="table table-plain marks-table">
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="number">
              Mark, {unit}
            </th>
            <th scope="col" className="number">
              Turn the tube
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
              <BendRows step={step} view={view} turn={rotationReading(tube, sheet.steps, i)} />
            </Fragment>
          ))}
        </tbody>
      </table>
      <Leans steps={sheet.steps} view={view} />
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
function BendRows(props: { step: TapeStep; view: TapeView; turn: RotationReading | null }): ReactNode {
  const { step, view, turn } = props;
  const rows = step.marks.length;
  const marks = step.marks.map((mark, i) => (
    <tr key={mark.kind}>
      {i === 0 && (
        <th scope="rowgroup" rowSpan={rows}>
          {step.bend}
        </th>
      )}
      <td className="number">
        <MarkPlace mark={mark} step={step} view={view} />
      </td>
      {i === 0 && (
        <>
          <td className="number" rowSpan={rows}>
            {turn === null ? (
              'none'
            ) : (
              <span className="figure">
                <TurnFigure turn={turn} />
              </span>
            )}
          </td>
          <td className="number" rowSpan={rows}>
            <Angle radians={step.angle} />
          </td>
        </>
      )}
    </tr>
  ));
  if (turn === null) return marks;
  return (
    <>
      {marks}
      <tr>
        <td colSpan={4} className="marks-turn">
          {turn.turn === 0 && turn.asItLies ? turnSentence(turn) : <TurnTold turn={turn} />}
        </td>
      </tr>
    </>
  );
}
