/** Who may come in: what is asked of a connection before anything that it says is read. */
import { createHash, timingSafeEqual } from 'node:crypto';

const PLACE = /^\/together\/([0-9a-z]{16,40})(?:\?.*)?$/;

/** The protocol that is spoken; the secret stands behind it in the list of those asked for, where an address or a log never shows it. */
export const PROTOCOL = 'cagewright';

/**
 * Whether a request is from a page of the address that it was sent to.
 *
 * @param {import('node:http').IncomingMessage} request
 */
export function isOwnOrigin({ headers: { origin, host } }) {
  try {
    const from = new URL(origin ?? '');
    return from.origin === origin && from.host === new URL(`${from.protocol}//${host}`).host;
  } catch {
    return false;
  }
}

/** @param {string} text */
const digest = (text) => createHash('sha256').update(text).digest();

/**
 * What a connection asks for: a room, and whether with the secret; or the HTTP status that refuses it.
 *
 * @param {import('node:http').IncomingMessage} request
 * @param {string} secret
 * @returns {{ readonly room: string, readonly isLetIn: boolean } | { readonly status: 401 | 403 | 404 }}
 */
export function atTheDoor(request, secret) {
  const [, room] = PLACE.exec(request.url ?? '') ?? [];
  if (room === undefined) return { status: 404 };
  if (!isOwnOrigin(request)) return { status: 403 };
  const [protocol, shown] = (request.headers['sec-websocket-protocol'] ?? '').split(',').map((each) => each.trim());
  if (protocol !== PROTOCOL || !shown) return { status: 401 };
  return { room, isLetIn: timingSafeEqual(digest(shown), digest(secret)) };
}
