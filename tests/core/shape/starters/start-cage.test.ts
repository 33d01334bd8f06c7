/**
 * Cages begun from tape figures, on cars drawn by chance and on the usual one. Expectations are common practice: no error, bars clear of each other,
 * the gap to the trim kept, bends in whole degrees, each end on the axis of the tube that it is coped to.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derive, type Derived } from '../../../../src/core/derive.ts';
import { nearestOnPath } from '../../../../src/core/geometry/path.ts';
import { distance, mirrored } from '../../../../src/core/geometry/vector.ts';
import { toDegrees } from '../../../../src/core/geometry/angle.ts';
import { movePoint } from '../../../../src/core/edit/points.ts';
import { parseJob } from '../../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../../src/core/job/serialise.ts';
import { primed } from '../../../../src/core/job/reference.ts';
import type { Section } from '../../../../src/core/job/kinds/section.ts';
import type { Job } from '../../../../src/core/job/types.ts';
import {
  figuresAsked,
  FIRST_BARS,
  firstFigures,
  firstTube,
  lightEnough,
  ofMain,
  type Asked,
} from '../../../../src/core/shape/starters/asked.ts';
import { LAYOUTS, spotsOf } from '../../../../src/core/survey/spots.ts';
import { lacksDoors, startCage } from '../../../../src/core/shape/starters/start-cage.ts';
import { drawn } from '../../../draws.ts';
import { asked, BENCHES, plainly, shopJob } from './cars.ts';

function derived(job: Job): Derived {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
}

/** mm: radii of dies that shops have. */
const BENT = [230, 100, 200, 115, 215, 180, 150];

const errorsOf = ({ findings }: Derived): readonly string[] =>
  findings.filter(({ severity }) => severity === 'error').map(({ id, tube }) => `${id} ${tube}`);

/** From the points of the car that a side goes by to the outside of hoops and legs, mm: the least. */
function leastToTrim(job: Job, frame: Derived): number {
  const trim = job.points.filter(({ id }) => ['belt-b', 'roof-b', 'screen-top', 'screen-foot'].includes(id));
  const shaped = frame.tubes.filter(({ member }) => /hoop|front-leg|roof-ring|roof-rail/u.test(member.role));
  return Math.min(
    ...trim.flatMap(({ position }) =>
      shaped.map(({ path, section }) => nearestOnPath(path, position).distance - section.outerDiameter / 2),
    ),
  );
}

test('on cars drawn by chance, of three kinds of tube, on dies of 100 to 230 mm: no error, no overlap, the gap to the trim kept, both sides alike, whole degrees', () => {
  let lacking = 0;
  for (const [i, one] of fc.sample(asked, { seed: 7, numRuns: drawn(20, 300) }).entries()) {
    const bench = BENCHES[i % BENCHES.length]!;
    const job = startCage(shopJob('mm', { ...bench, bent: i % 2 === 0 ? bench.bent : BENT[i % BENT.length]! }), one);
    const read = parseJob(serialiseJob(job));
    expect(read.ok ? [] : read.faults, JSON.stringify(one)).toEqual([]);
    const frame = derived(job);
    expect(errorsOf(frame), JSON.stringify(one)).toEqual([]);
    expect(leastToTrim(job, frame)).toBeGreaterThanOrEqual(one.figures.gap.value - 1e-6);
    lacking += lacksDoors(one, job) ? 1 : 0;
    for (const { member, bends } of frame.tubes) {
      if (member.path.length > 2) {
        for (const { angle } of bends)
          expect(Math.abs(toDegrees(angle) - Math.round(toDegrees(angle)))).toBeLessThan(1e-6);
      }
    }
    // Alike: a tube across the car is its own image, any other but the diagonals has a twin.
    for (const { mirror, path, role } of job.members) {
      if (mirror || /diagonal/u.test(role)) continue;
      const image = path.toReversed().map(primed);
      for (const [i, ref] of path.entries()) {
        expect(distance(frame.nodes.get(ref)!, frame.nodes.get(image[i]!)!), role).toBeLessThan(1e-9);
      }
    }
  }
  // Five on the usual dies; a large one takes more of a short pillar, and a brace moves the dash bar down.
  expect(lacking, 'cars whose pillars leave no room for door bars').toBeLessThanOrEqual(drawn(1, 8));
});

describe.each(LAYOUTS)('%s', (layout) => {
  test('on any die, on the usual car and on one with a short roof: no error', () => {
    const short = { screenTopAhead: 450, roofHeight: 1080, beltHeight: 650, harnessHeight: 690, screenTopHeight: 1000 };
    const usual = firstFigures('mm');
    const changed = Object.fromEntries(Object.entries(short).map(([name, value]) => [name, { value, guessed: false }]));
    for (const [i, bent] of BENT.slice(0, drawn(3, BENT.length)).entries()) {
      for (const figures of [usual, { ...usual, ...changed }]) {
        const one = { ...plainly(layout, figures), bars: { ...FIRST_BARS, pillarBraces: true } };
        const job = startCage(shopJob('mm', { ...BENCHES[i % BENCHES.length]!, bent }), one);
        expect(errorsOf(derived(job)), `${bent}`).toEqual([]);
      }
    }
  });

  test.each(['mm', 'in'] as const)('on the usual car, in %s: every end that is coped stands on an axis', (unit) => {
    const job = startCage(shopJob(unit), plainly(layout, firstFigures(unit)));
    const frame = derived(job);
    expect(errorsOf(frame)).toEqual([]);
    const feet = frame.tubes.flatMap(({ ends }) => ends.filter(({ foot }) => foot !== null));
    expect(feet.length).toBe(
      { 'roll-bar': 4, 'six-point': 6, 'two-hoops': 6, 'roof-ring': 6, 'side-hoops': 6 }[layout],
    );
    // Common practice: feet of hoops and legs begin 25 to 50 mm long.
    expect(new Set(feet.map(({ allowance }) => allowance))).toEqual(new Set([unit === 'mm' ? 25 : 25.4]));
    const asTheShop = startCage(shopJob(unit), plainly(layout, firstFigures(unit)), 40);
    const left = asTheShop.members.flatMap(({ ends }) =>
      ends.map(({ fit, allowance }) => `${fit === 'foot'} ${allowance}`),
    );
    expect(new Set(left)).toEqual(new Set(['true 40', 'false 0']));
    for (const { ends, id } of frame.tubes) {
      for (const end of ends) {
        if (end.foot !== null) continue;
        const off = end.cuts.map(({ against }) => nearestOnPath(frame.bars.get(against)!.path, end.position).distance);
        expect(Math.min(...off), id).toBeLessThan(0.01);
      }
    }
  });

  test('follows the car: a point moved by a few millimetres moves the cage and makes no error', () => {
    const job = startCage(shopJob('mm'), plainly(layout, firstFigures('mm')));
    for (const spot of spotsOf(layout)) {
      const [x, y, z] = job.points.find(({ id }) => id === spot)!.position;
      const moved = movePoint(job, spot, [x + 2, y - 1.5, z + 1]);
      const [before, after] = [derived(job), derived(moved)];
      expect(errorsOf(after), spot).toEqual([]);
      expect(
        [...after.nodes].some(([id, place]) => distance(place, before.nodes.get(id)!) > 1),
        spot,
      ).toBe(true);
    }
  });
});

test('the driver on the right: the same cage in the mirror', () => {
  const left = derived(startCage(shopJob('mm'), plainly('six-point', firstFigures('mm'))));
  const right = derived(startCage(shopJob('mm'), { ...plainly('six-point', firstFigures('mm')), driver: 'right' }));
  for (const id of ['diagonal', 'roof-diagonal']) {
    const [a, b] = [left.bars.get(id)!, right.bars.get(id)!];
    const ends = (bar: typeof a) => bar.member.path;
    for (const [i, ref] of ends(a).entries()) {
      expect(distance(mirrored(left.nodes.get(ref)!), right.nodes.get(ends(b)[i]!)!)).toBeLessThan(1e-9);
    }
  }
});

test('measured points stand in for the figures: by their mean where both sides are measured, by the one there is where not', () => {
  const points = [
    { id: 'rail-l', name: 'Rail, left', position: [-10, 530, 1120] as const },
    { id: 'rail-r', name: 'Rail, right', position: [-8, -534, 1124] as const },
    { id: 'far', name: 'Tower', position: [-800, -480, 520] as const },
  ];
  const given: Asked = { ...plainly('roll-bar', firstFigures('mm')), points: { 'roof-b': 'rail-r', tower: 'far' } };
  expect(figuresAsked(given)).toEqual(['floorWidth', 'beltWidth', 'beltHeight', 'harnessHeight', 'gap']);
  const job = startCage({ ...shopJob('mm'), points }, given);
  const frame = derived(job);
  expect(errorsOf(frame)).toEqual([]);
  // Halfway between (-10, 530, 1120) and (-8, 534, 1124).
  const [x, , z] = frame.nodes.get('hoop-corner')!;
  expect([x, z]).toEqual([-9, 1122 - given.figures.gap.value - 22.5]);
  expect(frame.nodes.get('stay-foot')).toEqual([-800, 480, 520]);
  expect(job.points.map(({ id }) => id)).toEqual(['rail-l', 'rail-r', 'far', 'floor-b', 'belt-b']);
});

test('points at figures that nobody has said are marked as guesses, others not', () => {
  const figures = firstFigures('in');
  const said = { ...figures, beltWidth: { value: 1340, guessed: false }, beltHeight: { value: 630, guessed: false } };
  const job = startCage(shopJob('in'), plainly('roll-bar', said));
  expect(job.points.map(({ id, guessed }) => [id, guessed ?? false])).toEqual([
    ['floor-b', true],
    ['belt-b', false],
    ['roof-b', true],
    ['tower', true],
  ]);
});

test('without bars by choice only hoops, legs and stays are there', () => {
  const none = {
    ...FIRST_BARS,
    diagonal: false,
    harness: false,
    rear: 'none',
    towerBar: false,
    doors: 'none',
  } as const;
  const bare = { ...none, sills: false, roof: 'none', dash: false } as const;
  const job = startCage(shopJob('mm'), { ...plainly('six-point', firstFigures('mm')), bars: bare });
  expect(job.members.map(({ role }) => role)).toEqual(['main-hoop', 'front-leg', 'windscreen-header', 'rear-stay']);
});

test('tube for a start: the thickest that a die fits, and the next thinner one; none without a die', () => {
  const shop = shopJob('mm');
  expect(firstTube(shop)).toEqual({ main: 'main', light: 'light', die: 'die' });
  expect(firstTube({ ...shop, dies: [] })).toBe(null);
  const single = { main: 'main', light: 'main', die: 'die' };
  expect(firstTube({ ...shop, sections: shop.sections.slice(0, 1) })).toEqual(single);
});

test('bars between are never thicker than the hoops that cut them', () => {
  const shop = shopJob('mm');
  const [main, light] = shop.sections as [Section, Section];
  const withDie = { ...shop, dies: [...shop.dies, { ...shop.dies[0]!, id: 'small', outerDiameter: 38 }] };
  expect(lightEnough(withDie, main)).toEqual([main, light]);
  expect(lightEnough(withDie, light)).toEqual([light]);
  expect(ofMain(withDie, main, 'light')).toEqual({ main: 'main', light: 'light', die: 'die' });
  expect(ofMain(withDie, light, 'main')).toEqual({ main: 'light', light: 'light', die: 'small' });
});
