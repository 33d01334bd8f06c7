/**
 * Looks through what is kept for the first document that can be opened. What cannot be read on the way is set aside, so
 * that it is out of the way and not lost; what a later version of the program has made stays where that one looks for it.
 */
import { isOfLaterProgram } from '../../core/job/parse.ts';
import type { Fault } from '../../core/job/fault.ts';
import { resumeHistory, type Loss } from '../../core/session/kept.ts';
import { admitText } from '../document/admit.ts';
import type { Committed } from '../document/createDocument.ts';
import type { Copy, Damaged, Kept, Persistence, Stamp } from '../storage/persistence.ts';
import { damagedFrom } from '../storage/records.ts';

export interface Opened {
  readonly kept: Kept;
  readonly stamp: Stamp;
  readonly committed: Committed;
  /** The steps that were kept, where some of them cannot be used; null where all can. */
  readonly lost: { readonly why: Loss; readonly steps: Damaged } | null;
}

export interface Found {
  /** null when there is nothing that can be opened. */
  readonly opened: Opened | null;
  readonly damaged: readonly Damaged[];
  /** A job of a later version of the program was passed over. */
  readonly isNewerThere: boolean;
}

/**
 * The slots are looked through in their order. Rejects when what is kept cannot be reached; where what is damaged cannot be
 * moved, the storage being full or broken, it stays where it is and is named all the same.
 */
export async function findKept(persistence: Persistence, slots: readonly string[], now: number): Promise<Found> {
  const damaged: Damaged[] = [];
  let isNewerThere = false;
  for (const slot of slots) {
    let best: Opened | null = null;
    for (const copy of await persistence.copies(slot)) {
      const opened = open(copy, now);
      if (opened === NEWER) {
        isNewerThere = true;
        break; // an older copy of it would be written over it
      }
      if (typeof opened === 'string') {
        const moved = damagedFrom(copy.found, opened, now);
        if (!damaged.some(({ text }) => text === moved.text)) damaged.push(moved);
        await copy.setAside(moved).catch(() => undefined);
      } else if (best === null || (opened.lost === null && opened.kept.text === best.kept.text)) {
        best = opened; // the second may bring the history of the same job, if that of the first is damaged
      }
      if (best !== null && best.lost === null) break;
    }
    if (best === null) continue;
    // What is saved next takes their place.
    if (best.lost !== null) await persistence.keepDamaged(best.lost.steps).catch(() => undefined);
    return { opened: best, damaged, isNewerThere };
  }
  return { opened: null, damaged, isNewerThere };
}

const NEWER = Symbol('newer');

/** What the copy opens as, or why it does not. */
function open({ checked }: Copy, now: number): Opened | string | typeof NEWER {
  if (!checked.ok) return checked.why;
  const { kept, stamp } = checked.value;
  const admitted = admitText(kept.text);
  if (!admitted.ok) return isOfLaterProgram(kept.text) ? NEWER : faultWords(admitted.faults);
  const { history, loss } = resumeHistory(kept.text, admitted.job, kept.history);
  const lost = loss === null ? null : { why: loss, steps: stepsAside(kept, loss, now) };
  return { kept, stamp, committed: { history, derived: admitted.derived }, lost };
}

const LOST: Readonly<Record<Loss, string>> = {
  damaged: 'its steps are damaged',
  'other version': 'its steps were made with another version of the program',
};

const stepsAside = ({ name, savedAt, history }: Kept, loss: Loss, now: number): Damaged =>
  damagedFrom({ name: `${name}, steps`, savedAt, history }, LOST[loss], now);

/** The first fault, and how many more there are. */
function faultWords([first, ...others]: readonly Fault[]): string {
  if (first === undefined) return '';
  const words = `${first.place} ${first.message}`.trim();
  return others.length === 0 ? words : `${words}, and ${others.length} more`;
}
