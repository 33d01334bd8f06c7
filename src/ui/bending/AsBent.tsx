/** A tube as it was bent, beside what was planned: its bends, its far end, and in the Shop the way into its run. */
import { useEffect, useRef, type ReactNode } from 'react';
import { findRun } from '../../core/edit/bent.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import { pulledTo } from '../../core/job/read-by-hand.ts';
import type { AsBent } from '../../core/run/as-bent.ts';
import { toBeBent } from '../../core/run/laid-out.ts';
import { bendRun, isOfOtherBends } from '../../core/run/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { checkInWords, titleOf, wayInWords } from '../../core/words/run.ts';
import { useDocument } from '../../store/page.ts';
import { Length, ShortfallLength } from '../fields/Readings.tsx';
import { Section } from '../kit/Section.tsx';
import { KeptReadings } from './KeptReadings.tsx';
import { Leads } from './Leads.tsx';
import { Opened } from './Opened.tsx';
import { useFeed } from './useFeed.ts';
import { forgetRun, openRun, useOpenRun } from './open-run.ts';
import './tube.css';

/** In the Shop: the way into the tube's run. */
export function BendKey({ tube }: { tube: SolvedTube }): ReactNode {
  const begun = useDocument((state) => findRun(state.job, tube.id) !== undefined);
  const left = useOpenRun();
  const key = useRef<HTMLButtonElement>(null);
  const back = left?.left === true && left.tube === tube.id;
  // Whoever comes back stands where they went in.
  useEffect(() => {
    if (!back) return;
    key.current?.focus();
    forgetRun();
  }, [back]);
  if (tube.bends.length === 0) return null;
  return (
    <button ref={key} type="button" className="press press-live run-door" onClick={() => openRun(tube.id)}>
      {begun ? 'On with the bend run' : 'Bend this tube'}
    </button>
  );
}

/** In the Shop: what is known of the tube once its run has begun. */
export function BentRecord({ tube }: { tube: SolvedTube }): ReactNode {
  const run = useDocument((state) => findRun(state.job, tube.id));
  return run === undefined ? null : <Record tube={toBeBent(tube, run)} run={run} />;
}

function Record({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  const feed = useFeed(tube);
  const progress = bendRun(tube, run, feed);
  const { steps, current, asBent, changed, opened } = progress;
  const next = steps[current];
  const measured = steps.flatMap((step) =>
    step.kind === 'check' ? step.checks.filter((check) => check.measured !== null) : [],
  );
  return (
    <Section title="As bent" count={run.bends.length} open>
      {isOfOtherBends(progress) ? (
        <>
          <p className="notice-warning">
            <span aria-hidden="true">▲ </span>
            This run is of another tube than is drawn now.
          </p>
          <KeptReadings run={run} />
          {run.stands && <Leads tube={tube} run={run} />}
        </>
      ) : (
        <>
          {changed.length > 0 && (
            <p className="notice-warning">
              <span aria-hidden="true">▲ </span>
              Drawn otherwise since this run began.
            </p>
          )}
          <p>{next === undefined ? 'Bent and checked.' : `Next: ${titleOf(next).toLowerCase()}.`}</p>
        </>
      )}
      {run.bends.length > 0 && !isOfOtherBends(progress) && (
        <>
          <FarEnd tube={tube} asBent={asBent} />
          <Opened tube={tube} run={run} opened={opened} />
          <MadeBends tube={tube} run={run} />
          {run.bends.some(({ bend }) => bend > tube.bends.length) && <KeptReadings run={run} />}
          <Leads tube={tube} run={run} />
        </>
      )}
      {measured.length > 0 && (
        <table className="table table-plain">
          <thead>
            <tr>
              <th scope="col">Check</th>
              <th scope="col" className="number">
                Predicted
              </th>
              <th scope="col" className="number">
                Measured
              </th>
            </tr>
          </thead>
          <tbody>
            {measured.map(({ predicted, measured: read }) => (
              <tr key={predicted.id}>
                <th scope="row">{checkInWords(predicted)}</th>
                <td className="number">
                  <Length mm={predicted.value} />
                </td>
                <td className="number">
                  <Length mm={read ?? 0} stored />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Section>
  );
}

/** How far end B lies from where it is drawn, end A held. */
export function FarEnd({ tube, asBent }: { tube: SolvedTube; asBent: AsBent }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const way = wayInWords(tube.corners.at(-1)!, asBent.endB, unit);
  return (
    <p className="advice">
      <strong>
        As bent, end B lies <ShortfallLength mm={asBent.endMoves} /> from its place
      </strong>
      , end A held{way === '' ? '.' : `: ${way}.`}
    </p>
  );
}

/** Each bend that was made: planned, measured, and what is not as planned. */
export function MadeBends({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  return (
    <table className="table table-plain">
      <caption className="spoken-only">Bends as made</caption>
      <thead>
        <tr>
          <th scope="col">Bend</th>
          <th scope="col" className="number">
            Planned
          </th>
          <th scope="col" className="number">
            Measured
          </th>
          <th scope="col" className="number">
            Pulled
          </th>
          <th scope="col" className="number">
            Off by
          </th>
        </tr>
      </thead>
      <tbody>
        {tube.bends.map((bend, i) => {
          const planned = toDegrees(bend.angle);
          const made = run.bends.find((one) => one.bend === i + 1);
          const pulled = pulledTo(made);
          return (
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              <td className="number figure">{formatAngle(planned, 1)}°</td>
              <td className="number figure">{made === undefined ? '–' : `${formatAngle(made.net, 1)}°`}</td>
              <td className="number figure">{pulled === null ? '–' : `${formatAngle(pulled, 1)}°`}</td>
              <td className="number figure">
                {made === undefined ? '–' : signed(made.net - planned)}
                {made?.kept === true && <span className="small under">left so</span>}
                {made?.fitted === true && <span className="small under">by the tape</span>}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const signed = (degrees: number): string => {
  const shown = formatAngle(degrees, 1);
  return `${degrees > 0 && Number(shown) !== 0 ? '+' : ''}${shown}°`;
};
