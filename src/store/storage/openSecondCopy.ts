/** The page's side of the second copy: asks the worker that keeps it. Where there is none, every call rejects. */
import type { Chunking } from './chunks.ts';
import type { SecondCopy } from './secondCopy.ts';
import type { ShopFile } from './shopFile.ts';
import type { Answered, Asked } from './secondCopyWorker.ts';

interface Waiting {
  resolve(value: unknown): void;
  reject(why: Error): void;
}

export function openSecondCopy({ cut }: Chunking): SecondCopy & ShopFile {
  const waiting = new Map<number, Waiting>();
  let nth = 0;
  let worker: Worker | null = null;
  /** Set once it is known that there is no second copy here. */
  let broken: Error | null = null;

  function hired(): Worker {
    if (worker !== null) return worker;
    worker = new Worker(new URL('./secondCopyWorker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Answered>) => {
      const asked = waiting.get(data.nth);
      waiting.delete(data.nth);
      if (data.why === undefined) asked?.resolve(data.value);
      else asked?.reject(new Error(data.why));
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      broken = new Error('There is no second copy here.');
      for (const { reject } of waiting.values()) reject(broken);
      waiting.clear();
    });
    return worker;
  }

  async function ask<T>(method: Asked['method'], ...given: readonly unknown[]): Promise<T> {
    if (broken !== null) throw broken;
    const to = hired();
    nth += 1;
    const answer = new Promise<unknown>((resolve, reject) => waiting.set(nth, { resolve, reject }));
    to.postMessage({ nth, method, given } satisfies Asked);
    return (await answer) as T;
  }

  return {
    slots: () => ask('slots'),
    read: (slot) => ask('read', slot),
    write: (stored, most) => ask('write', cut(stored), most),
    remove: (slot, stamp) => ask('remove', slot, stamp),
    readShop: () => ask('readShop'),
    writeShop: (kept) => ask('writeShop', kept),
  };
}
