/**
 * The page's side of the worker for slow stages. It is sent the job, which it derives for itself, and the names of items: records
 * would lose in the copy what the page knows them by. What is stopped ends by itself if that is soon, else its worker is ended: another has to
 * be fetched, started and warmed up, which after every edit would cost more than the items themselves.
 */
import type { Job } from '../core/job/types.ts';
import type { DoItem } from './doing.ts';
import type { Hand } from './hand.ts';
import { handOf } from './hand.ts';
import type { Ask, Said } from './stage-work.ts';

export type HireForStages = () => Hand<Ask, Said>;

export const hireForStages: HireForStages = () =>
  handOf(new Worker(new URL('./stages.ts', import.meta.url), { type: 'module' }));

/** Runs the task once so many ms later, and answers how to drop it. */
export type After = (ms: number, task: () => void) => () => void;

export const afterTime: After = (ms, task) => {
  const timer = setTimeout(task, ms);
  return () => clearTimeout(timer);
};

/** ms that an item may take where its stage does not say; one is through in tens of them, the loading of the worker counts with the first. */
const PATIENCE = 20_000;
/** ms that an item which is stopped may go on in the worker; what is asked next waits for it. */
const GRACE = 1_000;
/** Workers that are given an item before it counts as one that cannot be done. */
const TRIES = 2;
const noAnswer = (patience: number): string => `no answer came within ${patience / 1000} seconds, ${TRIES} times`;

/**
 * In a worker, as long as that works; where none can be had, or it fails, the page does it itself from then on. One that does not answer
 * is ended: what it hangs on would hang the page.
 */
export function besidePage(hire: HireForStages, after: After, inPage: DoItem): DoItem {
  let hand: Hand<Ask, Said> | null = null;
  /** What the worker has derived. */
  let sent: Job | null = null;
  let isBroken = false;
  /** While the worker is at what nobody waits for any more: what comes after it. */
  let leftover: { next: (() => void) | null } | null = null;

  function end(): void {
    hand?.end();
    hand = sent = null;
  }

  /** Lets the worker come to the end of what it is at. */
  function leave(worker: Hand<Ask, Said>): void {
    const left: NonNullable<typeof leftover> = { next: null };
    leftover = left;
    const over = (): void => {
      stopClock();
      leftover = null;
      left.next?.();
    };
    const endIt = (): void => {
      end();
      over();
    };
    const stopClock = after(GRACE, endIt);
    worker.listen(over, endIt);
  }

  return (derived, stage, item, heard) => {
    const { patience = PATIENCE } = stage;
    let stop = (): void => undefined;

    function here(): void {
      stop = inPage(derived, stage, item, heard);
    }

    function there(tries: number): void {
      const left = leftover;
      if (left !== null) {
        left.next = () => there(tries);
        stop = () => void (left.next = null);
        return;
      }
      const stopClock = after(patience, () => {
        end();
        if (tries > 1) there(tries - 1);
        else heard({ ok: false, why: noAnswer(patience) });
      });
      stop = () => {
        stopClock();
        if (hand === null || stage.patience !== undefined) end();
        else leave(hand);
      };
      const giveUp = (): void => {
        isBroken = true;
        stopClock();
        end();
        here();
      };
      try {
        hand ??= hire();
        hand.listen((came) => {
          stopClock();
          heard(came);
        }, giveUp);
        hand.send({ job: derived.job === sent ? null : derived.job, stage: stage.name, id: stage.idOf(item) });
        sent = derived.job;
      } catch {
        giveUp(); // a browser may forbid workers
      }
    }

    if (isBroken) here();
    else there(TRIES);
    return () => stop();
  };
}
