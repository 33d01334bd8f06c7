/** All nodes, one table a kind of place, with every number that places it; and new ones of any kind. */
import { lazy, memo, Suspense, useMemo, useRef, type ReactNode } from 'react';
import { addNode } from '../../core/edit/nodes.ts';
import { sameData } from '../../core/job/equal.ts';
import { bareId } from '../../core/job/reference.ts';
import { ORIGIN } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import { editor, jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { MarkSwitch } from '../table/MarkSwitch.tsx';
import { useMarks, type Marks } from '../table/marks.ts';
import { KIND_NAMES, KINDS, ofKind } from './choices.ts';
import { FIRST_LINE, nodeChoices, nodeColumns, type NodeChoices } from './nodeColumns.tsx';
import { startingPlace } from './places.ts';

const SeveralNodes = lazy(() => import('./SeveralNodes.tsx'));

export function NodeTables(): ReactNode {
  const nodes = useDocument((state) => state.job.nodes);
  const among = useNodeChoices();
  const marks = useMarks(useMemo(() => nodes.map(({ id }) => id), [nodes]));
  return (
    <>
      {nodes.length === 0 && (
        <p className="empty">
          <strong>No nodes yet.</strong> A node is a place on a centreline. Hang the first ones on measured points: when
          the point moves, the cage follows.
        </p>
      )}
      {nodes.length > 0 && <MarkSwitch marks={marks} noun="node" />}
      {nodes.length > 0 && (
        <div className="scroll-box">
          {KINDS.filter((kind) => nodes.some(({ at }) => at.kind === kind)).map((kind) => (
            <OfKind key={kind} kind={kind} nodes={nodes} among={among} marks={marks} />
          ))}
        </div>
      )}
      {marks.marked.size > 0 && (
        <Suspense>
          <SeveralNodes marks={marks} />
        </Suspense>
      )}
      <Section title="Add a node" open={nodes.length === 0}>
        <NewNode />
      </Section>
    </>
  );
}

/** What the three lengths in the table are, where they are not the node's place itself. */
const AWAY: Readonly<Partial<Record<Place['kind'], string>>> = {
  point: 'with the node moved off it by',
  on: 'with the node beside its centreline by',
};

/** By what it says and not by identity: while a node is dragged the same is offered to choose from, and no row is drawn anew. */
function useNodeChoices(): NodeChoices {
  const job = useDocument((state) => state.job);
  const bars = useDocument((state) => state.derived.bars);
  const now = useMemo(() => nodeChoices(job, bars), [job, bars]);
  const offered = useRef(now);
  if (!sameData(offered.current, now)) offered.current = now;
  return offered.current;
}

interface OfKindProps {
  readonly kind: Place['kind'];
  readonly nodes: readonly FrameNode[];
  readonly among: NodeChoices;
  readonly marks: Marks;
}

const OfKind = memo(function OfKind({ kind, nodes, among, marks }: OfKindProps): ReactNode {
  const rows = useMemo(() => ofKind(nodes, kind), [nodes, kind]);
  const selection = useEditor((state) => state.selection);
  const select = useEditor((state) => state.select);
  const columns = useMemo(() => nodeColumns(kind, among), [kind, among]);
  return (
    <>
      <h4 className="kind-head">
        {KIND_NAMES[kind]} <span className="section-count">{rows.length}</span>
        {AWAY[kind] && <span className="kind-away"> {AWAY[kind]}</span>}
      </h4>
      <EditTable
        caption={`Nodes ${KIND_NAMES[kind]}`}
        rows={rows}
        marks={marks}
        columns={columns}
        {...(FIRST_LINE[kind] !== undefined && { firstLine: FIRST_LINE[kind] })}
        rowId={(node) => node.id}
        rowName={(node) => node.name}
        selected={selection?.kind === 'node' ? bareId(selection.id) : null}
        onSelect={(node) => select({ kind: 'node', id: node.id })}
      />
    </>
  );
});

function NewNode(): ReactNode {
  const job = useDocument((state) => state.job);
  const selection = useEditor((state) => state.selection);
  const nodes = useDocument((state) => state.derived.nodes);
  const at = (selection?.kind === 'node' ? nodes.get(selection.id) : undefined) ?? ORIGIN;
  const name = `Node ${job.nodes.length + 1}`;

  function showAdded(): void {
    const added = jobDocument.getState().job.nodes.at(-1);
    if (added) editor.getState().select({ kind: 'node', id: added.id });
  }

  return (
    <ul className="chips">
      {KINDS.map((kind) => {
        const place = startingPlace(job, kind, selection, at);
        return (
          <li key={kind}>
            <Command
              step={`Add ${name}`}
              disabled={place === null}
              run={(before) => (place === null ? before : addNode(before, name, place))}
              onDone={showAdded}
            >
              {KIND_NAMES[kind]}
            </Command>
          </li>
        );
      })}
    </ul>
  );
}
