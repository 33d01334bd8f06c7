/**
 * Every command with its name and its keys, in one table: the keyboard, the menu and the dialog of keys all read it.
 * `Mod` is Ctrl, or Cmd on a Mac.
 */
import { jobFrom } from '../core/shop/exchange.ts';
import { EMPTY_SHOP } from '../core/shop/types.ts';
import { unreadShopNotice } from '../store/shop/notices.ts';
import { builtOnNotice, overwrittenNotice, stepNotice } from '../store/keeping/notices.ts';
import type { Station } from '../store/types.ts';
import { editor, jobDocument, opening, shopRecord } from '../store/page.ts';
import { isLaidOver, isTyping } from '../view/canvas/taken.ts';
import { destroysChosen, toDestroys } from './destroys.ts';
import { pickFile, saveFile } from './files.ts';
import { sendJob } from './send.ts';

export type DialogName = 'versions' | 'shop' | 'pairing' | 'keys' | 'about';

export interface Command {
  readonly name: string;
  readonly keys: readonly string[];
  /** A field that holds text not yet entered keeps these keys for that text. */
  readonly leftToField?: true;
  readonly run: (showDialog: (dialog: DialogName) => void) => void;
}

export const STATIONS: readonly { readonly station: Station; readonly name: string }[] = [
  { station: 'survey', name: 'Survey' },
  { station: 'frame', name: 'Frame' },
  { station: 'checks', name: 'Checks' },
  { station: 'shop', name: 'Shop' },
  { station: 'stock', name: 'Stock' },
];

export const COMMANDS = {
  undo: { name: 'Undo', keys: ['Mod+Z'], leftToField: true, run: () => take('undo') },
  redo: { name: 'Redo', keys: ['Mod+Shift+Z', 'Mod+Y'], leftToField: true, run: () => take('redo') },
  open: { name: 'Open a job file', keys: ['Mod+O'], run: pickFile },
  save: { name: 'Save the job file', keys: ['Mod+S'], run: saveFile },
  send: { name: 'Send the job', keys: [], run: () => void sendJob() },
  survey: stationCommand(0),
  frame: stationCommand(1),
  checks: stationCommand(2),
  shop: stationCommand(3),
  stock: stationCommand(4),
  draw: { name: 'Draw a tube', keys: ['T'], run: () => editor.getState().beginDrawing() },
  escape: {
    name: 'Drop the drag, else the selection',
    keys: ['Escape'],
    leftToField: true,
    run: () => editor.getState().escape(),
  },
  destroy: { name: 'Delete the marked rows, else the row or what is chosen', keys: ['Delete'], run: destroysChosen },
  toDestroys: { name: 'To the button that deletes this card or line', keys: ['Alt+Delete'], run: toDestroys },
  versions: { name: 'Earlier versions', keys: [], run: (showDialog) => showDialog('versions') },
  shopRecord: { name: 'Shop record', keys: [], run: (showDialog) => showDialog('shop') },
  pairing: { name: 'Phone at the bender', keys: ['P'], run: (showDialog) => showDialog('pairing') },
  keys: { name: 'Keys', keys: ['?'], run: (showDialog) => showDialog('keys') },
  about: { name: 'About and cautions', keys: [], run: (showDialog) => showDialog('about') },
  newJob: {
    name: 'New job',
    keys: [],
    run: () => void newJob(),
  },
  demo: { name: 'Demo job', keys: [], run: () => void opening.openDemo() },
} satisfies Record<string, Command>;

function take(step: 'undo' | 'redo'): void {
  if (step === 'undo' && editor.getState().undoPlace()) return;
  const { history } = jobDocument.getState().committed;
  if (jobDocument.getState()[step]()) {
    const { committed } = jobDocument.getState();
    if (committed.history !== history && committed.history.job === history.job)
      editor.getState().say(overwrittenNotice);
    return;
  }
  const { past } = history;
  editor.getState().say(past.some(({ by }) => by !== undefined) ? builtOnNotice : stepNotice);
}

/** With what the shop has, and marked as it marked last: that may still have to be read. */
async function newJob(): Promise<void> {
  let isRead = false;
  const isBegun = await opening.newJobFrom(async () => {
    isRead = await shopRecord.whenRead();
    return jobFrom(shopRecord.getState().shop, jobDocument.getState().job.lengthUnit);
  });
  if (isBegun && !isRead && shopRecord.getState().shop === EMPTY_SHOP) editor.getState().say(unreadShopNotice);
}

function stationCommand(index: number): Command {
  const { station, name } = STATIONS[index]!;
  return { name, keys: [`Alt+${index + 1}`], run: () => editor.getState().setStation(station) };
}

/** Does the key event say the chord, for example 'Mod+Shift+Z'? Digits are read from the key's place: Alt changes what they type on a Mac. */
export function matches(event: KeyboardEvent, chord: string): boolean {
  const parts = chord.split('+');
  const key = parts.at(-1)!;
  const pressed = /^\d$/.test(key) ? event.code === `Digit${key}` : event.key.toLowerCase() === key.toLowerCase();
  return (
    pressed &&
    (event.ctrlKey || event.metaKey) === parts.includes('Mod') &&
    event.altKey === parts.includes('Alt') &&
    (key === '?' || event.shiftKey === parts.includes('Shift'))
  );
}

/** Text that is not entered yet is the field's own to undo or to drop: such a field carries `data-pending`. */
const isPending = (target: EventTarget | null): target is HTMLElement =>
  target instanceof HTMLElement && target.dataset['pending'] !== undefined;

/** Enters what a field holds as leaving it does; the focus then stands where it stood, on the cell if the field was a cell's. */
function enterText(field: HTMLElement): void {
  const cell = field.closest('td');
  field.blur();
  (cell ?? field).focus();
}

/** Enters what any field still holds: the page may be gone the next moment. */
export function enterPending(): void {
  const field = document.activeElement;
  if (isPending(field)) field.blur();
}

/**
 * Runs the command that the key event asks for; the event is then used up. Text not yet entered is entered first, and
 * the document itself commits a gesture under way, so that what is saved is what one sees.
 */
export function answerKey(event: KeyboardEvent, showDialog: (dialog: DialogName) => void): void {
  if (event.defaultPrevented || isLaidOver()) return;
  const command = Object.values<Command>(COMMANDS).find(({ keys }) => keys.some((chord) => matches(event, chord)));
  if (!command) return;
  const bareKey = !event.ctrlKey && !event.metaKey && !event.altKey;
  if (bareKey && isTyping(event.target)) return;
  if (isPending(event.target)) {
    if (command.leftToField) return;
    enterText(event.target);
  }
  event.preventDefault();
  command.run(showDialog);
}
