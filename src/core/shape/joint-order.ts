/**
 * The joint at a node: which bars run through it, which end there, and in which order they are fitted, each coped to what is there before
 * it.
 */
import { nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { NodeRef } from '../job/reference.ts';
import type { Bar, Frame, TubeEnd } from '../solve/types.ts';

/** A bar at a joint. */
export interface AtJoint {
  readonly bar: Bar;
  /** Which of its ends is there: 0 is end A; null where it runs through. */
  readonly which: 0 | 1 | null;
}

/** A bar that ends at a joint. */
export interface EndAtJoint extends AtJoint {
  readonly which: 0 | 1;
}

/**
 * First what runs through, in build order; then what ends there, each after what it is coped to, and else in build order. Empty for a
 * node that is not in the frame. A place is the node's within MEETING_DISTANCE.
 */
export function jointAt({ nodes, bars }: Pick<Frame, 'nodes' | 'bars'>, node: NodeRef): readonly AtJoint[] {
  const place = nodes.get(node);
  if (place === undefined) return [];
  const all = [...bars.values()];
  const ending = all.flatMap((bar): EndAtJoint[] =>
    ([0, 1] as const).flatMap((which) =>
      distance(bar.ends[which].position, place) <= MEETING_DISTANCE ? [{ bar, which }] : [],
    ),
  );
  const through = all.filter((bar) => runsThrough(bar, place) && !ending.some((one) => one.bar === bar));
  return [...through.map((bar) => ({ bar, which: null })), ...inOrder(ending)];
}

const runsThrough = ({ path }: Bar, place: Vec3): boolean => nearestOnPath(path, place).distance <= MEETING_DISTANCE;

/** Whether it ends there. */
export const isEnd = (one: AtJoint): one is EndAtJoint => one.which !== null;

/** The end that is there. */
export const endOf = ({ bar, which }: EndAtJoint): TubeEnd => bar.ends[which];

/** Whether the end of the one is coped to the other. */
export const isCopedTo = (one: EndAtJoint, other: AtJoint): boolean =>
  endOf(one).cuts.some(({ against }) => against === other.bar.id);

/** Each after all it is coped to; where two are coped to one another, the one built first comes first. */
function inOrder(ending: readonly EndAtJoint[]): readonly EndAtJoint[] {
  const left = [...ending];
  const ordered: EndAtJoint[] = [];
  while (left.length > 0) {
    const free = left.findIndex((one) => !left.some((other) => other !== one && isCopedTo(one, other)));
    ordered.push(...left.splice(Math.max(0, free), 1));
  }
  return ordered;
}
