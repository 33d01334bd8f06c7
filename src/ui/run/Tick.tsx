/** The key that ticks a step off and leads on; on a step that is ticked off, the way to take that back. */
import type { ReactNode } from 'react';
import { tickStep, untickStep } from '../../core/edit/bent.ts';
import type { TubeRef } from '../../core/job/types.ts';
import type { RunStep } from '../../core/shop/run.ts';
import { useWorkspace, workspace } from '../../store/workspace.ts';
import { titleOf } from './run-words.ts';

export function Tick(props: { tube: TubeRef; step: RunStep; onTicked: () => void; children: ReactNode }): ReactNode {
  const { tube, step, onTicked } = props;
  const ticked = useWorkspace(
    (state) => state.job.bent.find((run) => run.tube === tube)?.done.includes(step.key) ?? false,
  );
  if (ticked) {
    return (
      <button
        type="button"
        className="press press-quiet run-key"
        onClick={() => workspace.getState().edit(`Not yet: ${titleOf(step)}`, (job) => untickStep(job, tube, step.key))}
      >
        Not done after all
      </button>
    );
  }
  if (step.done) return null;
  return (
    <button
      type="button"
      className="press press-live run-key"
      onClick={() => {
        workspace.getState().edit(titleOf(step), (job) => tickStep(job, tube, step.key));
        onTicked();
      }}
    >
      {props.children}
    </button>
  );
}
