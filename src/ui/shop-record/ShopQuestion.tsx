/**
 * Where the job that was opened and the shop record differ: what is so, in words, and the three answers. Asked once; what is
 * answered is not asked again of this job.
 */
import { useState, type ReactNode } from 'react';
import type { Difference } from '../../core/shop/differences.ts';
import type { Fault } from '../../core/job/fault.ts';
import { differenceInWords } from '../../core/words/shop.ts';
import { shopRecord, useDocument } from '../../store/page.ts';
import { useWayBack } from '../kit/useWayBack.ts';
import './record.css';

/** Differences that are shown at first. */
const FIRST = 3;

export function Question({ asked }: { asked: readonly Difference[] }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const dies = useDocument((state) => state.job.dies);
  const [all, showAll] = useState(false);
  const [refusal, setRefusal] = useState<readonly Fault[]>([]);
  const { takeShops, keepJobs, giveJobs } = shopRecord.getState();
  const { onFocus, answered } = useWayBack();
  const answer = (press: () => readonly Fault[] | void): void => {
    answered();
    setRefusal(press() ?? []);
  };
  const nameOf = (id: string): string => dies.find((die) => die.id === id)?.name ?? id;
  const shown = all ? asked : asked.slice(0, FIRST);
  const has = (end: string): boolean => asked.some(({ kind }) => !kind.endsWith(end));
  return (
    <section className="notice" aria-label="Shop and job differ" onFocus={onFocus}>
      <div className="shop-asks">
        <p>
          <strong>This job and the shop record differ.</strong>
        </p>
        <ul>
          {shown.map((one) => (
            <li key={JSON.stringify(one)}>{differenceInWords(one, unit, nameOf)}</li>
          ))}
        </ul>
        {shown.length < asked.length && (
          <button type="button" className="press press-quiet press-small" onClick={() => showAll(true)}>
            Show all {asked.length}
          </button>
        )}
      </div>
      <div className="row">
        {has('/not-in-shop') && (
          <button type="button" className="press" onClick={() => answer(takeShops)}>
            Use the shop’s
          </button>
        )}
        <button type="button" className="press" onClick={() => answer(keepJobs)}>
          Keep this job’s
        </button>
        {has('/not-in-job') && (
          <button type="button" className="press" onClick={() => answer(giveJobs)}>
            Put this job’s into the shop
          </button>
        )}
      </div>
      {refusal.length > 0 && (
        <p role="alert" className="entry-note entry-note-refused">
          <span aria-hidden="true">▲ </span>
          That cannot be done, and nothing was changed: {refusal.map(({ message }) => message).join('; ')}.
        </p>
      )}
    </section>
  );
}
