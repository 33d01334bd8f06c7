/** A worker's whole life: it is sent one order, fills it, and is ended by the page. */
import { fill, type Make } from './fill.ts';
import type { Order } from './messages.ts';

export const listen = (make: Make): void =>
  addEventListener('message', ({ data }: MessageEvent<Order>) => {
    void fill(data, make, (answer) => postMessage(answer));
  });
