/** Points that were measured on a seat or a door that is not the real one. */
import type { ReactNode } from 'react';
import { setStandIn } from '../../core/edit/points.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

/** All of them, until they are measured again. */
export function StandIns({ points }: Pick<Job, 'points'>): ReactNode {
  const select = useEditor((state) => state.select);
  const stand = points.filter((point) => point.standIn);
  if (stand.length === 0) return null;
  return (
    <section className="guesses" aria-labelledby="stand-ins">
      <h3 id="stand-ins">
        Measured on a stand-in <span className="section-count">{stand.length}</span>
      </h3>
      <p className="small">
        What goes by these is only as right as the stand-in. Measure them on the real seat or door once it is there.
      </p>
      <ul>
        {stand.map((point) => (
          <li key={point.id}>
            <button type="button" className="link" onClick={() => select({ kind: 'point', id: point.id })}>
              {shownName(point.name)}
            </button>
            <StandInKey point={point} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Says that a point was measured so, or that the real one is in. */
export const StandInKey = ({ point: { id, name, standIn } }: { point: Point }): ReactNode => (
  <Command
    quiet
    step={standIn ? `${name} is the real one` : `${name} is a stand-in`}
    label={standIn ? `${shownName(name)} is the real one now` : `${shownName(name)} is a stand-in`}
    run={(job) => setStandIn(job, id, !standIn)}
  >
    {standIn ? 'It is the real one' : 'It is a stand-in'}
  </Command>
);
