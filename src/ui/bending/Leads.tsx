/** Whether a tube that was bent leads: it then stands in the frame as it came out, and every tube that is not cut yet follows it. */
import { useMemo, type ReactNode } from 'react';
import { changedTubes } from '../../core/checks/changed-tubes.ts';
import { derive } from '../../core/derive.ts';
import { setStands } from '../../core/edit/bent.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { tubeChangeInWords } from '../../core/words/changes.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { Seats } from './Seats.tsx';

/** Nothing before a bend of it was read: there is nothing yet that could lead. */
export function Leads({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  const job = useDocument((state) => state.job);
  const derived = useDocument((state) => state.derived);
  const leads = run.stands ?? false;
  const solved = derived.byId.get(tube.id)!;
  const stands = solved.asDrawn === null ? null : solved;
  const changes = useMemo(() => {
    const other = derive(setStands(job, tube.id, !leads), derived);
    if (!other.ok) return null;
    const [drawn, built] = leads ? [other.value, derived] : [derived, other.value];
    return changedTubes(drawn, built).filter((change) => change.tube !== tube.id);
  }, [job, derived, tube.id, leads]);
  if (run.bends.length === 0) return null;
  const count = changes?.length ?? 0;
  const others = count === 0 ? 'no other tube' : count === 1 ? '1 other tube' : `${count} other tubes`;
  return (
    <section tabIndex={-1} className="leads" aria-label="As it came out">
      {leads && stands === null ? (
        <p role="status">
          <strong>This tube is to lead, and stands as drawn.</strong> What was read of it does not go with what is drawn
          now.
        </p>
      ) : leads ? (
        <p role="status">
          <strong>This tube leads.</strong> The frame stands as it came out; that changes {others}.
        </p>
      ) : (
        <p>
          <strong>The frame stands as drawn.</strong> Let this tube lead, and what is not cut yet follows it as it came
          out: that changes {others}.
        </p>
      )}
      {changes !== null && count > 0 && (
        <details>
          <summary>What changes</summary>
          <ul>
            {changes.map((change) => {
              const { number, name } = derived.byId.get(change.tube)!;
              return (
                <li key={change.tube}>
                  <span className="number-tag">{number}</span> {name}: {tubeChangeInWords(change, job.lengthUnit)}
                </li>
              );
            })}
          </ul>
        </details>
      )}
      <Command
        quiet={leads}
        step={leads ? `${tube.name} as drawn` : `${tube.name} leads`}
        run={(before) => setStands(before, tube.id, !leads)}
      >
        {leads ? 'Stand as drawn' : 'Let it lead'}
      </Command>
      {leads && stands !== null && <Seats tube={stands} run={run} />}
      {!leads && run.seat !== undefined && (
        <p className="small">Where it was measured in the car is kept. It counts once the tube leads.</p>
      )}
    </section>
  );
}
