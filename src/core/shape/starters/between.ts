/** Bars between the hoops of one side, over the roof, and under the dash. */
import { primed } from '../../job/reference.ts';
import type { Place } from '../../job/places.ts';
import type { Job } from '../../job/types.ts';
import { aboveCorner, belowCorner, upFrom, withBar, withNode, type Plan } from './plan.ts';
import { CLEAR, SILL } from './spacing.ts';
import type { Sides } from './skeleton.ts';

/** Level from pillar to pillar, below the bend at the dash. */
export function withDash(job: Job, plan: Plan, { front }: Sides): Job {
  const { bars, light } = plan.asked;
  if (!bars.dash && !bars.pillarBraces) return job;
  const ended = withNode(job, 'dash-end', 'Dash bar at the windscreen pillar', belowCorner(front, CLEAR * plan.thick));
  if (!bars.dash) return ended;
  return withBar(ended, {
    id: 'dash',
    name: 'Dash bar',
    role: 'dash-bar',
    path: ['dash-end', primed('dash-end')],
    section: light,
  });
}

/** A short bar past the bend at the dash, which takes load off its long lever. */
export function withPillarBraces(job: Job, plan: Plan, { front }: Sides): Job {
  if (!plan.asked.bars.pillarBraces) return job;
  const topped = withNode(job, 'pillar-top', 'Pillar brace, upper end', aboveCorner(front, 3 * plan.thick));
  return withBar(topped, {
    id: 'pillar',
    name: 'Pillar brace',
    role: 'pillar-brace',
    path: ['pillar-top', 'dash-end'],
    section: plan.asked.light,
    mirror: true,
  });
}

/** Low along the sill, from foot to foot. */
export function withSills(job: Job, plan: Plan, { rear, front }: Sides): Job {
  if (!plan.asked.bars.sills) return job;
  const ended = withNode(
    withNode(job, 'sill-rear', 'Sill bar at the B-pillar', upFrom(rear, SILL * plan.thick)),
    'sill-front',
    'Sill bar at the windscreen pillar',
    upFrom(front, SILL * plan.thick),
  );
  return withBar(ended, {
    id: 'sill',
    name: 'Sill bar',
    role: 'sill-bar',
    path: ['sill-rear', 'sill-front'],
    section: plan.asked.light,
    mirror: true,
  });
}

/** One from the driver's rear corner, an X, or a V that opens forward. */
export function withRoofBars(job: Job, plan: Plan, { roof }: Sides): Job {
  const { bars, light, driver } = plan.asked;
  if (roof === null || bars.roof === 'none') return job;
  const { rear, front, across } = roof;
  if (bars.roof === 'vee') {
    const at: Place = { kind: 'on', member: across, until: { axis: 'y', value: plan.thin }, nth: 1, offset: [0, 0, 0] };
    return withBar(withNode(job, 'roof-apex', 'Roof bar at the middle', at), {
      id: 'roof-brace',
      name: 'Roof bar',
      role: 'roof-diagonal',
      path: ['roof-apex', front],
      section: light,
      mirror: true,
    });
  }
  const isLeft = driver === 'left';
  const through = withBar(job, {
    id: 'roof-diagonal',
    name: 'Roof diagonal',
    role: 'roof-diagonal',
    path: isLeft ? [rear, primed(front)] : [primed(rear), front],
    section: light,
  });
  if (bars.roof === 'one') return through;
  return withBar(through, {
    id: 'roof-brace',
    name: 'Roof diagonal, cut',
    role: 'roof-diagonal',
    path: isLeft ? [primed(rear), front] : [rear, primed(front)],
    section: light,
    cutBy: ['roof-diagonal'],
  });
}
