/** Moves what is marked by so much forward, left and up: one undo step, whatever of them there is. */
import { useRef, useState, type FormEvent, type ReactNode } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Job } from '../../core/job/types.ts';
import { formatLength } from '../../core/units/length.ts';
import { useDocument } from '../../store/page.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { lengthKind, orNothing, readBackOf } from '../fields/kinds.ts';
import { Refused } from '../kit/Refused.tsx';

const WAYS = ['Forward', 'Left', 'Up'] as const;
const NOTHING = ['', '', ''] as const;

export default function MoveMarked(props: {
  /** "5 points". */
  these: string;
  disabled?: boolean;
  move: (job: Job, by: Vec3) => Job;
}): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const edit = useDocument((state) => state.edit);
  const [texts, setTexts] = useState<readonly string[]>(NOTHING);
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const kind = orNothing(lengthKind(unit));
  const [forward, left, up] = texts.map(kind.read);

  function move(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    if (!forward?.ok || !left?.ok || !up?.ok) {
      form.current?.querySelector<HTMLInputElement>('[data-unread]')?.focus();
      return;
    }
    const by: Vec3 = [forward.value ?? 0, left.value ?? 0, up.value ?? 0];
    if (by.every((part) => part === 0)) return setRefusal('by nothing: type how far');
    const ways = by.flatMap((part, axis) =>
      part === 0 ? [] : [`${WAYS[axis]!.toLowerCase()} ${formatLength(part, unit).text} ${unit}`],
    );
    const faults = edit(`Move ${props.these} ${ways.join(', ')}`, (job) => props.move(job, by));
    setRefusal(faults.map(({ message }) => message).join('; '));
    if (faults.length > 0) return;
    // Empty again: a second press must not move them once more.
    setTexts(NOTHING);
    setAsked(false);
  }

  return (
    <form ref={form} className="fields" aria-label={`Move ${props.these}`} noValidate onSubmit={move}>
      <div className="trio">
        {[forward, left, up].map((entered, axis) => (
          <DraftField
            key={WAYS[axis]}
            label={WAYS[axis]!}
            unit={unit}
            inputMode="text"
            text={texts[axis]!}
            entered={entered!}
            asked={asked}
            mayBeEmpty
            readBack={entered!.ok ? readBackOf(entered!, kind) : ''}
            onType={(text) => setTexts(texts.map((before, at) => (at === axis ? text : before)))}
          />
        ))}
      </div>
      <button type="submit" className="press" disabled={props.disabled}>
        Move {props.these}
      </button>
      <p className="small">Less than 0 is back, right and down.</p>
      <Refused why={refusal} />
    </form>
  );
}
