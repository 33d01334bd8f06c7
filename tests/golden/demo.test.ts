/**
 * The demo through the command line: what comes out, against the page that was read and kept (demo.txt; after a change
 * that is meant, `npx vitest run tests/golden -u` and read the difference), and that it is the cage it claims to be.
 */
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/core/geometry/vector.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { FabricationFile } from '../../src/exports/tables/fabrication.ts';
import { demoText, runFab } from '../command-line.ts';
import { derivedFrom } from '../exports/jobs.ts';
import { summary } from './summary.ts';

const run = await runFab(demoText());
const file = JSON.parse(run.files.get('fabrication.json') ?? 'null') as FabricationFile;
const derived = derivedFrom(demoText());
const { job } = derived;

/** Its points where they were first guessed. */
function asItStands(): Job {
  const parsed = parseJob(demoText());
  if (!parsed.ok) throw new Error('the demo must open');
  return parsed.job;
}

const ends = file.tubes.flatMap((tube) => tube.ends);

describe('the demo', () => {
  it('comes out as it was read and kept', async () => {
    expect(run.complaints).toEqual([]);
    await expect(summary(file)).toMatchFileSnapshot('demo.txt');
  });

  it('is a full cage: tubes, coped ends, clusters, joints on bends', () => {
    expect(file.tubes.length).toBeGreaterThanOrEqual(24);
    expect(ends.filter(({ fit }) => fit === 'cope').length).toBeGreaterThanOrEqual(45);
    expect(ends.filter(({ cuts }) => cuts.length >= 2).length).toBeGreaterThanOrEqual(4);
    expect(ends.some(({ cuts }) => cuts.some(({ onBend }) => onBend))).toBe(true);
    expect(file.tubes[0]!.bends).toHaveLength(4);
  });

  it('has no errors and a few warnings, and keeps both helmets clear', () => {
    expect(file.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(file.findings.some(({ severity }) => severity === 'warning')).toBe(true);
    expect(file.clearances).toHaveLength(2 * file.tubes.length);
    expect(file.clearances.every(({ ok }) => ok)).toBe(true);
  });

  it('has nodes given in the ways of a shop', () => {
    const kinds = new Set(job.nodes.map(({ at }) => at.kind));
    expect([...kinds].toSorted()).toEqual(['between', 'lined-up', 'on', 'point', 'ray']);
  });

  it('stands in a car that was measured in sixteenths of an inch and is not quite the same on both sides', () => {
    expect(job.lengthUnit).toBe('in');
    for (const { value } of asItStands().measurements) {
      expect(Math.abs((value / 25.4) * 16 - Math.round((value / 25.4) * 16))).toBeLessThan(1e-9);
    }
    const places = new Map(job.points.map(({ id, position }) => [id, position]));
    const pairs = job.points.filter(({ id }) => id.endsWith('-l') && places.has(id.replace(/-l$/u, '-r')));
    expect(pairs.length).toBeGreaterThan(5);
    for (const { id, position } of pairs) {
      const [x, y, z] = places.get(id.replace(/-l$/u, '-r'))!;
      const apart = distance(position, [x, -y, z]);
      expect(apart).toBeGreaterThan(0);
      expect(apart).toBeLessThan(6);
    }
  });

  it('has no two tubes in one another, and none that are not joined too near to weld', () => {
    const near = derived.gaps.filter(({ distance }) => distance < 0);
    expect(near).toEqual([]);
    expect(derived.findings.filter(({ id }) => id.startsWith('gap/'))).toEqual([]);
  });

  it('is kept as the program itself writes it', () => {
    expect(serialiseJob(asItStands())).toBe(demoText());
  });
});
