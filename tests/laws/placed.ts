/** Random frames with nodes in every way that hangs on others, and tubes between those nodes. */
import fc from 'fast-check';
import type { Derived } from '../../src/core/derive.ts';
import type { Place } from '../../src/core/job/places.ts';
import type { Coordinate } from '../../src/core/job/places/coordinate.ts';
import type { FrameNode } from '../../src/core/job/kinds/node.ts';
import type { Job } from '../../src/core/job/types.ts';

/** What is drawn of one node; which records its numbers mean is known once there is a frame. */
interface Draft {
  readonly way: 'lined-up' | 'until' | 'crossing' | 'clear';
  readonly picks: readonly number[];
  readonly share: number;
  readonly axis: 0 | 1 | 2;
  readonly primes: readonly boolean[];
}

const draft: fc.Arbitrary<Draft> = fc.record({
  way: fc.constantFrom('lined-up', 'until', 'crossing', 'clear'),
  picks: fc.array(fc.nat(60), { minLength: 3, maxLength: 3 }),
  share: fc.integer({ min: 1, max: 999 }).map((thousandths) => thousandths / 1000),
  axis: fc.constantFrom(0, 1, 2),
  primes: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
});

/** Four such nodes, and two tubes between them. */
export const placedDrafts = fc.array(draft, { minLength: 4, maxLength: 4 });

export const POINTS = [
  { id: 'sill', name: 'sill', position: [12, 633, 305] },
  { id: 'rail', name: 'rail', position: [-40, 480, 1190] },
] as const;

const AXES = ['x', 'y', 'z'] as const;

/** The frame's job with these nodes, p0 to p3, and tubes q0 and q1 built last. Without `primes` nothing follows a mirror image. */
export function withPlaces({ job, tubes, nodes }: Derived, drafts: readonly Draft[], primes = true): Job {
  const prime = (id: string, primed: boolean | undefined): string => (primes && primed === true ? `${id}'` : id);
  const added = drafts.map(({ way, picks, share, axis, primes: primed }, i): FrameNode => {
    const node = (k: number): string => prime(job.nodes[picks[k]! % job.nodes.length]!.id, primed[k]);
    const point = prime(POINTS[picks[0]! % POINTS.length]!.id, primed[0]);
    const tube = tubes[picks[1]! % tubes.length]!;
    const end = tube.corners;
    const value = end[0]![axis] + share * (end.at(-1)![axis] - end[0]![axis]) + 0.0371;
    const given: Coordinate = i % 2 === 0 ? { value } : { node: node(0), plus: value - nodes.get(node(0))![axis] };
    const at: Record<Draft['way'], Place> = {
      'lined-up': { kind: 'lined-up', x: given, y: { node: node(2), plus: 5 }, z: { point, plus: -7 } },
      until: { kind: 'on', member: tube.id, until: { axis: AXES[axis], ...given }, nth: 1, offset: [0, 0, 0] },
      crossing: { kind: 'crossing', member: tube.id, line: [node(0), node(2)] },
      clear: { kind: 'point', point, offset: [1, 2, 3], clear: { direction: [share, -1, 0], gap: 30 } },
    };
    return { id: `p${i}`, name: `p${i}`, at: at[way] };
  });
  const last = job.members.at(-1)!;
  const members = [0, 1].map((i) => ({ ...last, id: `q${i}`, name: `q${i}`, path: [`p${2 * i}`, `p${2 * i + 1}`] }));
  return { ...job, points: POINTS, nodes: [...job.nodes, ...added], members: [...job.members, ...members] };
}
