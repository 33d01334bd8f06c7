/** All that was measured in a run, as it was entered: shown where the tube is drawn otherwise now, so that nothing of it is out of sight. */
import type { ReactNode } from 'react';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import { checkNameInWords, readingInWords } from '../../core/words/readings.ts';
import { seatInWords } from '../../core/words/seat.ts';
import { useDocument } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';

/** Nothing before anything was measured. */
export function KeptReadings({ run }: { run: BentTube }): ReactNode {
  const job = useDocument((state) => state.job);
  const { bends, checks, seat = [] } = run;
  if (bends.length + checks.length + seat.length === 0) return null;
  return (
    <section className="kept-readings" aria-label="What was measured, kept with the run">
      <h4>What was measured, kept with the run</h4>
      <ul>
        {bends.map((made) => (
          <li key={made.bend}>
            Bend {made.bend}: {readingInWords(made, job.lengthUnit)}
          </li>
        ))}
        {checks.map(({ check, measured }) => (
          <li key={check}>
            {checkNameInWords(check)}: <Length mm={measured} stored withUnit />
          </li>
        ))}
        {seat.map((each) => (
          <li key={each.at}>In the car, {seatInWords(each, job)}</li>
        ))}
      </ul>
    </section>
  );
}
