/** Bars between the hoops of one side, over the roof, and under the dash. */
import { primed } from '../../job/reference.ts';
import type { Place } from '../../job/places.ts';
import type { Job } from '../../job/types.ts';
import { aboveCorner, belowCorner, bendsIn, upFrom, withBar, withNode, type Plan, type Upright } from './plan.ts';
import { BRACE, CLEAR, FARTHEST_BRACE, SILL } from './spacing.ts';
import type { Sides } from './skeleton.ts';

/** Level from pillar to pillar, below the bend at the dash; where a pillar brace ends, if that is asked for. */
export function withDash(job: Job, plan: Plan, { front }: Sides): Job {
  const { bars, light } = plan.asked;
  if (!hasDash(plan)) return job;
  const ended = withNode(
    job,
    'dash-end',
    'Dash bar at the windscreen pillar',
    belowCorner(front, dashBelow(job, plan, front)),
  );
  if (!bars.dash) return ended;
  return withBar(ended, {
    id: 'dash',
    name: 'Dash bar',
    role: 'dash-bar',
    path: ['dash-end', primed('dash-end')],
    section: light,
  });
}

/** Whether a bar lands on the windscreen's pillar below its bend at the dash. */
export const hasDash = ({ asked: { bars } }: Plan): boolean => bars.dash || bars.pillarBraces;

/** How far below that bend, mm. */
export const dashBelow = (job: Job, plan: Plan, front: Upright): number =>
  Math.max(CLEAR * plan.thick, braceFrom(job, plan, front) ?? 0);

/** A short bar past the bend at the dash, which takes load off its long lever; none where the bend is too slight for one. */
export function withPillarBraces(job: Job, plan: Plan, { front }: Sides): Job {
  const from = braceFrom(job, plan, front);
  if (from === null) return job;
  const top = aboveCorner(front, Math.max(BRACE * plan.thick, from));
  return withBar(withNode(job, 'pillar-top', 'Pillar brace, upper end', top), {
    id: 'pillar',
    name: 'Pillar brace',
    role: 'pillar-brace',
    path: ['pillar-top', 'dash-end'],
    section: plan.asked.light,
    mirror: true,
  });
}

/**
 * How far from the bend either end of a brace has to be, at least, to stand clear of the leg between its ends, mm; null where none is asked for or can be.
 * From ends b off the sharp corner of a bend by t its axis passes that by b sin(t / 2), and the bend's middle lies R / cos(t / 2) - R nearer.
 */
function braceFrom(job: Job, plan: Plan, { member, corner }: Upright): number | null {
  const bend = bendsIn(job, member)[corner - 1];
  if (!plan.asked.bars.pillarBraces || bend === undefined) return null;
  const { angle, radius, setBack } = bend;
  const nearer = radius / Math.cos(angle / 2) - radius;
  const from = ((plan.thick + plan.thin) / 2 + nearer) / Math.sin(angle / 2) - setBack;
  return from <= FARTHEST_BRACE * plan.thick ? from : null;
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
