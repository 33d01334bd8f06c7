/** What the shop record finds around it in a browser. */
import { checkKeptShop } from '../storage/records.ts';
import { openChannel } from '../tabs/channel.ts';
import type { ShopSurroundings } from './createShop.ts';
import type { ShopPersistence } from '../storage/shopPersistence.ts';

const ANSWERS = 'cagewright.shop-answers';
/** Where earlier builds kept what now stands in the record. */
const [TAPE, TOLERANCES] = ['cagewright.tape', 'cagewright.tolerances'];

export function browserShop(persistence: ShopPersistence): ShopSurroundings {
  const channel = openChannel('cagewright.shop');
  /** Stands in for a storage that keeps nothing; another tab may have answered since. */
  let own: readonly string[] = [];
  return {
    persistence,
    now: () => Date.now(),
    earlier: () => ({ tape: read(TAPE), tolerances: read(TOLERANCES) }),
    forgetEarlier() {
      for (const name of [TAPE, TOLERANCES]) withStorage((storage) => storage.removeItem(name));
    },
    answers: () => [...new Set([...readStrings(read(ANSWERS)), ...own])],
    keepAnswers(next) {
      own = next;
      withStorage((storage) => storage.setItem(ANSWERS, JSON.stringify(next)));
    },
    announce: (kept) => channel?.postMessage(kept),
    listen(heard) {
      channel?.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
        const checked = checkKeptShop(data);
        if (checked.ok) heard(checked.value);
      });
    },
  };
}

function read(name: string): unknown {
  const text = withStorage((storage) => storage.getItem(name));
  try {
    return JSON.parse(text ?? 'null') as unknown;
  } catch {
    return null;
  }
}

const readStrings = (kept: unknown): readonly string[] =>
  Array.isArray(kept) ? kept.filter((item) => typeof item === 'string') : [];

/** null where the browser has its storage switched off, or it is full. */
function withStorage<T>(task: (storage: Storage) => T): T | null {
  try {
    return task(window.localStorage);
  } catch {
    return null;
  }
}
