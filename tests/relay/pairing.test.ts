/** /pairing tells this machine's own page what lets a device in, and nobody else. */
import { request, type RequestOptions } from 'node:http';
import { readdirSync, readFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hostsOf } from '../../src/scripts/network/addresses.mjs';
import { isLoopback } from '../../src/scripts/network/pairing.mjs';
import { portOf, serve } from '../../src/scripts/serve.mjs';
import { joinRoom, knock, ownFolder, ownSite, ROOM, serveOn, until } from './devices.ts';

const site = ownSite();
const shared = ownFolder();
let served: Awaited<ReturnType<typeof serveOn>>;

beforeAll(async () => {
  served = await serveOn(site.path, shared.path);
});

afterAll(() => {
  served.close();
  shared.takeAway();
  site.takeAway();
});

interface Question {
  readonly method?: string;
  readonly headers?: Record<string, string>;
}

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

const ask = (options: RequestOptions): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const sent = request({ port: served.port, path: '/pairing', ...options }, (response) => {
      let body = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => (body += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    sent.on('error', reject).end();
  });

const host = () => `localhost:${served.port}`;
const header = { 'x-cagewright': '1' };
const origin = () => ({ origin: `http://${host()}` });

describe('asked by its own page', () => {
  it.each(['localhost', '127.0.0.1', '[::1]'])('at %s it says secret and addresses, and is not kept', async (name) => {
    const { status, headers, body } = await ask({ headers: { ...header, host: `${name}:${served.port}` } });
    expect(status).toBe(200);
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['access-control-allow-origin']).toBeUndefined();
    const offer = JSON.parse(body) as { secret: string; addresses: string[] };
    expect(Object.keys(offer)).toEqual(['secret', 'addresses']);
    expect(offer.secret).toBe(readFileSync(join(shared.path, 'secret'), 'utf8').trim());
    expect(Buffer.from(offer.secret, 'base64url')).toHaveLength(16);
    for (const address of offer.addresses) expect(address).toMatch(new RegExp(`^http://[^/]+:${served.port}$`, 'u'));
  });
});

describe('refused as if it were not there', () => {
  const cases: Readonly<Record<string, () => Question>> = {
    'without the header': () => ({}),
    'with another value of the header': () => ({ headers: { 'x-cagewright': 'yes' } }),
    'under a foreign name': () => ({ headers: { ...header, host: `elsewhere.example:${served.port}` } }),
    'under a name that begins as ours': () => ({
      headers: { ...header, host: `localhost.elsewhere.example:${served.port}` },
    }),
    'with another port': () => ({ headers: { ...header, host: 'localhost:1' } }),
    'without a port': () => ({ headers: { ...header, host: 'localhost' } }),
    'from a foreign page': () => ({ headers: { ...header, origin: 'https://elsewhere.example' } }),
    'passed on by a proxy': () => ({ headers: { ...header, 'x-forwarded-for': '203.0.113.7' } }),
    'as a question whether one may ask': () => ({
      method: 'OPTIONS',
      headers: {
        ...origin(),
        'access-control-request-method': 'GET',
        'access-control-request-headers': 'x-cagewright',
      },
    }),
    'as a head': () => ({ method: 'HEAD', headers: header }),
    'a new secret without an origin': () => ({ method: 'POST', headers: header }),
    'a new secret without the header': () => ({ method: 'POST', headers: origin() }),
    'a new secret for a foreign page': () => ({
      method: 'POST',
      headers: { ...header, origin: 'https://elsewhere.example' },
    }),
    'a new secret for a page of another port': () => ({
      method: 'POST',
      headers: { ...header, origin: 'http://localhost:1' },
    }),
    'a new secret under a foreign name': () => ({
      method: 'POST',
      headers: { ...header, host: 'elsewhere.example', origin: 'http://elsewhere.example' },
    }),
  };

  it.each(Object.entries(cases))('%s', async (_, options) => {
    const before = served.secret();
    const asked = options();
    const { status, headers, body } = await ask({ ...asked, headers: { host: host(), ...asked.headers } });
    expect(status).toBe(404);
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    expect(body).not.toContain(before);
    expect(served.secret()).toBe(before);
    expect(readdirSync(shared.path)).toEqual(['secret']);
  });

  it('to another device of the network', async () => {
    expect(
      ['192.168.1.7', '::ffff:192.168.1.7', '128.0.0.1', '10.127.0.1', 'fe80::1', ''].filter((address) =>
        isLoopback({ remoteAddress: address } as never),
      ),
    ).toEqual([]);
    const [address] = hostsOf(networkInterfaces());
    if (address === undefined) return; // a machine without a network has no other to ask from
    const headers = { ...header, host: host() };
    expect(await ask({ host: address.replace(/^\[|\]$/g, ''), headers })).toMatchObject({ status: 404 });
    expect(await ask({ host: address.replace(/^\[|\]$/g, ''), path: '/' })).toMatchObject({ status: 200 });
  });

  it('by a server that is not on the network, as any file that is not there', async () => {
    const alone = await serve(site.path, 0);
    const port = portOf(alone);
    expect(await ask({ port, headers: { ...header, host: `localhost:${port}` } })).toMatchObject({
      status: 404,
      body: 'Not found\n',
    });
    expect(await knock(`ws://localhost:${port}/together/${ROOM}`, ['cagewright', 'x']).ended).toBe(404);
    alone.close();
  });
});

describe('a new secret', () => {
  it('puts everybody out, who come in by it again and by the old one no more', async () => {
    const old = served.secret();
    const [desk, phone] = [joinRoom(`ws://${host()}`, old), joinRoom(`ws://${host()}`, old)];
    desk.job.set('name', 'rally car');
    await until(() => phone.job.has('name'));
    const codes: number[] = [];
    for (const { provider } of [desk, phone]) provider.on('closed', ({ code }) => codes.push(code));
    const { status, body } = await ask({ method: 'POST', headers: { ...header, ...origin(), host: host() } });
    desk.job.set('late', 'said before it knew');
    expect(status).toBe(200);
    const { secret } = JSON.parse(body) as { secret: string };
    expect(secret).not.toBe(old);
    expect(readFileSync(join(shared.path, 'secret'), 'utf8')).toBe(`${secret}\n`);
    await until(() => codes.length === 2);
    expect(codes).toEqual([4401, 4401]);
    expect(await knock(`ws://${host()}/together/${ROOM}`, ['cagewright', old], origin()).ended).toBe(4401);
    const again = joinRoom(`ws://${host()}`, secret);
    await until(() => again.provider.synced);
    expect(again.job.toJSON()).toEqual({ name: 'rally car' });
    for (const { provider } of [desk, phone, again]) provider.destroy();
  });
});
