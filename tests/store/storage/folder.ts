/** A folder of texts in memory, and the second copy in it as the page has it before it. */
import { createChunking } from '../../../src/store/storage/chunks.ts';
import { createSecondCopy, type Files, type SecondCopy } from '../../../src/store/storage/secondCopy.ts';

export interface Folder extends Files {
  readonly texts: Map<string, string>;
  /** While true, writing is refused. */
  refused: boolean;
  refusals: number;
  /** Characters of all that was written. */
  written: number;
}

export function folder(): Folder {
  const texts = new Map<string, string>();
  const put = (name: string, text: string, added: number): void => {
    if (made.refused) {
      made.refusals += 1;
      throw new Error('refused');
    }
    made.written += added;
    texts.delete(name); // written last, listed first
    texts.set(name, text);
  };
  const made: Folder = {
    texts,
    refused: false,
    refusals: 0,
    written: 0,
    list: async () => [...texts.keys()].toReversed(),
    read: async (name) => texts.get(name) ?? null,
    write: async (name, text) => put(name, text, text.length),
    append: async (name, text) => put(name, (texts.get(name) ?? '') + text, text.length),
    remove: async (name) => void texts.delete(name),
  };
  return made;
}

export function secondIn(files: Files): SecondCopy {
  const copy = createSecondCopy(files);
  const { cut } = createChunking('page');
  return { ...copy, write: (document, most) => copy.write(cut(document), most) };
}
