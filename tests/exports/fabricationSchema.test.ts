import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { fabricationJson } from '../../src/exports/tables/fabrication.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { derive } from '../../src/core/derive.ts';
import { derived } from '../core/frame.ts';
import { jsonSchemaOf, laidOut } from '../core/job/jsonSchema.ts';
import { fabricationSchema } from './fabricationSchema.ts';

const troubles = (text: string) =>
  v.safeParse(fabricationSchema, JSON.parse(text)).issues?.map((issue) => `${v.getDotPath(issue)}: ${issue.message}`) ??
  [];

describe('the fabrication file', () => {
  it('of the demo holds each field that its schema names, and no other', () => {
    const job = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
    const derivation = job.ok ? derive(job.job) : job;
    if (!derivation.ok) throw new Error('the demo does not derive');
    expect(troubles(fabricationJson(derivation.value))).toEqual([]);
  });
  it('of a job full of faults does too', () => {
    const broken = derived({
      nodes: { a: [0, 0, 0], b: [300, 0, 0], c: [300, 200, 0], d: [350, 200, 60], e: [0, 90, 10], f: [400, 90, 10] },
      sections: [{ id: 'main', outerDiameter: 44.45, wall: 3.048, material: 'unknown stock' }],
      members: [
        { id: 'bent', path: ['a', 'b', 'c', 'd'] },
        {
          id: 'bar',
          path: ['e', 'f'],
          ends: [
            { fit: 'cope', against: ['bent'] },
            { fit: 'plate', normal: [0, 0, 1] },
          ],
        },
      ],
      envelopes: [{ id: 'head', kind: 'box', centre: [300, 100, 0], size: [200, 200, 200], gap: 50 }],
    });
    expect(broken.findings.filter((finding) => finding.severity === 'error').length).toBeGreaterThan(2);
    expect(troubles(fabricationJson(broken))).toEqual([]);
  });
  // After a change of the file: npx vitest run tests/exports/fabricationSchema.test.ts -u
  it('docs/fabrication.schema.json says the same', async () => {
    await expect(`${laidOut(jsonSchemaOf(fabricationSchema))}\n`).toMatchFileSnapshot(
      '../../docs/fabrication.schema.json',
    );
  });
});
