/** The last thing in a station: what the job stands at, and the key that leads to the next station. */
import type { ReactNode } from 'react';
import { editor } from '../../store/page.ts';
import type { Station } from '../../store/types.ts';
import { useOpenCount } from './useOpenCount.ts';

export function Onward(props: {
  readonly to: Station;
  readonly label: string;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <footer className="onward">
      <p className="small">{props.children}</p>
      <button type="button" className="press" onClick={() => editor.getState().setStation(props.to)}>
        {props.label} <span aria-hidden="true">→</span>
      </button>
    </footer>
  );
}

/** "2 errors and 1 warning"; null where neither is open. */
export function useOpenInWords(): string | null {
  const count = useOpenCount();
  const words = (['error', 'warning'] as const).flatMap((severity) => {
    const found = count(severity).things;
    return found === 0 ? [] : [`${found} ${severity}${found === 1 ? '' : 's'}`];
  });
  return words.length === 0 ? null : words.join(' and ');
}
