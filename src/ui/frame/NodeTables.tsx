/** All nodes, one table a way of giving a place, with every number that places it; and new ones of any kind. */
import { memo, Suspense, useMemo, useRef, type ReactNode } from 'react';
import { addNode } from '../../core/edit/nodes.ts';
import { sameData } from '../../core/job/equal.ts';
import { bareId } from '../../core/job/reference.ts';
import { ORIGIN } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import { givenInWay, wayOf, type Way } from '../../core/shape/ways.ts';
import { editor, jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { SeveralNodes } from './later.ts';
import { MoreRows } from '../table/MoreRows.tsx';
import { MarkSwitch } from '../table/MarkSwitch.tsx';
import { useMarks, type Marks } from '../table/marks.ts';
import { WAY_NAMES, WAYS } from './choices.ts';
import { FIRST_LINE, nodeColumns } from './nodeColumns.tsx';
import { nodeChoices, type NodeChoices } from './placeColumns.tsx';
import { startingPlace } from './places.ts';

export function NodeTables(): ReactNode {
  const nodes = useDocument((state) => state.job.nodes);
  const list = useRef<HTMLDivElement>(null);
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
        <div ref={list} className="scroll-box">
          {WAYS.filter((way) => nodes.some(({ at }) => wayOf(at) === way)).map((way) => (
            <GivenSo key={way} way={way} nodes={nodes} among={among} marks={marks} />
          ))}
        </div>
      )}
      <MoreRows list={list} count={nodes.length} />
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
const AWAY: Readonly<Partial<Record<Way, string>>> = {
  point: 'with the node moved off it by',
  clear: 'with the trim moved off the point by',
  on: 'with the node beside its centreline by',
  until: 'and the node beside its centreline by',
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

interface GivenSoProps {
  readonly way: Way;
  readonly nodes: readonly FrameNode[];
  readonly among: NodeChoices;
  readonly marks: Marks;
}

const GivenSo = memo(function GivenSo({ way, nodes, among, marks }: GivenSoProps): ReactNode {
  const rows = useMemo(() => givenInWay(nodes, way), [nodes, way]);
  const selection = useEditor((state) => state.selection);
  const select = useEditor((state) => state.select);
  const columns = useMemo(() => nodeColumns(way, among), [way, among]);
  return (
    <>
      <h4 className="kind-head">
        {WAY_NAMES[way]} <span className="section-count">{rows.length}</span>
        {AWAY[way] && <span className="kind-away"> {AWAY[way]}</span>}
      </h4>
      <EditTable
        caption={`Nodes ${WAY_NAMES[way]}`}
        rows={rows}
        marks={marks}
        columns={columns}
        {...(FIRST_LINE[way] !== undefined && { firstLine: FIRST_LINE[way] })}
        rowId={(node) => node.id}
        rowName={(node) => node.name}
        selected={selection?.kind === 'node' ? bareId(selection.id) : null}
        onSelect={(node) => select({ kind: 'node', id: node.id })}
      />
    </>
  );
});

function NewNode(): ReactNode {
  const frame = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const at = (selection?.kind === 'node' ? frame.nodes.get(selection.id) : undefined) ?? ORIGIN;
  const name = `Node ${frame.job.nodes.length + 1}`;

  function showAdded(): void {
    const added = jobDocument.getState().job.nodes.at(-1);
    if (added) editor.getState().select({ kind: 'node', id: added.id });
  }

  return (
    <ul className="chips">
      {WAYS.map((way) => {
        const place = startingPlace(frame, way, selection, at);
        return (
          <li key={way}>
            <Command
              step={`Add ${name}`}
              disabled={place === null}
              run={(before) => (place === null ? before : addNode(before, name, place))}
              onDone={showAdded}
            >
              {WAY_NAMES[way]}
            </Command>
          </li>
        );
      })}
    </ul>
  );
}
