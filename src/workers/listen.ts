/** A worker's whole life: it is sent one order, fills it, and is ended by the page. */
import { fill } from './fill.ts';
import type { Order } from './messages.ts';
import { supplies } from './supplies.ts';

export const listen = (): void =>
  addEventListener('message', ({ data }: MessageEvent<Order>) => {
    void fill(data, supplies, (answer) => postMessage(answer));
  });
