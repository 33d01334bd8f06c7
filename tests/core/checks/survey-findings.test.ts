/** Where a finding of the survey stands in the car. */
import { expect, it } from 'vitest';
import { surveyTrouble } from '../../../src/core/checks/survey-findings.ts';
import type { Measurement } from '../../../src/core/job/kinds/measurement.ts';
import { adjust } from '../../../src/core/survey/adjust.ts';
import { fixed, frameOf, jobOf, member, tubing } from '../../reference/jobs.ts';

it('a reading of a mirror image that is off is found at the image, where it was read', () => {
  const place = { x: 900, y: 400, z: 200 };
  const sure = ([1, 2, 3] as const).flatMap((nth) =>
    (['x', 'y', 'z'] as const).map((axis): Measurement => ({
      id: `${axis}${nth}`,
      kind: 'coordinate',
      point: 'p',
      axis,
      value: place[axis],
    })),
  );
  const job = jobOf({
    points: [
      { id: 'p', name: 'Sill, left', by: 'survey', position: [0, 0, 0] },
      { id: 'q', name: 'Datum', position: [0, 0, 0] },
    ],
    // From the image it is some 1005 mm; the tape was read 100 mm short.
    measurements: [...sure, { id: 'off', kind: 'distance', from: "p'", to: 'q', value: 905 }],
    sections: [tubing('t', 40, 2)],
    nodes: [{ id: 'a', name: '', at: { kind: 'point', point: 'p', offset: [0, 0, 0] } }, fixed('b', [900, 400, 900])],
    members: [member('m', ['a', 'b'], 't')],
  });
  const [found, ...others] = [...surveyTrouble(frameOf(job), adjust(job))];
  expect(others).toEqual([]);
  expect(found).toMatchObject({ id: 'point/reading-off', tube: 'm', measurement: { id: 'off' } });
  // On the right; the reading, as heavy as the others, has drawn the point some 15 mm to itself.
  const [, y] = adjust(job)!.points[0]!.position;
  expect(y).toBeGreaterThan(380);
  expect(found!.at[1]).toBe(-y);
});
