/** Places of the car told by the names of measured points. The names are our own. */
import { expect, test } from 'vitest';
import { jobOf } from '../../reference/jobs.ts';
import { spotsByName } from '../../../src/core/survey/spots-by-name.ts';

const named = (...names: readonly (readonly [name: string, y: number])[]) =>
  jobOf({ points: names.map(([name, y], i) => ({ id: `p${i}`, name, position: [0, y, 0] })) });

test('the left one of a place, else the right one; none on the middle', () => {
  expect(spotsByName(named(['Roof rail at B-pillar, R', -500], ['roof rail at B pillar, L', 500]))).toEqual({
    'roof-b': 'p1',
  });
  expect(spotsByName(named(['Belt line at the hoop', -500]))).toEqual({ 'belt-b': 'p0' });
  expect(spotsByName(named(['Rear tower', 0]))).toEqual({});
});

test('windscreen and rear window, front and rear towers are told apart', () => {
  const job = named(
    ['Rear windscreen, top', 500],
    ['Front tower, rear face', 500],
    ['Windshield, upper corner', 480],
    ['Wind screen, foot', 600],
    ['Spring turret, rear', 480],
  );
  expect(spotsByName(job)).toEqual({ 'screen-top': 'p2', 'screen-foot': 'p3', tower: 'p4' });
});

test('a side is that on which a point was measured, not where it was guessed', () => {
  const guessed = named(['Belt line at the hoop, right', 500], ['Belt line at the hoop, left', 500]);
  const job = {
    ...guessed,
    points: guessed.points.map((point) => ({ ...point, by: 'survey' as const })),
    measurements: [-500, 500].map((value, i) => ({
      id: `m${i}`,
      kind: 'coordinate' as const,
      point: `p${i}`,
      axis: 'y' as const,
      value,
    })),
  };
  expect(spotsByName(guessed)).toEqual({ 'belt-b': 'p0' });
  expect(spotsByName(job)).toEqual({ 'belt-b': 'p1' });
});
