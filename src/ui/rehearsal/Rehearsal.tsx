/**
 * A tube rehearsed on its bender, in the bay's place: the machine in 3D, what runs it, and the steps. A chunk of its own;
 * nothing of it is loaded before somebody rehearses.
 */
import { useEffect, useMemo, useRef, useState, useSyncExternalStore, type KeyboardEvent, type ReactNode } from 'react';
import type { TubeRef } from '../../core/job/reference.ts';
import { isBendable, type BendableTube } from '../../core/rehearse/bendable.ts';
import type { Rehearsal as Rehearsed } from '../../core/rehearse/types.ts';
import { sameOrder } from '../../core/solve/bend-order.ts';
import { editor, useDocument, useResults } from '../../store/page.ts';
import { createPlayer } from '../../view/rehearsal/player.ts';
import { RehearsalBay } from '../../view/rehearsal/RehearsalBay.tsx';
import { layStages } from '../../view/rehearsal/rehearsed.ts';
import { layTimeline, momentAt } from '../../view/rehearsal/timeline.ts';
import { Picks } from '../kit/Picks.tsx';
import { Controls } from './Controls.tsx';
import { momentAloud } from './moment-words.ts';
import { Now } from './Now.tsx';
import { StepList } from './StepList.tsx';
import { NotRehearsed } from '../bending/NotRehearsed.tsx';
import { BACK_TO_FRAME, Verdict } from '../bending/Verdict.tsx';
import '../kit/ui.css';
import '../bending/marks.css';
import './rehearsal.css';

type Order = 'plain' | 'proposed';

const leave = (): void => editor.getState().rehearse(null);

export default function Rehearsal({ id }: { readonly id: TubeRef }): ReactNode {
  const tube = useDocument((state) => state.derived.byId.get(id));
  const rehearsal = useResults((state) => state.rehearsals.get(id));
  const [picked, pick] = useState<Order>('proposed');
  if (tube === undefined || !isBendable(tube)) return null;

  // Keys that the bay, a field or a button did not use; a slider would keep Escape from the page.
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.preventDefault();
    event.stopPropagation();
    leave();
  };
  const order: Order = rehearsal?.proposed == null ? 'plain' : picked;
  return (
    <section className="rehearsal" aria-label={`Rehearsal of tube ${tube.number}, ${tube.name}`} onKeyDown={onKeyDown}>
      {rehearsal === undefined || rehearsal.plain.length === 0 ? (
        <>
          <Head tube={tube} />
          <div className="rehearsal-waiting">
            {rehearsal === undefined ? <NotRehearsed id={id} /> : <Verdict rehearsal={rehearsal} />}
          </div>
        </>
      ) : (
        <Run key={order} tube={tube} rehearsal={rehearsal} order={order} pick={pick} />
      )}
    </section>
  );
}

const Head = ({ tube, children }: { readonly tube: BendableTube; readonly children?: ReactNode }): ReactNode => (
  <header className="rehearsal-head">
    <button type="button" className="press" onClick={leave}>
      {BACK_TO_FRAME}
    </button>
    <h2>
      <span className="number-tag">{tube.number}</span> {tube.name}
      <span className="small under">{tube.die.name}</span>
    </h2>
    {children}
  </header>
);

interface RunProps {
  readonly tube: BendableTube;
  readonly rehearsal: Rehearsed;
  readonly order: Order;
  pick(order: Order): void;
}

const ORDERS = [
  { value: 'plain', label: 'Bend after bend' },
  { value: 'proposed', label: 'Proposed' },
] as const;

function Run({ tube, rehearsal, order, pick }: RunProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const steps = rehearsal[order] ?? rehearsal.plain;
  const stages = useMemo(() => layStages(tube, steps), [tube, steps]);
  const timeline = useMemo(() => layTimeline(steps), [steps]);
  const player = useMemo(() => createPlayer(timeline), [timeline]);
  const moment = () => momentAt(timeline, steps, player.place());
  const current = useSyncExternalStore(player.listen, () => moment().step);
  const spoken = useSyncExternalStore(player.listen, () => momentAloud(stages, moment()));

  const first = useRef<HTMLDivElement>(null);
  useEffect(() => first.current?.querySelector('button')?.focus({ preventScroll: true }), []);

  const choice = rehearsal.proposed !== null && !sameOrder(rehearsal.plain, rehearsal.proposed);
  return (
    <>
      <Head tube={tube}>
        <Now stages={stages} timeline={timeline} player={player} />
      </Head>
      <div className="rehearsal-stage">
        <RehearsalBay tube={tube} unit={unit} stages={stages} timeline={timeline} player={player} current={current} />
      </div>
      <div className="rehearsal-desk" ref={first}>
        <Controls stages={stages} timeline={timeline} player={player} />
        <div className="rehearsal-order">
          {choice && <Picks<Order> legend="Order of bending" value={order} choices={ORDERS} onPick={pick} />}
          <Verdict rehearsal={rehearsal} />
        </div>
        <StepList stages={stages} current={current} go={(step) => player.set(timeline.spans[step]!.bend)} />
      </div>
      <p className="spoken-only" role="status" aria-live="polite">
        {spoken}
      </p>
    </>
  );
}
