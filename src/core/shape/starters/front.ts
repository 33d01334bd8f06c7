/**
 * What stands at the windscreen, for each layout: two legs on the main hoop, a hoop of its own, legs under a ring round the roof. Corners
 * keep the gap from roof, pillar and dash, and move off them a little further where that gives whole degrees.
 */
import { add, mirrored, type Vec3 } from '../../geometry/vector.ts';
import { AUTO } from '../../job/kinds/end.ts';
import type { KeptAngle } from '../../job/kinds/member.ts';
import { primed, type NodeRef } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import type { Bend } from '../../solve/types.ts';
import { heightOf } from '../../job/kinds/foot.ts';
import { goingBy } from './car.ts';
import { screenCorner, shaped, upright, type Front } from './front-corners.ts';
import { hoopAlone, withPillar, withRoofRear } from './hoop.ts';
import { pillarOf } from './pillar.ts';
import {
  atBend,
  bendsIn,
  beside,
  inBend,
  onFoot,
  placeIn,
  spotted,
  withBar,
  withNode,
  withNodeBy,
  type Plan,
  type Upright,
} from './plan.ts';
import type { Layout, Skeleton } from './skeleton.ts';
import { BELOW_STAY, CLEAR, OVER_HARNESS, ROOF } from './spacing.ts';

const kept = (angles: readonly KeptAngle[]) => (angles.length === 0 ? {} : { keptAngles: angles });

const uprightOf = (plan: Plan, member: string, low: Upright['low'], corner: number): Upright => ({
  member,
  low,
  corner,
  foot: heightOf(plan.floorFoot),
});

/** Nodes of the corners at the windscreen; a leg under a roof ring has none at the upper one. */
function withFrontNodes(
  job: Job,
  plan: Plan,
  id: string,
  name: string,
  { screen, cowl, foot }: Omit<Front, 'screen'> & { readonly screen: Vec3 | null },
): Job {
  const withTrimNode = withNodeBy(plan, 'gap');
  const upper =
    screen === null
      ? job
      : withTrimNode(job, `${id}-screen`, `${name}, windscreen corner`, goingBy(spotted(plan, 'screen-top'), screen));
  const lower = withTrimNode(upper, `${id}-cowl`, `${name}, cowl corner`, goingBy(spotted(plan, 'screen-foot'), cowl));
  return withNode(lower, `${id}-foot`, `${name}, foot`, goingBy(spotted(plan, 'floor-a'), foot));
}

const withHeader = (job: Job, plan: Plan, end: string): Job =>
  withBar(job, {
    id: 'header',
    name: 'Windscreen header',
    role: 'windscreen-header',
    path: [end, primed(end)],
    section: plan.asked.main,
  });

const withLegs = (job: Job, plan: Plan, path: readonly NodeRef[], angles: readonly KeptAngle[]): Job =>
  withBar(job, {
    id: 'leg',
    name: 'Front leg',
    role: 'front-leg',
    path,
    section: plan.asked.main,
    die: plan.asked.die,
    mirror: true,
    ends: [AUTO, onFoot(plan, plan.floorFoot)],
    ...kept(angles),
  });

/** A main hoop and two front legs along roof rail and pillar, joined by a header. */
export const hoopAndLegs: Layout = (job, plan) => {
  const { job: hoop, skeleton } = hoopAlone(job, plan);
  const topped = withNode(hoop, 'leg-top', 'Front leg at the hoop', inBend('hoop', 2));
  const top = placeIn(topped, 'leg-top') ?? screenCorner(plan);
  const leg = shaped(plan, {
    moves: 3,
    corners: ([down, back, leant]) => ({
      screen: add(screenCorner(plan), [0, 0, -down!]),
      ...upright(plan, back!, leant!),
    }),
    way: ({ screen, cowl, foot: toe }) => [top, screen, cowl, toe],
    bends: [
      [1, 'leg-screen'],
      [2, 'leg-cowl'],
    ],
    isUpright: true,
  });
  const noded = withFrontNodes(topped, plan, 'leg', 'Front leg', leg);
  const legs = withLegs(noded, plan, ['leg-top', 'leg-screen', 'leg-cowl', 'leg-foot'], leg.kept);
  const ended = withNode(legs, 'header-end', 'Header at the front leg', beside('leg', 1, -CLEAR * plan.thick));
  return {
    job: withRoofRear(withHeader(ended, plan, 'header-end'), plan),
    skeleton: {
      ...skeleton,
      front: uprightOf(plan, 'leg', 'end', 2),
      roof: { rear: 'roof-rear', front: 'header-end', across: 'hoop' },
    },
  };
};

/** A main hoop and a hoop round the windscreen, joined along the roof rails. */
export const twoHoops: Layout = (job, plan) => {
  const { job: hoop, skeleton } = hoopAlone(job, plan);
  const shape = shaped(plan, {
    moves: 3,
    corners: ([narrow, back, leant]) => ({
      screen: add(screenCorner(plan), [0, -narrow!, 0]),
      ...upright(plan, back!, leant!),
    }),
    way: ({ screen, cowl, foot: toe }) => [toe, cowl, screen, mirrored(screen)],
    bends: [
      [1, 'front-cowl'],
      [2, 'front-screen'],
    ],
    isUpright: true,
  });
  const noded = withFrontNodes(hoop, plan, 'front', 'Front hoop', shape);
  const end = onFoot(plan, plan.floorFoot);
  const front = withBar(noded, {
    id: 'front',
    name: 'Front hoop',
    role: 'front-hoop',
    path: ['front-foot', 'front-cowl', 'front-screen', "front-screen'", "front-cowl'", "front-foot'"],
    section: plan.asked.main,
    die: plan.asked.die,
    ends: [end, end],
    ...kept(shape.kept),
  });
  const ended = withNode(
    withNode(front, 'rail-rear', 'Roof rail bar at the hoop', inBend('hoop', 2)),
    'rail-front',
    'Roof rail bar at the front hoop',
    inBend('front', 2),
  );
  const rails = withBar(ended, {
    id: 'rail',
    name: 'Roof rail bar',
    role: 'roof-rail',
    path: ['rail-rear', 'rail-front'],
    section: plan.asked.main,
    mirror: true,
  });
  return {
    job: withNode(
      withRoofRear(rails, plan),
      'roof-front',
      'Roof bar at the front hoop',
      beside('front', 2, CLEAR * plan.thick),
    ),
    skeleton: {
      ...skeleton,
      front: uprightOf(plan, 'front', 'start', 1),
      roof: { rear: 'roof-rear', front: 'roof-front', across: 'hoop' },
    },
  };
};

/** A main hoop, a tube bent round the roof from one of its corners to the other, and legs under the ring's corners. */
export const roofRing: Layout = (job, plan) => {
  const { job: hoop, skeleton } = hoopAlone(job, plan);
  const ended = withNode(hoop, 'ring-rear', 'Roof ring at the hoop', inBend('hoop', 2));
  const rear = placeIn(ended, 'ring-rear') ?? screenCorner(plan);
  const round = shaped(plan, {
    moves: 1,
    corners: ([narrow]) => ({ screen: add(screenCorner(plan), [0, -narrow!, 0]), ...upright(plan, 0, 0) }),
    way: ({ screen }) => [rear, screen, mirrored(screen)],
    bends: [[1, 'ring-screen']],
    isUpright: false,
  });
  const screen = goingBy(spotted(plan, 'screen-top'), round.screen);
  const ring = withBar(withNodeBy(plan, 'gap')(ended, 'ring-screen', 'Roof ring, windscreen corner', screen), {
    id: 'ring',
    name: 'Roof ring',
    role: 'roof-ring',
    path: ['ring-rear', 'ring-screen', "ring-screen'", "ring-rear'"],
    section: plan.asked.main,
    die: plan.asked.die,
    ...kept(round.kept),
  });
  const topped = withNode(ring, 'leg-top', 'Front leg at the roof ring', inBend('ring', 1));
  const top = placeIn(topped, 'leg-top') ?? round.screen;
  const leg = shaped(plan, {
    moves: 2,
    corners: ([back, leant]) => ({ screen: round.screen, ...upright(plan, back!, leant!) }),
    way: ({ cowl, foot: toe }) => [top, cowl, toe],
    bends: [[1, 'leg-cowl']],
    isUpright: true,
  });
  const noded = withFrontNodes(topped, plan, 'leg', 'Front leg', { ...leg, screen: null });
  const legs = withLegs(noded, plan, ['leg-top', 'leg-cowl', 'leg-foot'], leg.kept);
  return {
    job: withNode(
      withRoofRear(legs, plan),
      'roof-front',
      'Roof bar at the roof ring',
      beside('ring', 1, CLEAR * plan.thick),
    ),
    skeleton: {
      ...skeleton,
      front: uprightOf(plan, 'leg', 'end', 1),
      roof: { rear: 'roof-rear', front: 'roof-front', across: 'hoop' },
    },
  };
};

/** On either side one tube up the B-pillar, along the roof and down the windscreen; tubes across at the roof's rear and at the header. */
export const sideHoops: Layout = (job, plan) => {
  const { x, foot, shoulder, corner, shoulderBend } = pillarOf(plan);
  const pillar = withPillar('side', 'Side hoop')(job, plan);
  const shape = shaped(plan, {
    moves: 4,
    corners: ([down, aft, back, leant]) => ({
      screen: add(screenCorner(plan), [-aft!, 0, -down!]),
      ...upright(plan, back!, leant!),
    }),
    way: ({ screen, cowl, foot: toe }) => [[x, ...foot], [x, ...shoulder], [x, ...corner], screen, cowl, toe],
    bends: [
      [2, 'side-corner'],
      [3, 'side-front-screen'],
      [4, 'side-front-cowl'],
    ],
    isUpright: true,
  });
  const noded = withFrontNodes(pillar, plan, 'side-front', 'Side hoop', shape);
  const end = onFoot(plan, plan.floorFoot);
  const { thick } = plan;
  const sides = withBar(noded, {
    id: 'side',
    name: 'Side hoop',
    role: 'side-hoop',
    path: ['side-foot', 'side-shoulder', 'side-corner', 'side-front-screen', 'side-front-cowl', 'side-front-foot'],
    section: plan.asked.main,
    die: plan.asked.die,
    mirror: true,
    ends: [end, end],
    keptAngles: [{ corner: 'side-shoulder', angle: shoulderBend }, ...shape.kept],
  });
  const { up, back, forward } = roomOnSide(sides, plan);
  const on: readonly [id: string, name: string, at: ReturnType<typeof atBend>][] = [
    ['rear-bar-end', 'Rear roof bar at the side hoop', atBend('side', 2, 'end', CLEAR * thick - back)],
    ['header-end', 'Header at the side hoop', atBend('side', 3, 'start', forward - CLEAR * thick)],
    ['stay-top', 'Stay at the side hoop', atBend('side', 2, 'start', up - CLEAR * thick)],
    ['diagonal-top', 'Diagonal at the side hoop', atBend('side', 2, 'start', up - (CLEAR + BELOW_STAY) * thick)],
  ];
  const ended = on.reduce((grown, [id, name, at]) => withNode(grown, id, name, at), sides);
  const across = withBar(ended, {
    id: 'rear-bar',
    name: 'Rear roof bar',
    role: 'rear-roof-bar',
    path: ['rear-bar-end', "rear-bar-end'"],
    section: plan.asked.main,
  });
  const skeleton: Skeleton = {
    rear: { member: 'side', low: 'start', corner: 1, foot: heightOf(plan.floorFoot) },
    front: uprightOf(plan, 'side', 'end', 4),
    stayTop: 'stay-top',
    diagonalTop: 'diagonal-top',
    roof: { rear: 'rear-bar-end', front: 'header-end', across: 'rear-bar' },
  };
  return { job: withHeader(across, plan, 'header-end'), skeleton };
};

/**
 * How far joints of a side hoop are moved along it from beside their bends, mm: on a large die bends take so much of the tube that bars beside them would be
 * in each other's way. Stay and diagonal go up into the roof's rear bend, to be clear of the harness bar; the rear bar goes back into it, and the header
 * forward into the next, to leave the roof some length between them. None goes past the middle of its bend.
 */
function roomOnSide(job: Job, plan: Plan): { readonly up: number; readonly back: number; readonly forward: number } {
  const { thick, asked } = plan;
  const [, rear, front] = bendsIn(job, 'side');
  if (rear === undefined || front === undefined) return { up: 0, back: 0, forward: 0 };
  const most = (bend: Bend): number => CLEAR * thick + bend.arc / 2;
  const tooShort = (ROOF + 2 * CLEAR) * thick - (front.start - rear.end);
  const back = Math.min(Math.max(0, tooShort), most(rear));
  const forward = Math.min(Math.max(0, tooShort - back), most(front));
  const needsHeight = asked.bars.harness && asked.bars.diagonal;
  const floor = spotted(plan, 'floor-b').at;
  const under = placeIn(
    withNode(job, 'diagonal-top', '', atBend('side', 2, 'start', -(CLEAR + BELOW_STAY) * thick)),
    'diagonal-top',
  );
  const low = needsHeight && under !== null ? floor[2] + asked.figures.harnessHeight.value - under[2] : 0;
  return { up: Math.min(Math.max(0, low + OVER_HARNESS * thick), most(rear) - back), back, forward };
}
