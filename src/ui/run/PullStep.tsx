/** How far the machine is pulled: the figure, what kind of figure it is, how sure, and where it comes from. */
import { TUBE_WHIPS } from '../../core/words/cautions.ts';
import type { ReactNode } from 'react';
import { toDegrees } from '../../core/geometry/angle.ts';
import { FIRST_BENDER } from '../../core/job/kinds/bender.ts';
import type { RunStep } from '../../core/run/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { mendingPullOf } from '../../core/springback/pull-advice.ts';
import {
  GO_ON,
  estimateInWords,
  mendInWords,
  pullFigure,
  pullsInWords,
  whyInWords,
  SURE,
  START_AT,
  sureInWords,
  workedOut,
} from '../../core/words/pulls.ts';
import { capital } from '../../core/words/lists.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { Tick } from './Tick.tsx';

type Pull = Extract<RunStep, { kind: 'pull' }>;

export function PullStep(props: { tube: SolvedTube; step: Pull; onTicked: () => void }): ReactNode {
  const { tube, step } = props;
  const { advice } = step;
  const exact = workedOut(advice, (tube.die?.bender ?? FIRST_BENDER).pullStep);
  return (
    <>
      {advice.kind === 'estimate' && <p className="run-start-at">{START_AT}</p>}
      <p className={`run-figure ${advice.kind === 'estimate' ? 'run-figure-estimate' : 'run-figure-angle'}`}>
        {pullFigure(advice)}
        {advice.kind === 'law' && advice.within !== null && (
          <span className="run-within-figure"> {sureInWords(advice.within)}</span>
        )}
      </p>
      <p>
        for <strong className="figure">{formatAngle(toDegrees(step.target), 1)}°</strong> when let go
        {exact !== null && <span className="small"> · {exact}</span>}
      </p>
      <Source tube={tube} step={step} />
      <p className="caution">{TUBE_WHIPS} See that nobody stands where it swings.</p>
      <Tick tube={tube.id} step={step} onTicked={props.onTicked}>
        It is pulled
      </Tick>
    </>
  );
}

/** Never without where the figure comes from. */
function Source({ tube, step: { advice } }: { tube: SolvedTube; step: Pull }): ReactNode {
  const { pullLaw } = tube;
  switch (advice.kind) {
    case 'first':
      return (
        <>
          <p className="advice">
            <strong>
              Pull to {pullFigure(advice)} first, {GO_ON}:
            </strong>{' '}
            {whyInWords(advice.why, pullLaw)}, and more might be too far. What is short is pulled on.
          </p>
          <p className="small">{mendInWords(advice.why, pullLaw, mendingPullOf(tube))}</p>
        </>
      );
    case 'estimate':
      return <p className="advice">{capital(estimateInWords(advice.short))} Expect to pull on.</p>;
    case 'law':
      return (
        pullLaw && (
          <p>
            From <strong>{pullsInWords(pullLaw)}</strong>
            {advice.within === null ? '.' : `; ${SURE}.`}
          </p>
        )
      );
  }
}
