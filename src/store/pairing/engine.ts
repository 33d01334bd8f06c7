/**
 * What carries entries between devices: Yjs, with its own protocol to the shop's relay and its own place in the browser. Each entry is one item of one flat map,
 * under a key that no other device writes, so nothing is left to the engine to decide but to bring everything everywhere.
 */
import { IndexeddbPersistence } from 'y-indexeddb';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { carried, entryOf, type Entry } from '../../core/sharing/entries.ts';
import type { Came, Device, Standing } from './types.ts';

export interface EngineOptions {
  /** Of the relay: ws://192.168.1.20:4680/together. */
  readonly url: string;
  readonly room: string;
  readonly secret: string;
  readonly device: string;
  readonly name: string;
  /** New from other devices, or kept here from before. */
  heard(entries: readonly Entry[]): void;
  /** What others did, oldest first, since the last time. */
  came(done: readonly Came[]): void;
  devices(devices: readonly Device[]): void;
  /** Another device has this one's name already, so it goes by another. */
  named(name: string): void;
  /** 'out': the secret is not let in any more, and nothing is tried until `letIn`. */
  stands(standing: Exclude<Standing, 'off' | 'joining'>): void;
}

export interface Engine {
  /** Resolves once what was kept in this browser has been heard. */
  readonly kept: Promise<void>;
  write(entries: readonly Entry[], label: string): void;
  rename(name: string): void;
  /** Tries again with another secret. */
  letIn(secret: string): void;
  nameOf(device: string): string;
  /** `isForGood`: what this browser keeps of it goes too. */
  close(isForGood: boolean): void;
}

/** What was done last: so many are carried, for those who were away. */
const MOST_DONE = 60;

export function createEngine(options: EngineOptions): Engine {
  const { url, room, device } = options;
  let { name } = options;
  const doc = new Y.Doc();
  const cells = doc.getMap<unknown>('cells');
  const names = doc.getMap<string>('names');
  const done = doc.getArray<{ readonly by: string; readonly label: string }>('done');
  const shelf = new IndexeddbPersistence(`cagewright-shared-${room}`, doc);
  const provider = new WebsocketProvider(url, room, doc, {
    protocols: ['cagewright', options.secret],
    disableBc: true,
  });
  const { awareness } = provider;

  const nameOf = (id: string): string => names.get(id) ?? awarenessName(id) ?? 'Another device';
  const awarenessName = (id: string): string | undefined => present().find((each) => each.id === id)?.name;
  const present = (): readonly { readonly id: string; readonly name: string }[] =>
    [...awareness.getStates().values()].flatMap(({ device: each }) => (isDevice(each) ? [each] : []));

  let heard: Entry[] = [];
  cells.observe((event, { origin }) => {
    if (origin !== SELF) heard.push(...[...event.keysChanged].flatMap((key) => entryOf(key, cells.get(key)) ?? []));
  });
  done.observe((event, { origin }) => {
    if (origin === SELF || origin === shelf) return;
    const added = event.changes.delta.flatMap(({ insert }) => (Array.isArray(insert) ? insert : []));
    options.came(added.filter(isDone).map(({ by, label }) => ({ by: nameOf(by), label })));
  });
  // What was done is known before what came of it.
  doc.on('afterTransaction', () => {
    const entries = heard;
    heard = [];
    if (entries.length > 0) options.heard(entries);
  });
  function showDevices(): void {
    const others = present().filter(({ id }) => id !== device);
    // Of two of one name the one that is listed behind the other takes another.
    if (others.some((each) => each.name === name && each.id < device)) {
      const taken = new Set(others.map((each) => each.name));
      let nth = 2;
      while (taken.has(`${name} ${nth}`)) nth += 1;
      name = `${name} ${nth}`;
      options.named(name);
      introduce();
      return; // which shows them
    }
    const named = others.map((each) => ({ name: each.name, isSelf: false }));
    options.devices([{ name, isSelf: true }, ...named.toSorted((a, b) => a.name.localeCompare(b.name))]);
  }
  awareness.on('change', showDevices);
  const introduce = (): void => awareness.setLocalStateField('device', { id: device, name });
  introduce();
  provider.on('sync', (isSynced: boolean) => {
    if (!isSynced) return;
    options.stands('joined');
    showDevices();
  });
  provider.on('status', ({ status }) => {
    if (status === 'disconnected') options.stands('away');
    if (status === 'connected') introduce(); // under the clock of before the break the others would take it for old
  });
  provider.on('connection-close', (event) => isPassing(event) && options.stands('away'));
  /** What it was ended for: it is not tried again until `letIn`. */
  let ended: Standing | null = null;
  provider.on('closed', ({ code }) => {
    ended = code === NOT_LET_IN ? 'out' : 'full';
    options.stands(ended);
  });

  // The browser knows of a network that is gone long before the connection does; this machine is there without one.
  const isHere = new URL(url).hostname === 'localhost';
  const goes = (): void => provider.disconnect();
  const comes = (): void => void (ended ?? provider.connect());
  if (!isHere) {
    addEventListener('offline', goes);
    addEventListener('online', comes);
  }

  return {
    // A browser that keeps nothing is no reason to wait: what the relay has will do.
    kept: Promise.race([
      shelf.whenSynced,
      shelf._db.then(
        () => NEVER,
        () => undefined,
      ),
    ]).then(() => undefined),
    write(entries, label) {
      doc.transact(() => {
        for (const [key, written] of entries.map(carried)) cells.set(key, written);
        if (names.get(device) !== name) names.set(device, name);
        if (label === '') return;
        done.push([{ by: device, label }]);
        if (done.length > MOST_DONE) done.delete(0, done.length - MOST_DONE);
      }, SELF);
    },
    rename(next) {
      name = next;
      introduce();
    },
    letIn(secret) {
      ended = null;
      provider.protocols = ['cagewright', secret];
      provider.disconnect();
      provider.connect();
    },
    nameOf,
    close(isForGood) {
      removeEventListener('offline', goes);
      removeEventListener('online', comes);
      provider.destroy();
      void (isForGood ? shelf.clearData() : shelf.destroy());
      doc.destroy();
    },
  };
}

const SELF = 'self';
const NEVER = new Promise<never>(() => {});

/** From 4400 on the relay has said that it is of no use to try again (y-websocket). */
const isPassing = (event: CloseEvent | null): boolean => event === null || event.code < 4400 || event.code >= 4500;

/** The relay's word for a secret that is not let in (any more). */
const NOT_LET_IN = 4401;

const isDevice = (value: unknown): value is { readonly id: string; readonly name: string } =>
  typeof value === 'object' &&
  value !== null &&
  typeof (value as { id?: unknown }).id === 'string' &&
  typeof (value as { name?: unknown }).name === 'string';

const isDone = (value: unknown): value is { readonly by: string; readonly label: string } =>
  typeof value === 'object' &&
  value !== null &&
  typeof (value as { by?: unknown }).by === 'string' &&
  typeof (value as { label?: unknown }).label === 'string';
