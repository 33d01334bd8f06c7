import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createWriter, DELAY, LONGEST_RETRY, RETRY, SLOW } from '../../../src/store/storage/writer.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A writer whose writes end when they are let, and what is known of it. */
function tried(takes = 0) {
  const log = { begun: [] as number[], jotted: [] as number[], most: 0, said: '', error: null as Error | null };
  let underWay = 0;
  const start = Date.now();
  const writer = createWriter(
    () => log.jotted.push(Date.now() - start),
    async () => {
      log.begun.push(Date.now() - start);
      underWay += 1;
      log.most = Math.max(log.most, underWay);
      if (takes > 0) await new Promise((resolve) => setTimeout(resolve, takes));
      underWay -= 1;
      if (log.error !== null) throw log.error;
    },
    (saved, trouble) => (log.said = trouble === null ? saved : `${saved}: ${trouble}`),
  );
  return { writer, log };
}

/** Changes every so many ms, for so long. */
async function keepChanging(change: () => void, every: number, length: number): Promise<void> {
  for (let time = 0; time < length; time += every) {
    change();
    await vi.advanceTimersByTimeAsync(every);
  }
}

describe('while changes keep coming', () => {
  it.each([10, 80, 299])('every %i ms, no change waits longer than the delay for its write', async (every) => {
    const { writer, log } = tried();
    await keepChanging(writer.changed, every, 8000);
    await vi.advanceTimersByTimeAsync(DELAY);
    const gaps = log.begun.map((time, index) => time - (log.begun[index - 1] ?? 0));
    // From one write to the first change after it, and then the delay.
    expect(Math.max(...gaps)).toBeLessThanOrEqual(DELAY + every);
    expect(log.said).toBe('saved');
  });

  it('has one write under way and one waiting, however long a write takes', async () => {
    const { writer, log } = tried(1000);
    await keepChanging(writer.changed, 80, 8000);
    expect(log.most).toBe(1);
    expect(log.begun.length).toBe(8);
    await vi.advanceTimersByTimeAsync(2 * (1000 + DELAY));
    expect(log.said).toBe('saved');
  });

  it('puts down what is due while a write does not end', async () => {
    const { writer, log } = tried(60_000);
    await keepChanging(writer.changed, 80, 8000);
    expect(log.begun).toHaveLength(1);
    const gaps = log.jotted.map((time, index) => time - (log.jotted[index - 1] ?? 0));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(DELAY + 80);
    expect(log.jotted.at(-1)).toBeGreaterThan(8000 - DELAY - 80);
  });

  it('waits for no timer that the page is too busy for', () => {
    const { writer, log } = tried();
    for (let time = 0; time <= DELAY; time += 50) {
      vi.setSystemTime(time); // the clock goes on, but nothing that waits for it is called
      vi.spyOn(performance, 'now').mockReturnValue(time);
      writer.changed();
    }
    vi.restoreAllMocks();
    expect(log.begun).toHaveLength(1);
  });

  it('does not claim that all is saved because something older is', async () => {
    const { writer, log } = tried(100);
    writer.changed();
    await vi.advanceTimersByTimeAsync(DELAY + 50);
    writer.changed();
    await vi.advanceTimersByTimeAsync(60);
    expect(log.said).toBe('saving');
  });
});

describe('a write that fails', () => {
  const full = new DOMException('no room', 'QuotaExceededError');

  it('is tried again with growing waits, and no more once it went through', async () => {
    const { writer, log } = tried();
    log.error = full;
    writer.changed();
    await vi.advanceTimersByTimeAsync(200_000);
    const waits = log.begun.map((time, index) => time - (log.begun[index - 1] ?? 0)).slice(1);
    expect(waits.slice(0, 8)).toEqual([1000, 2000, 4000, 8000, 16_000, 30_000, 30_000, 30_000]);
    expect(log.said).toBe('failed: full');
    log.error = null;
    await vi.advanceTimersByTimeAsync(LONGEST_RETRY);
    expect(log.said).toBe('saved');
    const { length } = log.begun;
    await vi.advanceTimersByTimeAsync(10 * LONGEST_RETRY);
    expect(log.begun).toHaveLength(length);
  });

  it('is tried again at the next change and when the page goes out of sight, and is called failed until it went through', async () => {
    const { writer, log } = tried();
    log.error = full;
    writer.changed();
    await vi.advanceTimersByTimeAsync(DELAY + 4 * RETRY);
    const { length } = log.begun;
    writer.changed();
    expect(log.said).toBe('failed: full');
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(log.begun).toHaveLength(length + 1);
    log.error = null;
    await writer.flush();
    expect(log.said).toBe('saved');
  });

  it('leaves nothing unwritten when a change came while it was under way', async () => {
    const { writer, log } = tried(1000);
    log.error = full;
    writer.changed();
    await vi.advanceTimersByTimeAsync(DELAY + 100);
    writer.changed();
    await vi.advanceTimersByTimeAsync(900);
    log.error = null;
    await vi.advanceTimersByTimeAsync(DELAY + 1000);
    expect(log.said).toBe('saved');
  });

  it('does not run in circles when every failure also means that all is lost', async () => {
    const { writer, log } = tried();
    log.error = full;
    writer.changed();
    for (let time = 0; time < 60_000; time += 50) {
      const { length } = log.begun;
      await vi.advanceTimersByTimeAsync(50);
      if (log.begun.length > length) writer.again();
    }
    expect(log.begun.length).toBeLessThan(10);
  });
});

describe('a write that takes long', () => {
  it('is called slow, and saved when it ends', async () => {
    const { writer, log } = tried(2 * SLOW);
    writer.changed();
    await vi.advanceTimersByTimeAsync(DELAY + SLOW);
    expect(log.said).toBe('failed: slow');
    await vi.advanceTimersByTimeAsync(SLOW);
    expect(log.said).toBe('saved');
  });

  it('does not hold up what must be written before the page goes', async () => {
    const { writer, log } = tried(1000);
    writer.changed();
    await vi.advanceTimersByTimeAsync(DELAY);
    writer.changed();
    void writer.flush();
    expect(log.begun).toHaveLength(2);
    void writer.flush();
    expect(log.begun).toHaveLength(2);
  });
});

it('writes again what was lost, at once', async () => {
  const { writer, log } = tried();
  writer.changed();
  await vi.advanceTimersByTimeAsync(DELAY);
  writer.again();
  expect(log.begun).toHaveLength(2);
  await vi.advanceTimersByTimeAsync(0);
  expect(log.said).toBe('saved');
});
