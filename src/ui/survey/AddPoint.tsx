/** A new point: its name and three measurements, put into the job only when all of them are there. */
import { useRef, useState, type FormEvent, type KeyboardEvent, type ReactNode } from 'react';
import { addPoint } from '../../core/edit/points.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { ORIGIN } from '../../core/geometry/vector.ts';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { LengthField, TextField } from '../fields/Fields.tsx';
import { Refused } from '../kit/Refused.tsx';
import { withAxis } from '../kit/vectors.ts';

const COORDINATES = ['Along', 'Offset, + left', 'Height'] as const;

export function AddPoint(): ReactNode {
  const select = useEditor((state) => state.select);
  const count = useDocument((state) => state.job.points.length);
  const [name, setName] = useState('');
  const [position, setPosition] = useState<Vec3>(ORIGIN);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);

  function add(event: FormEvent): void {
    event.preventDefault();
    // A text that was not taken left the value before it: a point must not go there unseen.
    const refused = form.current?.querySelector<HTMLElement>('[aria-invalid]');
    if (refused) return refused.focus();
    const called = name || `Point ${count + 1}`;
    const faults = jobDocument.getState().edit(`Add ${called}`, (job) => addPoint(job, called, position));
    setRefusal(faults.map((fault) => fault.message).join('; '));
    if (faults.length > 0) return;
    setName('');
    const added = jobDocument.getState().job.points.at(-1);
    if (added) select({ kind: 'point', id: added.id });
    form.current?.querySelector('input')?.focus();
  }

  /** Enter in the last field enters it and then adds the point, once what was entered is drawn. */
  function addFromLast(event: KeyboardEvent<HTMLFormElement>): void {
    const inputs = event.currentTarget.querySelectorAll('input');
    if (event.key === 'Enter' && event.target === inputs[inputs.length - 1])
      requestAnimationFrame(() => form.current?.requestSubmit());
  }

  return (
    <form ref={form} className="fields" onSubmit={add} onKeyDownCapture={addFromLast}>
      <TextField
        label="What was measured"
        mayBeEmpty
        value={name}
        commit={(value) => {
          setName(value);
          return [];
        }}
      />
      <div className="trio">
        {COORDINATES.map((label, axis) => (
          <LengthField
            key={label}
            label={label}
            value={position[axis] ?? 0}
            commit={(value) => {
              setPosition((before) => withAxis(before, axis as 0 | 1 | 2, value));
              return [];
            }}
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
