/** The numbers that tubes go by in the shop, given anew on purpose; and what is waste then. */
import { useState, type ReactNode } from 'react';
import { numberByBuildOrder, renumbered, setNumber, type Renumbered } from '../../core/edit/numbers.ts';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import { GREATEST_NUMBER } from '../../core/job/limits.ts';
import { lastNumberOf } from '../../core/job/numbers.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { NumberField } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';

export default function Numbers(): ReactNode {
  const job = useDocument((state) => state.job);
  const { tubes, byId } = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const [waste, setWaste] = useState<readonly Renumbered[]>([]);
  const chosen = selection?.kind === 'tube' ? byId.get(selection.id)?.member.id : undefined;
  const byOrder = renumbered(job, numberByBuildOrder(job));
  const next = Math.max(lastNumberOf(job), ...tubes.map(({ number }) => number)) + 1;
  const called = (one: Renumbered): string => `${one.from} is now ${one.to} (${byId.get(one.tube)?.name ?? one.tube})`;

  function give(tube: TubeRef, number: number): readonly Fault[] {
    const before = jobDocument.getState().job;
    const answer = setNumber(before, tube, number);
    const faults = isFaults(answer) ? answer : jobDocument.getState().edit(`Number ${number}`, () => answer);
    if (faults.length === 0) setWaste(renumbered(before, jobDocument.getState().job));
    return faults;
  }

  return (
    <>
      <p className="small">
        A number is given once: a tube keeps it when others come, go or change places, so that what is chalked and
        printed stays true. The next new tube is {next}.
      </p>
      {chosen === undefined && <p className="small">Choose a tube to give it another number.</p>}
      <div className="fields fields-two">
        {tubes
          .filter(({ member }) => member.id === chosen)
          .map(({ id, name, number }) => (
            <NumberField
              key={id}
              label={`Number of ${name}`}
              least={1}
              greatest={GREATEST_NUMBER}
              step={1}
              value={number}
              commit={(value) => give(id, value)}
            />
          ))}
      </div>
      {byOrder.length > 0 && (
        <>
          <p>
            By build order {byOrder.length === 1 ? '1 tube' : `${byOrder.length} tubes`} would go by another number:{' '}
            {byOrder.map(({ from, to }) => `${from} by ${to}`).join(', ')}. Their sheets, wraps and chalk marks would be
            waste.
          </p>
          <Command
            step="Number by build order"
            run={(before) => {
              setWaste(renumbered(before, numberByBuildOrder(before)));
              return numberByBuildOrder(before);
            }}
          >
            Number all by build order
          </Command>
        </>
      )}
      {waste.length > 0 && (
        <p className="notice-warning" role="status">
          Waste now, printed and chalked: {waste.map(called).join('; ')}. Print those sheets and wraps anew, and those
          of tubes that meet them.
        </p>
      )}
    </>
  );
}

const isFaults = (answer: Edited): answer is readonly Fault[] => Array.isArray(answer);
