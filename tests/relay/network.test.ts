/** What `npm start -- --network` is asked for, what it says, and https. */
import { spawnSync } from 'node:child_process';
import { get as getPlain } from 'node:http';
import { get as getSecure } from 'node:https';
import { writeFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { root } from '../../src/scripts/install.mjs';
import { addressesOf, hostsOf } from '../../src/scripts/network/addresses.mjs';
import { readArguments } from '../../src/scripts/network/arguments.mjs';
import { readPair } from '../../src/scripts/network/certificate.mjs';
import { networkLines } from '../../src/scripts/network/words.mjs';
import { joinRoom, knock, ownFolder, ownSite, PAIR, PEM, ROOM, serveOn, until } from './devices.ts';

describe('npm start --', () => {
  const unknown = (word: string) =>
    `${word} is unknown here: there are --network, and with it --cert FILE and --key FILE.`;
  it.each([
    [['--netwrok'], unknown('--netwrok')],
    [['--network=yes'], unknown('--network=yes')],
    [['--no-network'], unknown('--no-network')],
    [['-n'], unknown('-n')],
    [['network'], unknown('network')],
    [['--network', '--', 'x'], unknown('--')],
    [['--network', '--cert', 'a.pem'], '--cert needs --key beside it: the two files are a pair.'],
    [['--network', '--key', 'a.pem'], '--key needs --cert beside it: the two files are a pair.'],
    [['--network', '--cert'], '--cert needs the name of a file.'],
    [['--network', '--cert', '--key', 'a.pem'], '--cert needs the name of a file.'],
    [['--cert', PEM.cert, '--key', PEM.key], '--cert and --key are for --network: this machine alone needs neither.'],
  ])('%j is refused in a sentence', (args, trouble) => {
    expect(readArguments(args)).toEqual({ trouble });
  });

  it('without a word is for this machine alone', () => {
    expect(readArguments([])).toEqual({ network: false });
    expect(readArguments(['--network'])).toEqual({ network: true });
    expect(readArguments(['--key=b', '--network', '--cert', 'a'])).toEqual({
      network: true,
      pair: { cert: 'a', key: 'b' },
    });
  });

  it('ends with 2 before it builds anything', () => {
    const args = [join(root, 'src/start.mjs'), '--network', '--cert', PEM.cert, '--key', PEM.otherKey];
    const { status, stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    expect({ status, stdout, stderr }).toEqual({
      status: 2,
      stdout: '',
      stderr: `--cert ${PEM.cert} and --key ${PEM.otherKey} are no pair: the key is another certificate's.\n`,
    });
  });
});

describe('a certificate and its key', () => {
  it('are read', () => {
    expect(readPair({ cert: PEM.cert, key: PEM.key })).toEqual(PAIR);
  });

  it('that are not there, or are something else, are named', () => {
    const { path, takeAway } = ownFolder();
    const text = join(path, 'text');
    writeFileSync(text, 'hello');
    expect(readPair({ cert: join(path, 'none'), key: PEM.key })).toEqual({
      trouble: `--cert ${join(path, 'none')} cannot be read (ENOENT).`,
    });
    expect(readPair({ cert: PEM.cert, key: path })).toEqual({ trouble: `--key ${path} cannot be read (EISDIR).` });
    expect(readPair({ cert: text, key: PEM.key })).toEqual({
      trouble: `--cert ${text} is no certificate in PEM, the text form.`,
    });
    expect(readPair({ cert: PEM.cert, key: text })).toEqual({
      trouble: `--key ${text} is no private key without a password in PEM, the text form.`,
    });
    expect(readPair({ cert: PEM.key, key: PEM.cert })).toMatchObject({
      trouble: expect.stringContaining('is no certificate'),
    });
    takeAway();
  });
});

describe('the addresses of a machine', () => {
  const at = (address: string, internal = false) =>
    ({ address, internal, family: address.includes(':') ? 'IPv6' : 'IPv4' }) as NonNullable<
      ReturnType<typeof networkInterfaces>[string]
    >[number];

  it('are those of the shop first, IPv4 alone where there is some', () => {
    const hosts = hostsOf({
      lo: [at('127.0.0.1', true), at('::1', true)],
      docker0: [at('172.17.0.1')],
      eth1: [at('169.254.3.4')],
      wlan0: [at('192.168.1.20'), at('2001:db8::20')],
    });
    expect(hosts).toEqual(['192.168.1.20', '172.17.0.1', '169.254.3.4']);
    expect(addressesOf(hosts.slice(0, 1), 'http', 4680)).toEqual(['http://192.168.1.20:4680']);
    expect(addressesOf(hosts.slice(0, 1), 'https', 443)).toEqual(['https://192.168.1.20']);
  });

  it('are IPv6 where there is no IPv4, none of one link alone', () => {
    const hosts = hostsOf({ lo: [at('127.0.0.1', true)], eth0: [at('fe80::1'), at('2001:db8::20')] });
    expect(addressesOf(hosts, 'http', 4680)).toEqual(['http://[2001:db8::20]:4680']);
    expect(hostsOf({ lo: [at('127.0.0.1', true)] })).toEqual([]);
  });
});

/** What a camera reads of a QR code in half blocks, where a full one is light. */
function read(lines: readonly string[]): string | undefined {
  const light = lines.flatMap((line) => [
    line.split('').map((each) => each === '█' || each === '▀'),
    line.split('').map((each) => each === '█' || each === '▄'),
  ]);
  const scale = 4;
  const [width, height] = [light[0]!.length * scale, light.length * scale];
  const pixels = new Uint8ClampedArray(width * height * 4);
  for (let at = 0; at < width * height; at++) {
    const isLight = light[Math.floor(at / width / scale)]![Math.floor((at % width) / scale)];
    pixels.set([...Array<number>(3).fill(isLight ? 255 : 0), 255], 4 * at);
  }
  return jsQR(pixels, width, height)?.data;
}

describe('what is said on the terminal', () => {
  const addresses = ['http://192.168.1.20:4680', 'http://10.0.0.5:4680'];
  const said = { addresses, shared: '/home/shop/.cagewright/shared', isSecure: false, isColoured: false };
  const isOfCode = (line: string) => /^[█▀▄ ]{20,}$/u.test(line);

  it('is every address, a code of the first, and that plain http can be read', () => {
    const lines = networkLines(said);
    expect(read(lines.filter(isOfCode))).toBe('http://192.168.1.20:4680/');
    expect(lines.filter((line) => !isOfCode(line))).toEqual([
      'On the network:       http://192.168.1.20:4680/',
      '                      http://10.0.0.5:4680/',
      '',
      '',
      'That opens the program on another device, with a job of its own. To have one job on both, open the program on this',
      'machine by its localhost address: Menu, Phone at the bender, Share this job. The code shown there lets a phone in.',
      '',
      'This is plain http: whatever goes over the network, jobs and the secret that lets devices in, can be read by',
      'whoever is on it. --cert FILE --key FILE mend this; docs/hosting.md says how to make the two.',
      'Shared jobs are kept in /home/shop/.cagewright/shared',
    ]);
  });

  it('is no such thing with a certificate', () => {
    expect(networkLines({ ...said, isSecure: true }).join('\n')).not.toContain('can be read');
  });

  it('is the same code in colours', () => {
    const coloured = networkLines({ ...said, isColoured: true }).filter((line) => line.startsWith('\u001b'));
    // eslint-disable-next-line no-control-regex
    expect(read(coloured.map((line) => line.replaceAll(/\u001b\[[\d;]*m/gu, '')))).toBe('http://192.168.1.20:4680/');
  });

  it('is that there is no network', () => {
    expect(networkLines({ ...said, addresses: [] })).toEqual([
      'On the network: nowhere. This machine has no address there; is the cable in, or the Wi-Fi on?',
    ]);
  });
});

const statusOf = (get: typeof getPlain | typeof getSecure, url: string): Promise<[number, string | undefined]> =>
  new Promise((resolve, reject) => {
    get(url, { ca: PAIR.cert, headers: { 'x-cagewright': '1' } }, (response) =>
      resolve([response.resume().statusCode ?? 0, response.headers.location]),
    ).on('error', reject);
  });

describe('with a certificate', () => {
  it('the network has https alone, and this machine its own address as before', async () => {
    const [site, shared] = [ownSite(), ownFolder()];
    const served = await serveOn(site.path, shared.path, { pair: PAIR });
    const local = `localhost:${served.port}`;
    expect(served.addresses().every((address) => address.startsWith('https://'))).toBe(true);
    expect(await statusOf(getSecure, `https://${local}/`)).toEqual([200, undefined]);
    expect(await statusOf(getPlain, `http://${local}/`)).toEqual([200, undefined]);
    expect(await statusOf(getSecure, `https://${local}/pairing`)).toEqual([200, undefined]);
    expect(await statusOf(getPlain, `http://${local}/pairing`)).toEqual([200, undefined]);

    const [desk, phone] = [joinRoom(`ws://${local}`, served.secret()), joinRoom(`wss://${local}`, served.secret())];
    desk.job.set('name', 'rally car');
    await until(() => phone.job.get('name') === 'rally car');

    const [address] = hostsOf(networkInterfaces());
    if (address !== undefined) {
      const there = `${address}:${served.port}`;
      expect(await statusOf(getPlain, `http://${there}/x?y`)).toEqual([308, `https://${there}/x?y`]);
      const plain = knock(`ws://${there}/together/${ROOM}`, ['cagewright', served.secret()], {
        origin: `http://${there}`,
      });
      expect(await plain.ended).toBe(1006);
    }
    for (const { provider } of [desk, phone]) provider.destroy();
    served.close();
    for (const { takeAway } of [site, shared]) takeAway();
  });
});
