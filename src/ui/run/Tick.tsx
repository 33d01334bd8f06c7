/** The key that ticks a step off and leads on; on a step that is ticked off, the way to take that back. */
import type { ReactNode } from 'react';
import { tickRun, untickRun } from '../../core/shape/made-stage.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { RunStep } from '../../core/run/run.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { RunKey } from './RunKey.tsx';
import { titleOf } from '../../core/words/run.ts';

export function Tick(props: { tube: TubeRef; step: RunStep; onTicked: () => void; children: ReactNode }): ReactNode {
  const { tube, step, onTicked } = props;
  const ticked = useDocument(
    (state) => state.job.bent.find((run) => run.tube === tube)?.done.includes(step.key) ?? false,
  );
  if (ticked) {
    return (
      <RunKey
        key="back"
        quiet
        onPress={() =>
          jobDocument.getState().edit(`Not yet: ${titleOf(step)}`, (job) => untickRun(job, frameOf(), tube, step.key))
        }
      >
        Not done after all
      </RunKey>
    );
  }
  if (step.done) return null;
  return (
    <RunKey
      key="on"
      live
      onPress={() => {
        jobDocument.getState().edit(titleOf(step), (job) => tickRun(job, frameOf(), tube, step.key));
        onTicked();
      }}
    >
      {props.children}
    </RunKey>
  );
}

const frameOf = () => jobDocument.getState().derived;
