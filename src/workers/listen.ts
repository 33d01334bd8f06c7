/** A worker's whole life: it is sent one request, fills it, and is ended by the page. */
import { fill, type Make } from './fill.ts';
import type { Request } from './messages.ts';

export const listen = (make: Make): void =>
  addEventListener('message', ({ data }: MessageEvent<Request>) => {
    void fill(data, make, (answer) => postMessage(answer));
  });
