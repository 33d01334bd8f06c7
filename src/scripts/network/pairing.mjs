/**
 * /pairing tells the page on this machine, and nobody else, what another device needs to join. That it is asked from here is seen by
 * the connection; that no foreign page asks, by a header that only a page of our own may send; that none has given itself our address,
 * by the name that it asks for; that nobody passes it on from elsewhere, by the headers that whoever does so leaves.
 */
import { isIPv4 } from 'node:net';
import { isOwnOrigin } from '../relay/door.mjs';
import { notFound } from '../serve.mjs';

const OWN_NAMES = new Set(['localhost', '127.0.0.1', '[::1]']);
const PASSED_ON = ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'];

/** @param {import('node:net').Socket} socket */
export function isLoopback({ remoteAddress = '' }) {
  const address = remoteAddress.replace(/^::ffff:/, '');
  return address === '::1' || (isIPv4(address) && address.startsWith('127.'));
}

/** @param {import('node:http').IncomingMessage} request */
function isFromThisPage(request) {
  const { headers, socket, method } = request;
  if (!isLoopback(socket) || headers['x-cagewright'] !== '1') return false;
  if (PASSED_ON.some((name) => name in headers)) return false;
  const scheme = 'encrypted' in socket ? 'https' : 'http';
  try {
    const asked = new URL(`${scheme}://${headers.host}`);
    const port = Number(asked.port || (scheme === 'https' ? 443 : 80));
    if (!OWN_NAMES.has(asked.hostname) || port !== socket.localPort) return false;
  } catch {
    return false;
  }
  // A page that reads from its own address says no origin.
  return headers.origin === undefined ? method === 'GET' : isOwnOrigin(request);
}

/**
 * Answers a request for /pairing; false: it is for something else.
 *
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {{ secret(): string, renewSecret(): void }} relay
 * @param {() => string[]} addresses
 */
export function answerPairing(request, response, relay, addresses) {
  if (request.url?.split('?')[0] !== '/pairing') return false;
  request.resume();
  if ((request.method !== 'GET' && request.method !== 'POST') || !isFromThisPage(request)) {
    notFound(response);
    return true;
  }
  try {
    if (request.method === 'POST') relay.renewSecret();
  } catch (error) {
    console.error(
      `No new secret: the folder cannot be written (${/** @type {NodeJS.ErrnoException} */ (error).code}).`,
    );
    response.writeHead(500, { 'Cache-Control': 'no-store' }).end();
    return true;
  }
  response
    .writeHead(200, { 'Content-Type': 'application/json; charset=utf-8', 'Cache-Control': 'no-store' })
    .end(JSON.stringify({ secret: relay.secret(), addresses: addresses() }));
  return true;
}
