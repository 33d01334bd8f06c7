/**
 * Serves the built program on this machine only: static files, the strict policy as a header, names with a hash in
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
 * Starts to serve; answers the server once it listens. Rejects with the system's error (EADDRINUSE when the port is
 * taken).
 *
 * @param {string} folder
 * @param {number} port 0 lets the system choose a free one
 * @returns {Promise<import('node:http').Server>}
 */
export function serve(folder, port) {
  const server = createServer((request, response) => {
    const found = fileFor(folder, request.url ?? '/');
    response.setHeader('Content-Security-Policy', found ? policyOf(found.path) : headerPolicy);
    response.setHeader('X-Content-Type-Options', 'nosniff');
    response.setHeader('Referrer-Policy', 'no-referrer');
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    if (!found) {
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n');
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
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}

/**
 * @param {import('node:http').Server} server one that listens
 * @returns {number} its port
 */
export function portOf(server) {
  return /** @type {import('node:net').AddressInfo} */ (server.address()).port;
}
