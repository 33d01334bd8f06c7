/** Whether a tube that was bent leads: it then stands in the frame as it came out, and every tube that is not cut yet follows it. */
import { useMemo, type ReactNode } from 'react';
import { grouped } from '../../core/checks/grouped.ts';
import { errorsBrought, leadChanges } from '../../core/checks/lead-changes.ts';
import { derive } from '../../core/derive.ts';
import { setStands } from '../../core/edit/bent.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { NotMade, WhatChanges } from './LeadChanges.tsx';
import { Seats } from './Seats.tsx';

/** Nothing before a bend of it was read: there is nothing yet that could lead. */
export function Leads({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  const job = useDocument((state) => state.job);
  const derived = useDocument((state) => state.derived);
  const leads = run.stands ?? false;
  const solved = derived.byId.get(tube.id)!;
  const stands = solved.asDrawn === null ? null : solved;
  const come = useMemo(() => {
    const other = derive(setStands(job, tube.id, !leads), derived);
    if (!other.ok) return null;
    const [drawn, built] = leads ? [other.value, derived] : [derived, other.value];
    const brought = grouped(errorsBrought(drawn.findings, built.findings), built);
    return { built, brought, changes: leadChanges(drawn, built, tube.id) };
  }, [job, derived, tube.id, leads]);
  if (run.bends.length === 0) return null;
  const count = come?.changes.pairs.flat().length ?? 0;
  const others =
    count === 0 ? 'no other tube that a tape would tell' : count === 1 ? '1 other tube' : `${count} other tubes`;
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
      {come !== null && <NotMade groups={come.brought} built={come.built} leads={leads} />}
      {come !== null && count + come.changes.less > 0 && <WhatChanges changes={come.changes} derived={derived} />}
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
