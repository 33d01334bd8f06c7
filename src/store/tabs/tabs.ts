/** How the tabs of one browser learn what the others saved. Without a channel they find out from each other's stamps when they save. */
import type { Stamp } from '../storage/persistence.ts';
import { isStamp } from '../storage/records.ts';
import { openChannel } from './channel.ts';

export interface Tabs {
  announce(slot: string, stamp: Stamp): void;
  listen(heard: (slot: string, stamp: Stamp) => void): void;
}

export function openTabs(): Tabs {
  const channel = openChannel('cagewright');
  return {
    announce: (slot, stamp) => channel?.postMessage({ slot, stamp }),
    listen(heard) {
      channel?.addEventListener('message', ({ data }: MessageEvent<{ slot: string; stamp: Stamp } | null>) => {
        if (isStamp(data?.stamp)) heard(data.slot, data.stamp);
      });
    },
  };
}
