/** Points that a cage was begun with and nobody has measured: what stands on them is only as right as they are. */
import type { ReactNode } from 'react';
import { confirmPoint } from '../../core/edit/points.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import { useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

export function Guesses({ points }: { points: readonly Point[] }): ReactNode {
  const select = useEditor((state) => state.select);
  const guessed = points.filter((point) => point.guessed);
  if (guessed.length === 0) return null;
  return (
    <section className="guesses" aria-labelledby="guesses">
      <h3 id="guesses">
        Still guessed <span className="section-count">{guessed.length}</span>
      </h3>
      <p className="small">Nobody has measured these. Type what the tape says, or confirm one that is right.</p>
      <ul>
        {guessed.map((point) => (
          <li key={point.id}>
            <button type="button" className="link" onClick={() => select({ kind: 'point', id: point.id })}>
              {shownName(point.name)}
            </button>
            <Command
              quiet
              step={`Confirm ${point.name}`}
              label={`Confirm ${shownName(point.name)}`}
              run={(job) => confirmPoint(job, point.id)}
            >
              It is right
            </Command>
          </li>
        ))}
      </ul>
    </section>
  );
}
