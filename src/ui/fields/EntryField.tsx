/**
 * One field for every kind of value. Typing shows how the text is read; Enter or leaving the field commits what was typed,
 * once; Escape gives the last good value back; arrow up and down nudge, ten times as far with Shift. What cannot be read, or
 * what the job cannot take, is refused beside the field and the last good value stays. A row of nudges is one commit,
 * made when the hand has rested; it may also be ended from outside, by undo or by saving: the field then shows the job.
 */
import { useEffect, useId, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import { isAtRest, typeOn, type Draft } from './draft.ts';
import { readBackOf, type ValueKind } from './kinds.ts';

/** What a field does with a value. Without `nudge` every nudge is a commit of its own. */
export interface Committing<T> {
  /** Answers the faults for which the value was refused. */
  commit(value: T): readonly Fault[];
  /**
   * Shows the value while it is being nudged, `first` at the start of a row of them; false if it cannot be. `ended` is called
   * when the row is over, whoever ended it.
   */
  nudge?(value: T, first: boolean, ended: () => void): boolean;
  /** Ends a row of nudges: kept as one step, or dropped. */
  endNudge?(keep: boolean): void;
}

/** ms after an arrow key is let go, without another nudge, until the row of them is entered. */
const REST = 1000;

export type Leaving = 'enter' | 'tab' | 'back-tab' | 'escape' | 'blur';

interface EntryFieldProps<T> extends Committing<T> {
  readonly label: string;
  /** The label is spoken but not drawn: the column's header says it already. */
  readonly labelUnseen?: boolean;
  readonly value: T;
  readonly kind: ValueKind<T>;
  /** The value at rest, drawn over the text: fractions set as fractions. */
  readonly drawn?: ReactNode;
  readonly unit?: string;
  /** Nobody has said the value that stands there: who types it says it. */
  readonly unsaid?: boolean;
  readonly numeric?: boolean;
  readonly suggestions?: readonly string[];
  /** A table's cell opens its field by typing: the field then begins with that text. */
  readonly startWith?: string;
  readonly takesFocus?: boolean;
  /** Called when the person leaves the field; a refused Enter does not leave. */
  onLeave?(how: Leaving): void;
  /** Called with what stands beside the field; with it the field draws no note of its own. */
  onNote?(note: Note | null): void;
}

export interface Note {
  readonly refused: boolean;
  readonly text: string;
}

export function EntryField<T>(props: EntryFieldProps<T>): ReactNode {
  const { label, value, kind, onLeave, onNote } = props;
  const [draft, setDraft] = useState<Draft | null>(
    props.startWith === undefined ? null : { text: props.startWith, anew: true },
  );
  const [refusal, setRefusal] = useState<string | null>(null);
  const nudged = useRef<{ value: T } | null>(null);
  const resting = useRef<ReturnType<typeof setTimeout>>(undefined);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();

  const typed = draft?.text ?? null;
  const current = typed === null ? null : kind.read(typed);
  const note = noteFor(refusal, current, kind);
  const noteText = note?.text ?? null;
  const noteRefused = note?.refused ?? false;

  useEffect(
    () => onNote?.(noteText === null ? null : { refused: noteRefused, text: noteText }),
    [onNote, noteText, noteRefused],
  );

  // A station that is left in the middle of a nudge keeps what it showed.
  const endNudge = useRef(props.endNudge);
  endNudge.current = props.endNudge;
  useEffect(
    () => () => {
      if (nudged.current !== null) endNudge.current?.(true);
    },
    [],
  );

  /** The row of nudges is over: what the field shows is the job's again. */
  function nudgeEnded(): void {
    clearTimeout(resting.current);
    if (nudged.current === null) return;
    nudged.current = null;
    setDraft(null);
  }

  function finishNudge(keep: boolean): void {
    if (nudged.current === null) return;
    endNudge.current?.(keep);
    nudgeEnded();
  }

  /** True when nothing stands in the way of leaving the field. */
  function commit(keepText: boolean): boolean {
    if (draft === null) {
      // Enter on the last good value takes it: what was refused before it is settled, and a value that nobody has said is said.
      if (keepText) setRefusal(null);
      if (keepText && props.unsaid) props.commit(value);
      return true;
    }
    if (nudged.current !== null) {
      finishNudge(true);
      return true;
    }
    const entered = kind.read(draft.text);
    const unchanged = isAtRest(draft, kind.show(value)) || (entered.ok && entered.value === value && !props.unsaid);
    const faults = !entered.ok
      ? [entered.why]
      : unchanged
        ? []
        : props.commit(entered.value).map((fault) => fault.message);
    if (faults.length === 0) {
      setDraft(null);
      setRefusal(null);
      return true;
    }
    if (!keepText) setDraft(null);
    const refused = `“${draft.text.trim()}” not taken: ${faults.join('; ')}`;
    setRefusal(refused);
    // Reported at once: a cell's field is gone before it could draw this.
    onNote?.({ refused: true, text: refused });
    return false;
  }

  function nudge(steps: number): void {
    if (kind.nudge === undefined) return;
    const from = nudged.current?.value ?? (current?.ok ? current.value : value);
    const next = kind.nudge(from, steps);
    if (props.nudge === undefined) {
      const faults = props.commit(next);
      setRefusal(faults.length === 0 ? null : faults.map((fault) => fault.message).join('; '));
      setDraft(null);
    } else if (props.nudge(next, nudged.current === null, nudgeEnded)) {
      nudged.current = { value: next };
      clearTimeout(resting.current);
      setDraft({ text: kind.show(next), anew: true });
      setRefusal(null);
    } else {
      if (nudged.current === null) props.endNudge?.(false);
      setRefusal(`goes no further: the frame cannot be made with ${kind.show(next)}`);
    }
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    const { key } = event;
    if (key === 'Enter') {
      event.preventDefault();
      event.stopPropagation();
      if (commit(true)) onLeave?.('enter');
      else input.current?.select();
    } else if (key === 'Escape') {
      if (typed !== null || refusal !== null) event.stopPropagation();
      finishNudge(false);
      setDraft(null);
      setRefusal(null);
      onLeave?.('escape');
    } else if (key === 'Tab' && onLeave !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      commit(false);
      onLeave(event.shiftKey ? 'back-tab' : 'tab');
    } else if ((key === 'ArrowUp' || key === 'ArrowDown') && kind.nudge !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      nudge((key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    }
  }

  /** The hand rests once it has let the key go: a key that is held is one row of nudges, however slow the page is meanwhile. */
  function onKeyUp({ key }: KeyboardEvent<HTMLInputElement>): void {
    if (nudged.current === null || (key !== 'ArrowUp' && key !== 'ArrowDown')) return;
    clearTimeout(resting.current);
    resting.current = setTimeout(() => finishNudge(true), REST);
  }

  const atRest = typed === null;
  return (
    <div className={`entry${props.numeric ? ' entry-number' : ''}${note?.refused ? ' entry-refused' : ''}`}>
      <label htmlFor={id} className={props.labelUnseen ? 'spoken-only' : 'entry-label'}>
        {label}
        {props.unit && !props.labelUnseen && <span className="entry-unit"> {props.unit}</span>}
      </label>
      <div className="entry-box">
        <input
          ref={input}
          id={id}
          type="text"
          className={props.drawn !== undefined && atRest ? 'entry-input entry-drawn' : 'entry-input'}
          inputMode={kind.inputMode}
          autoComplete="off"
          autoFocus={props.takesFocus}
          spellCheck={false}
          value={typed ?? kind.show(value)}
          list={props.suggestions ? `${id}-list` : undefined}
          data-pending={typed !== null && nudged.current === null ? '' : undefined}
          aria-invalid={note?.refused || undefined}
          aria-describedby={note ? `${id}-note` : undefined}
          onFocus={(event) => {
            // A field that was opened by typing keeps what was typed.
            if (typed === null) event.currentTarget.select();
          }}
          // Not onChange, which is silent where the same text is put in its own place.
          onInput={(event) => {
            const { value: text } = event.currentTarget;
            const { inputType } = event.nativeEvent;
            const atRest = kind.show(nudged.current?.value ?? value);
            const before = nudged.current === null ? draft : null;
            finishNudge(true);
            setDraft(typeOn(before, atRest, text, inputType));
            setRefusal(null);
          }}
          onKeyDown={onKeyDown}
          onKeyUp={onKeyUp}
          onBlur={() => {
            commit(false);
            onLeave?.('blur');
          }}
        />
        {props.drawn !== undefined && atRest && (
          <span className="entry-drawing" aria-hidden="true">
            {props.drawn}
          </span>
        )}
        {note && !note.refused && (
          <p id={`${id}-note`} className={onNote === undefined ? 'entry-note entry-reading' : 'spoken-only'}>
            {note.text}
          </p>
        )}
      </div>
      {props.suggestions && (
        <datalist id={`${id}-list`}>
          {props.suggestions.map((suggestion) => (
            <option key={suggestion} value={suggestion} />
          ))}
        </datalist>
      )}
      {note?.refused && (
        <p
          id={`${id}-note`}
          className={onNote === undefined ? 'entry-note entry-note-refused' : 'spoken-only'}
          role="alert"
        >
          <span aria-hidden="true">▲ </span>
          {note.text}
        </p>
      )}
    </div>
  );
}

function noteFor<T>(
  refusal: string | null,
  current: ReturnType<ValueKind<T>['read']> | null,
  kind: ValueKind<T>,
): Note | null {
  if (refusal !== null) return { refused: true, text: refusal };
  if (current === null) return null;
  const text = current.ok ? readBackOf(current, kind) : current.why;
  return text === '' ? null : { refused: false, text };
}
