import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { differencesOf } from '../../../src/core/take-over/differences.ts';
import { SHELVES } from '../../../src/core/take-over/shelves.ts';
import { fieldLines } from '../../../src/core/words/field-differs.ts';
import { recordInWords } from '../../../src/core/words/take-over.ts';
import { sampleFile } from '../job/sample.ts';

const read = (text: string): Job => {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error('the sample is a job');
  return parsed.job;
};
const sample = read(JSON.stringify(sampleFile()));
const bare = read(JSON.stringify({ format: 'cagewright/job', version: 1, name: 'Bare' }));

describe('what differs, in words', () => {
  it('is said of every kind of record, whichever side has it', () => {
    for (const [here, there, kind] of [
      [bare, sample, 'only-there'],
      [sample, bare, 'only-here'],
    ] as const) {
      const found = differencesOf(here, there).filter((one) => one.kind === kind);
      for (const { name, records } of SHELVES) {
        if (records(sample).length > 0) expect(found.map(({ on }) => on)).toContain(name);
      }
      const said = found.map((one) => recordInWords(one, here, there));
      for (const words of said) expect(words).not.toMatch(/undefined|NaN|\[object|^\s*$/u);
      expect(said).toContain('Bend run of Main hoop');
      expect(said).toContain('Rear stay is cut');
      expect(said).toContain('Pull to 63.2° that gave 60° on 6 in CLR, 2026-03-02');
      expect(said).toContain('Laid down: the height of Tower');
    }
  });

  it('gives both values in the unit of the open job, with names for ids', () => {
    const there: Job = {
      ...sample,
      measurements: sample.measurements.map((one) => (one.id === 'r2' ? { ...one, value: 1016 } : one)),
      members: sample.members.map((one) =>
        one.id === 'stay'
          ? { ...one, path: ['stay-top', 'leg'], ends: [one.ends[0], { fit: 'auto', allowance: 0 }] }
          : one,
      ),
    };
    const [reading, member] = differencesOf(sample, there);
    expect(recordInWords(reading!, sample, there)).toBe('The tape from Sill top, left to Tower');
    expect(fieldLines(reading!.fields, sample, there)).toEqual([{ label: 'Value', here: '39.780 in', there: '40 in' }]);
    expect(fieldLines(member!.fields, sample, there)).toEqual([
      { label: 'Runs through', here: 'stay-top and tower', there: 'stay-top and leg' },
      { label: 'End B, how it is cut', here: 'square', there: 'auto' },
    ]);
  });

  it('says in which of several it stands', () => {
    const [saw] = sample.tools!.saws;
    const there = { ...sample, tools: { ...sample.tools!, saws: [{ ...saw!, reach: 50.8 }] } };
    const [tools] = differencesOf(sample, there);
    expect(recordInWords(tools!, sample, there)).toBe('Notchers and saws');
    expect(fieldLines(tools!.fields, sample, there)).toEqual([
      { label: 'Saw 1, reach', here: '1.614 in', there: '2 in' },
    ]);
  });

  it('counts what would be too much to read', () => {
    const fields = Array.from({ length: 12 }, (_, i) => ({ field: `figure${i}`, here: i, there: i + 1 }));
    const lines = fieldLines(fields, sample, sample);
    expect(lines).toHaveLength(7);
    expect(lines.at(-1)!.label).toBe('and 6 more');
  });

  it('says so where two values read alike and are not', () => {
    const [line] = fieldLines([{ field: 'value', here: 100, there: 100.000_01 }], sample, sample);
    expect(line!.there).toBe(`${line!.here}, but not the same`);
  });
});
