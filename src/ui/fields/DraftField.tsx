/**
 * A field whose text belongs to a form: nothing is entered until the form is. While one types it says quietly what is
 * still amiss; once left, or once the form has been asked for, it refuses with the reason.
 */
import { useId, useState, type ReactNode } from 'react';
import type { Entered } from './kinds.ts';

export function DraftField<T>(props: {
  label: string;
  /** Before the label, as the thing is lettered on a picture. */
  letter?: ReactNode;
  unit?: string;
  /** Which touch keyboard: 'decimal' unless said where there is a unit. */
  inputMode?: 'text' | 'decimal';
  text: string;
  entered: Entered<T>;
  /** The person has asked to enter the form: an empty field is named now too. */
  asked: boolean;
  /** An empty field is left out, not amiss. */
  mayBeEmpty?: boolean;
  /** How the text is read, once it is: "= 21 1/2 in · 546.1 mm". */
  readBack?: string;
  onType: (text: string) => void;
}): ReactNode {
  const { text, entered } = props;
  const [left, setLeft] = useState(false);
  const id = useId();
  const unread = !entered.ok && (text !== '' || (props.asked && !props.mayBeEmpty));
  const refused = unread && (left || props.asked);
  // It stays once the field is left: what is below would move from under the press that left it.
  const note = unread ? entered.why : entered.ok ? (props.readBack ?? '') : '';
  return (
    <div className={`entry${props.unit ? ' entry-number' : ''}${refused ? ' entry-refused' : ''}`}>
      <label htmlFor={id} className="entry-label">
        {props.letter}
        {props.label}
        {props.unit && <span className="entry-unit"> {props.unit}</span>}
      </label>
      <input
        id={id}
        type="text"
        className="entry-input"
        inputMode={props.inputMode ?? (props.unit ? 'decimal' : 'text')}
        autoComplete="off"
        spellCheck={false}
        value={text}
        data-unread={!entered.ok && (text !== '' || !props.mayBeEmpty) ? '' : undefined}
        aria-invalid={refused || undefined}
        aria-describedby={note === '' ? undefined : `${id}-note`}
        onChange={(event) => {
          setLeft(false);
          props.onType(event.currentTarget.value);
        }}
        onBlur={() => setLeft(true)}
      />
      {note !== '' && (
        <p
          id={`${id}-note`}
          className={refused ? 'entry-note entry-note-refused' : 'entry-note'}
          role={refused ? 'alert' : undefined}
        >
          {refused && <span aria-hidden="true">▲ </span>}
          {note}
        </p>
      )}
    </div>
  );
}
