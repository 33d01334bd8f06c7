/** Where rows of a spreadsheet are pasted, with each that cannot be read named below. */
import { useId, type ReactNode } from 'react';

export function RowsBox(props: {
  readonly label: string;
  readonly text: string;
  readonly refusals: readonly string[];
  onText(text: string): void;
}): ReactNode {
  const id = useId();
  return (
    <div className="entry">
      <label htmlFor={id} className="entry-label">
        {props.label}
      </label>
      <textarea
        id={id}
        className="entry-input paste-box"
        rows={4}
        spellCheck={false}
        value={props.text}
        onChange={(event) => props.onText(event.currentTarget.value)}
      />
      {props.refusals.length > 0 && (
        <ul className="entry-note entry-note-refused paste-refusals" role="alert">
          {props.refusals.map((line) => (
            <li key={line}>
              <span aria-hidden="true">▲ </span>
              {line}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
