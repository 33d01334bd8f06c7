/** What is wrong with a file, place by place; a long list is shown when it is asked for. */
import { useState, type ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';

const FIRST_FAULTS = 4;

export function FaultList({ faults }: { readonly faults: readonly Fault[] }): ReactNode {
  const [all, showAll] = useState(false);
  if (faults.length === 0) return null;
  const shown = all ? faults : faults.slice(0, FIRST_FAULTS);
  return (
    <ul className="faults">
      {shown.map((fault, index) => (
        <li key={index}>
          {fault.place !== '' && <code>{fault.place}</code>} {fault.message}
        </li>
      ))}
      {shown.length < faults.length && (
        <li>
          <button type="button" className="press" onClick={() => showAll(true)}>
            Show all {faults.length}
          </button>
        </li>
      )}
    </ul>
  );
}
