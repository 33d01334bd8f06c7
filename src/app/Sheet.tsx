/** A sheet laid over the work: the browser's own modal dialog, with its focus and Escape, and a title. */
import { useEffect, useId, useRef } from 'react';
import type { ReactNode } from 'react';
import { closeIcon } from './icons.tsx';

interface SheetProps {
  readonly title: string;
  readonly close: () => void;
  readonly children: ReactNode;
}

export function Sheet({ title, close, children }: SheetProps): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      className="sheet"
      aria-labelledby={titleId}
      onClose={close}
      onClick={(event) => {
        // The dialog fills its border box with the form: a press on the dialog itself is one on the ground around it.
        if (event.target === dialog.current) close();
      }}
    >
      <div className="sheet-body">
        <header>
          <h2 id={titleId}>{title}</h2>
          <button type="button" className="dismiss" aria-label="Close" onClick={close}>
            {closeIcon}
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
}
