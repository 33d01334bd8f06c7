/** A button that edits the job; when the job cannot take it, the reason stands beside the button. */
import { useState, type ReactNode } from 'react';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { Job } from '../../core/job/types.ts';
import { jobDocument } from '../../store/page.ts';

export function Command(props: {
  /** Names the step in undo. */
  step: string;
  quiet?: boolean;
  disabled?: boolean;
  label?: string;
  /**
   * It takes this away, the id of a record or another word for what goes: Tab passes it by, so that no key pressed on the way does harm.
   * The keys for it are in the table of commands.
   */
  destroys?: string;
  /** Answers the changed job, or why it cannot be changed. */
  run: (job: Job) => Edited;
  onDone?: () => void;
  children: ReactNode;
}): ReactNode {
  const [refusal, setRefusal] = useState<readonly string[]>([]);

  function press(): void {
    const { edit, job } = jobDocument.getState();
    const answer = props.run(job);
    const faults = isFaults(answer) ? answer : edit(props.step, () => answer);
    setRefusal(faults.map((fault) => fault.message));
    if (faults.length === 0) props.onDone?.();
  }

  return (
    <span className="command">
      <button
        type="button"
        className={props.quiet ? 'press press-quiet' : 'press'}
        aria-label={props.label}
        disabled={props.disabled}
        {...(props.destroys !== undefined && {
          'data-destroys': props.destroys,
          'aria-keyshortcuts': 'Alt+Delete',
          title: 'Alt + Delete leads here',
          tabIndex: -1,
        })}
        onClick={press}
      >
        {props.children}
      </button>
      {refusal.length > 0 && (
        <span className="entry-note entry-note-refused" role="alert">
          <span aria-hidden="true">▲ </span>
          {refusal.join('; ')}
        </span>
      )}
    </span>
  );
}

const isFaults = (answer: Edited): answer is readonly Fault[] => Array.isArray(answer);
