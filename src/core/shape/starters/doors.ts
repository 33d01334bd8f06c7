/** Door bars: an X that crosses on the axes, or level bars. */
import { cross, dot, normalize, scale, subtract, type Vec3 } from '../../geometry/vector.ts';
import type { Place } from '../../job/places.ts';
import type { Coordinate } from '../../job/places/coordinate.ts';
import type { NodeId } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { dashBelow, hasDash } from './between.ts';
import { follows } from './car.ts';
import { belowCorner, placeIn, spotted, upFrom, withBar, withNode, type Plan, type Upright } from './plan.ts';
import type { Sides } from './skeleton.ts';
import { CLEAR, LOW, PAST_DASH, PAST_LEVEL, PAST_SILL, SILL } from './spacing.ts';

/** Heights of level bars as shares of the belt line's: the lower half of the opening and a little over (common practice). */
const LEVELS = { one: [0.5], two: [0.35, 0.65] } as const;

/** None where the pillars leave no room for them. */
export function withDoors(job: Job, plan: Plan, sides: Sides): Job {
  const { doors } = plan.asked.bars;
  if (doors === 'none') return job;
  if (doors === 'cross') return withCross(job, plan, sides);
  const heights = levels(job, plan, sides, doors);
  return heights.reduce((grown, height, i) => withLevel(grown, plan, sides, height, i + 1), job);
}

/** Heights of level bars, the lowest first: above the joints at either foot, below the dash bar's, clear of each other; as many as there is room for. */
function levels(job: Job, plan: Plan, { rear, front }: Sides, doors: keyof typeof LEVELS): readonly number[] {
  const [floor, belt, toe] = [spotted(plan, 'floor-b').at, spotted(plan, 'belt-b').at, spotted(plan, 'floor-a').at];
  const lowest = Math.max(floor[2] + rear.foot + LOW * plan.thick, toe[2] + front.foot + PAST_SILL * plan.thick);
  const below = withNode(job, 'door-front-1', '', belowCorner(front, belowDash(job, plan, front)));
  const highest = placeIn(below, 'door-front-1')?.[2] ?? lowest;
  const apart = PAST_LEVEL * plan.thick;
  const room = Math.max(0, 1 + Math.floor((highest - lowest) / apart));
  const shares = LEVELS[doors].slice(0, room);
  return shares.map((share, i) => {
    const wanted = Math.max(floor[2] + share * (belt[2] - floor[2]), lowest + i * apart);
    return Math.min(wanted, highest - (shares.length - 1 - i) * apart);
  });
}

/** How far below the bend at the dash the highest door bar lands, mm. */
const belowDash = (job: Job, plan: Plan, front: Upright): number =>
  hasDash(plan) ? dashBelow(job, plan, front) + PAST_DASH * plan.thick : CLEAR * plan.thick;

type Four = readonly [number, number, number, number];
type End = readonly [id: NodeId, name: string, at: Extract<Place, { kind: 'on' }>];

function withCross(job: Job, plan: Plan, { rear, front }: Sides): Job {
  const { thick, asked } = plan;
  const [rearLow, frontLow] = [LOW, asked.bars.sills ? PAST_SILL : SILL];
  const ends: readonly End[] = [
    ['door-rear-high', 'Door bar high at the B-pillar', belowCorner(rear, belowHarness(job, plan, rear))],
    ['door-front-low', 'Door bar low at the windscreen pillar', upFrom(front, frontLow * thick)],
    ['door-rear-low', 'Door bar low at the B-pillar', upFrom(rear, rearLow * thick)],
    ['door-front-high', 'Door bar high at the windscreen pillar', belowCorner(front, belowDash(job, plan, front))],
  ];
  const noded = met(job, ends);
  const [rearHigh, toe, heel, frontHigh] = ends.map(([id]) => placeIn(noded, id)?.[2] ?? Number.NaN) as unknown as Four;
  if (!(Math.min(rearHigh - heel, frontHigh - toe) >= PAST_LEVEL * thick)) return job;
  const through = withBar(noded, {
    id: 'door',
    name: 'Door bar, through',
    role: 'door-bar',
    path: ['door-rear-high', 'door-front-low'],
    section: asked.main,
    mirror: true,
  });
  return withBar(through, {
    id: 'door-brace',
    name: 'Door bar, cut',
    role: 'door-bar',
    path: ['door-rear-low', 'door-front-high'],
    section: asked.light,
    mirror: true,
    cutBy: ['door'],
  });
}

/**
 * Two lines from pillar to pillar pass each other where the pillars do not lie in one plane. Each is moved off the pillars' axes by half of
 * that, so that the bars cross on their axes and the one that is cut is cut right through.
 */
function met(job: Job, ends: readonly End[]): Job {
  const on = (apart: readonly Vec3[]): Job =>
    ends.reduce((grown, [id, name, at], i) => withNode(grown, id, name, { ...at, offset: apart[i]! }), job);
  const axes = on([ON_AXIS, ON_AXIS, ON_AXIS, ON_AXIS]);
  const [a, b, c, d] = ends.map(([id]) => placeIn(axes, id));
  if (!a || !b || !c || !d) return axes;
  const across = normalize(cross(subtract(b, a), subtract(d, c)));
  const half = dot(subtract(c, a), across) / 2;
  const [through, cut] = [scale(across, half), scale(across, -half)];
  return on([through, through, cut, cut]);
}

const ON_AXIS: Vec3 = [0, 0, 0];

/** How far below the shoulder's bend the upper door bar lands: clear of the bend, and of the harness bar where that lands near. */
function belowHarness(job: Job, plan: Plan, rear: Upright): number {
  const clear = CLEAR * plan.thick;
  if (!plan.asked.bars.harness) return clear;
  const tried = withNode(job, 'door-rear-high', '', belowCorner(rear, clear));
  const [door, harness] = [placeIn(tried, 'door-rear-high'), placeIn(tried, 'harness-end')];
  if (door === null || harness === null) return clear;
  const apart = (plan.thick + plan.thin) / 2 + 0.3 * plan.thin;
  const above = door[2] - harness[2];
  return Math.abs(above) >= apart ? clear : clear + above + apart;
}

/** At one height, which the front end takes from the rear one. */
function withLevel(job: Job, plan: Plan, { rear, front }: Sides, height: number, number: number): Job {
  const floor = spotted(plan, 'floor-b');
  const end = `door-rear-${number}`;
  const on = ({ member }: Upright, until: Coordinate, nth: number): Place => ({
    kind: 'on',
    member,
    until: { axis: 'z', ...until },
    nth,
    offset: ON_AXIS,
  });
  const rearEnd = withNode(job, end, `Door bar ${number} at the B-pillar`, on(rear, follows(floor, 2, height), 1));
  // A side hoop comes to the height at its rear first.
  const nth = front.member === rear.member ? 2 : 1;
  const ended = withNode(
    rearEnd,
    `door-front-${number}`,
    `Door bar ${number} at the windscreen pillar`,
    on(front, { node: end, plus: 0 }, nth),
  );
  return withBar(ended, {
    id: `door-${number}`,
    name: number === 1 ? 'Door bar' : 'Upper door bar',
    role: 'door-bar',
    path: [end, `door-front-${number}`],
    section: plan.asked.main,
    mirror: true,
  });
}
