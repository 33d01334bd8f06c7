/** Surveys of 10 to 200 points, four readings a point, and beside them a general least-squares library on the same readings. */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { sigmaOf } from '../../src/core/job/kinds/measurement.ts';
import { adjust } from '../../src/core/survey/adjust.ts';
import type { Surveyed } from '../../src/core/survey/network.ts';
import type { Triple } from '../reference/oracles/space.ts';
import { placeOf, randomSurvey, readOf } from '../reference/surveys.ts';
import { timed, type Timing } from './clock.ts';

/** A car of so many points, with four readings each. */
export function surveyOf(points: number): Surveyed {
  const survey = randomSurvey(7, { more: Math.max(0, points / 2 - 6), guess: 20 });
  const kept = survey.points.slice(0, points);
  const ids = new Set(kept.map(({ id }) => id));
  const within = survey.measurements.filter((each) =>
    (['point', 'from', 'to'] as const).every((key) => !(key in each) || ids.has(each[key as never])),
  );
  const heights = within.filter((each) => each.kind === 'coordinate');
  const tapes = within.filter((each) => each.kind === 'distance');
  // Tapes are left out here and there, not at one end of the car.
  const room = Math.max(0, 4 * points - heights.length);
  const some = tapes.filter(
    (_, i) => Math.floor(((i + 1) * room) / tapes.length) > Math.floor((i * room) / tapes.length),
  );
  return { ...survey, points: kept, measurements: [...heights, ...some] };
}

/** Made anew each time: what is kept of the same records would be found again. */
export const timeAdjust = (survey: Surveyed): Timing =>
  timed(15, 5, () => adjust({ ...survey, measurements: [...survey.measurements] }));

/** Of as many steps as ours takes, five: it would go on to a hundred. */
export function timeLibrary({ points, measurements }: Surveyed): Timing {
  return timed(1, 0, () =>
    levenbergMarquardt(
      { x: measurements.map((_, i) => i), y: measurements.map((each) => each.value / sigmaOf(each)) },
      (parameters: number[]) => {
        const at = placeOf(
          new Map(points.map(({ id }, i) => [id, parameters.slice(3 * i, 3 * i + 3) as unknown as Triple])),
        );
        return (i: number) => readOf(measurements[i]!, at) / sigmaOf(measurements[i]!);
      },
      {
        initialValues: points.flatMap(({ position }) => [...position]),
        gradientDifference: 1e-3,
        damping: 1e-6,
        maxIterations: 5,
        errorTolerance: 0,
      },
    ),
  );
}
