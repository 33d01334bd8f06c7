/** A field for a point: typed by part of its name, chosen with the arrows and Enter, or a new name. */
import { useId, useState, type ReactNode } from 'react';
import { offersFor, type Offer, type PointChoice } from './pointChoice.ts';

export interface Picked {
  readonly text: string;
  /** What the text stands for once it has been chosen; null: the name of a new point, or not chosen yet. */
  readonly offer: Offer | null;
}

export const NOT_PICKED: Picked = { text: '', offer: null };

/** What is taken when the field is left as it is: what was chosen, else the first that the text may mean. */
export const takenOf = (picked: Picked, points: readonly PointChoice[]): Offer | null =>
  picked.text.trim() === '' ? null : (picked.offer ?? offersFor(picked.text, points)[0] ?? null);

export function PointPick(props: {
  readonly label: string;
  readonly slot: string;
  readonly points: readonly PointChoice[];
  readonly picked: Picked;
  /** The form has been asked for: an empty field is named. */
  readonly asked: boolean;
  onPick(picked: Picked): void;
  /** Enter: what is chosen stands, on to the next field. */
  onNext(): void;
}): ReactNode {
  const { points, picked } = props;
  const [at, setAt] = useState<number | null>(null);
  const id = useId();
  const offers = at === null || picked.offer !== null ? [] : offersFor(picked.text, points);
  const isOpen = offers.length > 0;
  const taken = takenOf(picked, points);
  const missing = props.asked && taken === null;

  function take(offer: Offer | null): void {
    if (offer !== null) props.onPick({ text: offer.label, offer });
    setAt(null);
  }

  return (
    <div className={`entry point-pick${missing ? ' entry-refused' : ''}`}>
      <label htmlFor={id} className="entry-label">
        {props.label}
      </label>
      <input
        id={id}
        type="text"
        role="combobox"
        className="entry-input"
        autoComplete="off"
        spellCheck={false}
        data-slot={props.slot}
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={isOpen ? `${id}-${at}` : undefined}
        aria-describedby={`${id}-note`}
        aria-invalid={missing || undefined}
        value={picked.text}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => {
          props.onPick({ text: event.currentTarget.value, offer: null });
          setAt(0);
        }}
        onBlur={() => {
          if (picked.offer === null) take(taken);
          setAt(null);
        }}
        onKeyDown={(event) => {
          const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
          if (step !== 0) {
            event.preventDefault();
            event.stopPropagation();
            if (!isOpen) {
              props.onPick({ text: '', offer: null });
              setAt(0);
            } else setAt((at! + step + offers.length) % offers.length);
          } else if (event.key === 'Enter' || event.key === 'Tab') {
            const chosen = isOpen ? offers[at!]! : taken;
            take(chosen);
            if (event.key === 'Tab') return;
            event.preventDefault();
            event.stopPropagation();
            if (chosen !== null) props.onNext();
          } else if (event.key === 'Escape' && isOpen) {
            event.stopPropagation();
            setAt(null);
          }
        }}
      />
      {isOpen && (
        <ul id={`${id}-list`} role="listbox" aria-label={props.label} className="point-offers">
          {offers.map((offer, index) => (
            <li
              key={offer.ref ?? ''}
              id={`${id}-${index}`}
              role="option"
              aria-selected={index === at}
              onMouseDown={(event) => {
                event.preventDefault();
                take(offer);
                props.onNext();
              }}
            >
              {offer.ref === null ? `New point: ${offer.label}` : offer.label}
            </li>
          ))}
        </ul>
      )}
      <p id={`${id}-note`} className={missing ? 'entry-note entry-note-refused' : 'entry-note'}>
        {missing ? '▲ which point?' : taken === null ? '' : taken.ref === null ? 'a new point' : ''}
      </p>
    </div>
  );
}
