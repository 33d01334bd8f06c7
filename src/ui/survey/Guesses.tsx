/** Points and nodes that a cage was begun with and nobody has said: what stands on them is only as right as they are. */
import type { ReactNode } from 'react';
import { confirmNode } from '../../core/edit/nodes.ts';
import { confirmPoint } from '../../core/edit/points.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

export function Guesses({ points, nodes }: Pick<Job, 'points' | 'nodes'>): ReactNode {
  const select = useEditor((state) => state.select);
  const guessed = [
    ...points.filter((point) => point.guessed).map(({ id, name }) => ({ kind: 'point', id, name }) as const),
    ...nodes.filter((node) => node.guessed).map(({ id, name }) => ({ kind: 'node', id, name }) as const),
  ];
  if (guessed.length === 0) return null;
  return (
    <section className="guesses" aria-labelledby="guesses">
      <h3 id="guesses">
        Still guessed <span className="section-count">{guessed.length}</span>
      </h3>
      <p className="small">
        Nobody has measured these points, or said these nodes’ gap or height. Type what the tape says, or confirm one
        that is right.
      </p>
      <ul>
        {guessed.map(({ name, ...which }) => (
          <li key={`${which.kind} ${which.id}`}>
            <button type="button" className="link" onClick={() => select(which)}>
              {shownName(name)}
            </button>
            <Command
              quiet
              step={`Confirm ${name}`}
              label={`Confirm ${shownName(name)}`}
              run={(job) => (which.kind === 'point' ? confirmPoint(job, which.id) : confirmNode(job, which.id))}
            >
              It is right
            </Command>
          </li>
        ))}
      </ul>
    </section>
  );
}
