/**
 * A file that is another state of the open job: what differs, record by record, and what of it is to be taken over. What was measured or
 * done there is ticked to begin with; what is only here stays as long as nobody ticks that it goes.
 */
import { useMemo, useState, type MouseEvent, type ReactNode } from 'react';
import type { Fault } from '../core/job/fault.ts';
import { inNames } from '../core/job/in-names.ts';
import { serialiseJob } from '../core/job/serialise.ts';
import { shownName } from '../core/job/shown.ts';
import type { Job } from '../core/job/types.ts';
import { alignedTo } from '../core/take-over/aligned.ts';
import { alongWith } from '../core/take-over/along.ts';
import { differencesOf, TRADES, type Difference } from '../core/take-over/differences.ts';
import { takeOver } from '../core/take-over/take-over.ts';
import { fieldLines } from '../core/words/field-differs.ts';
import { listed } from '../core/words/lists.ts';
import { recordInWords, TRADE_WORDS } from '../core/words/take-over.ts';
import type { OtherState } from '../store/types.ts';
import { editor, jobDocument, opening, useDocument } from '../store/page.ts';
import { FaultList } from '../ui/kit/FaultList.tsx';
import { Dialog } from './Dialog.tsx';
import './take-over.css';

type Chosen = ReadonlySet<string>;

export default function TakeOver({ otherState }: { readonly otherState: OtherState }): ReactNode {
  const { fileName, job: other } = otherState;
  const job = useDocument((state) => state.job);
  const there = useMemo(() => alignedTo(job, other), [job, other]);
  const found = useMemo(() => differencesOf(job, there), [job, there]);
  const [chosen, choose] = useState<Chosen>(() => new Set(found.filter((one) => one.offered).map(({ id }) => id)));
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const asked = found.filter(({ id }) => chosen.has(id));
  const along = alongWith(found, asked);

  const put = (ids: readonly string[], isChosen: boolean): void => {
    setFaults([]);
    choose((before) => {
      const after = new Set(before);
      for (const id of ids) {
        if (isChosen) after.add(id);
        else after.delete(id);
      }
      return after;
    });
  };
  const take = (event: MouseEvent): void => {
    const refused = takeOverInto(fileName, other, chosen);
    setFaults(refused);
    if (refused.length > 0) return;
    close(event);
    editor.getState().say({ message: takenInWords(fileName, asked.length, along.length), damaged: [] });
  };
  const openIt = (event: MouseEvent): void => {
    close(event);
    opening.open(fileName, serialiseJob(other));
  };

  return (
    <Dialog title="Another state of this job" closed={() => editor.getState().askOf(null)}>
      <p>
        <strong className="take-over-file">{shownName(fileName)}</strong> holds this job as it stands elsewhere:{' '}
        {found.length === 1 ? '1 thing differs' : `${found.length} things differ`}. Tick what to take over. What was
        measured or done there is ticked already, and nothing that is only here goes unless you tick it.
      </p>
      {TRADES.map((trade) => {
        const own = found.filter((one) => one.trade === trade);
        return (
          own.length > 0 && <Part key={trade} title={TRADE_WORDS[trade]} {...{ own, chosen, put, here: job, there }} />
        );
      })}
      <div className="take-over-foot">
        {along.length > 0 && (
          <p className="small">
            Comes along, since it is needed: {listed(along.map((one) => recordInWords(one, job, there)))}.
          </p>
        )}
        {faults.length > 0 && (
          <div role="alert">
            <p>
              <strong>Not taken over: the job would not hold together.</strong> Nothing was changed.
            </p>
            <FaultList faults={faults} />
          </div>
        )}
        <div className="row">
          <button type="button" className="press press-live" disabled={asked.length === 0} onClick={take}>
            Take over {asked.length}
          </button>
          <button type="button" className="press" onClick={openIt}>
            Open it in its own place
          </button>
          <button type="button" className="press press-quiet" onClick={close}>
            Cancel
          </button>
        </div>
      </div>
    </Dialog>
  );
}

const close = (event: MouseEvent): void => event.currentTarget.closest('dialog')?.close();

/** One step, which undo takes back; or why not. */
function takeOverInto(fileName: string, other: Job, chosen: Chosen): readonly Fault[] {
  jobDocument.getState().commit();
  const { job, edit } = jobDocument.getState();
  const answer = takeOver(job, other, chosen);
  if ('format' in answer) return edit(`Take over from ${shownName(fileName)}`, () => answer);
  return inNames(job, answer);
}

const takenInWords = (fileName: string, count: number, along: number): string =>
  `Taken over from ${shownName(fileName)}: ${count}${along === 0 ? '' : `, and ${along} that came along`}. Undo takes it back in one step.`;

interface PartProps {
  readonly title: string;
  readonly own: readonly Difference[];
  readonly chosen: Chosen;
  readonly put: (ids: readonly string[], isChosen: boolean) => void;
  readonly here: Job;
  readonly there: Job;
}

const KINDS: readonly { readonly kind: Difference['kind']; readonly title: string }[] = [
  { kind: 'only-there', title: 'Only there' },
  { kind: 'differs', title: 'On both sides, not alike' },
  { kind: 'only-here', title: 'Only here: stays unless ticked' },
];

function Part({ title, own, chosen, put, here, there }: PartProps): ReactNode {
  const theirs = own.flatMap(({ kind, id }) => (kind === 'only-here' ? [] : [id]));
  const isAll = theirs.every((id) => chosen.has(id));
  return (
    <section className="take-over-part" aria-label={title}>
      <header>
        <h3>{title}</h3>
        {theirs.length > 1 && (
          <button type="button" className="press press-quiet press-small" onClick={() => put(theirs, !isAll)}>
            {isAll ? 'None of theirs' : `All ${theirs.length} of theirs`}
          </button>
        )}
      </header>
      {KINDS.map(({ kind, title: heading }) => {
        const those = own.filter((one) => one.kind === kind);
        if (those.length === 0) return null;
        return (
          <div key={kind}>
            <h4>{heading}</h4>
            {those.map((one) => {
              const name = recordInWords(one, here, there);
              const row = { one, name, isChosen: chosen.has(one.id), put };
              return kind === 'differs' ? (
                <Both key={one.id} {...row} here={here} there={there} />
              ) : (
                <label key={one.id} className="take-over-tick">
                  <input
                    type="checkbox"
                    checked={row.isChosen}
                    onChange={(event) => put([one.id], event.target.checked)}
                  />
                  <span>{kind === 'only-here' ? `Take out: ${name}` : name}</span>
                </label>
              );
            })}
          </div>
        );
      })}
    </section>
  );
}

interface BothProps {
  readonly one: Difference;
  readonly name: string;
  readonly isChosen: boolean;
  readonly put: PartProps['put'];
  readonly here: Job;
  readonly there: Job;
}

/** Both values, and which of them counts. */
function Both({ one, name, isChosen, put, here, there }: BothProps): ReactNode {
  const side = (isTheirs: boolean): ReactNode => (
    <label>
      <input type="radio" name={one.id} checked={isChosen === isTheirs} onChange={() => put([one.id], isTheirs)} />
      {isTheirs ? 'There' : 'Here'}
    </label>
  );
  return (
    <fieldset className="take-over-both">
      <legend>{name}</legend>
      <table>
        <thead>
          <tr>
            <td />
            <th scope="col">{side(false)}</th>
            <th scope="col">{side(true)}</th>
          </tr>
        </thead>
        <tbody>
          {fieldLines(one.fields, here, there).map((line, i) => (
            <tr key={i}>
              <th scope="row">{line.label}</th>
              <td>{line.here}</td>
              <td>{line.there}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </fieldset>
  );
}
