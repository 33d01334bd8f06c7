/**
 * Tubes that go by points which the survey does not fix, or by readings that do not agree with the others. One finding for each such point and each
 * such reading, of the first tube that goes by it.
 */
import { pointsOf } from '../job/kinds/measurement.ts';
import { bareId } from '../job/reference.ts';
import { pointAt } from '../solve/solved.ts';
import type { Frame } from '../solve/types.ts';
import type { Adjusted } from '../survey/adjust.ts';
import type { SurveyFinding } from './car-types.ts';
import { nodesAt, tubesGoingBy } from './guess-findings.ts';

/** In the order of the points, then of the suspects, the worst first; none of what no tube goes by. */
export function* surveyTrouble(frame: Pick<Frame, 'job' | 'tubes'>, survey: Adjusted | null): Generator<SurveyFinding> {
  if (survey === null) return;
  const { job } = frame;
  const goingBy = (points: readonly string[]) =>
    tubesGoingBy(
      frame,
      points.flatMap((point) => nodesAt(job, point)),
    );
  for (const { id, position } of survey.points) {
    const directions = survey.loose.filter(({ point }) => point === id).map(({ direction }) => direction);
    const made = directions.length > 0 ? goingBy([id]) : null;
    if (made !== null) yield { ...BASE, ...made, id: 'point/not-fixed', at: position, point: id, directions };
  }
  for (const suspect of survey.suspects) {
    const measurement = job.measurements[suspect.index]!;
    const points = pointsOf(measurement).map(([, point]) => point);
    const made = goingBy(points.map(bareId));
    const at = pointAt(points[0]!, { point: (id) => job.points.find((point) => point.id === id)! });
    if (made !== null) yield { ...BASE, ...made, id: 'point/reading-off', at, measurement, fits: suspect.fits };
  }
}

const BASE = { severity: 'warning', source: 'practice' } as const;
