/**
 * One more pull: how far the machine was pulled and what the bend came out with. Nothing is logged until both are read;
 * what cannot be read is refused beside its field.
 */
import { useId, useRef, useState, type FormEvent, type ReactNode } from 'react';
import { addPull } from '../../core/edit/pulls.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { useDocument } from '../../store/page.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { bendAngleKind, textKind } from '../fields/kinds.ts';
import type { Pair } from './pairs.ts';

/** What is typed and not logged yet; `batch` is null while it is the usual one. */
export interface PullDraft {
  readonly pulled: string;
  readonly net: string;
  readonly batch: string | null;
  readonly on: string;
}

export const NO_PULL: PullDraft = { pulled: '', net: '', batch: null, on: '' };

/** `batch`: what the pull is logged for unless the person says another. The draft is the Shop's: it is still there after a look at another part. */
export function AddPull(props: {
  pair: Pair;
  batch: string;
  draft: PullDraft;
  type: (draft: PullDraft) => void;
}): ReactNode {
  const { pair, batch: usual, draft, type } = props;
  const edit = useDocument((state) => state.edit);
  /** The person has asked to log what stands here: empty fields are named now too. */
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const pulled = bendAngleKind.read(draft.pulled);
  const net = bendAngleKind.read(draft.net);
  const batch = textKind(true).read(draft.batch ?? usual);

  function log(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    if (!pulled.ok || !net.ok || !batch.ok) {
      form.current?.querySelector<HTMLInputElement>('[data-unread]')?.focus();
      return;
    }
    const pull = {
      die: pair.die.id,
      section: pair.section.id,
      batch: batch.value,
      pulled: pulled.value,
      net: net.value,
      on: draft.on,
    };
    const faults = edit('Log a pull', (job) => addPull(job, pull));
    setRefusal(faults.map((fault) => fault.message).join('; '));
    if (faults.length > 0) return;
    type({ ...draft, pulled: '', net: '' });
    setAsked(false);
    form.current?.querySelector('input')?.focus();
  }

  return (
    <form ref={form} className="fields pull-form" aria-label="Log a pull" noValidate onSubmit={log}>
      <div className="fields fields-two">
        <DraftField
          label="Pulled"
          unit="°"
          text={draft.pulled}
          entered={pulled}
          asked={asked}
          onType={(text) => type({ ...draft, pulled: text })}
        />
        <DraftField
          label="Finished, let go"
          unit="°"
          text={draft.net}
          entered={net}
          asked={asked}
          onType={(text) => type({ ...draft, net: text })}
        />
        <DraftField
          label="Batch"
          text={draft.batch ?? usual}
          entered={batch}
          asked={asked}
          onType={(text) => type({ ...draft, batch: text })}
        />
        <Day value={draft.on} onChange={(on) => type({ ...draft, on })} />
      </div>
      {pulled.ok && net.ok && <Opening by={pulled.value - net.value} />}
      <span className="command">
        <button type="submit" className="press">
          Log the pull
        </button>
        {refusal !== '' && (
          <span className="entry-note entry-note-refused" role="alert">
            <span aria-hidden="true">▲ </span>
            {refusal}
          </span>
        )}
      </span>
    </form>
  );
}

/** What the two readings come to, before they are logged. */
const Opening = ({ by }: { by: number }): ReactNode =>
  by < 0 ? (
    <p className="notice-warning">
      <span aria-hidden="true">▲ </span>
      The finished angle is above what was pulled: a bend opens when it is let go, it does not close. It is logged as it
      stands; read it again.
    </p>
  ) : (
    <p className="small">{`It opened by ${formatAngle(by, 1)}°.`}</p>
  );

/** The browser's own calendar; left empty, no day is noted. */
function Day({ value, onChange }: { value: string; onChange: (day: string) => void }): ReactNode {
  const id = useId();
  return (
    <div className="entry">
      <label htmlFor={id} className="entry-label">
        Day
      </label>
      <input
        id={id}
        type="date"
        className="entry-input"
        value={value}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
    </div>
  );
}
