/** A new point: its name and three measurements, put into the job only when all of them are there. */
import { useRef, useState, type FormEvent, type ReactNode } from 'react';
import { addPoint } from '../../core/edit/points.ts';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { lengthKind, readBackOf, textKind } from '../fields/kinds.ts';
import { Refused } from '../kit/Refused.tsx';

const COORDINATES = ['Along', 'Offset, + left', 'Height'] as const;
const NOTHING = ['', '', ''] as const;
const NAME = textKind(true);

export function AddPoint(): ReactNode {
  const select = useEditor((state) => state.select);
  const count = useDocument((state) => state.job.points.length);
  const unit = useDocument((state) => state.job.lengthUnit);
  const [nameText, setName] = useState('');
  const [texts, setTexts] = useState<readonly string[]>(NOTHING);
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const kind = lengthKind(unit);
  const name = NAME.read(nameText);
  const [along, offset, height] = texts.map(kind.read);

  function add(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    if (!name.ok || !along?.ok || !offset?.ok || !height?.ok) {
      form.current?.querySelector<HTMLInputElement>('[data-unread]')?.focus();
      return;
    }
    const called = name.value || `Point ${count + 1}`;
    const { edit } = jobDocument.getState();
    const faults = edit(`Add ${called}`, (job) => addPoint(job, called, [along.value, offset.value, height.value]));
    setRefusal(faults.map((fault) => fault.message).join('; '));
    if (faults.length > 0) return;
    // Empty again: a second press must not add the same place once more.
    setName('');
    setTexts(NOTHING);
    setAsked(false);
    const added = jobDocument.getState().job.points.at(-1);
    if (added) select({ kind: 'point', id: added.id });
    form.current?.querySelector('input')?.focus();
  }

  return (
    <form ref={form} className="fields" aria-label="Add a point" noValidate onSubmit={add}>
      <DraftField label="What was measured" text={nameText} entered={name} asked={asked} mayBeEmpty onType={setName} />
      <div className="trio">
        {[along, offset, height].map((entered, axis) => (
          <DraftField
            key={COORDINATES[axis]}
            label={COORDINATES[axis]!}
            unit={unit}
            inputMode={kind.inputMode}
            text={texts[axis]!}
            entered={entered!}
            asked={asked}
            readBack={entered!.ok ? readBackOf(entered!, kind) : ''}
            onType={(text) => setTexts(texts.map((before, at) => (at === axis ? text : before)))}
          />
        ))}
      </div>
      <button type="submit" className="press">
        Add the point
      </button>
      <Refused why={refusal} />
    </form>
  );
}
