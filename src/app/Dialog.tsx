/**
 * A dialog over the work: the browser's own modal dialog, with a title. It is always closed by the browser, which
 * then gives the focus back; `closed` says that it was.
 */
import { useEffect, useId, useRef } from 'react';
import type { ReactNode } from 'react';
import { closeIcon } from './icons.tsx';
import './dialogs.css';

interface DialogProps {
  readonly title: string;
  readonly closed: () => void;
  readonly children: ReactNode;
}

export function Dialog({ title, closed, children }: DialogProps): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    if (!dialog.current!.open) dialog.current!.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      className="dialog"
      aria-labelledby={titleId}
      onClose={closed}
      onClick={(event) => {
        // Its body fills it: a press on the dialog itself is one on the ground around it.
        if (event.target === event.currentTarget) event.currentTarget.close();
      }}
    >
      <div className="dialog-body">
        <header>
          <h2 id={titleId}>{title}</h2>
          <button type="button" className="dismiss" aria-label="Close" onClick={() => dialog.current?.close()}>
            {closeIcon}
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
}
