/**
 * The second copy of the documents, as files. A document has two of them, written in turn, each beginning with a checksum of
 * the rest: a write that was cut short leaves one that does not check out, and beside it the one before. The chunks of its history
 * (chunks.ts) stand in a third, to which only is added, a line each with a checksum of its own.
 */
import { documentAgain, type Chunks, type InChunks } from './chunks.ts';
import { isLater, isSameStamp, type Stamp, type Stored } from './persistence.ts';
import { checkStored } from './records.ts';
import { checksum, sealed, unsealed } from './seal.ts';

/** A folder of texts. */
export interface Files {
  /** The names, the file written last first. */
  list(): Promise<readonly string[]>;
  /** null where there is none. */
  read(name: string): Promise<string | null>;
  write(name: string, text: string): Promise<void>;
  /** At the end of it; where there is none, of a new one. */
  append(name: string, text: string): Promise<void>;
  remove(name: string): Promise<void>;
}

/** What it is to the page. */
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

/** What it is to the files: a document comes cut in chunks, by the page that knows which of them it has cut before. */
export interface FiledCopy extends Omit<SecondCopy, 'write'> {
  write(stored: InChunks<Stored>, most: number): Promise<void>;
}

/** So many chunks that no document has any more may lie in a file before it is written anew. */
const MOST_STRAY = 100;

const CHUNKS = 'chunks';
const TURNS = ['a', 'b'] as const;
const nameOf = (slot: string, turn: string): string => `${encodeURIComponent(slot)}.${turn}`;

export function createSecondCopy(files: Files): FiledCopy {
  async function slots(): Promise<readonly string[]> {
    return [...new Set((await files.list()).flatMap(slotOf))];
  }

  /** The latest that checks out, and which of the two files it is. */
  async function latest(slot: string): Promise<{ readonly stored: Stored; readonly turn: string } | null> {
    const both = await Promise.all(
      TURNS.map(async (turn) => ({ turn, stored: await storedIn(await files.read(nameOf(slot, turn)), slot) })),
    );
    const [a, b] = both.flatMap(({ turn, stored }) => (stored === null ? [] : [{ turn, stored }]));
    return a && b && isLater(b.stored, a.stored) ? b : (a ?? null);
  }

  async function removeFiles(slot: string): Promise<void> {
    await Promise.all([...TURNS, CHUNKS].map((turn) => files.remove(nameOf(slot, turn))));
  }

  /** Those that check out, in the file of the slot. */
  async function chunksThere(slot: string): Promise<Chunks> {
    const lines = (await files.read(nameOf(slot, CHUNKS)))?.split('\n') ?? [];
    const read = await Promise.all(lines.map(readChunk));
    return new Map(read.filter((chunk) => chunk !== null));
  }

  /** Adds those that are not there yet. Answers what to write in the file's place where too many lie there that are not wanted. */
  async function addChunks(slot: string, chunks: Chunks): Promise<string | null> {
    const there = await chunksThere(slot);
    const strays = [...there.keys()].filter((name) => !chunks.has(name)).length;
    const linesOf = async (some: Iterable<readonly [string, readonly unknown[]]>): Promise<string> =>
      (await Promise.all(Array.from(some, chunkLine))).join('');
    const news = [...chunks].filter(([name]) => !there.has(name));
    if (news.length > 0) await files.append(nameOf(slot, CHUNKS), await linesOf(news));
    return strays > MOST_STRAY ? linesOf(chunks) : null;
  }

  return {
    slots,
    async read(slot) {
      const stored = (await latest(slot))?.stored;
      if (stored === undefined) return null;
      const chunks = await chunksThere(slot);
      return documentAgain(stored, (name) => chunks.get(name));
    },
    async write({ document: stored, chunks }, most) {
      const { slot } = stored.kept;
      const before = await latest(slot);
      if (before !== null && !isLater(stored, before.stored)) return;
      const anew = await addChunks(slot, chunks);
      const turn = before?.turn === TURNS[0] ? TURNS[1] : TURNS[0];
      await files.write(nameOf(slot, turn), await sealed(JSON.stringify(stored)));
      // Not before the document is there: what is cut short here costs no more than the way back.
      if (anew !== null) await files.write(nameOf(slot, CHUNKS), anew);
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

/** The document in a file's text, null if it is not whole. */
async function storedIn(text: string | null, slot: string): Promise<Stored | null> {
  const rest = await unsealed(text);
  if (rest === null) return null;
  const checked = checkStored(JSON.parse(rest), slot);
  return checked.ok ? checked.value : null;
}

/** On a line of its own, wherever the write before it was cut short. */
async function chunkLine(chunk: readonly [string, readonly unknown[]]): Promise<string> {
  const text = JSON.stringify(chunk);
  return `\n${await checksum(text)} ${text}`;
}

/** null for what is not whole. */
async function readChunk(line: string): Promise<readonly [string, readonly unknown[]] | null> {
  const end = line.indexOf(' ');
  const text = line.slice(end + 1);
  if (end < 0 || line.slice(0, end) !== (await checksum(text))) return null;
  return JSON.parse(text) as [string, unknown[]];
}
