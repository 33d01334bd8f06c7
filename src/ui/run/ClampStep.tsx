/** Where the tube is clamped for a bend, which end is in front, and how it is turned before. */
import type { ReactNode } from 'react';
import type { RotationReading } from '../../core/run/rotation-reading.ts';
import type { RunStep } from '../../core/run/run.ts';
import { END_FOR_END, firstBendInWords, seamInWords } from '../../core/words/turns.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';
import { Leans, MarkPlace } from '../bending/TapeParts.tsx';
import { TurnFigure, TurnWords } from '../bending/TurnWords.tsx';
import { useFeed } from '../bending/useFeed.ts';
import { markMeets } from '../../core/words/marks.ts';
import { markMovedInWords } from '../../core/words/run.ts';
import { Tick } from './Tick.tsx';

type Clamp = Extract<RunStep, { kind: 'clamp' }>;

export function ClampStep(props: {
  tube: SolvedTube;
  step: Clamp;
  /** How far its marks moved along the tube since they were drawn, mm; 0 where they did not. */
  moved: number;
  onTicked: () => void;
}): ReactNode {
  const { step, moved } = props;
  const feed = useFeed(props.tube);
  const unit = useDocument((state) => state.job.lengthUnit);
  const { front } = step.step;
  return (
    <>
      {step.flip && (
        <p className="run-flip">
          <span aria-hidden="true">⇄ </span>
          {END_FOR_END}
        </p>
      )}
      <p>
        End <strong>{front}</strong> in front, through the clamp; end {front === 'A' ? 'B' : 'A'} stays behind. Die:{' '}
        <strong>{props.tube.die!.name}</strong>.
      </p>
      {step.step.marks.map((mark) => (
        <div key={mark.kind} className="run-at">
          <MarkPlace mark={mark} step={step.step} view={feed} withUnit />
          <p className="small">{markMeets(mark.kind, props.tube.die!.clampOffset, unit)}</p>
        </div>
      ))}
      <Leans steps={[step.step]} view={feed} />
      {moved !== 0 && !step.done && (
        <p className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          {markMovedInWords(moved, unit)}
        </p>
      )}
      {step.rotation === null ? (
        <p>{firstBendInWords(props.tube.section, step.scribe)}</p>
      ) : (
        <Turn rotation={step.rotation} seam={seamInWords(props.tube.section, step.rotation)} />
      )}
      <Tick tube={props.tube.id} step={step} onTicked={props.onTicked}>
        {step.rotation === null || step.rotation.turn === 0 ? 'It is clamped' : 'Clamped and turned'}
      </Tick>
    </>
  );
}

const Turn = ({ rotation, seam }: { rotation: RotationReading; seam: string | null }): ReactNode => (
  <section className="run-turn" aria-label="Rotation">
    <TurnWords
      turn={rotation}
      figure={
        <p className="run-figure run-figure-second">
          <TurnFigure turn={rotation} />
        </p>
      }
    />
    {seam !== null && <p>{seam}</p>}
  </section>
);
