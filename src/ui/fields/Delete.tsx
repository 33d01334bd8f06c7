/** Takes a record out; greyed while it is in use, with who uses it beside it. */
import type { ReactNode } from 'react';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

export function Delete(props: { id: string; name: string; remove: (job: Job) => Edited }): ReactNode {
  const { id, name, remove } = props;
  const outcome = remove(useDocument((state) => state.job));
  const [first, ...others] = isFaults(outcome) ? outcome : [];
  return (
    <div className="switch">
      <Command quiet destroys={id} disabled={first !== undefined} step={`Delete ${name}`} run={remove}>
        Delete {shownName(name)}
      </Command>
      {first && (
        <span className="small">
          {first.message}
          {others.length > 0 && `, and ${others.length} more`}
        </span>
      )}
    </div>
  );
}

const isFaults = (outcome: Edited): outcome is readonly Fault[] => Array.isArray(outcome);
