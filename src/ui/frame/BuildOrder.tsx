/**
 * The order in which bars are fitted, to be dragged by its numbers or moved by keys: an end copes to what stands before it. Bars that are caught between two
 * that stand already are marked.
 */
import { useMemo, useRef, useState, type PointerEvent, type ReactNode } from 'react';
import { caughtBars, type Caught } from '../../core/checks/caught.ts';
import { moveMember } from '../../core/edit/members.ts';
import { shownName } from '../../core/job/shown.ts';
import { tubesOfBar } from '../../core/solve/bar-tubes.ts';
import { primed, type MemberId } from '../../core/job/reference.ts';
import type { Derived } from '../../core/derive.ts';
import { tubeName } from '../../core/solve/names.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import './build-order.css';

export default function BuildOrder(): ReactNode {
  const members = useDocument((state) => state.job.members);
  const derived = useDocument((state) => state.derived);
  const caught = useMemo(() => caughtBars(derived), [derived]);
  const list = useRef<HTMLOListElement>(null);
  const [dragged, setDragged] = useState<MemberId | null>(null);

  function takeHold(event: PointerEvent<HTMLElement>, id: MemberId, name: string): void {
    event.currentTarget.setPointerCapture(event.pointerId);
    setDragged(id);
    jobDocument.getState().begin(`Build ${name} at another time`, () => setDragged(null));
  }

  /** To the row that the pointer is over. */
  function drag(event: PointerEvent<HTMLElement>): void {
    if (dragged === null) return;
    const rows = [...(list.current?.children ?? [])].map((row) => row.getBoundingClientRect());
    const over = rows.findIndex(({ bottom }) => event.clientY < bottom);
    const to = over === -1 ? rows.length - 1 : over;
    jobDocument.getState().preview((job) => moveMember(job, dragged, to));
  }

  return (
    <>
      <p className="small">
        What is fitted first stands first, and an end copes to what stands before it. Drag a number, or use the keys.
        {caught.size > 0 &&
          ' Where it says “no slack” both ends are coped to bars that stand already: leave one of these loose until it is in, spring them apart a little, or sleeve it.'}
      </p>
      <ol className="build-order" ref={list}>
        {members.map(({ id, name, mirror }, place) => (
          <li key={id} className={dragged === id ? 'chosen' : undefined}>
            <span
              className="build-order-grip"
              onPointerDown={(event) => takeHold(event, id, name)}
              onPointerMove={drag}
              onPointerUp={() => jobDocument.getState().commit()}
              onPointerCancel={() => jobDocument.getState().cancel()}
            >
              {[id, ...(mirror ? [primed(id)] : [])].flatMap((bar) =>
                tubesOfBar(derived.byId, bar).map(({ number }) => (
                  <span className="number-tag" key={number}>
                    {number}
                  </span>
                )),
              )}
            </span>
            <span>
              {shownName(name)}
              <NoSlack caught={caught.get(id)} derived={derived} />
            </span>
            <Command
              quiet
              step={`Build ${name} earlier`}
              label={`Build ${shownName(name)} earlier`}
              disabled={place === 0}
              run={(job) => moveMember(job, id, place - 1)}
            >
              ↑
            </Command>
            <Command
              quiet
              step={`Build ${name} later`}
              label={`Build ${shownName(name)} later`}
              disabled={place === members.length - 1}
              run={(job) => moveMember(job, id, place + 1)}
            >
              ↓
            </Command>
          </li>
        ))}
      </ol>
    </>
  );
}

function NoSlack({ caught, derived }: { caught: Caught | undefined; derived: Derived }): ReactNode {
  if (caught === undefined) return null;
  const [a, b] = caught.between.map((against) => against.map((tube) => tubeName(derived, tube)).join(' and '));
  return (
    <span className="build-order-between small">
      <strong>no slack</strong>, {a === b ? `both ends to ${a}` : `${a} to ${b}`}
    </span>
  );
}
