import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { shownName, withShownNames } from '../../../src/core/job/shown.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { COLLECTIONS } from '../../../src/core/job/kinds.ts';
import { csvFiles } from '../../../src/exports/tables/csv.ts';
import { fabricationJson } from '../../../src/exports/tables/fabrication.ts';
import { sampleFile } from './sample.ts';

const LONG = 'bar of a door '.repeat(1200);

/** The sample with a long name wherever there is one. */
function longNamed(): Job {
  const named = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(named);
    if (typeof value !== 'object' || value === null) return value;
    const entries = Object.entries(value).map(([key, item]) => [key, key === 'name' ? LONG : named(item)]);
    return Object.fromEntries(entries);
  };
  const parsed = parseJob(JSON.stringify(named(sampleFile())));
  if (!parsed.ok) throw new Error('a long name is no fault');
  return parsed.job;
}

describe('a name as it is shown', () => {
  it('is the name itself up to 200 characters', () => {
    expect(shownName('')).toBe('');
    expect(shownName('x'.repeat(200))).toBe('x'.repeat(200));
    expect(shownName('𝄞'.repeat(200))).toBe('𝄞'.repeat(200));
  });
  it('is its beginning and three dots beyond, no character cut in two', () => {
    expect(shownName('x'.repeat(201))).toBe(`${'x'.repeat(199)}…`);
    expect(shownName('𝄞'.repeat(5000))).toBe(`${'𝄞'.repeat(199)}…`);
    expect(shownName(shownName(LONG))).toBe(shownName(LONG));
  });
});

describe('a job with longer names', () => {
  it('keeps them, and is written with them', () => {
    const job = longNamed();
    expect(job.name).toBe(LONG);
    expect(parseJob(serialiseJob(job))).toEqual({ ok: true, job });
  });

  it('is shown with short ones, the same records each time; one with short names is shown as it is', () => {
    const job = longNamed();
    const shown = withShownNames(job);
    expect(JSON.stringify(shown)).not.toContain(LONG.slice(0, 201));
    expect(shown.dies[0]!.bender!.room.map(({ name }) => name)).toEqual([shownName(LONG), shownName(LONG)]);
    for (const collection of COLLECTIONS)
      withShownNames(job)[collection].forEach((record, i) => expect(record).toBe(shown[collection][i]));
    expect(withShownNames(shown)).toBe(shown);
  });

  it('is derived with short ones: no finding, table or file holds a long one', () => {
    const derivation = derive(longNamed());
    if (!derivation.ok) throw new Error('the sample derives');
    const texts = [fabricationJson(derivation.value), ...csvFiles(derivation.value).map(({ text }) => text)];
    expect(derivation.value.findings.length).toBeGreaterThan(0);
    for (const text of texts) expect(text).not.toContain(LONG.slice(0, 201));
    const again = derive(longNamed(), derivation.value);
    expect(again.ok && fabricationJson(again.value)).toBe(texts[0]);
  });
});
