/** Brings the kept work out when the page starts, or the demo where nothing is kept; again and again while it cannot be reached. */
import { newHistory } from '../../core/session/history.ts';
import { admitText } from '../document/admit.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { EditorStore } from '../editor/createEditor.ts';
import { troubleOf, type Stamp } from '../storage/persistence.ts';
import { SLOW, waitAfter } from '../storage/writer.ts';
import type { Trouble } from '../types.ts';
import { findKept, type Opened } from './findKept.ts';
import { historyNotice, startNotice, unreachedNotice } from './notices.ts';
import type { Surroundings } from './surroundings.ts';

export interface BringingOut {
  readonly document: DocumentStore;
  readonly editor: EditorStore;
  readonly surroundings: Surroundings;
  /** The document shown is kept there. */
  enterSlot(slot: string, stamp: Stamp): void;
  fetchDemo(): Promise<string | null>;
  /** Makes the copies of what is kept alike. */
  evenOut(): void;
  /** Why it cannot be reached; null once it was. */
  stands(trouble: Trouble | null): void;
}

/** The waits grow with the failures so far. */
export async function bringOut(bringing: BringingOut, failures = 0): Promise<void> {
  const { document, editor, surroundings, evenOut, stands } = bringing;
  const { persistence, remembered, whenIdle, now } = surroundings;
  const slow = setTimeout(() => stands('slow'), SLOW);
  try {
    const slots = await persistence.slots();
    const isOwn = (slot: string): boolean => slot === remembered?.slot;
    const ordered = [...slots.filter(isOwn), ...slots.filter((slot) => !isOwn(slot))];
    const found = await findKept(persistence, ordered, now());
    stands(null);
    if (found.opened !== null) whenIdle(evenOut);
    // The person did not wait for it: what they opened since lies in a slot of its own.
    const isAnotherOpen = document.getState().ready;
    const notice = startNotice(found, isAnotherOpen);
    if (notice !== null) editor.getState().say(notice);
    if (isAnotherOpen) return;
    if (found.opened === null) await showDemo(bringing);
    else {
      editor.getState().setStation(remembered?.station ?? found.opened.kept.station);
      showOpened(bringing, found.opened);
    }
  } catch (error) {
    const trouble = troubleOf(error);
    stands(trouble);
    if (trouble !== 'newer') setTimeout(() => void bringOut(bringing, failures + 1), waitAfter(failures));
    if (document.getState().ready) return;
    if (trouble !== 'newer') editor.getState().say(unreachedNotice);
    await showDemo(bringing);
  } finally {
    clearTimeout(slow);
  }
}

/** Puts it in the place of the open document, and goes on in its slot. */
export function showOpened(
  { document, editor, enterSlot }: Pick<BringingOut, 'document' | 'editor' | 'enterSlot'>,
  { kept, stamp, committed, lost }: Opened,
): void {
  document.getState().replace(committed, kept.fileName);
  enterSlot(kept.slot, stamp);
  if (lost !== null && editor.getState().notice === null) editor.getState().say(historyNotice(lost.why, lost.steps));
}

async function showDemo({ document, fetchDemo }: BringingOut): Promise<void> {
  const demo = await fetchDemo();
  const { ready, replace, committed } = document.getState();
  if (ready) return;
  const admitted = demo === null ? null : admitText(demo);
  if (!admitted?.ok) return replace(committed, ''); // the empty one that is there
  replace({ history: newHistory(admitted.job), derived: admitted.derived }, 'demo.cagewright.json');
}
