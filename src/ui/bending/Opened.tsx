/** That the bends came out wider than the radius that the marks follow, what that does to the tube, and the key that takes the radius of the pulls. */
import type { ReactNode } from 'react';
import { updateDie } from '../../core/edit/dies.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { Opened as Wider } from '../../core/run/opened.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { mendInWords } from '../../core/words/mends.ts';
import { openedInWords } from '../../core/words/run.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

/** Nothing where the marks go by what the machine does. */
export function Opened(props: { tube: SolvedTube; run: BentTube; opened: Wider | null }): ReactNode {
  const { opened, run } = props;
  const { die } = props.tube;
  const derived = useDocument((state) => state.derived);
  if (opened === null || die === null) return null;
  const key = mendInWords({ kind: 'radius-from-pulls', die: die.id }, derived);
  return (
    <section className="opened" aria-label="What the bends opened to">
      <p className="notice-warning">
        <span aria-hidden="true">▲ </span>
        {openedInWords(opened, run.stands ?? false, derived.job.lengthUnit)}
      </p>
      <Command step={key} run={(job) => updateDie(job, die.id, { radius: 'from-pulls' })}>
        {key}
      </Command>
    </section>
  );
}
