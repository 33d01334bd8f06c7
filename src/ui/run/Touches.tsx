/** What this bend runs into on the machine or in the room, said where the tube is clamped and where it is pulled. */
import type { ReactNode } from 'react';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { Rehearsal } from '../../core/rehearse/types.ts';
import { sameOrder } from '../../core/solve/bend-order.ts';
import { troubleInWords } from '../../core/words/rehearsal.ts';
import { useResults } from '../../store/page.ts';
import { notRehearsedInWords } from '../bending/not-rehearsed.ts';

export function Touches({ run, bend }: { run: BentTube; bend: number }): ReactNode {
  const rehearsal = useResults((state) => state.rehearsals.get(run.tube));
  const whyNot = useResults((state) => state.unrehearsed.get(run.tube));
  const words = touchInWords(run, bend, rehearsal, whyNot);
  return (
    words !== null && (
      <p className="notice-warning">
        <span aria-hidden="true">▲ </span>
        {words}
      </p>
    )
  );
}

/** Null where nothing is touched, and where the run's order is none that was rehearsed step by step. `whyNot`: none will be. */
export function touchInWords(
  { order }: BentTube,
  bend: number,
  rehearsal: Rehearsal | undefined,
  whyNot: string | undefined,
): string | null {
  if (whyNot !== undefined) return `${notRehearsedInWords(whyNot)} Look round before you pull.`;
  const steps = [rehearsal?.plain, rehearsal?.proposed].find((each) => each != null && sameOrder(order, each));
  const step = steps?.find((each) => each.bend === bend);
  if (step === undefined || (step.hit === null && step.cannotHold === null)) return null;
  return `By the rehearsal this bend ${troubleInWords(step)}. Clear the way before you pull.`;
}
