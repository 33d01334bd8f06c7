/**
 * Whether a bar can be what its role says, by where it stands: a bar named rear stay that runs forward is none, whatever it is called. What is looked at is
 * common practice and wide: it tells another bar by a wrong name, not a poor one by its right name.
 */
import { length, subtract, type Vec3 } from '../geometry/vector.ts';
import { distanceToPath } from '../geometry/path.ts';
import { remembered } from '../remembered.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { isRole } from '../job/role.ts';
import type { Misfit } from './types.ts';

/** mm on either side of the middle of the car: a bar that ends no farther out does not count as on one side. */
const MIDDLE = 50;
/** Rise over run: a bar across the car that slopes more is no level one (20 degrees). */
const STEEP = Math.tan((20 * Math.PI) / 180);
/** mm: an end so near to the hoop's centreline is on it, coped and offset places among them: three diameters of wide tube. */
const AT_HOOP = 150;

/** The first thing that belies its role; null where nothing does, or the role has no place of its own. */
export function misfitOf(bar: Bar, frame: Pick<Frame, 'bars'>): Misfit | null {
  const known = knownOf(frame.bars);
  const before = known.get(bar);
  if (before !== undefined) return before;
  const found = firstMisfit(bar, frame);
  known.set(bar, found);
  return found;
}

/** Every article of every sheet asks the same of the same frame. */
const knownOf = remembered((_bars: Frame['bars']) => new Map<Bar, Misfit | null>());

function firstMisfit(bar: Bar, frame: Pick<Frame, 'bars'>): Misfit | null {
  const tests = TESTS.find(([roles]) => roles.some((role) => isRole(bar.member, role)))?.[1] ?? [];
  for (const test of tests) {
    const found = test(bar, frame);
    if (found !== null) return found;
  }
  return null;
}

type Test = (bar: Bar, frame: Pick<Frame, 'bars'>) => Misfit | null;

const places = ({ ends: [a, b] }: Bar): readonly [Vec3, Vec3] => [a.position, b.position];

/** Its ends lie on either side of the car's middle. */
const isAcross = (bar: Bar): boolean => {
  const [a, b] = places(bar);
  return a[1] * b[1] < 0 && Math.min(Math.abs(a[1]), Math.abs(b[1])) > MIDDLE;
};

const across: Test = (bar) => (isAcross(bar) ? null : 'does-not-cross');
const onOneSide: Test = (bar) => (isAcross(bar) ? 'crosses' : null);
const bent: Test = (bar) => (bar.bends.length > 0 ? null : 'straight');

const level: Test = (bar) => {
  const [a, b] = places(bar);
  const [x, y, z] = subtract(b, a);
  return Math.abs(z) > STEEP * Math.hypot(x, y) ? 'not-level' : null;
};

/** What stands behind the driver: one hoop, or the rear legs of two side hoops with the bar between them. */
const BEHIND_DRIVER = ['main-hoop', 'side-hoop', 'rear-roof-bar'];

const hoops = ({ bars }: Pick<Frame, 'bars'>): readonly Bar[] =>
  [...bars.values()].filter(({ member }) => BEHIND_DRIVER.some((role) => isRole(member, role)));

/** mm to the nearest centreline of these; endless without one. */
const offHoop = (place: Vec3, frame: Pick<Frame, 'bars'>): number =>
  Math.min(...hoops(frame).map(({ path }) => distanceToPath(path, place)));

const inHoop: Test = (bar, frame) =>
  places(bar).every((place) => offHoop(place, frame) <= AT_HOOP) ? null : 'not-in-hoop';

/** It begins at the hoop, by the end that is nearer to it, and goes rearward from there. */
const rearFromHoop: Test = (bar, frame) => {
  const [a, b] = places(bar);
  const [near, far] = offHoop(a, frame) <= offHoop(b, frame) ? [a, b] : [b, a];
  if (offHoop(near, frame) > AT_HOOP) return 'not-from-hoop';
  return far[0] < near[0] ? null : 'not-rearward';
};

/** From its upper end. */
const forward: Test = (bar) => {
  const [a, b] = places(bar);
  const [upper, lower] = a[2] >= b[2] ? [a, b] : [b, a];
  return lower[0] > upper[0] ? null : 'not-forward';
};

/** It runs along the car or up more than across it. */
const alongSide: Test = (bar) => {
  const [a, b] = places(bar);
  const apart = subtract(b, a);
  return Math.abs(apart[1]) > length([apart[0], 0, apart[2]]) ? 'not-along' : null;
};

const TESTS: readonly (readonly [readonly string[], readonly Test[]])[] = [
  [['main-hoop'], [bent, across]],
  [['front-hoop'], [bent, across]],
  [['side-hoop'], [bent, onOneSide]],
  [['front-leg'], [bent, onOneSide, forward]],
  [['rear-stay'], [onOneSide, rearFromHoop]],
  [['main-diagonal'], [across, inHoop]],
  [['harness-bar'], [across, level, inHoop]],
  [
    ['windscreen-header', 'dash-bar'],
    [across, level],
  ],
  [
    ['door-bar', 'sill-bar'],
    [onOneSide, alongSide],
  ],
];
