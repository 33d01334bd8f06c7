import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { fabricationJson } from '../../src/exports/tables/fabrication.ts';
import { forecastFit } from '../../src/core/forecast/forecast.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { derive } from '../../src/core/derive.ts';
import type { FabricationFile } from '../../src/exports/tables/fabrication.ts';
import { mirrored } from '../../src/core/geometry/vector.ts';
import { derivedLeg } from '../core/feet/feet-jobs.ts';
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
    expect(troubles(fabricationJson(derivation.value, { forecast: forecastFit(derivation.value) }))).toEqual([]);
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
  it('of a job with feet does too, and of what stands on a twin gives the mirror image', () => {
    const kink = { runs: 'across', at: 55, angle: 20, radius: 3 };
    const leg = {
      foot: { kind: 'plate', size: [150, 100], thickness: 3, kink },
      normal: [0, -0.1, 1],
      mirror: true,
    } as const;
    const text = fabricationJson(derivedLeg(leg));
    expect(troubles(text)).toEqual([]);
    const { feet, tubes } = JSON.parse(text) as FabricationFile;
    expect(feet.map(({ tube, end, foot }) => [tube, end, foot])).toEqual([
      ['leg', 'B', 'foot'],
      ["leg'", 'B', 'foot'],
    ]);
    const [own, twin] = [feet[0]!, feet[1]!];
    const images = [...own.corners, ...own.kink!, own.outline!.centre, own.outline!.longAxis].map(mirrored);
    const onTwin = [...twin.corners, ...twin.kink!, twin.outline!.centre, twin.outline!.longAxis];
    images.forEach((image, i) => image.forEach((value, k) => expect(onTwin[i]![k]).toBeCloseTo(value, 9)));
    // The axis, from its node, meets the upper face there: 3 mm up the normal.
    const { corners } = tubes[0]!;
    const [from, to] = [corners.at(-1)!, corners[0]!];
    const share = 3 / ((-0.1 * (to[1] - from[1]) + (to[2] - from[2])) / Math.hypot(0.1, 1));
    own.outline!.centre.forEach((value, k) => expect(value).toBeCloseTo(from[k]! + share * (to[k]! - from[k]!), 9));
  });
  // After a change of the file: npx vitest run tests/exports/fabricationSchema.test.ts -u
  it('docs/fabrication.schema.json says the same', async () => {
    await expect(`${laidOut(jsonSchemaOf(fabricationSchema))}\n`).toMatchFileSnapshot(
      '../../docs/fabrication.schema.json',
    );
  });
});
