/**
 * Which bend run is open on this machine. It is a setting of the machine, not of the job: what was done and read stands in
 * the job itself, so that a tablet that slept, or was reloaded, comes back to the same step.
 */
import { createContext, useContext } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { TubeRef } from '../../core/job/types.ts';

export interface OpenRun {
  /** The job's name and the tube's reference: another job's tube of the same reference is not meant. */
  readonly job: string;
  readonly tube: TubeRef;
}

/** What was kept, if it can be used. */
export function readOpenRun(kept: unknown): OpenRun | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { job, tube } = kept as Record<string, unknown>;
  return typeof job === 'string' && typeof tube === 'string' ? { job, tube } : null;
}

/** The tube of the open run, as long as this job has it; else null. */
export const tubeOfRun = (open: OpenRun | null, { job, byId }: Pick<Derived, 'job' | 'byId'>): TubeRef | null =>
  open !== null && open.job === job.name && byId.has(open.tube) ? open.tube : null;

/** Opens the run of a tube; the shell says how. */
export const RunOpener = createContext<(tube: TubeRef) => void>(() => {});

export const useRunOpener = (): ((tube: TubeRef) => void) => useContext(RunOpener);
