/** What the relay turns away, and that it lives on, has told nothing, and has written nothing. */
import { request } from 'node:http';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as encoding from 'lib0/encoding';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { seeded } from '../core/rehearse/draws.ts';
import { joinRoom, knock, ownFolder, ownSite, ROOM, serveOn, until, untilAllHave, type Device } from './devices.ts';

const site = ownSite();
const shared = ownFolder();
let served: Awaited<ReturnType<typeof serveOn>>;
let host: string;
let desk: Device;
let together: string;

beforeAll(async () => {
  served = await serveOn(site.path, shared.path);
  host = `localhost:${served.port}`;
  together = `ws://${host}/together`;
  desk = joinRoom(`ws://${host}`, served.secret());
  desk.job.set('name', 'rally car');
  await until(() => desk.provider.synced && readdirSync(shared.path).length === 2);
});

afterAll(() => {
  desk.provider.destroy();
  served.close();
  shared.takeAway();
  site.takeAway();
});

const own = () => ({ origin: `http://${host}` });
const protocols = () => ['cagewright', served.secret()];
const WRONG = 'AAAAAAAAAAAAAAAAAAAAAA';

/** The relay answers a device that comes now, has what it had, and the folder holds what it held. */
async function isUnhurt(): Promise<void> {
  const later = joinRoom(`ws://${host}`, served.secret());
  await untilAllHave([later, desk], { name: 'rally car' });
  later.provider.destroy();
  expect(readdirSync(shared.path).toSorted()).toEqual([`${ROOM}.yjs`, 'secret']);
}

describe('before the upgrade', () => {
  it.each([
    ['no room', '/together'],
    ['a room of no name', '/together/'],
    ['a name too short', '/together/abc'],
    ['a name too long', `/together/${'a'.repeat(41)}`],
    ['capitals', `/together/${'A'.repeat(20)}`],
    ['a path behind the room', `/together/${ROOM}/secret`],
    ['another path', `/${ROOM}`],
    ['up', '/together/../../etc/aaaaaaaaaaaaaaaaaaaa'],
    ['up within the room', `/together/..%2f..%2f${ROOM}`],
    ['up, encoded', `/together/%2e%2e/%2e%2e/${ROOM}`],
    ['back strokes', `/together/..\\..\\${ROOM}`],
    ['a nought', `/together/${ROOM}%00`],
    ['a whole address', `http://elsewhere.example/together/${ROOM}`],
  ])('%s is not found', async (_, path) => {
    expect(await upgradeTo(path)).toBe(404);
    await isUnhurt();
  });

  it('no secret is not let in, one in the wrong place neither', async () => {
    expect(await knock(`${together}/${ROOM}`, [], own()).ended).toBe(401);
    expect(await knock(`${together}/${ROOM}`, ['cagewright'], own()).ended).toBe(401);
    expect(await knock(`${together}/${ROOM}`, [served.secret(), 'cagewright'], own()).ended).toBe(401);
    expect(await knock(`${together}/${ROOM}?secret=${served.secret()}`, [], own()).ended).toBe(401);
    await isUnhurt();
  });

  it.each<[string, Record<string, string>]>([
    ['another site', { origin: 'https://elsewhere.example' }],
    ['the same machine by another port', { origin: 'http://localhost:1' }],
    ['a longer name', { origin: 'http://localhost.elsewhere.example' }],
    ['no address', { origin: 'null' }],
    ['none', {}],
  ])('an origin that is %s is foreign, with the secret too', async (_, headers) => {
    expect(await knock(`${together}/${ROOM}`, protocols(), headers).ended).toBe(403);
    await isUnhurt();
  });

  it('more than 32 connections are too many, and make room when they go', async () => {
    const many = Array.from({ length: 200 }, () => knock(`${together}/${ROOM}`, protocols(), own()));
    const opened = await Promise.all(many.map((each) => each.opened));
    expect(opened.filter(Boolean)).toHaveLength(31); // and the desk
    const statuses = await Promise.all(many.filter((_, at) => !opened[at]).map(({ ended }) => ended));
    expect(new Set(statuses)).toEqual(new Set([503]));
    for (const { socket } of many) socket.terminate();
    await isUnhurt();
  });
});

/** The status of an upgrade to a path as it is, which a client library would tidy first. */
const upgradeTo = (path: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const headers = {
      ...own(),
      connection: 'Upgrade',
      upgrade: 'websocket',
      'sec-websocket-version': '13',
      'sec-websocket-key': 'AAAAAAAAAAAAAAAAAAAAAA==',
      'sec-websocket-protocol': protocols().join(', '),
    };
    const sent = request({ port: served.port, path, headers });
    sent.on('response', (response) => resolve(response.resume().statusCode ?? 0));
    sent.on('upgrade', (_, socket) => resolve((socket.destroy(), 101)));
    sent.on('error', reject).end();
  });

describe('a wrong secret', () => {
  it.each([
    ['another', () => WRONG],
    ['a short one', () => 'A'],
    ['a long one', () => 'A'.repeat(4000)],
    ['one with a letter changed', () => (served.secret().startsWith('B') ? 'C' : 'B') + served.secret().slice(1)],
  ])('(%s) is closed with 4401: nothing is sent, nothing read, no room made', async (_, secret) => {
    const room = 'b'.repeat(20);
    const stranger = knock(`${together}/${room}`, ['cagewright', secret()], own());
    stranger.socket.on('open', () => stranger.socket.send(updateOf({ hacked: true })));
    expect(await stranger.ended).toBe(4401);
    expect(stranger.got).toEqual([]);
    expect(stranger.socket.protocol).toBe('cagewright');
    await isUnhurt();
  });

  it('makes the provider stop', async () => {
    const phone = joinRoom(`ws://${host}`, WRONG);
    phone.job.set('hacked', true);
    await new Promise((resolve) => phone.provider.on('closed', resolve));
    expect(phone.provider.shouldConnect).toBe(false);
    expect(phone.job.toJSON()).toEqual({ hacked: true });
    phone.provider.destroy();
    await isUnhurt();
  });
});

/** A message with an update of a document of its own. */
function updateOf(record: Readonly<Record<string, unknown>>): Uint8Array {
  const doc = new Y.Doc();
  for (const [name, value] of Object.entries(record)) doc.getMap('job').set(name, value);
  return messageOf(0, 2, Y.encodeStateAsUpdate(doc));
}

function messageOf(type: number, step: number, content: Uint8Array): Uint8Array {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  if (type === 0) encoding.writeVarUint(encoder, step);
  encoding.writeVarUint8Array(encoder, content);
  return encoding.toUint8Array(encoder);
}

describe('with the secret', () => {
  it('a message of 100 MB is closed with 1009', async () => {
    const device = knock(`${together}/${ROOM}`, protocols(), own());
    await device.opened;
    device.socket.send(new Uint8Array(100 * 2 ** 20), () => {});
    expect(await device.ended).toBe(1009);
    await isUnhurt();
  });

  it('a device that says too much of itself is closed with 4413', async () => {
    const device = knock(`${together}/${ROOM}`, protocols(), own());
    await device.opened;
    const state = JSON.stringify({ name: 'x'.repeat(70_000) });
    const said = encoding.createEncoder();
    for (const number of [1, 7, 1]) encoding.writeVarUint(said, number);
    encoding.writeVarString(said, state);
    device.socket.send(messageOf(1, 0, encoding.toUint8Array(said)));
    expect(await device.ended).toBe(4413);
    await isUnhurt();
  });

  it('a device that does not answer whether it lives is ended, one that does stays', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    const at = `${together}/${ROOM}`;
    const dead = new WebSocket(at, protocols(), { headers: own(), autoPong: false });
    const alive = new WebSocket(at, protocols(), { headers: own() });
    const once = (socket: WebSocket, event: 'open' | 'ping') => new Promise((resolve) => socket.once(event, resolve));
    await Promise.all([once(dead, 'open'), once(alive, 'open')]);
    const ended = new Promise((resolve) => dead.once('close', resolve));
    const asked = Promise.all([once(dead, 'ping'), once(alive, 'ping')]);
    vi.advanceTimersByTime(30_000);
    await asked;
    // What it says next comes behind its answer.
    alive.send(Uint8Array.of(3));
    await new Promise((resolve) => alive.once('message', resolve));
    vi.advanceTimersByTime(30_000);
    expect(await ended).toBe(1006);
    expect(alive.readyState).toBe(WebSocket.OPEN);
    alive.terminate();
    vi.useRealTimers();
    await isUnhurt();
  });

  it('text is not spoken: 1003', async () => {
    const device = knock(`${together}/${ROOM}`, protocols(), own());
    await device.opened;
    device.socket.send('hello');
    expect(await device.ended).toBe(1003);
    await isUnhurt();
  });
});

describe('garbage', () => {
  const chance = seeded(20_261_201);
  const integer = (least: number, most: number) => least + Math.floor(chance() * (most - least + 1));
  const pick = <T>(of: readonly T[]): T => of[integer(0, of.length - 1)]!;
  const bytes = (length: number) => Uint8Array.from({ length }, () => integer(0, 255));
  const whole = updateOf({ name: 'another', list: [1, 'two', { three: 3 }], text: 'x'.repeat(300) }).slice(2);
  const cut = () => whole.slice(0, integer(1, whole.length - 1));

  /** Each a message that is not one. */
  const kinds: Readonly<Record<string, () => Uint8Array>> = {
    nothing: () => new Uint8Array(),
    'no known type': () => Uint8Array.of(pick([2, 4, 5, 9, 100, 127]), ...bytes(integer(0, 50))),
    'a type beyond all numbers': () => Uint8Array.of(...Array.from({ length: 12 }, () => 255), ...bytes(9)),
    'no known step': () => Uint8Array.of(0, pick([3, 4, 77, 127]), ...bytes(integer(0, 50))),
    'a step alone': () => Uint8Array.of(0, pick([0, 1, 2])),
    'a length beyond the end': () => Uint8Array.of(0, pick([0, 1, 2]), 255, 255, 127, ...bytes(integer(0, 60))),
    'an update that is cut short': () => Uint8Array.of(0, pick([1, 2]), ...cut()),
    'an update that is cut short within': () =>
      messageOf(0, pick([1, 2]), whole.slice(2, integer(4, whole.length - 1))),
    'two messages in one': () => Uint8Array.of(...messageOf(0, 2, Uint8Array.of(0, 0)), ...bytes(integer(1, 30))),
    'many structs that are not there': () => messageOf(0, 2, Uint8Array.of(1, 255, 255, 255, 255, 7, 1, 0)),
    'a state vector that is cut short': () => messageOf(0, 0, Uint8Array.of(integer(3, 100), 1, 1)),
    'devices that are not there': () => messageOf(1, 0, Uint8Array.of(integer(2, 60), 1, 1, 2, 123, 125)),
    'a device whose state is no JSON': () => messageOf(1, 0, Uint8Array.of(1, 7, 1, 3, 123, 123, 123)),
    'a device whose state is a number': () => messageOf(1, 0, Uint8Array.of(1, 7, 1, 1, 53)),
    'many devices': () =>
      messageOf(1, 0, Uint8Array.of(100, ...Array.from({ length: 100 }, () => [1, 1, 2, 123, 125]).flat())),
  };

  it.each(Object.entries(kinds))('(%s) closes its connection and reaches nobody', async (_, make) => {
    for (let run = 0; run < 8; run++) {
      const device = knock(`${together}/${ROOM}`, protocols(), own());
      await device.opened;
      device.socket.send(make());
      device.socket.send(updateOf({ 'after it': true })); // what comes behind it does not count either
      expect([1003, 1007]).toContain(await device.ended);
    }
    await isUnhurt();
  });

  it('bytes by chance leave the relay alive and the job as it was', async () => {
    for (let run = 0; run < 150; run++) {
      const device = knock(`${together}/${ROOM}`, protocols(), own());
      await device.opened;
      for (let message = 0; message < 5; message++) {
        const update = Uint8Array.from(whole.slice(2));
        for (let hit = integer(1, 6); hit > 0; hit--) update[integer(0, update.length - 1)] = integer(0, 255);
        const isPlain = integer(0, 1) === 0;
        device.socket.send(isPlain ? bytes(integer(1, 200)) : messageOf(1, 0, update));
        device.socket.send(messageOf(0, pick([0, 1, 2]), bytes(integer(0, 60))));
      }
      device.socket.close();
      await device.ended;
    }
    await isUnhurt();
  });

  /** An update that reads well and yet does not go into a document: one of many kinds of content, a few of its bytes hit. */
  function stumbling(): Uint8Array {
    const rich = new Y.Doc();
    const map = rich.getMap('rich');
    map.set('gone', 1);
    map.delete('gone');
    for (const [name, type] of Object.entries({ list: new Y.Array(), text: new Y.Text('hello'), map: new Y.Map() })) {
      map.set(name, type);
    }
    (map.get('list') as Y.Array<unknown>).insert(0, [1, 'two', { three: 3 }]);
    (map.get('text') as Y.Text).format(0, 2, { bold: true });
    (map.get('map') as Y.Map<unknown>).set('k', new Uint8Array(3));
    const update = Y.encodeStateAsUpdate(rich);
    for (let tries = 0; tries < 20_000; tries++) {
      const hit = Uint8Array.from(update);
      for (let hits = integer(1, 4); hits > 0; hits--) hit[integer(0, hit.length - 1)] = integer(0, 255);
      if (does(() => Y.decodeUpdate(hit)) && !does(() => Y.applyUpdate(new Y.Doc(), hit))) return hit;
    }
    throw new Error('none found');
  }

  function does(what: () => void): boolean {
    try {
      what();
      return true;
    } catch {
      return false;
    }
  }

  it('that Yjs stumbles over half way leaves nothing behind', async () => {
    for (let run = 0; run < 10; run++) {
      const device = knock(`${together}/${ROOM}`, protocols(), own());
      await device.opened;
      device.socket.send(messageOf(0, 2, stumbling()));
      expect(await device.ended).toBe(1007);
    }
    await isUnhurt();
  });

  it('of an update whose bytes were hit never ends the relay', async () => {
    const room = 'd'.repeat(20);
    const witness = joinRoom(`ws://${host}`, served.secret(), room);
    await until(() => witness.provider.synced);
    for (let run = 0; run < 300; run++) {
      const update = Uint8Array.from(whole.slice(2));
      for (let hit = integer(1, 4); hit > 0; hit--) update[integer(0, update.length - 1)] = integer(0, 255);
      const device = knock(`${together}/${room}`, protocols(), own());
      await device.opened;
      device.socket.send(messageOf(0, 2, update));
      device.socket.close();
      await device.ended;
    }
    witness.job.set('still', 'here');
    const later = joinRoom(`ws://${host}`, served.secret(), room);
    await until(() => later.job.get('still') === 'here');
    for (const { provider } of [later, witness]) provider.destroy();
  });
});

describe('a room', () => {
  it('whose document would be beyond 64 MB is closed with 4413, and what there was stays', async () => {
    const room = 'c'.repeat(20);
    const device = knock(`${together}/${room}`, protocols(), own());
    await device.opened;
    for (let part = 0; part < 5; part++)
      device.socket.send(updateOf({ [`part ${part}`]: new Uint8Array(15 * 2 ** 20) }));
    expect(await device.ended).toBe(4413);
    const later = joinRoom(`ws://${host}`, served.secret(), room);
    await until(() => later.provider.synced);
    expect([...later.job.keys()].toSorted()).toEqual([0, 1, 2, 3].map((part) => `part ${part}`));
    later.provider.destroy();
  });
});

it('the secret is what it was', () => {
  expect(readFileSync(join(shared.path, 'secret'), 'utf8')).toBe(`${served.secret()}\n`);
});
