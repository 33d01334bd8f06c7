/**
 * What the slow stages find of the job that is shown, with the revision of the document that it belongs to. It hears of each
 * change before the screen does, so that no finding of a frame that is gone is ever shown; what is not known yet comes item by
 * item.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Finding } from '../../core/checks/types.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { Rehearsal } from '../../core/rehearse/types.ts';
import { rehearsals } from '../../core/stages/rehearsals.ts';
import { SLOW } from '../../core/stages/slow.ts';
import { attempt, type DoItem } from '../../workers/doing.ts';
import { createRunner, type Progress, type Runner } from '../../workers/runner.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { EditorStore } from '../editor/createEditor.ts';

export interface ResultsState {
  /** Of the document. */
  readonly revision: number;
  /** What the derivation found, and what the rehearsals find tube by tube as it becomes known. */
  readonly findings: readonly Finding[];
  /** Of the tubes shown that can be put in a bender, as far as they were rehearsed yet. */
  readonly rehearsals: ReadonlyMap<TubeRef, Rehearsal>;
  /** Of all slow stages; nothing is to be done before they are started. */
  readonly progress: Progress;
  /** Of the tubes that have none and will have none, why: a fault of the program. */
  readonly unrehearsed: ReadonlyMap<TubeRef, string>;
}

export interface ResultsStore extends StoreApi<ResultsState> {
  /** From now on what is not known is searched for, item by item, by `doItem`. */
  start(doItem: DoItem): void;
}

const NOTHING: Omit<ResultsState, 'revision' | 'findings'> = {
  rehearsals: new Map(),
  progress: { done: 0, of: 0, failed: [] },
  unrehearsed: new Map(),
};

export function createResults(document: DocumentStore, editor: EditorStore): ResultsStore {
  /** null until something is searched for. */
  let runner: Runner | null = null;

  const known = (): ResultsState => {
    const { revision, derived } = document.getState();
    const bare: ResultsState = { ...NOTHING, revision, findings: derived.findings };
    const slow = runner;
    if (slow === null) return bare;
    const found = attempt(() => ({
      findings: slow.addedTo(derived).findings,
      rehearsals: slow.known(rehearsals, derived),
      progress: slow.progress(derived),
    }));
    return found.ok ? withUnrehearsed({ revision, ...found.value }, null) : withUnrehearsed(bare, found.why);
  };

  /** `stopped`: why nothing more is searched for. */
  function withUnrehearsed(state: Omit<ResultsState, 'unrehearsed'>, stopped: string | null): ResultsState {
    const whys = new Map(state.progress.failed.map(({ stage, id, why }) => [`${stage} ${id}`, why]));
    const unrehearsed = rehearsals.items(document.getState().derived).flatMap(({ id }) => {
      const why = whys.get(`${rehearsals.name} ${id}`) ?? stopped;
      return why === null || state.rehearsals.has(id) ? [] : [[id, why] as const];
    });
    return { ...state, unrehearsed: new Map(unrehearsed) };
  }

  const store = createStore<ResultsState>(known);

  /** Of the committed job, the tube that is chosen first; nothing while a gesture is under way. Whatever fails, the document goes on. */
  function want(): void {
    const { gesture, committed } = document.getState();
    const { selection } = editor.getState();
    const asked = attempt(() => {
      if (gesture.state !== 'idle') runner?.rest();
      else runner?.want(committed.derived, selection?.kind === 'tube' ? selection.id : null);
    });
    if (!asked.ok) store.setState(withUnrehearsed(store.getState(), asked.why));
  }

  function update(): void {
    store.setState(known());
    want();
  }

  document.subscribe(update);
  editor.subscribe((next, last) => {
    if (next.selection !== last.selection) want();
  });

  return Object.assign(store, {
    start(doItem: DoItem) {
      runner = createRunner(SLOW, doItem, update);
      update();
    },
  });
}
