/** One of a few, all in sight: radio keys in a row, wide enough for a gloved finger. */
import { useId, type ReactNode } from 'react';

interface PicksProps<T> {
  readonly legend: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly label: ReactNode }[];
  /** A choice that cannot be made here, and why. */
  readonly barred?: { readonly value: T; readonly why: string } | null;
  onPick(value: T): void;
}

export function Picks<T extends string | boolean>(props: PicksProps<T>): ReactNode {
  const { value, choices, barred } = props;
  const id = useId();
  return (
    <fieldset className="picks">
      <legend>{props.legend}</legend>
      <div className="picks-row">
        {choices.map((choice) => {
          const shut = barred?.value === choice.value;
          return (
            <label key={String(choice.value)} className="pick">
              <input
                type="radio"
                name={id}
                checked={choice.value === value}
                disabled={shut}
                aria-describedby={shut ? `${id}-why` : undefined}
                onChange={() => props.onPick(choice.value)}
              />
              {choice.label}
            </label>
          );
        })}
      </div>
      {barred && (
        <p id={`${id}-why`} className="small">
          {barred.why}
        </p>
      )}
    </fieldset>
  );
}
