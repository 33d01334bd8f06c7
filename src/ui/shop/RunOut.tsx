/** Takes a tube's bend run out of the job: what a member waits for that is to go, or to lose its twin. */
import type { ReactNode } from 'react';
import { findRun, removeRun } from '../../core/edit/bent.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

/** Nothing where the tube has no run. What was read stays in the pull log. */
export function RunOut({ tube }: { tube: SolvedTube }): ReactNode {
  const has = useDocument((state) => findRun(state.job, tube.id) !== undefined);
  if (!has) return null;
  return (
    <Command quiet step={`Take the bend run of ${tube.name} out`} run={(job) => removeRun(job, tube.id)}>
      Take the bend run out
    </Command>
  );
}
