/** Places given another way, and the place that a new node of each kind starts from. */
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Place } from '../../core/job/places.ts';
import type { OnMember } from '../../core/job/places/on.ts';
import type { Job } from '../../core/job/types.ts';
import type { Selection } from '../../store/types.ts';

/** The same node on its tube, measured from another origin: "start", "end", or "2 middle"; the distance stays the number it was. */
export function withOrigin(at: OnMember, origin: string): OnMember {
  const { kind, member, distance, offset } = at;
  if (origin === 'start' || origin === 'end') return { kind, member, from: origin, distance, offset };
  const [bend, where] = origin.split(' ');
  return { kind, member, bend: Number(bend), where: where as 'start' | 'middle' | 'end', distance, offset };
}

/** Where a new node of this kind starts: by what is selected where that serves, else by the first there is; null when there is none. */
export function startingPlace(job: Job, kind: Place['kind'], selection: Selection | null, at: Vec3): Place | null {
  const [first, second] = job.nodes;
  switch (kind) {
    case 'fixed':
      return { kind, position: at };
    case 'point': {
      const point = selection?.kind === 'point' ? selection.id : job.points[0]?.id;
      return point === undefined ? null : { kind, point, offset: [0, 0, 0] };
    }
    case 'on': {
      const member = selection?.kind === 'tube' ? selection.id : job.members[0]?.id;
      return member === undefined ? null : { kind, member, from: 'start', distance: 100, offset: [0, 0, 0] };
    }
    case 'between':
      return first && second ? { kind, nodes: [first.id, second.id], fraction: 0.5 } : null;
    case 'ray': {
      const from = selection?.kind === 'node' ? selection.id : first?.id;
      return from === undefined ? null : { kind, from, direction: [0, 0, -1], until: { axis: 'z', value: 0 } };
    }
  }
}
