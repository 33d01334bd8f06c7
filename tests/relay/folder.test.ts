/** The folder of what devices share: what is in it outlives the program, and what is damaged is no more than that. */
import { existsSync, readFileSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { MOST_ROOMS, openFolder } from '../../src/scripts/relay/folder.mjs';
import { joinRoom, ownFolder, ownSite, ROOM, serveOn, until, untilAllHave } from './devices.ts';

const site = ownSite();
const folders = [site];
afterEach(() => folders.splice(1).forEach(({ takeAway }) => takeAway()));

/** A folder that is not there yet. */
function newFolder(): string {
  const above = ownFolder();
  folders.push(above);
  return join(above.path, 'a', 'shared');
}

function documentWith(record: Readonly<Record<string, unknown>>): Uint8Array {
  const doc = new Y.Doc();
  for (const [name, value] of Object.entries(record)) doc.getMap('job').set(name, value);
  return Y.encodeStateAsUpdate(doc);
}

const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);

describe('the folder', () => {
  it('is for its owner alone, and so is all in it', () => {
    const path = newFolder();
    const folder = openFolder(path);
    folder.ofRoom(ROOM).write(documentWith({ a: 1 }));
    if (process.platform === 'win32') return; // no such modes there
    expect([modeOf(path), modeOf(join(path, 'secret')), modeOf(join(path, `${ROOM}.yjs`))]).toEqual([
      '700',
      '600',
      '600',
    ]);
  });

  it('keeps the secret, and says where it cannot be read', () => {
    const path = newFolder();
    const first = openFolder(path).secret();
    expect(openFolder(path).secret()).toBe(first);
    writeFileSync(join(path, 'secret'), 'hello\n');
    const said: string[] = [];
    const second = openFolder(path, (sentence) => said.push(sentence)).secret();
    expect(second).toMatch(/^[\w-]{22}$/u);
    expect(second).not.toBe(first);
    expect(said).toEqual([`${join(path, 'secret')} holds no secret, so a new one was made: devices join again.`]);
  });

  it('has what Yjs itself reads, and takes away what was being written when the program was ended', () => {
    const path = newFolder();
    const state = documentWith({ a: 1 });
    openFolder(path).ofRoom(ROOM).write(state);
    const doc = new Y.Doc();
    Y.applyUpdate(doc, readFileSync(join(path, `${ROOM}.yjs`)));
    expect(doc.getMap('job').toJSON()).toEqual({ a: 1 });
    writeFileSync(join(path, `${ROOM}.yjs.77.tmp`), state.slice(0, 5));
    expect(openFolder(path).ofRoom(ROOM).read()).toEqual(state);
    expect(readdirSync(path).toSorted()).toEqual([`${ROOM}.yjs`, 'secret']);
  });

  it('says that somebody else has written a room, once', () => {
    const path = newFolder();
    const [mine, others] = [openFolder(path).ofRoom(ROOM), openFolder(path).ofRoom(ROOM)];
    mine.write(documentWith({ a: 1 }));
    expect(mine.changed()).toBeUndefined();
    const state = documentWith({ b: 2 });
    others.write(state);
    expect(mine.changed()).toEqual(state);
    expect(mine.changed()).toBeUndefined();
  });
});

describe('a damaged room', () => {
  const damages: Readonly<Record<string, (bytes: Buffer) => Buffer>> = {
    empty: () => Buffer.alloc(0),
    'cut short': (bytes) => bytes.subarray(0, bytes.length - 40),
    'one bit over': (bytes) => Buffer.from(bytes.map((byte, at) => (at === 20 ? byte ^ 1 : byte))),
    'longer than it was': (bytes) => Buffer.concat([bytes, Buffer.from('more')]),
    'of another program': () => Buffer.from('{"not":"a document"}'.repeat(9)),
  };

  it.each(Object.entries(damages))(
    '(%s) is set aside with words, and a device that has the job brings it again',
    async (_, damage) => {
      const path = newFolder();
      openFolder(path)
        .ofRoom(ROOM)
        .write(documentWith({ name: 'rally car' }));
      const file = join(path, `${ROOM}.yjs`);
      const broken = damage(readFileSync(file));
      writeFileSync(file, broken);
      const said: string[] = [];
      const served = await serveOn(site.path, path, { say: (sentence) => said.push(sentence) });
      const desk = joinRoom(`ws://localhost:${served.port}`, served.secret());
      Y.applyUpdate(desk.doc, documentWith({ name: 'rally car' }));
      const phone = joinRoom(`ws://localhost:${served.port}`, served.secret());
      await untilAllHave([desk, phone], { name: 'rally car' });
      expect(said).toEqual([
        `${file} is damaged. It was set aside as ${ROOM}.yjs.damaged; devices that have the job bring it again.`,
      ]);
      expect(readFileSync(`${file}.damaged`)).toEqual(broken);
      served.close();
      expect(existsSync(file)).toBe(true);
      for (const { provider } of [desk, phone]) provider.destroy();
    },
  );
});

describe('of many rooms', () => {
  it('the longest unused go, one that is open never', async () => {
    const path = newFolder();
    const folder = openFolder(path);
    const name = (at: number) => `room${String(at).padStart(16, '0')}`;
    for (let at = 0; at < MOST_ROOMS; at++) {
      folder.ofRoom(name(at)).write(documentWith({ at }));
      utimesSync(join(path, `${name(at)}.yjs`), 1000 + at, 1000 + at);
    }
    const served = await serveOn(site.path, path);
    const origin = `ws://localhost:${served.port}`;
    const oldest = joinRoom(origin, served.secret(), name(0)); // reading is use
    await untilAllHave([oldest], { at: 0 });
    const another = joinRoom(origin, served.secret(), ROOM);
    another.job.set('new', true);
    await until(() => existsSync(join(path, `${ROOM}.yjs`)));
    const rooms = () => readdirSync(path).filter((file) => file.endsWith('.yjs'));
    await until(() => rooms().length === MOST_ROOMS);
    expect(rooms()).toContain(`${name(0)}.yjs`);
    expect(rooms()).not.toContain(`${name(1)}.yjs`);
    expect(rooms()).toContain(`${name(2)}.yjs`);
    for (const { provider } of [oldest, another]) provider.destroy();
    served.close();
  });
});
