/** One box: its gaps, the shortest first, and its measures to edit. */
import { shownName } from '../../core/job/shown.ts';
import { memo, type ReactNode } from 'react';
import { removeEnvelope, updateEnvelope } from '../../core/edit/envelopes.ts';
import type { Clearance } from '../../core/checks/clearances.ts';
import type { Envelope } from '../../core/job/kinds/envelope.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import { AngleField, LengthField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { GapLength, LimitLength, ShortfallLength } from '../fields/Readings.tsx';
import { tubeName } from '../../core/solve/names.ts';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';
import { useScrollIntoView } from '../kit/useScrollIntoView.ts';
import { withAxis } from '../kit/vectors.ts';
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
      <Section title="The box">
        <BoxEditor envelope={envelope} />
        <Command
          quiet
          destroys={envelope.id}
          step={`Delete ${envelope.name}`}
          run={(job) => removeEnvelope(job, envelope.id)}
        >
          Delete this box
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

const AXES = [
  ['Along (x)', 'Length'],
  ['Left (y)', 'Width'],
  ['Height (z)', 'Height'],
] as const;

function BoxEditor({ envelope }: { envelope: Envelope }): ReactNode {
  const { id, name } = envelope;
  const set = (what: string) => `${what} of ${name}`;
  const vector = (key: 'centre' | 'size' | 'rotation', axis: 0 | 1 | 2, what: string) => ({
    value: envelope[key][axis],
    ...jobEdit<number>(set(what), (job, value) =>
      updateEnvelope(job, id, { [key]: withAxis(envelope[key] as Vec3, axis, value) }),
    ),
  });
  return (
    <div className="fields">
      <TextField
        label="Name"
        value={name}
        {...jobEdit<string>('Rename box', (job, value) => updateEnvelope(job, id, { name: value }))}
      />
      <LengthField
        label="Gap to keep"
        value={envelope.gap}
        {...jobEdit<number>(set('Gap'), (job, value) => updateEnvelope(job, id, { gap: value }))}
      />
      <fieldset className="trio">
        <legend>Centre</legend>
        {AXES.map(([label], axis) => (
          <LengthField key={label} label={label} {...vector('centre', axis as 0 | 1 | 2, 'Centre')} />
        ))}
      </fieldset>
      <fieldset className="trio">
        <legend>Full size</legend>
        {AXES.map(([, label], axis) => (
          <LengthField key={label} size label={label} {...vector('size', axis as 0 | 1 | 2, 'Size')} />
        ))}
      </fieldset>
      <fieldset className="trio">
        <legend>Turned about x, then y, then z</legend>
        {['About x', 'About y', 'About z'].map((label, axis) => (
          <AngleField key={label} label={label} {...vector('rotation', axis as 0 | 1 | 2, 'Turn')} />
        ))}
      </fieldset>
    </div>
  );
}
