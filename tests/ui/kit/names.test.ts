import { expect, it } from 'vitest';
import { measuredPlaces } from '../../../src/ui/kit/names.ts';
import { jobOf } from '../../reference/jobs.ts';

it('a place that was measured is chosen among the points, each once: no image of one whose other side was measured, or that lies in the middle', () => {
  const job = jobOf({
    points: [
      { id: 'l', name: 'Floor, left', position: [0, 600, 100] },
      { id: 'r', name: 'Floor, right', position: [4, -606, 98] },
      { id: 'm', name: 'Tunnel', position: [100, 0.4, 300] },
      { id: 'one', name: 'Tower, left', position: [-800, 500, 500] },
    ],
  });
  const values = (chosen?: string) => measuredPlaces(job, chosen).map(({ value }) => value);
  expect(values()).toEqual(['l', 'r', 'm', 'one', "one'"]);
  // A job may name one all the same.
  expect(values("l'")).toEqual(['l', "l'", 'r', 'm', 'one', "one'"]);
});

it('a measured point counts where it was measured, not where it was guessed', () => {
  const job = jobOf({
    points: [{ id: 'p', name: 'Tunnel', by: 'survey', position: [0, 500, 300] }],
    measurements: (['x', 'y', 'z'] as const).map((axis, i) => ({
      id: axis,
      kind: 'coordinate',
      point: 'p',
      axis,
      value: [100, 0.2, 300][i]!,
    })),
  });
  expect(measuredPlaces(job, undefined)).toEqual([{ value: 'p', label: 'Tunnel' }]);
});
