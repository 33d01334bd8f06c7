/** What the bender's rehearsal says of the tube, and the way to it; or the way to the machine's set-up where there is none. */
import { useEffect, useRef, type ReactNode } from 'react';
import { mendOf } from '../../core/checks/swing-findings.ts';
import { isBendable, type BendableTube } from '../../core/rehearse/bendable.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { swingMendInWords } from '../../core/words/rehearsal.ts';
import { useEditor, useResults } from '../../store/page.ts';
import { NotRehearsed } from '../bending/NotRehearsed.tsx';
import { BACK_TO_FRAME, Verdict } from '../bending/Verdict.tsx';
import { Section } from '../kit/Section.tsx';
import { KeepOrder } from '../bending/KeptOrder.tsx';
import './rehearse.css';

export function Rehearse({ tube }: { readonly tube: SolvedTube }): ReactNode {
  if (tube.bends.length === 0 || tube.die === null) return null;
  return (
    <Section title="Rehearsal" open>
      {isBendable(tube) ? <OnBender key={tube.id} tube={tube} /> : <NoBender die={tube.die.name} />}
    </Section>
  );
}

function OnBender({ tube }: { readonly tube: BendableTube }): ReactNode {
  const { id } = tube;
  const rehearsal = useResults((state) => state.rehearsals.get(id));
  const mend = rehearsal === undefined ? null : mendOf(rehearsal);
  const rehearse = useEditor((state) => state.rehearse);
  const isOn = useEditor((state) => state.rehearsing === id);
  const key = useRef<HTMLButtonElement>(null);
  // Back from the bender: what had the focus there is gone.
  const wasOn = useRef(isOn);
  useEffect(() => {
    if (wasOn.current && !isOn && document.activeElement === document.body) key.current?.focus();
    wasOn.current = isOn;
  }, [isOn]);
  return (
    <>
      {rehearsal === undefined ? (
        <NotRehearsed id={id} />
      ) : (
        <>
          <Verdict rehearsal={rehearsal} />
          {mend !== null && <p>{swingMendInWords(mend)}</p>}
          {rehearsal.proposed !== null && <KeepOrder tube={tube} order={rehearsal.proposed} />}
        </>
      )}
      {rehearsal?.plain.length !== 0 && (
        <button
          ref={key}
          type="button"
          className="press press-live rehearse-key"
          onClick={() => rehearse(isOn ? null : id)}
        >
          {isOn ? BACK_TO_FRAME : 'Rehearse on the bender'}
        </button>
      )}
      <p className="small">
        The machine is drawn as simple solids: what comes close here, try with the machine stopped.
      </p>
    </>
  );
}

function NoBender({ die }: { readonly die: string }): ReactNode {
  const setStation = useEditor((state) => state.setStation);
  return (
    <div className="empty">
      <p>
        <strong>No bender is set up for {die}.</strong> Its height over the floor and what stands round it are enough to
        see whether a leg swings into the floor, the bench or the machine, before a tube is spent.
      </p>
      <button type="button" className="press rehearse-key" onClick={() => setStation('frame')}>
        Set it up in Frame, under Tube & dies
      </button>
    </div>
  );
}
