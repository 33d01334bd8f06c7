/** The scans of a document: read by what a worker runs, kept on a shelf in memory, fetched when the job names them. */
import { describe, expect, it, vi } from 'vitest';
import { addScan, removeScan } from '../../../src/core/edit/scans.ts';
import { sumOf } from '../../../src/core/scan/sum.ts';
import { countOf, isScanData, MOST_SCAN_BYTES, type ScanData } from '../../../src/core/scan/types.ts';
import { createDocument } from '../../../src/store/document/createDocument.ts';
import { createScans } from '../../../src/store/scans/createScans.ts';
import type { ScanShelf } from '../../../src/store/storage/scanShelf.ts';
import type { HireForScan } from '../../../src/workers/scan-client.ts';
import { readFile } from '../../../src/workers/scan-work.ts';
import { newHistory } from '../../../src/core/session/history.ts';
import { derive } from '../../../src/core/derive.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { binaryStl } from '../../core/scan/files.ts';
import { ball, dataOf } from '../../core/scan/shapes.ts';
import { jobOf } from '../../reference/jobs.ts';

const BALL = binaryStl(ball(500, [0, 0, 0], 8, 6));

const fileOf = (name: string, bytes: Uint8Array, size = bytes.length): File =>
  ({ name, size, arrayBuffer: async () => bytes.slice().buffer }) as unknown as File;

/** Answers when it is asked to. */
function heldHire() {
  const ended: number[] = [];
  let hired = 0;
  const hire: HireForScan = () => {
    const own = (hired += 1);
    let heard: Parameters<ReturnType<HireForScan>['listen']>[0] | null = null;
    return {
      send: (ask) => void readFile(ask, (said) => heard?.(said)),
      listen: (next) => void (heard = next),
      end: () => {
        heard = null;
        ended.push(own);
      },
    };
  };
  return { hire, ended };
}

function shelfOf(fails = false) {
  const kept = new Map<string, ScanData>();
  const shelf: ScanShelf = {
    get: async (sum) => kept.get(sum) ?? null,
    put: async (sum, data) => {
      if (fails) throw new Error('full');
      kept.set(sum, data);
    },
  };
  return { kept, shelf };
}

const scanOf = (data: string): Parameters<typeof addScan>[1] => ({
  name: 'Ball',
  kind: 'triangles',
  accuracy: 3,
  file: 'ball.stl',
  data,
  unit: 'mm',
  up: 'z',
  placement: { rotation: [0, 0, 0], shift: [0, 0, 0] },
  pairs: [],
  count: 80,
  shown: true,
});

function opened(job: Job) {
  const document = createDocument();
  const show = (next: Job): void => {
    const result = derive(next);
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    document.getState().replace({ history: newHistory(next), derived: result.value }, '');
  };
  show(job);
  return { document, show };
}

describe('a file', () => {
  it('is read with reports, and kept under its sum', async () => {
    const { document } = opened(jobOf({}));
    const { kept, shelf } = shelfOf();
    const scans = createScans(document, shelf, heldHire().hire);
    const shares: number[] = [];
    scans.subscribe(({ reading }) => reading && shares.push(reading.share));
    await scans.getState().read(fileOf('ball.stl', BALL), 1);
    const { came, reading } = scans.getState();
    expect(reading).toBeNull();
    expect(came).toMatchObject({ file: 'ball.stl', sum: sumOf(BALL), every: 1 });
    expect(countOf(came!.data)).toBe(80);
    expect(shares.length).toBeGreaterThan(0);
    scans.getState().keep(came!);
    await vi.waitFor(() => expect(kept.has(sumOf(BALL))).toBe(true));
    expect(scans.getState().came).toBeNull();
  });

  it('that is wrong is refused in words, one that is far too large before it is read', async () => {
    const scans = createScans(opened(jobOf({})).document, shelfOf().shelf, heldHire().hire);
    await scans.getState().read(fileOf('a.stl', BALL.subarray(0, 300)), 1);
    expect(scans.getState().refused?.fault.place).toBe('byte 80');
    let isRead = false;
    const huge = {
      name: 'a.stl',
      size: MOST_SCAN_BYTES + 1,
      arrayBuffer: async () => ((isRead = true), new ArrayBuffer(0)),
    };
    await scans.getState().read(huge as unknown as File, 1);
    expect(scans.getState().refused?.fault.message).toContain('512 MB');
    expect(isRead).toBe(false);
    const gone = { name: 'a.stl', size: 5, arrayBuffer: () => Promise.reject(new Error('gone')) };
    await scans.getState().read(gone as unknown as File, 1);
    expect(scans.getState().refused?.fault.message).toBe('it cannot be read: gone');
  });

  it('that is cancelled leaves nothing, and its worker is ended', async () => {
    const { hire, ended } = heldHire();
    const scans = createScans(opened(jobOf({})).document, shelfOf().shelf, hire);
    const reading = scans.getState().read(fileOf('ball.stl', BALL), 1);
    scans.getState().cancel();
    await reading;
    expect(scans.getState()).toMatchObject({ reading: null, came: null, refused: null });
    expect(ended).toEqual([1]);
  });

  it('that the browser has no room for is there all the same, and that is said', async () => {
    const scans = createScans(opened(jobOf({})).document, shelfOf(true).shelf, heldHire().hire);
    await scans.getState().read(fileOf('ball.stl', BALL), 1);
    scans.getState().keep(scans.getState().came!);
    await vi.waitFor(() => expect(scans.getState().unkept).toBe(true));
    expect(scans.getState().data.get(sumOf(BALL))).toBeDefined();
  });
});

describe('a job', () => {
  it('has fetched what it names; what is not there is known not to be', async () => {
    const { document, show } = opened(jobOf({}));
    const { kept, shelf } = shelfOf();
    kept.set('here', dataOf(ball(1, [0, 0, 0], 5, 4)));
    const scans = createScans(document, shelf, heldHire().hire);
    document.getState().edit('Scan', (job) => addScan(addScan(job, scanOf('here')), scanOf('nowhere')));
    await vi.waitFor(() => expect(scans.getState().data.size).toBe(2));
    expect(scans.getState().data.get('here')).toBe(kept.get('here'));
    expect(scans.getState().data.get('nowhere')).toBeNull();
    show(jobOf({}));
    expect(scans.getState().data.size).toBe(0);
  });

  it('without the scan that was to be picked on ends the picking', () => {
    const { document } = opened(jobOf({}));
    const scans = createScans(document, shelfOf().shelf, heldHire().hire);
    document.getState().edit('Scan', (job) => addScan(job, scanOf('x')));
    scans.getState().pick({ scan: 'scan1', name: 'Sill' });
    document.getState().edit('Away', (job) => removeScan(job, 'scan1'));
    expect(scans.getState().picking).toBeNull();
  });
});

describe('what comes out of the browser', () => {
  it('is taken only if it is sound', () => {
    const data = dataOf(ball(1, [0, 0, 0], 5, 4));
    expect(isScanData(data)).toBe(true);
    const wrong = [
      null,
      {},
      { ...data, kind: 'solid' },
      { ...data, positions: [...data.positions] },
      { ...data, positions: data.positions.with(4, NaN) },
      { ...data, positions: data.positions.slice(1) },
      { ...data, triangles: data.triangles.with(0, 10_000) },
      { ...data, triangles: new Uint32Array() },
      { ...data, kind: 'points' },
    ];
    expect(wrong.map(isScanData)).toEqual(wrong.map(() => false));
  });

  it('is known by a sum that every byte counts in', () => {
    const sums = new Set(
      Array.from(BALL.subarray(0, 200), (byte, i) => sumOf(BALL.subarray(0, 203).with(i, byte ^ 1))),
    );
    sums.add(sumOf(BALL.subarray(0, 203))).add(sumOf(BALL.subarray(0, 202)));
    expect(sums.size).toBe(202);
  });
});
