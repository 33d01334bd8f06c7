/** What was read of one figure that the car is asked for: taken as a reading, in place of the one that was there. */
import type { Job } from '../job/types.ts';
import { leftOutOf, readingOf, wayRound, type Place, type SideOfPlace, type Step } from '../survey/to-measure.ts';
import { WAY_ALONG } from '../survey/ways.ts';
import { addReading, leaveOut, setReadingValue, setReadWith, type ReadWith, type Said } from './measurements.ts';

/**
 * `value` mm, as a person reads it; `called` names a point that is read there for the first time; `read`: with what, where that is said. Where nothing
 * counts, what was left out of it does again.
 */
export function readStep(
  job: Job,
  step: Step,
  value: number,
  called: (place: Place, on: SideOfPlace) => string,
  read: ReadWith = {},
): Job {
  const kept = wayRound(step) * value;
  const before = readingOf(job, step) ?? leftOutOf(job, step);
  if (before !== null) {
    return setReadWith(setReadingValue(leaveOut(job, before.id, false), before.id, kept), before.id, read);
  }
  const said = (place: Place, on: SideOfPlace): Said =>
    on.point === null ? { name: called(place, on) } : { ref: on.point.id };
  return step.kind === 'coordinate'
    ? addReading(job, { ...read, way: WAY_ALONG[step.axis], from: said(step.place, step.on), value: kept })
    : addReading(job, { ...read, way: 'distance', from: said(...step.from), to: said(...step.to), value: kept });
}
