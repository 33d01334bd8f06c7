/** How far the machine is pulled: the figure, how sure it is, and where it comes from. */
import type { ReactNode } from 'react';
import { toDegrees } from '../../core/geometry/angle.ts';
import { halfWidthInWords, inDoubt, pullsInWords } from '../../core/shop/pull-words.ts';
import type { RunStep } from '../../core/shop/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
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
            {plain(step.pullTo)}°
            {step.within !== null && <span className="run-within-figure"> ± {halfWidthInWords(step.within)}</span>}
          </p>
          <p>
            for <strong className="figure">{net}°</strong> when let go
            {step.machineAngle !== null && (
              <span className="small"> · worked out {formatAngle(toDegrees(step.machineAngle), 2)}°</span>
            )}
          </p>
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
  const sure = step.within === null ? '' : '; ± holds 95 % of further pulls';
  return (
    <>
      <p>
        From <strong>{pullsInWords(pullLaw)}</strong>
        {step.from === 'one-angle' ? ' at one angle: that cannot tell slack from spring.' : `${sure}.`}
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
