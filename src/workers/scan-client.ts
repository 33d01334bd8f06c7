/** The page's side of the reading of scans. */
import { handOf, type Hand } from './hand.ts';
import type { ScanAsk, ScanSaid } from './scan-work.ts';

export type HireForScan = () => Hand<ScanAsk, ScanSaid>;

export const hireForScan: HireForScan = () =>
  handOf(new Worker(new URL('./scan.ts', import.meta.url), { type: 'module' }));

export type CameOfScan = Extract<ScanSaid, { readonly kind: 'came' }>;

/** What came of the file. Rejects with the signal's reason once that is aborted, and where no worker can be had. */
export function readBeside(
  ask: ScanAsk,
  going: (share: number) => void,
  signal: AbortSignal,
  hire: HireForScan,
): Promise<CameOfScan> {
  return new Promise((resolve, reject) => {
    const hand = hire();
    const stop = (): void => {
      hand.end();
      reject(signal.reason as Error);
    };
    signal.addEventListener('abort', stop, { once: true });
    const ended = (): void => {
      signal.removeEventListener('abort', stop);
      hand.end();
    };
    hand.listen(
      (said) => {
        if (said.kind === 'going') return going(said.share);
        ended();
        resolve(said);
      },
      (why) => {
        ended();
        reject(new Error(why));
      },
    );
    hand.send(ask);
  });
}
