/** What is to become of what leans on members that are to go. */
import { useEffect, useRef, type ReactNode } from 'react';
import { removeSeveral } from '../../core/edit/several.ts';
import { shownName } from '../../core/job/shown.ts';
import { leaningOn, removeLeaving, removeWithLeaning } from '../../core/shape/remove-bars.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

export default function AskDelete(props: { ids: readonly string[]; called: string; close: () => void }): ReactNode {
  const { ids, close } = props;
  const job = useDocument((state) => state.job);
  const group = useRef<HTMLElement>(null);
  useEffect(() => group.current?.focus(), []);
  const going = new Set(ids);
  const { nodes, named, gussets, goes } = leaningOn(job, going);
  const called = shownName(props.called);
  const removed = nodes.length + named.length === 0 ? removeSeveral(job, 'members', ids) : [];
  const isFaults = Array.isArray(removed) && removed.length > 0;
  return (
    <section
      ref={group}
      tabIndex={-1}
      className="card ask"
      aria-label={`Before deleting ${called}`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        close();
      }}
    >
      {Array.isArray(removed) &&
        removed.map((fault) => (
          <p key={fault.place} className="entry-note-refused">
            <span aria-hidden="true">▲ </span>
            {fault.message}
          </p>
        ))}
      {nodes.length > 0 && (
        <p>
          Stand on {called}: {listed(nodes)}.
        </p>
      )}
      {named.length > 0 && (
        <p>You told these to be coped to it, or cut where it runs through: {listed(named)}. That goes with it.</p>
      )}
      {gussets.length > 0 && (
        <p>
          Welded to {called}, and deleted with it: {listed(gussets)}.
        </p>
      )}
      <div className="row">
        {nodes.length + named.length + gussets.length > 0 && !isFaults && (
          <Command
            step={`Delete ${props.called} alone`}
            run={(before) => removeLeaving(before, jobDocument.getState().derived, going)}
            onDone={close}
          >
            {nodes.length === 0 ? `Delete ${called}` : `Delete ${called} alone`}
          </Command>
        )}
        {nodes.length > 0 && (
          <Command
            step={`Delete ${props.called} and what stands on it`}
            run={(before) => removeWithLeaning(before, going)}
            onDone={close}
          >
            Delete what stands on it too
          </Command>
        )}
        <button type="button" className="press" onClick={close}>
          Keep {called}
        </button>
      </div>
      {nodes.length > 0 && (
        <p className="small">
          Alone: the nodes stay where they are now, as fixed places. Too:{' '}
          {goes.members.length === 0 ? 'no other member' : listed(goes.members)}
          {' and '}
          {goes.nodes.length === 1 ? '1 node' : `${goes.nodes.length} nodes`} go with it.
        </p>
      )}
    </section>
  );
}

const listed = (records: readonly { readonly name: string }[]): string =>
  records.map(({ name }) => shownName(name)).join(', ');
