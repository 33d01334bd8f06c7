/** Serves the built program and the relay to the devices of the shop's network. */
import { createServer } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import { networkInterfaces } from 'node:os';
import { openRelay } from '../relay.mjs';
import { listening, portOf, staticFiles } from '../serve.mjs';
import { addressesOf, hostsOf } from './addresses.mjs';
import { either } from './either.mjs';
import { answerPairing, isLoopback } from './pairing.mjs';

/**
 * Starts to serve on all of this machine's addresses; answers once it listens. With a certificate the network is answered by https alone;
 * this machine itself still by http too. Rejects with the system's error (EADDRINUSE when the port is taken).
 *
 * @param {string} dist the built program
 * @param {number} port 0 lets the system choose a free one
 * @param {ReturnType<typeof import('../relay/folder.mjs').openFolder>} folder of what devices share
 * @param {{ readonly cert: Buffer, readonly key: Buffer }} [pair]
 */
export async function serveOnNetwork(dist, port, folder, pair) {
  const relay = openRelay(folder);
  const files = staticFiles(dist);
  const addresses = () => addressesOf(hostsOf(networkInterfaces()), pair ? 'https' : 'http', portOf(server));
  /** @param {import('node:net').Socket} socket */
  const isOpenToAll = (socket) => pair !== undefined && !('encrypted' in socket) && !isLoopback(socket);

  /** @type {import('node:http').RequestListener} */
  const answer = (request, response) => {
    if (isOpenToAll(request.socket)) {
      response.writeHead(308, { Location: `https://${request.headers.host}${request.url}` }).end();
    } else if (!answerPairing(request, response, relay, addresses)) files(request, response);
  };
  /** @type {(request: import('node:http').IncomingMessage, socket: import('node:stream').Duplex, head: Buffer) => void} */
  const upgrade = (request, socket, head) => {
    if (isOpenToAll(request.socket)) socket.destroy();
    else relay.upgrade(request, socket, head);
  };

  const plain = createServer(answer).on('upgrade', upgrade);
  const secure = pair && createSecureServer(pair, answer).on('upgrade', upgrade);
  const server = secure ? either(plain, secure) : plain;
  const isSixAlone = hostsOf(networkInterfaces())[0]?.startsWith('['); // it listens to both then
  await listening(server, port, isSixAlone ? '::' : '0.0.0.0');

  return {
    port: portOf(server),
    /** Where other devices reach it now. */
    addresses,
    /** Writes what devices share, and ends. */
    close() {
      relay.close();
      server.close();
      plain.closeAllConnections();
      secure?.closeAllConnections();
    },
  };
}

/**
 * Has what devices share written before the program is ended by a signal.
 *
 * @param {{ close(): void }} served
 */
export function writeBeforeTheEnd(served) {
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.once(signal, () => {
      served.close();
      process.kill(process.pid, signal); // once more, and now nobody holds it back
    });
  }
}
