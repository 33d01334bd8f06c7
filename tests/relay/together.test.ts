/** Devices in one room: with the providers that the page has, over the relay as `npm start -- --network` opens it. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { joinRoom, ownFolder, ownSite, ROOM, serveOn, until, untilAllHave, type Device } from './devices.ts';

const atEnd: (() => void)[] = [];
afterEach(() => {
  for (const end of atEnd.splice(0).toReversed()) end();
});

/** Something that the test's end takes away. */
function used<T>(thing: T, end: (thing: T) => void): T {
  atEnd.push(() => end(thing));
  return thing;
}

const folder = (): string => used(ownFolder(), ({ takeAway }) => takeAway()).path;
const site = (): string => used(ownSite(), ({ takeAway }) => takeAway()).path;
const device = (origin: string, secret: string, room?: string): Device =>
  used(joinRoom(origin, secret, room), ({ provider }) => provider.destroy());
const serve = async (shared: string, port = 0) => {
  const served = await serveOn(site(), shared, { port });
  return used({ ...served, origin: `ws://localhost:${served.port}` }, ({ close }) => close());
};

describe('two devices', () => {
  it('become equal, whatever each had before and whoever edits, and a third that comes later gets all', async () => {
    const { origin, secret } = await serve(folder());
    const [desk, phone] = [device(origin, secret()), device(origin, secret())];
    desk.job.set('name', 'rally car');
    phone.job.set('hoop', 1200.5);
    await untilAllHave([desk, phone], { name: 'rally car', hoop: 1200.5 });
    phone.job.delete('name');
    desk.job.set('leg', [1, 2, 3]);
    await untilAllHave([desk, phone], { hoop: 1200.5, leg: [1, 2, 3] });
    const later = device(origin, secret());
    await untilAllHave([desk, phone, later], { hoop: 1200.5, leg: [1, 2, 3] });
  });

  it('in two rooms know nothing of each other', async () => {
    const { origin, secret } = await serve(folder());
    const [one, other] = [device(origin, secret()), device(origin, secret(), `${ROOM}x`)];
    one.job.set('a', 1);
    other.job.set('b', 2);
    const [witness, otherWitness] = [device(origin, secret()), device(origin, secret(), `${ROOM}x`)];
    await untilAllHave([one, witness], { a: 1 });
    await untilAllHave([other, otherWitness], { b: 2 });
  });

  it('see who is there, hear their own word back, and see who goes without a word', async () => {
    const { origin, secret } = await serve(folder());
    const [desk, phone] = [device(origin, secret()), device(origin, secret())];
    desk.provider.awareness.setLocalState({ name: 'desk' });
    phone.provider.awareness.setLocalState({ name: 'phone' });
    const names = (of: Device) =>
      [...of.provider.awareness.getStates().values()].map(({ name }) => String(name)).toSorted();
    await until(() => [desk, phone].every((each) => names(each).join() === 'desk,phone'));
    // A provider that hears nothing for 30 s, not even itself, ends its connection.
    let heard = 0;
    phone.provider.ws!.addEventListener('message', () => heard++);
    phone.provider.awareness.setLocalState({ name: 'phone' });
    await until(() => heard > 0);
    (phone.provider.ws as unknown as { terminate: () => void }).terminate();
    phone.provider.shouldConnect = false;
    await until(() => names(desk).join() === 'desk');
  });
});

describe('what was shared', () => {
  it('is there again on a new server on the same folder, without a device that has it', async () => {
    const shared = folder();
    const first = await serve(shared);
    const desk = device(first.origin, first.secret());
    desk.job.set('name', 'rally car');
    const witness = device(first.origin, first.secret());
    await untilAllHave([witness], { name: 'rally car' });
    first.close(); // at once: what was not written yet is written now
    for (const { provider } of [desk, witness]) provider.destroy();
    expect(readdirSync(shared).toSorted()).toEqual([`${ROOM}.yjs`, 'secret']);

    const second = await serve(shared);
    expect(second.secret()).toBe(first.secret());
    await untilAllHave([device(second.origin, second.secret())], { name: 'rally car' });
  });

  it('is written while changes go on', async () => {
    const shared = folder();
    const { origin, secret } = await serve(shared);
    const desk = device(origin, secret());
    let count = 0;
    await until(() => {
      desk.job.set('count', count++);
      return readdirSync(shared).includes(`${ROOM}.yjs`);
    });
  });

  it('of one folder is put together where two servers write there', async () => {
    const shared = folder();
    const [one, other] = [await serve(shared), await serve(shared)];
    const [here, there] = [device(one.origin, one.secret()), device(other.origin, other.secret())];
    here.job.set('a', 1);
    await until(() => readdirSync(shared).includes(`${ROOM}.yjs`));
    there.job.set('b', 2);
    const witness = device(other.origin, other.secret());
    await untilAllHave([there, witness], { a: 1, b: 2 }); // before it writes, it sees what lies there
    for (const { close } of [one, other]) close();
    for (const { provider } of [here, there, witness]) provider.destroy();
    const third = await serve(shared);
    await untilAllHave([device(third.origin, third.secret())], { a: 1, b: 2 });
  });
});

/** A server in a process of its own. */
async function spawned(shared: string, port: number): Promise<{ child: ChildProcess; port: number }> {
  const script = join(import.meta.dirname, 'served.mjs');
  const child = spawn(process.execPath, [script, site(), shared, String(port)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  used(child, (each) => each.kill('SIGKILL'));
  const [said] = (await once(child.stdout, 'data')) as [Buffer];
  return { child, port: Number(String(said)) };
}

describe('a server that is killed while devices edit', () => {
  it('and started again finds all of them equal, with every edit', async () => {
    const shared = folder();
    const first = await spawned(shared, 0);
    const secret = readFileSync(join(shared, 'secret'), 'utf8').trim();
    const origin = `ws://localhost:${first.port}`;
    const devices = [1, 2, 3].map(() => device(origin, secret));
    const expected: Record<string, number> = {};
    const edit = (count: number) => {
      for (const [at, { job }] of devices.entries()) job.set(`${at} ${count}`, (expected[`${at} ${count}`] = count));
    };
    let count = 0;
    await until(() => {
      edit(count++);
      return count > 40 && devices.every(({ provider }) => provider.synced);
    });
    first.child.kill('SIGKILL');
    await once(first.child, 'exit');
    for (let more = 0; more < 20; more++) edit(count++); // while nobody is there
    await spawned(shared, first.port);
    edit(count++);
    await untilAllHave(devices, expected);
    const later = device(origin, secret);
    await untilAllHave([later], expected);
  });
});

describe.skipIf(process.platform === 'win32')('a server that is ended', () => {
  it.each(['SIGTERM', 'SIGINT'] as const)('by %s writes what it has not written yet', async (signal) => {
    const shared = folder();
    const first = await spawned(shared, 0);
    const secret = readFileSync(join(shared, 'secret'), 'utf8').trim();
    const [desk, phone] = [1, 2].map(() => device(`ws://localhost:${first.port}`, secret)) as [Device, Device];
    await until(() => desk.provider.synced && phone.provider.synced);
    desk.job.set('name', 'rally car');
    await untilAllHave([phone], { name: 'rally car' });
    first.child.kill(signal);
    const [, by] = (await once(first.child, 'exit')) as [number | null, NodeJS.Signals | null];
    expect(by).toBe(signal);
    for (const { provider } of [desk, phone]) provider.destroy();
    const second = await serve(shared);
    await untilAllHave([device(second.origin, second.secret())], { name: 'rally car' });
  });
});
