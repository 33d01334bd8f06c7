/**
 * The rehearsal of a tube of six bends: every order, both ends in front. Beside it the same sweeps by sampling: the
 * tube as a point every 5 mm, the machine at every degree. A few of the steps are sampled, and counted up to all of
 * them.
 */
import type { BendableTube } from '../../src/core/rehearse/bendable.ts';
import { pulledAngle, rehearse } from '../../src/core/rehearse/rehearse.ts';
import { drawnBender, drawnShape, seeded } from '../core/rehearse/draws.ts';
import { sampler } from '../core/rehearse/sampling.ts';
import { bendable } from '../core/rehearse/tubes.ts';
import { timed, timeOf, timingOf, type Timing } from './clock.ts';

const BENDS = 6;
const DEGREE = Math.PI / 180;

/** Tubes of all kinds, those without any free order among them. */
const tubes = (): readonly BendableTube[] =>
  Array.from({ length: 12 }, (_, seed) => {
    const draw = seeded(seed);
    return bendable(drawnShape(draw, BENDS), drawnBender(draw));
  });

/** Over all tubes, each searched a few times. */
export function timeRehearsals(): { readonly time: Timing; readonly slowest: number; readonly sampled: number } {
  const all = tubes();
  for (const tube of all) rehearse(tube);
  const each = all.map((tube) => timed(7, 2, () => rehearse(tube)).median);
  return { time: timingOf(each), slowest: Math.max(...each), sampled: sampledAll(all[0]!) };
}

/** Milliseconds that sampling takes for all steps of one tube: 6 bends x 2 ends x 2^5 sets of others made. */
function sampledAll(tube: BendableTube): number {
  const steps = BENDS * 2 * 2 ** (BENDS - 1);
  const tried = Array.from({ length: BENDS }, (_, i) => {
    const step = { bend: i + 1, front: i % 2 === 0 ? 'A' : 'B' } as const;
    const made = new Set(
      Array.from({ length: BENDS }, (__, k) => k + 1).filter((k) => k !== i + 1 && (k + i) % 2 === 0),
    );
    return timeOf(() => {
      const clearanceAt = sampler(tube, made, step, 5);
      for (let angle = 0; angle <= pulledAngle(tube, i + 1); angle += DEGREE) clearanceAt(angle);
    });
  });
  return (tried.reduce((sum, ms) => sum + ms, 0) / tried.length) * steps;
}
