/**
 * The page's side of the worker for slow stages. It is sent the job, which it derives for itself, and the names of items: records
 * would lose in the copy what the page knows them by. To stop, the worker is ended; the next item hires another.
 */
import type { Job } from '../core/job/types.ts';
import type { DoItem } from './doing.ts';
import type { Hand } from './hand.ts';
import { handOf } from './hand.ts';
import type { Ask, Said } from './stage-work.ts';

export type HireForStages = () => Hand<Ask, Said>;

export const hireForStages: HireForStages = () =>
  handOf(new Worker(new URL('./stages.ts', import.meta.url), { type: 'module' }));

/** In a worker, as long as that works; where it cannot be started, or fails, the page does it itself from then on. */
export function besidePage(hire: HireForStages, inPage: DoItem): DoItem {
  let hand: ReturnType<HireForStages> | null = null;
  /** What the worker has derived. */
  let sent: Job | null = null;
  let isBroken = false;

  function end(): void {
    hand?.end();
    hand = sent = null;
  }

  return (derived, stage, item, heard) => {
    if (isBroken) return inPage(derived, stage, item, heard);
    let stop = end;
    hand ??= hire();
    hand.listen(heard, () => {
      isBroken = true;
      end();
      stop = inPage(derived, stage, item, heard);
    });
    hand.send({ job: derived.job === sent ? null : derived.job, stage: stage.name, id: stage.idOf(item) });
    sent = derived.job;
    return () => stop();
  };
}
