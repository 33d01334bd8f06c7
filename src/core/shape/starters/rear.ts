/** What stands behind and in the plane of the hoop: diagonal, harness bar, stays and the bars between them. */
import { primed } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { follows, goingBy } from './car.ts';
import { onFoot, spotted, upFrom, withBar, withNode, withNodeBy, type Plan } from './plan.ts';
import type { Skeleton } from './skeleton.ts';
import { DIAGONAL } from './spacing.ts';

/** Straight, from beside the hoop's top to the towers. */
export function withStays(job: Job, plan: Plan, { stayTop }: Skeleton): Job {
  const tower = spotted(plan, 'tower');
  return withBar(withNode(job, 'stay-foot', 'Stay foot on the tower', goingBy(tower, tower.at)), {
    id: 'stay',
    name: 'Rear stay',
    role: 'rear-stay',
    path: [stayTop, 'stay-foot'],
    section: plan.asked.main,
    mirror: true,
    ends: [{ fit: 'auto', allowance: 0 }, onFoot(plan, plan.towerFoot)],
  });
}

/** From the driver's corner to the other side's foot, within 100 mm of the joints there (common practice). */
export function withDiagonal(job: Job, plan: Plan, { rear, diagonalTop }: Skeleton): Job {
  if (!plan.asked.bars.diagonal) return job;
  const foot = withNode(job, 'diagonal-foot', 'Diagonal above the foot', upFrom(rear, DIAGONAL * plan.thick));
  const isLeft = plan.asked.driver === 'left';
  return withBar(foot, {
    id: 'diagonal',
    name: 'Main diagonal',
    role: 'main-diagonal',
    path: isLeft ? [primed('diagonal-foot'), diagonalTop] : ['diagonal-foot', primed(diagonalTop)],
    section: plan.asked.main,
  });
}

/** Level, at the height that was asked over the floor; in two pieces where the diagonal runs through. */
export function withHarnessBar(job: Job, plan: Plan, { rear }: Skeleton): Job {
  const { bars, figures, light } = plan.asked;
  if (!bars.harness) return job;
  const floor = spotted(plan, 'floor-b');
  const until = { axis: 'z', ...follows(floor, 2, floor.at[2] + figures.harnessHeight.value) } as const;
  const end = withNodeBy(plan, 'harnessHeight')(job, 'harness-end', 'Harness bar at the hoop', {
    kind: 'on',
    member: rear.member,
    until,
    nth: 1,
    offset: [0, 0, 0],
  });
  return withBar(end, {
    id: 'harness',
    name: 'Harness bar',
    role: 'harness-bar',
    path: ['harness-end', primed('harness-end')],
    section: light,
    ...(bars.diagonal && { cutBy: ['diagonal'] }),
  });
}

/** Between the stays, top and bottom a little clear of their own joints. */
export function withRearBars(job: Job, plan: Plan): Job {
  const { bars, light } = plan.asked;
  const clear = 2.6 * plan.thick;
  let grown = job;
  if (bars.towerBar || bars.rear !== 'none') {
    grown = withNode(grown, 'tower-bar-end', 'Tower bar at the stay', onStay('end', clear));
  }
  if (bars.towerBar) {
    grown = withBar(grown, {
      id: 'tower-bar',
      name: 'Tower bar',
      role: 'rear-cross-bar',
      path: ['tower-bar-end', primed('tower-bar-end')],
      section: light,
    });
  }
  if (bars.rear === 'none') return grown;
  grown = withBar(withNode(grown, 'rear-top', 'Rear diagonal at the stay', onStay('start', clear)), {
    id: 'rear-diagonal',
    name: 'Rear diagonal',
    role: 'rear-diagonal',
    path: [primed('rear-top'), 'tower-bar-end'],
    section: light,
  });
  if (bars.rear === 'one') return grown;
  return withBar(grown, {
    id: 'rear-brace',
    name: 'Rear diagonal, cut',
    role: 'rear-diagonal',
    path: ['rear-top', primed('tower-bar-end')],
    section: light,
    cutBy: ['rear-diagonal'],
  });
}

const onStay = (from: 'start' | 'end', distance: number) =>
  ({ kind: 'on', member: 'stay', from, distance, offset: [0, 0, 0] }) as const;
