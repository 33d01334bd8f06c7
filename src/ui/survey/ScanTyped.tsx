/** A place on a scan by its numbers, as the program shows them that the scan comes from: where none can be picked, or one is known. */
import { useRef, useState, type FormEvent, type ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { FARTHEST_SCANNED } from '../../core/scan/gather.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { numberKind } from '../fields/kinds.ts';
import { Refused } from '../kit/Refused.tsx';

const AXES = ['x', 'y', 'z'] as const;
const NOTHING = ['', '', ''] as const;
const KIND = numberKind(-FARTHEST_SCANNED, FARTHEST_SCANNED, 1);

interface Props {
  /** Of the form. */
  readonly label: string;
  readonly verb: string;
  /** The file's. */
  readonly unit: string;
  readonly onEnter: (at: Vec3) => readonly Fault[];
}

export function ScanTyped({ label, verb, unit, onEnter }: Props): ReactNode {
  const [texts, setTexts] = useState<readonly string[]>(NOTHING);
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const [x, y, z] = texts.map(KIND.read);

  function enter(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    if (!x?.ok || !y?.ok || !z?.ok) return form.current?.querySelector<HTMLInputElement>('[data-unread]')?.focus();
    const faults = onEnter([x.value, y.value, z.value]);
    setRefusal(faults.map(({ message }) => message).join('; '));
    if (faults.length > 0) return;
    setTexts(NOTHING);
    setAsked(false);
  }

  return (
    <details className="scan-more">
      <summary>{label}</summary>
      <form ref={form} className="fields" aria-label={label} noValidate onSubmit={enter}>
        <p className="small">In the unit and the axes of the file.</p>
        <div className="trio">
          {[x, y, z].map((entered, axis) => (
            <DraftField
              key={AXES[axis]}
              label={AXES[axis]!}
              unit={unit}
              inputMode={KIND.inputMode}
              text={texts[axis]!}
              entered={entered!}
              asked={asked}
              onType={(text) => setTexts(texts.map((before, i) => (i === axis ? text : before)))}
            />
          ))}
        </div>
        <button type="submit" className="press">
          {verb}
        </button>
        <Refused why={refusal} />
      </form>
    </details>
  );
}
