/** Three short hints over the bay, on the first start only. */
import type { ReactNode } from 'react';
import { useKept } from '../ui/kit/kept.ts';
import './hints.css';

const HINTS: readonly { readonly what: string; readonly how: string }[] = [
  { what: 'Look round', how: 'Drag to turn, pinch or wheel to zoom.' },
  { what: 'Pick it', how: 'Press a tube here or in a table.' },
  // No example is parted at a line's end.
  { what: 'Type as you speak', how: '21\u00a01/2, 1\u2032\u00a09-1/2\u2033, 546mm or 47\u00a01/2\u00a0/\u00a02.' },
];

const wereSeen = (kept: unknown): boolean => kept === true;

export function Hints(): ReactNode {
  const [seen, keep] = useKept('hints', wereSeen);
  if (seen) return null;
  return (
    <aside className="hints" aria-label="Hints">
      <ol>
        {HINTS.map(({ what, how }) => (
          <li key={what}>
            <strong>{what}</strong>
            <span>{how}</span>
          </li>
        ))}
      </ol>
      <button type="button" className="press press-live" onClick={() => keep(true)}>
        Got it
      </button>
    </aside>
  );
}
