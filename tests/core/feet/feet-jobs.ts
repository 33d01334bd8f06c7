/** Jobs with feet for tests: legs on plates and boxes, as plain data, and what is derived from them. */
import { derive, type Derived } from '../../../src/core/derive.ts';
import { addScaled, cross, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';

export const RADIUS = 22.225;

export interface Leg {
  readonly foot: object;
  readonly normal?: Vec3;
  readonly top?: Vec3;
  readonly floor?: Vec3;
  readonly mirror?: boolean;
}

/** A leg from `top` to `floor`, end B on the foot. */
export const legJob = ({ foot, normal = [0, 0, 1], top = [120, 500, 900], floor = [0, 610, 80], mirror }: Leg) => ({
  format: 'cagewright/job',
  version: 1,
  name: 'Legs',
  sections: [{ id: 's', outerDiameter: 2 * RADIUS, wall: 3.048 }],
  nodes: [
    { id: 'top', at: { kind: 'fixed', position: top } },
    { id: 'floor', at: { kind: 'fixed', position: floor } },
  ],
  feet: [{ ...foot, id: 'foot', name: 'foot' }],
  members: [
    {
      id: 'leg',
      path: ['top', 'floor'],
      section: 's',
      mirror: mirror ?? false,
      ends: [{ fit: 'square' }, { fit: 'foot', foot: 'foot', normal }],
    },
  ],
});

export function derivedFrom(job: object): Derived {
  const parsed = parseJob(JSON.stringify(job));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const result = derive(parsed.job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

/** What the door for files says against it. */
export function refused(job: object): readonly string[] {
  const parsed = parseJob(JSON.stringify(job));
  return parsed.ok ? [] : parsed.faults.map(({ place, message }) => `${place}: ${message}`);
}

export const derivedLeg = (leg: Leg): Derived => derivedFrom(legJob(leg));

/** The places of the cut on the outer surface, degree by degree. */
export function rimOf({ ends, section }: SolvedTube, which: 0 | 1): readonly Vec3[] {
  const { position, direction, reference, outer } = ends[which];
  const beside = cross(direction, reference);
  const r = section.outerDiameter / 2;
  return Array.from(outer, (s, degree) => {
    const phi = (degree * Math.PI) / 180;
    const on = addScaled(addScaled(position, reference, r * Math.cos(phi)), beside, r * Math.sin(phi));
    return addScaled(on, direction, s);
  });
}
