/** Devices for the tests of the relay: a server on a free port, and providers as the page has them. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { serveOnNetwork } from '../../src/scripts/network/serve.mjs';
import { openFolder } from '../../src/scripts/relay/folder.mjs';

export const ROOM = 'k3f9x0a7b2c4d6e8';

const inCertificate = (name: string) => join(import.meta.dirname, 'certificate', name);

/** The files of the tests' certificate for localhost, its key, and another's. */
export const PEM = {
  cert: inCertificate('cert.pem'),
  key: inCertificate('key.pem'),
  otherKey: inCertificate('other-key.pem'),
};

/** What they hold. */
export const PAIR = { cert: readFileSync(PEM.cert), key: readFileSync(PEM.key) };

/** A folder of its own, and what takes it away. */
export function ownFolder(): { path: string; takeAway: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'cagewright-'));
  return { path, takeAway: () => rmSync(path, { recursive: true, force: true }) };
}

/** A page to serve where the page itself does not matter. */
export function ownSite(): ReturnType<typeof ownFolder> {
  const site = ownFolder();
  writeFileSync(join(site.path, 'index.html'), '<!doctype html><title>site</title>');
  return site;
}

/** A server on a folder, in this process. */
export async function serveOn(
  site: string,
  shared: string,
  { port = 0, pair, say = () => {} }: ServeOptions = {},
): Promise<Served> {
  const folder = openFolder(shared, say);
  const served = await serveOnNetwork(site, port, folder, pair);
  return { ...served, secret: folder.secret };
}

interface ServeOptions {
  readonly port?: number;
  readonly pair?: typeof PAIR;
  readonly say?: (sentence: string) => void;
}

type Served = Awaited<ReturnType<typeof serveOnNetwork>> & { readonly secret: () => string };

/** Says the origin of the server that it speaks to, as a page does, and trusts the tests' certificate. */
export class PageSocket extends WebSocket {
  constructor(url: string | URL, protocols: string[]) {
    const { host, protocol } = new URL(url);
    const origin = `${protocol === 'wss:' ? 'https' : 'http'}://${host}`;
    super(url, protocols, { origin, ca: PAIR.cert });
  }
}

export interface Device {
  readonly doc: Y.Doc;
  readonly job: Y.Map<unknown>;
  readonly provider: WebsocketProvider;
}

/** A device that joins a room. */
export function joinRoom(origin: string, secret: string, room = ROOM): Device {
  const doc = new Y.Doc();
  const provider = new WebsocketProvider(`${origin}/together`, room, doc, {
    protocols: ['cagewright', secret],
    WebSocketPolyfill: PageSocket as unknown as typeof globalThis.WebSocket,
    disableBc: true, // else devices of one process speak to each other past the relay
  });
  return { doc, job: doc.getMap('job'), provider };
}

/** Waits for what must come; the test's own time is the bound. */
export async function until(isSo: () => boolean): Promise<void> {
  while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 10));
}

/** Waits until all have the same, and that. */
export const untilAllHave = (devices: readonly Device[], expected: Readonly<Record<string, unknown>>): Promise<void> =>
  until(() => devices.every(({ job }) => JSON.stringify(sorted(job.toJSON())) === JSON.stringify(sorted(expected))));

const sorted = (record: Readonly<Record<string, unknown>>) =>
  Object.entries(record).toSorted(([a], [b]) => a.localeCompare(b));

export interface Knock {
  readonly socket: WebSocket;
  readonly got: Buffer[];
  /** It was let through the upgrade. */
  readonly opened: Promise<boolean>;
  /** The close code, or the HTTP status that refused the upgrade. */
  readonly ended: Promise<number>;
}

/** A connection without a provider: what it gets, and how it ends. */
export function knock(url: string, protocols: string[], headers: Readonly<Record<string, string>> = {}): Knock {
  const socket = new WebSocket(url, protocols, { headers, ca: PAIR.cert });
  const got: Buffer[] = [];
  socket.on('message', (data: Buffer) => got.push(data));
  const ended = new Promise<number>((resolve) => {
    socket.on('unexpected-response', (request, response) => {
      resolve(response.statusCode ?? 0);
      request.destroy();
    });
    socket.on('close', resolve);
    socket.on('error', () => {}); // how it ends says its code
  });
  const opened = new Promise<boolean>((resolve) => {
    socket.on('open', () => resolve(true));
    void ended.then(() => resolve(false));
  });
  return { socket, got, opened, ended };
}
