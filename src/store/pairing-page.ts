/** This page's part in a job on several devices, as a plain store and as a hook; fetched by a page that is paired, and with the first thing that shows it. */
import { useStore } from 'zustand';
import { carried, entryOf, type Entry } from '../core/sharing/entries.ts';
import { jobDocument, keeping, opening } from './page.ts';
import { createPairing } from './pairing/createPairing.ts';
import { invitationIn, recallName, recallPairing, rememberName, rememberPairing } from './pairing/invitation.ts';
import { askNewSecret, askOffer } from './pairing/offer.ts';
import type { PairingActions, PairingState } from './pairing/types.ts';
import { randomName } from './storage/random-name.ts';

const JOTTED = 'cagewright.pairing.jotted';

/** ms within which the browser has surely kept what it was given. */
const KEPT_BY = 5000;

let lately: { readonly until: number; readonly entry: Entry }[] = [];

/** In the settings, since a page that goes has no time for more. */
function jot(room: string, entries: readonly Entry[]): void {
  const now = Date.now();
  lately = [...lately.filter(({ until }) => until > now), ...entries.map((entry) => ({ until: now + KEPT_BY, entry }))];
  try {
    localStorage.setItem(JOTTED, JSON.stringify([room, lately.map(({ entry }) => carried(entry))]));
  } catch {
    // Too much for the settings, or they are off: the page's own storage has it a moment later.
  }
}

function jotted(room: string): readonly Entry[] {
  try {
    const [ofRoom, list] = JSON.parse(localStorage.getItem(JOTTED) ?? '[]') as [unknown?, unknown?];
    if (ofRoom !== room || !Array.isArray(list)) return [];
    return list.flatMap((each) => (Array.isArray(each) ? (entryOf(String(each[0]), each[1]) ?? []) : []));
  } catch {
    return [];
  }
}

const SEEN = 'cagewright.pairing.seen';

/** So many are remembered, the latest. */
const MOST_SEEN = 200;

let seen: readonly string[] | null = null;

function seenHere(): readonly string[] {
  try {
    const list = JSON.parse(localStorage.getItem(SEEN) ?? '[]') as unknown;
    return Array.isArray(list) ? list.map(String) : [];
  } catch {
    return [];
  }
}

const isSeen = (key: string): boolean => (seen ??= seenHere()).includes(key);

function see(key: string): void {
  seen = [...(seen ?? seenHere()), key].slice(-MOST_SEEN);
  try {
    localStorage.setItem(SEEN, JSON.stringify(seen));
  } catch {
    // It is listed again when the page is loaded anew.
  }
}

const newName = (): string => randomName().replaceAll('-', '');

/** Until a person names it: who opens the page by an invitation has the second screen. */
const firstName = (): string =>
  matchMedia('(pointer: coarse)').matches ? 'Phone' : invitationIn(location.hash) === null ? 'Desk' : 'Second screen';

export const pairing = createPairing(
  jobDocument,
  keeping,
  opening,
  {
    server: location.origin,
    now: () => Date.now(),
    newName,
    askOffer,
    askNewSecret,
    fetchEngine: async () => (await import('./pairing/engine.ts')).createEngine,
    recall: recallPairing,
    remember: rememberPairing,
    jot,
    jotted,
    rememberName,
    see,
    isSeen,
  },
  recallName() ?? firstName(),
);

/** Select a value that stays the same object. */
export const usePairing = <T>(select: (state: PairingState & PairingActions) => T): T => useStore(pairing, select);

/** Joins by the address that the page was opened with, which then shows no secret any more, or again what it was joined to. */
export function startPairing(): void {
  const invited = invitationIn(location.hash);
  if (invited !== null) history.replaceState(null, '', location.pathname + location.search);
  void pairing.getState().ask(); // after a reload the machine of the server shows its addresses again
  const start = (): void => {
    const known = recallPairing();
    // Another tab's job is no reason to join with this one's.
    const again = known === null || (known.slot !== null && known.slot !== keeping.getState().slot) ? null : known;
    const invitation = invited ?? again;
    if (invitation !== null) void pairing.join(invitation);
  };
  if (jobDocument.getState().ready) return start();
  const stop = jobDocument.subscribe(({ ready }) => {
    if (!ready) return;
    stop();
    setTimeout(start); // whoever showed the job is through with it then
  });
}
