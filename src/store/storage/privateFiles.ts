/**
 * A folder of the origin's private file system, for a worker: only there do all browsers that have this file system let a
 * file be written in place and flushed to the disk. The folder is looked up at each use, since the person may clear the
 * storage at any time.
 */
import type { Files } from './secondCopy.ts';

/** What the types of the page leave out, as it is there in workers alone. */
interface WritableHandle extends FileSystemFileHandle {
  createSyncAccessHandle(): Promise<{
    truncate(size: number): void;
    write(bytes: Uint8Array, options?: { at: number }): number;
    getSize(): number;
    flush(): void;
    close(): void;
  }>;
}

export function privateFiles(name: string): Files {
  const folder = async (): Promise<FileSystemDirectoryHandle> =>
    (await navigator.storage.getDirectory()).getDirectoryHandle(name, { create: true });

  async function put(file: string, text: string, anew: boolean): Promise<void> {
    const handle = (await (await folder()).getFileHandle(file, { create: true })) as WritableHandle;
    const access = await handle.createSyncAccessHandle();
    try {
      if (anew) access.truncate(0);
      const bytes = new TextEncoder().encode(text);
      // A full disk may take a part and say nothing.
      if (access.write(bytes, { at: access.getSize() }) < bytes.length) throw new Error('only a part was written');
      access.flush();
    } finally {
      access.close();
    }
  }

  return {
    async list() {
      const dated: { readonly name: string; readonly at: number }[] = [];
      for await (const handle of (await folder()).values()) {
        if (handle.kind !== 'file') continue;
        const { lastModified } = await handle.getFile();
        dated.push({ name: handle.name, at: lastModified });
      }
      return dated.toSorted((a, b) => b.at - a.at).map((file) => file.name);
    },

    async read(file) {
      try {
        return await (await (await (await folder()).getFileHandle(file)).getFile()).text();
      } catch (error) {
        if (isMissing(error)) return null;
        throw error;
      }
    },

    write: (file, text) => put(file, text, true),

    append: (file, text) => put(file, text, false),

    async remove(file) {
      await (await folder()).removeEntry(file).catch((error: unknown) => {
        if (!isMissing(error)) throw error;
      });
    },
  };
}

const isMissing = (error: unknown): boolean => error instanceof DOMException && error.name === 'NotFoundError';
