/** The address that lets a device in, and what this browser remembers of being let in. */

import { PAIRING_KEY } from './paired-here.ts';

/** What a device needs to join: the relay's secret, and which of the jobs there it is. */
export interface Invitation {
  readonly secret: string;
  readonly room: string;
}

/** Being paired, as it outlasts a reload. */
export interface Remembered extends Invitation {
  /** Where the job is kept in this browser; null until it has come. */
  readonly slot: string | null;
  /** What ids made here end in; null on the device that shared the job first. */
  readonly idMark: string | null;
}

const FRAGMENT = /^#pair=([\w-]{22})\.([0-9a-z]{16,40})$/u;

/** The invitation in an address's fragment, which no server is sent; null where there is none. */
export function invitationIn(fragment: string): Invitation | null {
  const [, secret, room] = FRAGMENT.exec(fragment) ?? [];
  return secret === undefined || room === undefined ? null : { secret, room };
}

export const addressOf = (server: string, { secret, room }: Invitation): string =>
  `${server.replace(/\/$/u, '')}/#pair=${secret}.${room}`;

const NAME = 'cagewright.deviceName';

/** Where the browser lets a page keep nothing, nothing is remembered. */
export function recallPairing(): Remembered | null {
  const value = readItem(PAIRING_KEY);
  if (typeof value !== 'object' || value === null) return null;
  const { secret, room, slot = null, idMark = null } = value as Partial<Remembered>;
  return invitationIn(`#pair=${secret}.${room}`) === null ? null : { secret: secret!, room: room!, slot, idMark };
}

export const rememberPairing = (pairing: Remembered | null): void => writeItem(PAIRING_KEY, pairing);

/** What a person has named this device, or null. */
export function recallName(): string | null {
  const name = readItem(NAME);
  return typeof name === 'string' ? name : null;
}

export const rememberName = (name: string): void => writeItem(NAME, name);

function readItem(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    return null;
  }
}

function writeItem(key: string, value: unknown): void {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // Pairing then lasts until the page is loaded again.
  }
}
