/**
 * Deleting by keyboard. Tab passes by every button that takes something away (Command's `destroys`): Delete presses the one of the marked
 * rows, of the row that has the focus, or of what is chosen; Alt + Delete only leads to the nearest, so that a person hears or sees
 * what it is before pressing it.
 */
import { memberOfTube } from '../core/job/member-of-tube.ts';
import { bareId } from '../core/job/reference.ts';
import { editor, jobDocument } from '../store/page.ts';
import type { Selection } from '../store/types.ts';

const buttons = (within: ParentNode, what?: string): readonly HTMLButtonElement[] =>
  [...within.querySelectorAll<HTMLButtonElement>('button[data-destroys]:not(:disabled)')].filter(
    ({ dataset }) => what === undefined || dataset['destroys'] === what,
  );

/** Of the nearest thing round the element that has one; the last in it, since a card's own stands after those of its parts. */
function nearest(element: Element | null, what?: string): HTMLButtonElement | null {
  for (let within = element; within !== null && within !== document.body; within = within.parentElement) {
    const found = buttons(within, what).at(-1);
    if (found !== undefined) return found;
  }
  return null;
}

export function destroysChosen(): void {
  const marked = buttons(document, 'marked')[0];
  // Rows are marked, and what is to be done with them is still being fetched: one row alone must not go in their place.
  if (marked === undefined && document.querySelector('.mark-cell input:checked')) return;
  const row = document.activeElement?.closest('tr[data-row]') ?? null;
  const { selection } = editor.getState();
  const button =
    marked ??
    (row instanceof HTMLElement ? nearest(row, row.dataset['row']) : null) ??
    (selection === null ? null : buttons(document, chosenRecord(selection)).at(-1));
  button?.click();
}

/** The id of the record that is chosen: of a tube its member's. */
const chosenRecord = ({ kind, id }: Selection): string =>
  (kind === 'tube' ? memberOfTube(jobDocument.getState().job.members, id)?.id : undefined) ?? bareId(id);

export const toDestroys = (): void => nearest(document.activeElement)?.focus();
