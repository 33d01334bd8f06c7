/**
 * A history of an earlier version of the job format, as if the present one were the second: the first called a section's wall its
 * thickness, and named it in the file's own list of gauges.
 */
import { describe, expect, it, vi } from 'vitest';
import { intoBlocks } from '../../../src/core/job/in-blocks.ts';
import { diffJobs } from '../../../src/core/job/diff.ts';
import type { PlainObject } from '../../../src/core/job/plain.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { redo, undo } from '../../../src/core/session/history.ts';
import { sampleJob } from '../job/sample.ts';

const MIGRATIONS = '../../../src/core/job/migrations.ts';

/** The program with that version; what is loaded after it is the real one again. */
async function nextProgram() {
  vi.resetModules();
  vi.doMock(MIGRATIONS, () => ({
    PRESENT_VERSION: 2,
    migrate: ({ gauges, ...file }: PlainObject, version: number) =>
      // The shape in this test is the first one's: it knows no other version.
      version === 2 ? { ...file, version: 1 } : { ...file, sections: sectionsWith(gauges as Gauges, file['sections']) },
  }));
  const { parseJob } = await import('../../../src/core/job/parse.ts');
  const { MOST_CARRIED, resumeHistory } = await import('../../../src/core/session/kept.ts');
  vi.doUnmock(MIGRATIONS);
  vi.resetModules();
  return { parseJob, MOST_CARRIED, resumeHistory };
}

const { parseJob, MOST_CARRIED, resumeHistory } = await nextProgram();

type Gauges = Readonly<Record<string, number>>;
type Old = Job & { readonly gauges: Gauges };

const sectionsWith = (gauges: Gauges, sections: unknown) =>
  (sections as readonly (PlainObject & { gauge: string })[]).map(({ gauge, ...section }) => ({
    ...section,
    wall: gauges[gauge]!,
  }));

const sample = sampleJob();
const old = {
  ...sample,
  gauges: { thick: 3, thin: 2 },
  sections: sample.sections.map((section) =>
    Object.fromEntries([...Object.entries(section).filter(([key]) => key !== 'wall'), ['gauge', 'thick']]),
  ),
} as unknown as Old;
const thinner: Old = { ...old, gauges: { thick: 2.5, thin: 2 } };
const other: Old = { ...thinner, sections: thinner.sections.map((section) => ({ ...section, gauge: 'thin' })) };
const textOf = (job: Job): string => JSON.stringify(intoBlocks(job));
const read = (file: Job): Job => {
  const parsed = parseJob(textOf(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
};

describe('a history of an earlier version', () => {
  const kept = {
    past: [{ label: 'Thinner', diff: diffJobs(old, thinner) }],
    future: [{ label: 'Other', diff: diffJobs(thinner, other) }],
  };

  it.each([1, undefined])('is brought up with its job, its version being %s', (version) => {
    const resumed = resumeHistory(textOf(thinner), read(thinner), { ...kept, version });
    expect(resumed.loss).toBeNull();
    const { history } = resumed;
    // The first step changed only the list of gauges: what it led from is known only by the whole of the file.
    expect(undo(history).job).toEqual(read(old));
    expect(undo(history).job.sections[0]!.wall).toBe(3);
    expect(redo(history).job).toEqual(read(other));
    expect(redo(undo(history)).job).toEqual(read(thinner));
    expect([...history.past, ...history.future].map(({ label }) => label)).toEqual(['Thinner', 'Other']);
  });

  it('of another version than its job is let go, and called what it is', () => {
    const resumed = resumeHistory(textOf(thinner), read(thinner), { ...kept, version: 2 });
    expect(resumed).toMatchObject({ history: { past: [], future: [] }, loss: 'other version' });
  });

  it('is brought up as far as the nearest steps', () => {
    const states = Array.from({ length: MOST_CARRIED + 3 }, (_, nth): Old => ({ ...old, name: `Job ${nth}` }));
    const past = states.slice(1).map((state, nth) => ({ label: `${nth}`, diff: diffJobs(states[nth]!, state) }));
    const { history, loss } = resumeHistory(textOf(states.at(-1)!), read(states.at(-1)!), { past, future: [] });
    expect([history.past.length, loss]).toEqual([MOST_CARRIED, 'other version']);
    expect(undo(history).job.name).toBe(`Job ${MOST_CARRIED + 1}`);
  });
});
