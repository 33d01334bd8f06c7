/** The bay's views and switches: words where they are short, each with its key. */
import type { ReactNode } from 'react';

export interface ViewButton {
  readonly name: string;
  /** What a screen reader says, and the tip. */
  readonly says: string;
  readonly key: string;
  readonly act: () => void;
  readonly disabled?: boolean;
  /** For a switch: whether it is on. */
  readonly pressed?: boolean;
}

export function Toolbar({
  groups,
  children,
}: {
  readonly groups: readonly (readonly ViewButton[])[];
  readonly children?: ReactNode;
}) {
  return (
    <div className="bay-toolbar" role="group" aria-label="Views">
      {groups.map((buttons) => (
        <div className="bay-buttons" key={buttons[0]?.name}>
          {buttons.map(({ name, says, key, act, disabled, pressed }) => (
            <button
              key={name}
              type="button"
              className="bay-button"
              aria-label={says}
              aria-keyshortcuts={key}
              aria-pressed={pressed}
              title={`${says} (${key})`}
              disabled={disabled}
              onClick={act}
            >
              {name}
            </button>
          ))}
        </div>
      ))}
      {children}
    </div>
  );
}
