/** Requests filled in this process, by the very functions that workers run; and what becomes of one that is stopped. */
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Product } from '../../src/exports/products/catalogue.ts';
import { makeFiles, plainSetting, type Supplies } from '../../src/exports/products/formats.ts';
import { requestFiles, requestSection, requestZip, type Hire, type Progress } from '../../src/workers/client.ts';
import { fill, type Make } from '../../src/workers/fill.ts';
import { runFab } from '../command-line.ts';
import { branchAt60 } from '../exports/jobs.ts';

const none: Supplies = {
  fonts: () => Promise.reject(new Error('no typeface here')),
  kernel: () => Promise.reject(new Error('no kernel here')),
  solver: () => Promise.reject(new Error('no solver here')),
};

const makeHere: Make = async (derived, request, making) => {
  if (request.kind === 'section')
    return [{ fileName: `${request.tube} ${request.cuts.length}.pdf`, bytes: new Uint8Array(1) }];
  return makeFiles(derived, request.products, request.setting, none, making);
};

/** Stands in for a worker: what goes in and out is copied, as between page and worker. */
function hireHere(make: Make, seen: string[] = []): Hire {
  return (kind) => {
    let heard: Parameters<ReturnType<Hire>['listen']>[0] | null = null;
    seen.push(kind);
    return {
      send: (request) => void fill(structuredClone(request), make, (answer) => heard?.(structuredClone(answer))),
      listen: (next) => void (heard = next),
      end: () => void (heard = null),
    };
  };
}

const { job } = branchAt60();
const WANTED: readonly Product[] = ['fabrication.json', 'tubes.csv', 'wraps', 'cage.stl'];
const running = () => new AbortController().signal;

describe('a request', () => {
  it('takes photos along for the dossier, and for no other file', async () => {
    const photos = new Map([['0'.repeat(24), new Uint8Array([1, 2])]]);
    const taken: (number | undefined)[] = [];
    const seeing: Make = async (_, request) => {
      if (request.kind === 'make') taken.push(request.setting.photos?.size);
      return [];
    };
    const wanted: readonly Product[] = ['tubes.csv', 'dossier.pdf', 'sheets.pdf'];
    await requestFiles(job, wanted, { ...plainSetting, photos }, () => {}, running(), hireHere(seeing));
    expect(taken).toEqual([undefined, 1, undefined]);
  });

  it('gives the files that the command line writes, in the order asked for, and reports how far it is', async () => {
    const reports: Progress[] = [];
    const { files, missing } = await requestFiles(
      job,
      WANTED,
      plainSetting,
      (each) => reports.push(each),
      running(),
      hireHere(makeHere),
    );
    expect(missing).toEqual([]);
    expect(files.map(({ fileName }) => fileName)).toEqual([
      'fabrication.json',
      'tubes.csv',
      'wraps/1-A.svg',
      'wraps/1-B.svg',
      'wraps/2-A.svg',
      'wraps/2-B.svg',
      'cage.stl',
    ]);
    const written = (await runFab(JSON.stringify(job), '--formats', 'csv,svg,stl')).files;
    for (const { fileName, bytes } of files) {
      expect(new TextDecoder().decode(bytes), fileName).toBe(written.get(fileName));
    }
    expect(new Set(reports.map(({ product }) => product))).toEqual(new Set(WANTED));
    expect(reports.every(({ nth, of, done, total }) => nth <= of && of === WANTED.length && done <= total)).toBe(true);
  });

  it('for solids goes to the worker that makes them, and where that cannot the others come without', async () => {
    const seen: string[] = [];
    const { files, missing } = await requestFiles(
      job,
      ['tubes.csv', 'cage.step', 'cage.stl'],
      plainSetting,
      () => {},
      running(),
      hireHere(makeHere, seen),
    );
    expect(seen).toEqual(['others', 'solids', 'others']);
    expect(files.map(({ fileName }) => fileName)).toEqual(['tubes.csv', 'cage.stl']);
    expect(missing).toEqual([{ product: 'cage.step', why: 'no kernel here' }]);
  });

  it('for a scan on paper goes to the worker of the other files, with what is cut', async () => {
    const seen: string[] = [];
    const cut = { name: 'Shell', accuracy: 3, curves: [[{ x: 0, y: 1 }]], dots: [] };
    const section = { job, tube: 'stay', cuts: [cut, cut], print: plainSetting.print };
    const file = await requestSection(section, running(), hireHere(makeHere, seen));
    expect([file.fileName, seen]).toEqual(['stay 2.pdf', ['others']]);
  });

  it('of which nothing can be made says why, in words', async () => {
    const request = requestFiles(
      job,
      ['sheets.pdf', 'cage.step'],
      plainSetting,
      () => {},
      running(),
      hireHere(makeHere),
    );
    await expect(request).rejects.toThrow('no typeface here no kernel here');
  });

  it('that is stopped ends then and there, and its hand with it', async () => {
    const stopper = new AbortController();
    let ended = 0;
    const never: Hire = () => ({ send: () => {}, listen: () => {}, end: () => void (ended += 1) });
    const request = requestFiles(job, WANTED, plainSetting, () => {}, stopper.signal, never);
    stopper.abort();
    await expect(request).rejects.toBe(stopper.signal.reason);
    expect(ended).toBe(1);
    await expect(requestFiles(job, WANTED, plainSetting, () => {}, stopper.signal, never)).rejects.toBe(
      stopper.signal.reason,
    );
  });
});

describe('a zip', () => {
  it('holds the files under their names, and is the same bytes whenever and wherever it is made', async () => {
    const made = await requestFiles(job, WANTED, plainSetting, () => {}, running(), hireHere(makeHere));
    const { files } = made;
    const zip = await requestZip('cage.zip', made, running(), hireHere(makeHere));
    expect(zip.fileName).toBe('cage.zip');
    const back = unzipSync(zip.bytes);
    expect(Object.keys(back)).toEqual(files.map(({ fileName }) => fileName));
    for (const { fileName, bytes } of files) expect(Buffer.compare(back[fileName]!, bytes), fileName).toBe(0);

    const zone = process.env['TZ'];
    process.env['TZ'] = 'Pacific/Honolulu';
    const elsewhere = await requestZip('cage.zip', made, running(), hireHere(makeHere));
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
    expect(Buffer.compare(elsewhere.bytes, zip.bytes)).toBe(0);
  });

  it('says in a text of its own what is not in it, and why', async () => {
    const missing = [{ product: 'cage.step', why: 'The part that makes solids could not be loaded.' }] as const;
    const files = [{ fileName: 'tubes.csv', bytes: Uint8Array.of(1, 2) }];
    const zip = await requestZip('cage.zip', { files, missing }, running(), hireHere(makeHere));
    const back = unzipSync(zip.bytes);
    expect(Object.keys(back)).toEqual(['tubes.csv', 'NOT IN THIS ZIP.txt']);
    expect(new TextDecoder().decode(back['NOT IN THIS ZIP.txt'])).toMatch(
      /not in this zip[^]*cage\.step\r\n {4}The part that makes solids could not be loaded\.\r\n/u,
    );
  });
});
