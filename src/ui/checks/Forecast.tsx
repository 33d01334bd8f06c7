/** How the joints will fit: the worst first, with what feeds each and what would cure it. Worked out beside the page while it is open. */
import { useEffect, useState, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import { setAccuracy } from '../../core/edit/accuracy.ts';
import type { Forecast as Worked } from '../../core/forecast/types.ts';
import { FIRST_ACCURACY, GREATEST_DEVIATION, type Accuracy } from '../../core/job/kinds/accuracy.ts';
import { FIRST_SCATTER, GREATEST_SCATTER } from '../../core/job/kinds/scatter.ts';
import { forecast as forecastStage } from '../../core/stages/forecast.ts';
import { FORECAST_LEAVES_OUT, FORECAST_MEANS } from '../../core/words/forecast.ts';
import { results, useDocument, useResults, useShop } from '../../store/page.ts';
import { DeviationField, NumberField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { ForecastJoints } from './ForecastJoints.tsx';

export function Forecast(): ReactNode {
  const [stopped, stop] = useState(false);
  useEffect(() => (stopped ? undefined : results.lookAt(forecastStage)), [stopped]);
  const forecast = useResults((state) => state.forecast);
  const why = useResults((state) => state.unforecast);
  const derived = useDocument((state) => state.derived);
  const shown = useLast(forecast, derived);
  if (derived.tubes.length === 0) return <p className="empty">No tubes yet.</p>;
  return (
    <>
      <p className="small">{FORECAST_MEANS}</p>
      <Deviations />
      {why !== null && (
        <p className="word-error" role="alert">
          × It could not be worked out: {why}
        </p>
      )}
      {stopped ? (
        <p role="status">
          Stopped.{' '}
          <button type="button" className="press press-quiet" onClick={() => stop(false)}>
            Work it out
          </button>
        </p>
      ) : (
        forecast === null && why === null && <Working anew={shown !== null} onStop={() => stop(true)} />
      )}
      {shown !== null && !stopped && why === null && (
        <ForecastJoints joints={shown.joints} isWorking={forecast === null} />
      )}
      <p className="small">{FORECAST_LEAVES_OUT}</p>
    </>
  );
}

/** The one before while another is worked out, of the same job: what stands in the list stays. Tubes that are gone are left out. */
function useLast(forecast: Worked | null, { job, byId }: Derived): Worked | null {
  const [last, keep] = useState<{ readonly forecast: Worked; readonly name: string } | null>(null);
  if (forecast !== null) {
    if (forecast !== last?.forecast) keep({ forecast, name: job.name });
    return forecast;
  }
  if (last === null || last.name !== job.name) return null;
  return { joints: last.forecast.joints.filter(({ tube }) => byId.has(tube)) };
}

/** It comes after what the other checks want of the bender, and stops where nobody looks at it. */
function Working({ anew, onStop }: { anew: boolean; onStop: () => void }): ReactNode {
  const before = useResults(({ progress }) => Math.max(0, progress.of - progress.done - 1));
  return (
    <p role="status">
      Working out {anew && 'anew '}how the joints will fit
      {before > 0 && `, after the rehearsal of ${before === 1 ? '1 tube' : `${before} tubes`} at the bender`}…{' '}
      {anew && 'What stands here is as it was before. '}
      <button type="button" className="press press-quiet" onClick={onStop}>
        Stop
      </button>
    </p>
  );
}

/** What it is reckoned with. */
function Deviations(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const accuracy = useDocument((state) => state.job.accuracy ?? FIRST_ACCURACY);
  const shop = useShop((state) => state.shop.scatter ?? FIRST_SCATTER);
  const field = (key: keyof Accuracy) => ({
    value: accuracy[key],
    commit: jobEdit<number>('How far things are off', (job, value) => setAccuracy(job, { [key]: value })).commit,
  });
  const isShops = (['angle', 'rotation', 'mark'] as const).every((key) => accuracy[key] === shop[key]);
  return (
    <>
      <fieldset className="trio">
        <legend>How far things come out off, one standard deviation</legend>
        <DeviationField label={`Point, ${unit}`} greatest={GREATEST_DEVIATION} {...field('point')} />
        <DeviationField label={`Cut end, ${unit}`} greatest={GREATEST_DEVIATION} {...field('cut')} />
        <NumberField label="Bend, °" {...OF_ANGLES} {...field('angle')} />
        <NumberField label="Rotation, °" {...OF_ANGLES} {...field('rotation')} />
        <DeviationField label={`Mark, ${unit}`} greatest={GREATEST_SCATTER} {...field('mark')} />
      </fieldset>
      <p className="small">Where the log has three pulls or more, the angle of a bend is off as these scatter.</p>
      {!isShops && (
        <Command quiet step="Take the scatter of the shop" run={(job) => setAccuracy(job, shop)}>
          Take bends, rotations and marks from the shop record
        </Command>
      )}
    </>
  );
}

const OF_ANGLES = { least: 0, greatest: GREATEST_SCATTER, step: 0.1 };
