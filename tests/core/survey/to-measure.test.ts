import { expect, it } from 'vitest';
import { leaveOut } from '../../../src/core/edit/measurements.ts';
import { readStep } from '../../../src/core/edit/read-step.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { spotsByName } from '../../../src/core/survey/spots-by-name.ts';
import { LAYOUTS, spotsOf } from '../../../src/core/survey/spots.ts';
import {
  layoutMeant,
  leftOutOf,
  readingOf,
  stepsOf,
  toMeasure,
  type Step,
} from '../../../src/core/survey/to-measure.ts';
import { newPointName, placeName } from '../../../src/core/words/measuring.ts';

/** Read off by hand on paper: the same step by step, whatever the job has by then. */
const read = (job: Job, nth: number, value: number): Job =>
  readStep(job, stepsOf(toMeasure(job, 'six-point'))[nth]!, value, newPointName);

it('a point that was read at a place is that place from then on, and each reading is found again', () => {
  // Floor at the hoop, left and right: along, offset, height of each, then the width.
  const figures = [25, 600, 3, 24, 610, 5, 1210];
  let job = emptyJob('mm');
  const before = stepsOf(toMeasure(job, 'six-point')).length;
  figures.forEach((value, i) => {
    job = read(job, i, value);
    const steps = stepsOf(toMeasure(job, 'six-point'));
    expect(steps).toHaveLength(before);
    expect(steps.map((step) => readingOf(job, step)?.value ?? null).slice(0, 8)).toEqual([
      // What was read off the centreline to the right is kept to the right.
      ...figures.slice(0, i + 1).map((figure, at) => (at === 4 ? -figure : figure)),
      ...Array.from({ length: 7 - i }, () => null),
    ]);
  });
  expect(job.points.map(({ name, by }) => [name, by])).toEqual([
    ['Floor at the hoop, left', 'survey'],
    ['Floor at the hoop, right', 'survey'],
  ]);
  const { places, car } = toMeasure(job, 'six-point');
  expect(places[0]!.sides.map(({ at }) => at.map(Math.round))).toEqual([
    [25, 600, 3],
    [24, -610, 5],
  ]);
  // Read again it takes the place of what was read, and counts though that was left out.
  const again = read(leaveOut(job, job.measurements[4]!.id, true), 4, 612);
  expect(again.measurements).toEqual(job.measurements.map((each, i) => (i === 4 ? { ...each, value: -612 } : each)));
  // Left out it is not read, and with what it was read is kept from the last time that this was said.
  const fourth = stepsOf(toMeasure(job, 'six-point'))[4]!;
  const out = leaveOut(job, job.measurements[4]!.id, true);
  expect([readingOf(out, fourth), leftOutOf(out, fourth)?.value]).toEqual([null, -610]);
  expect([readingOf(job, fourth)?.value, leftOutOf(job, fourth)]).toEqual([-610, null]);
  const rule = { instrument: 'Steel rule', sigma: 0.5 };
  const withRule = readStep(out, fourth, 611, newPointName, rule);
  expect(withRule.measurements[4]).toEqual({ ...job.measurements[4], value: -611, ...rule });
  expect(read(withRule, 4, 612).measurements[4]).toEqual({ ...withRule.measurements[4], value: -612 });
  const [tape] = stepsOf(toMeasure(job, 'six-point'))
    .filter(({ kind }) => kind === 'tape')
    .slice(1);
  expect(readStep(job, tape!, 900, newPointName, rule).measurements.at(-1)).toMatchObject({
    kind: 'distance',
    ...rule,
  });
  // What was not read yet is drawn as far from it as on an ordinary car.
  expect(car!.tower[0]).toBeCloseTo(-775, 0);
});

it('what is read at every place of a layout is what a starter finds by name', () => {
  for (const layout of LAYOUTS) {
    const steps = stepsOf(toMeasure(emptyJob('mm'), layout));
    const named = steps.flatMap((step) => (step.kind === 'coordinate' ? [newPointName(step.place, step.on)] : []));
    const points = [...new Set(named)].map((name, i) => ({
      id: `p${i}`,
      name,
      position: [0, name.endsWith('left') ? 500 : -500, 0] as const,
    }));
    const spots = spotsByName({ ...emptyJob('mm'), points });
    expect(Object.keys(spots)).toEqual(spotsOf(layout));
    for (const [spot, id] of Object.entries(spots)) {
      const { places } = toMeasure({ ...emptyJob('mm'), points }, layout);
      const place = places.find((each) => each.spot === spot)!;
      expect(place.sides.map(({ point }) => point?.name)).toEqual([
        points.find((point) => point.id === id)!.name,
        points.find((point) => point.id === id)!.name.replace('left', 'right'),
      ]);
    }
  }
});

it('a job of tubes is asked for its own points alone, in its order', () => {
  const point = (id: string, name: string, y: number) => ({ id, name, position: [100, y, 50] as const });
  const job: Job = {
    ...emptyJob('mm'),
    points: [
      point('a', 'Seat rail, R', -300),
      point('m', 'Tunnel', 0),
      point('b', 'Seat rail, L', 302),
      point('c', 'Extinguisher', 700),
    ],
  };
  expect(layoutMeant({ members: [{} as Job['members'][number]] })).toBeNull();
  const all = toMeasure(job, null);
  expect(all.car).toBeNull();
  expect(all.places.map((place) => [placeName(place), place.sides.map(({ side }) => side)])).toEqual([
    ['Seat rail', ['left', 'right']],
    ['Tunnel', ['middle']],
    ['Extinguisher', ['left']],
  ]);
  const asked = (step: Step): string => (step.kind === 'tape' ? 'tape' : `${step.on.point!.id} ${step.axis}`);
  expect(stepsOf(all).map(asked)).toEqual([
    'b x',
    'b y',
    'b z',
    'a x',
    'a y',
    'a z',
    'tape',
    'm x',
    'm y',
    'm z',
    'c x',
    'c y',
    'c z',
  ]);
});
