/** The worker that keeps the second copy: it answers what the page's side (openSecondCopy.ts) asks. */
import { privateFiles } from './privateFiles.ts';
import { createSecondCopy, type FiledCopy } from './secondCopy.ts';
import { createShopFile, type ShopFile } from './shopFile.ts';

export interface Asked {
  readonly nth: number;
  readonly method: keyof (FiledCopy & ShopFile);
  readonly given: readonly unknown[];
}

export interface Answered {
  readonly nth: number;
  readonly value?: unknown;
  /** Why it could not be done. */
  readonly why?: string;
}

const files = privateFiles('documents');
const copy = { ...createSecondCopy(files), ...createShopFile(files) };

/** One at a time, among all tabs of the browser. One without locks has no second copy: that throws, and the page hears it. */
const alone = <T>(task: () => Promise<T>): Promise<T> =>
  navigator.locks.request('cagewright.second-copy', task) as Promise<T>;

self.addEventListener('message', ({ data: { nth, method, given } }: MessageEvent<Asked>) => {
  const done = copy[method] as (...given: readonly unknown[]) => Promise<unknown>;
  alone(() => done(...given)).then(
    (value) => self.postMessage({ nth, value } satisfies Answered),
    (error: unknown) => self.postMessage({ nth, why: String(error) } satisfies Answered),
  );
});
