/** The photos of a document: scaled by what stands in for a browser, kept on a shelf in memory, fetched when the job names them. */
import { describe, expect, it, vi } from 'vitest';
import { removePhoto } from '../../../src/core/edit/photos.ts';
import { derive } from '../../../src/core/derive.ts';
import { newHistory } from '../../../src/core/session/history.ts';
import { sumOf } from '../../../src/core/scan/sum.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { createDocument } from '../../../src/store/document/createDocument.ts';
import { createPhotos } from '../../../src/store/photos/createPhotos.ts';
import type { Scale } from '../../../src/store/photos/scaled.ts';
import type { PhotoShelf } from '../../../src/store/storage/photoShelf.ts';
import { otherJpeg, smallJpeg } from '../../core/photo/small-jpeg.ts';
import { jobOf } from '../../reference/jobs.ts';

const fileOf = (name: string, bytes: Uint8Array, type = 'image/png'): File =>
  ({
    name,
    type,
    size: bytes.length,
    lastModified: new Date(2026, 2, 4, 12).getTime(),
    arrayBuffer: async () => bytes.slice().buffer,
  }) as unknown as File;

/** What a browser would make of it: the file's own bytes. */
const asItIs: Scale = async (file) => new Uint8Array(await file.arrayBuffer());

function shelfOf(fails = false) {
  const kept = new Map<string, Uint8Array>();
  const shelf: PhotoShelf = {
    get: async (sum) => kept.get(sum) ?? null,
    put: async (sum, data) => {
      if (fails) throw new Error('full');
      kept.set(sum, data);
    },
  };
  return { kept, shelf };
}

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

const named = (job: Job) => job.photos.map(({ name, sum, on }) => [name, sum, on]);
const photoOf = (bytes: Uint8Array, id = 'photo1') => ({ id, name: 'Hoop', sum: sumOf(bytes) });

describe('pictures that come in', () => {
  it('are kept under their sums and named in the job, with file and day, a step of undo each', async () => {
    const { document } = opened(jobOf({}));
    const { kept, shelf } = shelfOf();
    const store = createPhotos(document, shelf, asItIs);
    await store.getState().add([fileOf('Hoop left.jpeg', otherJpeg(1)), fileOf('feet.png', otherJpeg(2))]);
    const sums = [1, 2].map((i) => sumOf(otherJpeg(i)));
    expect(named(document.getState().job)).toEqual([
      ['Hoop left', sums[0], '2026-03-04'],
      ['feet', sums[1], '2026-03-04'],
    ]);
    expect([...kept.keys()]).toEqual(sums);
    expect(store.getState()).toMatchObject({ coming: null, refused: [], unkept: false });
    document.getState().undo();
    expect(document.getState().job.photos).toHaveLength(1);
    expect([...(await store.getState().all()).keys()]).toEqual([sums[0]]);
    document.getState().redo();
    expect((await store.getState().all()).size).toBe(2);
  });

  it('that are the same twice are one photo', async () => {
    const { document } = opened(jobOf({}));
    const store = createPhotos(document, shelfOf().shelf, asItIs);
    await store.getState().add([fileOf('a.png', smallJpeg()), fileOf('b.png', smallJpeg())]);
    expect(document.getState().job.photos).toHaveLength(1);
  });

  it('that cannot be read are refused by name, and the others come in', async () => {
    const { document } = opened(jobOf({}));
    const scale: Scale = async (file) => (file.name === 'bad.svg' ? 'cannot be read as a picture.' : asItIs(file));
    const store = createPhotos(document, shelfOf().shelf, scale);
    const files = [
      fileOf('bad.svg', new Uint8Array([60])),
      fileOf('half', smallJpeg().slice(0, -9)),
      fileOf('ok', smallJpeg()),
    ];
    await store.getState().add(files);
    expect(store.getState().refused).toEqual([
      'bad.svg cannot be read as a picture.',
      'half is not taken: broken off: its end is not there.',
    ]);
    expect(document.getState().job.photos.map(({ name }) => name)).toEqual(['ok']);
  });

  it('that the browser does not keep are there until the page closes, and that is said', async () => {
    const { document } = opened(jobOf({}));
    const store = createPhotos(document, shelfOf(true).shelf, asItIs);
    await store.getState().add([fileOf('a.png', smallJpeg())]);
    expect(store.getState().unkept).toBe(true);
    expect((await store.getState().all()).size).toBe(1);
  });

  it('for another document than is open by then are not taken', async () => {
    const { document, show } = opened(jobOf({}));
    let go: (bytes: Uint8Array) => void = () => {};
    const store = createPhotos(document, shelfOf().shelf, () => new Promise((done) => void (go = done)));
    const adding = store.getState().add([fileOf('a.png', smallJpeg())]);
    await vi.waitFor(() => expect(store.getState().coming).toEqual({ done: 0, total: 1 }));
    await Promise.resolve();
    show(jobOf({ name: 'Another' }));
    go(smallJpeg());
    await adding;
    expect(document.getState().job.photos).toEqual([]);
  });
});

describe('pictures that the job names', () => {
  it('are fetched from the shelf, and one that is not there is known to be missing', async () => {
    const { kept, shelf } = shelfOf();
    kept.set(sumOf(smallJpeg()), smallJpeg());
    const { document, show } = opened(jobOf({}));
    const store = createPhotos(document, shelf, asItIs);
    show(jobOf({ photos: [photoOf(smallJpeg()), photoOf(otherJpeg(3), 'photo2')] }));
    await vi.waitFor(() => expect(store.getState().data.size).toBe(2));
    expect(store.getState().data.get(sumOf(smallJpeg()))).toEqual(smallJpeg());
    expect(store.getState().data.get(sumOf(otherJpeg(3)))).toBeNull();
    expect([...(await store.getState().all()).keys()]).toEqual([sumOf(smallJpeg())]);
  });

  it('come back from their own saved files as they were, without another photo', async () => {
    const bytes = otherJpeg(5);
    const { document } = opened(jobOf({ photos: [photoOf(bytes)] }));
    const { kept, shelf } = shelfOf();
    const scale = vi.fn<Scale>();
    const store = createPhotos(document, shelf, scale);
    await vi.waitFor(() => expect(store.getState().data.get(sumOf(bytes))).toBeNull());
    const before = document.getState().job;
    await store.getState().add([fileOf(`${sumOf(bytes)}.jpg`, bytes, 'image/jpeg')]);
    expect(scale).not.toHaveBeenCalled();
    expect(document.getState().job).toBe(before);
    expect(store.getState().data.get(sumOf(bytes))).toEqual(bytes);
    expect(kept.has(sumOf(bytes))).toBe(true);
  });

  it('are not printed once the photo is taken out', async () => {
    const { document } = opened(jobOf({}));
    const store = createPhotos(document, shelfOf().shelf, asItIs);
    await store.getState().add([fileOf('a.png', smallJpeg())]);
    document.getState().edit('out', (job) => removePhoto(job, job.photos[0]!.id));
    expect((await store.getState().all()).size).toBe(0);
  });
});
