/**
 * The second copy of the documents, as files. A document has two of them, written in turn, each beginning with a checksum of
 * the rest: a write that was cut short leaves one that does not check out, and beside it the one before.
 */
import { isLater, isSameStamp, type Stamp, type Stored } from './persistence.ts';
import { checkStored } from './records.ts';

/** A folder of texts. */
export interface Files {
  /** The names, the file written last first. */
  list(): Promise<readonly string[]>;
  /** null where there is none. */
  read(name: string): Promise<string | null>;
  write(name: string, text: string): Promise<void>;
  remove(name: string): Promise<void>;
}

export interface SecondCopy {
  /** The slots that have a file, the one written last first. */
  slots(): Promise<readonly string[]>;
  /** The latest that checks out. */
  read(slot: string): Promise<Stored | null>;
  /**
   * Writes it unless something later is there. A slot that is new drops those written longest ago beyond `most`. Two writes
   * at once are for the caller to prevent.
   */
  write(stored: Stored, most: number): Promise<void>;
  /** Removes it if it still has that stamp. */
  remove(slot: string, stamp: Stamp): Promise<void>;
}

const TURNS = ['a', 'b'] as const;
const nameOf = (slot: string, turn: string): string => `${encodeURIComponent(slot)}.${turn}`;

export function createSecondCopy(files: Files): SecondCopy {
  async function slots(): Promise<readonly string[]> {
    return [...new Set((await files.list()).flatMap(slotOf))];
  }

  /** The latest that checks out, and which of the two files it is. */
  async function latest(slot: string): Promise<{ readonly stored: Stored; readonly turn: string } | null> {
    const both = await Promise.all(
      TURNS.map(async (turn) => ({ turn, stored: await unsealed(await files.read(nameOf(slot, turn)), slot) })),
    );
    const [a, b] = both.flatMap(({ turn, stored }) => (stored === null ? [] : [{ turn, stored }]));
    return a && b && isLater(b.stored, a.stored) ? b : (a ?? null);
  }

  async function removeFiles(slot: string): Promise<void> {
    await Promise.all(TURNS.map((turn) => files.remove(nameOf(slot, turn))));
  }

  return {
    slots,
    read: async (slot) => (await latest(slot))?.stored ?? null,
    async write(stored, most) {
      const { slot } = stored.kept;
      const before = await latest(slot);
      if (before !== null && !isLater(stored, before.stored)) return;
      const turn = before?.turn === TURNS[0] ? TURNS[1] : TURNS[0];
      await files.write(nameOf(slot, turn), await sealed(JSON.stringify(stored)));
      if (before === null) for (const old of (await slots()).slice(most)) await removeFiles(old);
    },
    async remove(slot, stamp) {
      const there = await latest(slot);
      if (there !== null && isSameStamp(there.stored.stamp, stamp)) await removeFiles(slot);
    },
  };
}

/** None if it is no file of ours. */
function slotOf(name: string): readonly string[] {
  const [, slot] = /^(.+)\.[ab]$/su.exec(name) ?? [];
  try {
    return slot === undefined ? [] : [decodeURIComponent(slot)];
  } catch {
    return [];
  }
}

async function sealed(text: string): Promise<string> {
  return `${await checksum(text)}\n${text}`;
}

/** The document in a file's text, null if it is not whole. */
async function unsealed(text: string | null, slot: string): Promise<Stored | null> {
  const end = text?.indexOf('\n') ?? -1;
  if (text === null || end < 0) return null;
  const rest = text.slice(end + 1);
  if (text.slice(0, end) !== (await checksum(rest))) return null;
  const checked = checkStored(JSON.parse(rest), slot);
  return checked.ok ? checked.value : null;
}

/** SHA-256. */
async function checksum(text: string): Promise<string> {
  const sum = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Array.from(new Uint8Array(sum), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
