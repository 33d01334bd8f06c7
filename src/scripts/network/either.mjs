/**
 * One port for http and https: the first byte of a connection tells which. So the page's own address on this machine, by which the
 * browser keeps what was made, stays what it was when the network is given https.
 */
import { createServer } from 'node:net';

/** The first byte of a TLS connection; no method of HTTP begins with it. */
const TLS_HANDSHAKE = 22;
/** ms that a connection may say nothing. */
const SILENT = 60_000;

/**
 * @param {import('node:http').Server} plain
 * @param {import('node:https').Server} secure
 */
export function either(plain, secure) {
  return createServer((socket) => {
    const end = () => socket.destroy();
    socket.on('error', end);
    socket.setTimeout(SILENT, end);
    socket.once('readable', () => {
      const first = socket.read(1);
      if (first === null) return end(); // it ended before it said anything
      socket.setTimeout(0);
      socket.off('timeout', end);
      socket.unshift(first);
      (first[0] === TLS_HANDSHAKE ? secure : plain).emit('connection', socket);
    });
  });
}
