/** The top band, set as a drawing's title block: whose it is, which job, whether it is kept, and what a hand reaches for. */
import { WAITING } from './waiting.ts';
import { Suspense, useId, useState } from 'react';
import type { KeyboardEvent, ReactNode } from 'react';
import { redoLabel, undoLabel } from '../core/session/history.ts';
import type { KeepingState } from '../store/keeping/createKeeping.ts';
import { jobDocument, useDocument, useEditor, useKeeping } from '../store/page.ts';
import { textKind } from '../ui/fields/kinds.ts';
import { COMMANDS } from './commands.ts';
import type { DialogName } from './commands.ts';
import { closeIcon, openIcon, redoIcon, savedIcon, saveIcon, savingIcon, sign, undoIcon } from './icons.tsx';
import { PairingMark } from './later.ts';
import { Menu } from './Menu.tsx';
import './band.css';

interface BandProps {
  readonly showDialog: (dialog: DialogName) => void;
  /** Then pairing is asked how it stands. */
  readonly mayBePaired: boolean;
}

export function Band({ showDialog, mayBePaired }: BandProps): ReactNode {
  const done = useDocument((state) => undoLabel(state.committed.history));
  const isPlace = useEditor((state) => state.undoIsPlace());
  const undone = isPlace ? 'The last place' : done;
  const redone = useDocument((state) => redoLabel(state.committed.history));
  return (
    <header className="band">
      <h1 className="wordmark">
        {sign}
        <span>Cagewright</span>
      </h1>
      <div className="job-cell">
        <SavedState />
        <JobName />
      </div>
      <div className="band-keys">
        <StepKey name="Undo" label={undone} icon={undoIcon} press={COMMANDS.undo.run} />
        <StepKey name="Redo" label={redone} icon={redoIcon} press={COMMANDS.redo.run} />
        <button type="button" className="band-key file-key" onClick={COMMANDS.open.run}>
          {openIcon} Open
        </button>
        <button type="button" className="band-key file-key" onClick={COMMANDS.save.run}>
          {saveIcon} Save
        </button>
        {mayBePaired && (
          <Suspense fallback={null}>
            <PairingMark open={() => showDialog('pairing')} />
          </Suspense>
        )}
        <Menu showDialog={showDialog} />
      </div>
    </header>
  );
}

interface StepKeyProps {
  readonly name: string;
  readonly label: string | null;
  readonly icon: ReactNode;
  readonly press: () => void;
}

/** Undo or Redo, with what it would undo under its name. The width is fixed, so that no label moves its neighbours. */
function StepKey({ name, label, icon, press }: StepKeyProps): ReactNode {
  return (
    <button
      type="button"
      className="band-key step-key"
      disabled={label === null}
      onClick={press}
      title={label ?? undefined}
    >
      {icon}
      <span className="step-words">
        <span>{name}</span>
        <span className="step-label">{label ?? 'nothing'}</span>
      </span>
    </button>
  );
}

const NAMES = textKind(false);

/**
 * The job's name, changed where it stands: Enter or leaving the field takes it, Escape puts the old one back. One that is
 * too long stays in the field, with the reason under it.
 */
function JobName(): ReactNode {
  const name = useDocument((state) => (state.ready ? state.job.name : ''));
  const ready = useDocument((state) => state.ready);
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();

  const shown = NAMES.show(name);
  const entered = typed?.trim() ? NAMES.read(typed) : null;
  const refusal = entered?.ok === false ? entered.why : null;

  const take = (): void => {
    if (refusal !== null) return;
    if (entered?.ok && entered.value !== name && entered.value !== shown) {
      const next = entered.value;
      jobDocument.getState().edit('Rename job', (job) => ({ ...job, name: next }));
    }
    setTyped(null);
  };
  const answer = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') take();
    if (event.key === 'Escape') setTyped(null);
  };
  return (
    <>
      <label className="spoken-only" htmlFor={id}>
        Job
      </label>
      <input
        id={id}
        className="job-name"
        value={typed ?? shown}
        disabled={!ready}
        data-pending={typed === null ? undefined : ''}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
        onKeyDown={answer}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={refusal !== null || undefined}
        aria-describedby={refusal === null ? undefined : `${id}-note`}
      />
      {refusal !== null && (
        <span id={`${id}-note`} className="job-name-note" role="alert">
          <span aria-hidden="true">▲ </span>
          {refusal}: shorten it, or press Escape
        </span>
      )}
    </>
  );
}

const SAVED = {
  waiting: { sign: savingIcon, words: WAITING },
  saved: { sign: savedIcon, words: 'Saved in this browser' },
  apart: { sign: savedIcon, words: 'Kept apart in this browser' },
  saving: { sign: savingIcon, words: 'Saving' },
  failed: { sign: closeIcon, words: 'Not saved: save the file' },
  /** There is nothing to save yet, and it could not be saved. */
  unable: { sign: closeIcon, words: 'Nothing can be saved here' },
} as const;

function savedState({ saved, trouble, behind }: KeepingState): keyof typeof SAVED {
  if (saved !== 'saved') return saved;
  if (trouble !== null) return 'unable';
  return behind ? 'apart' : 'saved';
}

function SavedState(): ReactNode {
  const ready = useDocument((state) => state.ready);
  const kept = useKeeping(savedState);
  const state = ready ? kept : 'waiting';
  return (
    <p className="saved-state" data-saved={state} role="status">
      {SAVED[state].sign}
      {SAVED[state].words}
    </p>
  );
}
