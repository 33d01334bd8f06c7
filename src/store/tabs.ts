/** The channel between the tabs of one browser. Without one they find out from each other's stamps when they save. */
import type { Stamp, Tabs } from './persistence.ts';
import { isStamp } from './records.ts';

export function openTabs(): Tabs {
  const channel = openChannel();
  return {
    announce: (slot, stamp) => channel?.postMessage({ slot, stamp }),
    listen(heard) {
      channel?.addEventListener('message', ({ data }: MessageEvent<{ slot: string; stamp: Stamp } | null>) => {
        if (isStamp(data?.stamp)) heard(data.slot, data.stamp);
      });
    },
  };
}

function openChannel(): BroadcastChannel | null {
  try {
    return new BroadcastChannel('cagewright');
  } catch {
    return null;
  }
}
