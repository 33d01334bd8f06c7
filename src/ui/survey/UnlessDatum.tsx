/** A button that takes points out of the measurements. Where the car's axes are laid by one of them it says so, and asks once. */
import { useEffect, useRef, useState, type ComponentProps, type ReactNode } from 'react';
import type { PointId } from '../../core/job/reference.ts';
import { laidBy } from '../../core/survey/datum.ts';
import { laidByInWords } from '../../core/words/datum.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

interface Props extends ComponentProps<typeof Command> {
  readonly ids: readonly PointId[];
}

export function UnlessDatum({ ids, ...command }: Props): ReactNode {
  const job = useDocument((state) => state.job);
  const [isAsking, ask] = useState(false);
  const group = useRef<HTMLElement>(null);
  useEffect(() => {
    if (isAsking) group.current?.focus();
  }, [isAsking]);
  const held = laidBy(job, new Set(ids));
  if (held.length === 0) return <Command {...command} />;
  const leave = (): void => ask(false);
  return (
    <>
      <Command
        {...command}
        run={(before) => {
          const after = command.run(before);
          const isRefused = Array.isArray(after);
          ask(!isRefused);
          return isRefused ? after : before;
        }}
      />
      {isAsking && (
        <section
          ref={group}
          tabIndex={-1}
          className="card ask"
          aria-label={`Before: ${command.step}`}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.stopPropagation();
            leave();
          }}
        >
          <p>{laidByInWords(job, held)}</p>
          <div className="row">
            <Command step={command.step} run={command.run} onDone={leave}>
              {command.children} all the same
            </Command>
            <button type="button" className="press" onClick={leave}>
              Leave it
            </button>
          </div>
        </section>
      )}
    </>
  );
}
