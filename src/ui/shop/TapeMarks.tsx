/** The marks as a tape shows them, in the order of bending, from the end and in the way that the person measures. */
import { Fragment, type ReactNode } from 'react';
import type { Marking } from '../../core/job/kinds/marking.ts';
import { capital } from '../../core/words/lists.ts';
import { markMeets, roundingInWords, sideNote } from '../../core/words/marks.ts';
import { rotationReading, type RotationReading } from '../../core/run/rotation-reading.ts';
import { isScribed } from '../../core/run/scribed-line.ts';
import { END_FOR_END, firstBendInWords } from '../../core/words/turns.ts';
import { isSeamed } from '../../core/springback/steels.ts';
import { tapeList, type TapeStep } from '../../core/marks/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';
import { Angle } from '../fields/Readings.tsx';
import { KeptOrder } from '../bending/KeptOrder.tsx';
import { FromTheMiddle, TapePicks } from '../bending/TapePicks.tsx';
import { Leans, MarkPlace, Zero } from '../bending/TapeParts.tsx';
import { TurnFigure, TurnWords } from '../bending/TurnWords.tsx';
import { useFeed } from '../bending/useFeed.ts';
import '../bending/marks.css';

export function TapeMarks({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const feed = useFeed(tube);
  const tape = tapeList(tube, feed);
  if (tape === null || tape.steps.length === 0) return null;
  const turned = isScribed(tube, tape.steps);
  const rounding = roundingInWords(tape.rounding, feed.from, unit);
  return (
    <section className="marks" aria-label="Marks on the tape">
      <h3>Marks on the tape</h3>
      <KeptOrder tube={tube} />
      <p>
        <Zero tape={tape} from={feed.from} /> Bend in this order. {sideNote(feed.mark)}
        {feed.mark === 'clamp' && ` ${capital(markMeets('clamp', tube.die!.clampOffset, unit))}.`}
        {(turned || isSeamed(tube.section)) && ` ${firstBendInWords(tube.section, turned)}`}
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
          {tape.steps.map((step, i) => (
            <Fragment key={step.bend}>
              {i > 0 && tape.steps[i - 1]!.front !== step.front && (
                <tr>
                  <td colSpan={4} className="marks-flip">
                    <span aria-hidden="true">⇄ </span>
                    {END_FOR_END}
                  </td>
                </tr>
              )}
              <BendRows step={step} view={feed} turn={rotationReading(tube, tape.steps, i)} />
            </Fragment>
          ))}
        </tbody>
      </table>
      <Leans steps={tape.steps} view={feed} />
      {rounding !== null && (
        <p className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          {rounding}
        </p>
      )}
      <h3>How marks are taken</h3>
      <FromTheMiddle tube={tube} />
      <TapePicks tube={tube} />
    </section>
  );
}

/** One row a mark; bend, rotation and angle stand once. */
function BendRows(props: { step: TapeStep; view: Marking; turn: RotationReading | null }): ReactNode {
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
          <TurnWords turn={turn} />
        </td>
      </tr>
    </>
  );
}
