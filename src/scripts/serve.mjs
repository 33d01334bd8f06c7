/**
 * Serves the built program, on this machine only unless asked otherwise: static files, the strict policy as a header, names with a hash in
 * them kept by the browser for good, all others asked for anew each time.
 */
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { pipeline } from 'node:stream';
import { headerPolicy, policyOf } from './policy.mjs';

/** @type {Record<string, string>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

/**
 * The file that a request names, its path within the folder and its size in bytes, or undefined: none there, or outside the folder.
 *
 * @param {string} folder
 * @param {string} url
 */
function fileFor(folder, url) {
  try {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    const entry = statSync(file);
    return file.startsWith(folder + sep) && entry.isFile() ? { path, file, size: entry.size } : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The headers that every answer has.
 *
 * @param {import('node:http').ServerResponse} response
 * @param {string} policy
 */
export function guard(response, policy) {
  response.setHeader('Content-Security-Policy', policy);
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
}

/** @param {import('node:http').ServerResponse} response */
export function notFound(response) {
  guard(response, headerPolicy);
  response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n');
}

/**
 * What answers requests for the files of a folder.
 *
 * @param {string} folder
 * @returns {(request: import('node:http').IncomingMessage, response: import('node:http').ServerResponse) => void}
 */
export const staticFiles = (folder) => (request, response) => {
  const found = fileFor(folder, request.url ?? '/');
  guard(response, found ? policyOf(found.path) : headerPolicy);
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  if (!found) {
    notFound(response);
    return;
  }
  const { file, size } = found;
  const hashed = file.startsWith(join(folder, 'assets') + sep);
  response.writeHead(200, {
    'Content-Type': types[extname(file)] ?? 'application/octet-stream',
    'Content-Length': size,
    'Cache-Control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
  });
  if (request.method === 'HEAD') response.end();
  else pipeline(createReadStream(file), response, () => {}); // a reader that goes away is no trouble of ours
};

/**
 * Rejects with the system's error (EADDRINUSE when the port is taken).
 *
 * @template {import('node:net').Server} S
 * @param {S} server
 * @param {number} port 0 lets the system choose a free one
 * @param {string} host
 * @returns {Promise<S>} once it listens
 */
export const listening = (server, port, host) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => resolve(server));
  });

/**
 * Starts to serve to this machine alone; answers the server once it listens. Rejects as `listening` does.
 *
 * @param {string} folder
 * @param {number} port
 */
export const serve = (folder, port) => listening(createServer(staticFiles(folder)), port, '127.0.0.1');

/**
 * @param {import('node:net').Server} server one that listens
 * @returns {number} its port
 */
export function portOf(server) {
  return /** @type {import('node:net').AddressInfo} */ (server.address()).port;
}
