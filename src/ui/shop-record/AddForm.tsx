/** A form for one more record of a list: nothing is added until every field is read, and what cannot be read says why beside it. */
import { useRef, useState, type FormEvent, type ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { readBackOf, type ValueKind } from '../fields/kinds.ts';

interface FieldOf<T> {
  readonly label: string;
  readonly unit?: string;
  readonly kind: ValueKind<T>;
  readonly mayBeEmpty?: boolean;
}

export function AddForm<R extends object>(props: {
  title: string;
  fields: { readonly [K in keyof R]: FieldOf<R[K]> };
  /** Answers why it cannot be added. */
  add: (record: R) => readonly Fault[];
  /** Choices beside the fields. */
  children?: ReactNode;
}): ReactNode {
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({});
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const fields = Object.entries<FieldOf<unknown>>(props.fields).map(([key, field]) => {
    const text = texts[key] ?? '';
    return { key, field, text, entered: field.kind.read(text) };
  });

  function add(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    const values = fields.flatMap(({ key, entered }) => (entered.ok ? [[key, entered.value]] : []));
    if (values.length < fields.length) {
      form.current?.querySelector<HTMLInputElement>('[data-unread]')?.focus();
      return;
    }
    const faults = props.add(Object.fromEntries(values) as R);
    setRefusal(faults.map(({ message }) => message).join('; '));
    if (faults.length > 0) return;
    setTexts({});
    setAsked(false);
    form.current?.querySelector('input')?.focus();
  }

  return (
    <form ref={form} className="fields record-form" aria-label={props.title} noValidate onSubmit={add}>
      <div className="fields fields-two">
        {fields.map(({ key, field, text, entered }) => (
          <DraftField
            key={key}
            label={field.label}
            {...(field.unit && { unit: field.unit })}
            inputMode={field.kind.inputMode}
            text={text}
            entered={entered}
            asked={asked}
            mayBeEmpty={field.mayBeEmpty ?? false}
            readBack={entered.ok && text !== '' ? readBackOf(entered, field.kind) : ''}
            onType={(next) => setTexts({ ...texts, [key]: next })}
          />
        ))}
      </div>
      {props.children}
      <span className="command">
        <button type="submit" className="press">
          {props.title}
        </button>
        {refusal !== '' && (
          <span className="entry-note entry-note-refused" role="alert">
            <span aria-hidden="true">▲ </span>
            {refusal}
          </span>
        )}
      </span>
    </form>
  );
}
