/**
 * Which bend run is open on this machine. It is a setting of the machine, not of the job: what was done and read stands in
 * the job itself, so that a tablet that slept, or was reloaded, comes back to the same step.
 */
import type { Derived } from '../../core/derive.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import { editor, keeping } from '../../store/page.ts';
import { keep, useKept } from '../kit/kept.ts';

interface OpenRun {
  /** Of the job, as the slot it is kept in, and the tube's reference: another job's tube of the same reference is not meant. */
  readonly slot: string;
  readonly tube: TubeRef;
  /** It was left, and the key that opens it has not taken the focus yet. */
  readonly left: boolean;
}

/** What was kept, if it can be used. */
export function readOpenRun(kept: unknown): OpenRun | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { slot, tube, left } = kept as Record<string, unknown>;
  return typeof slot === 'string' && typeof tube === 'string' ? { slot, tube, left: left === true } : null;
}

export const useOpenRun = (): OpenRun | null => useKept('run', readOpenRun)[0];

/** The tube of the open run, as long as this job has it; else null. */
export const tubeOfRun = (open: OpenRun | null, slot: string, { byId }: Pick<Derived, 'byId'>): TubeRef | null =>
  open !== null && !open.left && open.slot === slot && byId.has(open.tube) ? open.tube : null;

const keepRun = (tube: TubeRef, left: boolean): void =>
  keep('run', { slot: keeping.getState().slot, tube, left } satisfies OpenRun);

export const openRun = (tube: TubeRef): void => keepRun(tube, false);

/** Back to the tube in the Shop. */
export function leaveRun(tube: TubeRef): void {
  editor.getState().select({ kind: 'tube', id: tube });
  keepRun(tube, true);
}

export const forgetRun = (): void => keep('run', null);
