/** One box or one driver: the gaps, the shortest first, and the measures to edit. */
import { shownName } from '../../core/job/shown.ts';
import { memo, type ReactNode } from 'react';
import { removeEnvelope } from '../../core/edit/envelopes.ts';
import type { Clearance } from '../../core/checks/clearances.ts';
import type { Envelope } from '../../core/job/kinds/envelope.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import { GapLength, LimitLength, ShortfallLength } from '../fields/Readings.tsx';
import { tubeName } from '../../core/solve/names.ts';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';
import { useScrollIntoView } from '../kit/useScrollIntoView.ts';
import { BoxEditor } from './BoxEditor.tsx';
import { DriverEditor } from './DriverEditor.tsx';
import { nearestFirst } from './order.ts';

export function EnvelopeCard({ envelope }: { envelope: Envelope }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const chosen = selection?.kind === 'envelope' && selection.id === envelope.id;
  const card = useScrollIntoView<HTMLElement>(chosen);
  const nearest = nearestFirst(derived.clearances, envelope.id);
  const shortest = nearest[0];
  return (
    <article ref={card} className={chosen ? 'card chosen-card' : 'card'} aria-label={shownName(envelope.name)}>
      <h3>{shownName(envelope.name)}</h3>
      {shortest && (
        <button
          type="button"
          className={shortest.ok ? 'gap-head' : 'gap-head gap-short'}
          onClick={() => editor.getState().goTo(shortest.at, { kind: 'envelope', id: envelope.id })}
        >
          <span className="gap-figure">
            <GapLength mm={shortest.distance} />
          </span>
          <span>
            <GapWord clearance={shortest} /> to {tubeName(derived, shortest.tube)}; <LimitLength mm={shortest.gap} />{' '}
            asked for
          </span>
        </button>
      )}
      <GapTable clearances={nearest} name={shownName(envelope.name)} />
      <Section title={envelope.kind === 'box' ? 'The box' : 'The driver'} open={envelope.kind === 'driver'}>
        {envelope.kind === 'box' ? <BoxEditor envelope={envelope} /> : <DriverEditor driver={envelope} />}
        <Command
          quiet
          destroys={envelope.id}
          step={`Delete ${envelope.name}`}
          run={(job) => removeEnvelope(job, envelope.id)}
        >
          {envelope.kind === 'box' ? 'Delete this box' : 'Delete this driver'}
        </Command>
      </Section>
    </article>
  );
}

function GapTable({ clearances, name }: { clearances: readonly Clearance[]; name: string }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  return (
    <div className="gap-list">
      <table className="table table-plain">
        <caption className="spoken-only">Gaps from {name} to every tube’s surface, the shortest first</caption>
        <thead>
          <tr>
            <th scope="col">Tube</th>
            <th scope="col" className="number">
              Gap
            </th>
            <th scope="col" />
          </tr>
        </thead>
        <tbody>
          {clearances.map((clearance) => {
            const chosen = selection?.kind === 'tube' && selection.id === clearance.tube;
            const tube = tubeName(derived, clearance.tube);
            return <GapRow key={clearance.tube} clearance={clearance} tube={tube} chosen={chosen} />;
          })}
        </tbody>
      </table>
    </div>
  );
}

interface GapRowProps {
  readonly clearance: Clearance;
  readonly tube: string;
  readonly chosen: boolean;
}

/** An edit leaves most gaps as they were: those are not drawn again. */
const GapRow = memo(function GapRow({ clearance, tube, chosen }: GapRowProps): ReactNode {
  return (
    <tr className={chosen ? 'chosen' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="link"
          onClick={() => editor.getState().goTo(clearance.at, { kind: 'tube', id: clearance.tube })}
        >
          {tube}
        </button>
      </th>
      <td className="number">
        <GapLength mm={clearance.distance} />
      </td>
      <td>
        <GapWord clearance={clearance} />
      </td>
    </tr>
  );
});

function GapWord({ clearance }: { clearance: Clearance }): ReactNode {
  if (clearance.ok) return <span className="word-ok">✓ enough</span>;
  return (
    <span className="word-error">
      × {clearance.distance < 0 ? 'inside the box, ' : ''}short by{' '}
      <ShortfallLength mm={clearance.gap - clearance.distance} />
    </span>
  );
}
