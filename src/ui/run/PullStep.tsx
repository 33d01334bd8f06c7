/** How far the machine is pulled: the figure, how sure it is, and where it comes from. */
import type { ReactNode } from 'react';
import { toDegrees } from '../../core/geometry/angle.ts';
import { halfWidthInWords, inDoubt, pullsInWords } from '../../core/shop/pull-words.ts';
import type { RunStep } from '../../core/shop/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { PullLaw } from '../../core/springback/pull-law.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { plain } from './run-words.ts';
import { Tick } from './Tick.tsx';

type Pull = Extract<RunStep, { kind: 'pull' }>;

export function PullStep(props: { tube: SolvedTube; step: Pull; onTicked: () => void }): ReactNode {
  const { tube, step } = props;
  const net = formatAngle(toDegrees(step.target), 1);
  return (
    <>
      {step.pullTo === null ? (
        <>
          <p className="run-figure run-figure-angle">{net}°</p>
          <p className="advice">
            <strong>Not known how far past.</strong> The section names no steel that is known here, and no pulls are
            logged. Pull to the angle itself, let go, read: what is missing is told then.
          </p>
        </>
      ) : (
        <>
          <p className="run-figure run-figure-angle">
            {plain(step.firstTo ?? step.pullTo)}°
            {step.within !== null && step.firstTo === null && (
              <span className="run-within-figure"> ± {halfWidthInWords(step.within)}</span>
            )}
          </p>
          <p>
            for <strong className="figure">{net}°</strong> when let go
            {step.machineAngle !== null && step.firstTo === null && (
              <span className="small"> · worked out {formatAngle(toDegrees(step.machineAngle), 2)}°</span>
            )}
          </p>
          {step.firstTo !== null && (
            <p className="advice">
              <strong>Pull to {plain(step.firstTo)}° first, let go and read:</strong> {tooClose(tube.pullLaw)}, and all
              of {plain(step.pullTo)}° might be too far. What is short is pulled on.
            </p>
          )}
          <Source tube={tube} step={step} />
        </>
      )}
      <Tick tube={tube.id} step={step} onTicked={props.onTicked}>
        It is pulled
      </Tick>
      <p className="caution">A long tube whips when it is bent: see that nobody stands where it swings.</p>
    </>
  );
}

const tooClose = (law: PullLaw | null): string =>
  law?.pulls.length === 1
    ? 'a smaller bend alone cannot tell slack from spring'
    : 'smaller bends, close to each other, cannot tell slack from spring';

/** Never without where the figure comes from. */
function Source({ tube: { pullLaw }, step }: { tube: SolvedTube; step: Pull }): ReactNode {
  if (pullLaw === null) return null;
  if (step.from === 'estimate') {
    return (
      <p className="advice">
        <strong>An estimate that reads low:</strong> the steel’s spring alone, without the slack of dies and pins.
        Expect to pull on.
      </p>
    );
  }
  const sure = step.within === null || step.firstTo !== null ? '' : '; ± holds 95 % of further pulls';
  return (
    <>
      <p>
        From <strong>{pullsInWords(pullLaw)}</strong>
        {step.from === 'pulls'
          ? `${sure}.`
          : step.firstTo === null
            ? ' at one angle: that cannot tell slack from spring.'
            : ' at one angle.'}
      </p>
      {inDoubt(pullLaw) && (
        <p className="notice-warning">
          <span aria-hidden="true">▲ </span>
          They cannot all be right: see the pull log in the Shop.
        </p>
      )}
    </>
  );
}
