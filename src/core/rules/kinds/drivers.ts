/** The people in the car, and the tube nearest to the helmet of each, of what is measured already. */
import type { DriverEnvelope } from '../../job/kinds/envelope.ts';
import type { SolvedTube } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { Measured } from '../types.ts';

/** In the order of the job. */
export const driversOf = (ask: Questions): readonly DriverEnvelope[] =>
  ask.envelopes().flatMap((envelope) => (envelope.kind === 'driver' ? [envelope] : []));

/** The least gap to one of these tubes, mm; none without any. */
export function nearestTube(
  driver: DriverEnvelope,
  ask: Questions,
  tubes: readonly SolvedTube[],
): readonly [Measured] | readonly [] {
  const among = new Set(tubes.map(({ id }) => id));
  const own = ask.clearances().filter(({ envelope, tube }) => envelope === driver.id && among.has(tube));
  if (own.length === 0) return [];
  const { tube, distance, at, onEnvelope } = own.reduce((a, b) => (b.distance < a.distance ? b : a));
  return [{ value: distance, concerns: [tube], envelope: driver.id, at, to: onEnvelope }];
}
