/** Which bars a bar crosses: where it can be cut, or run through. */
import { nearestToPath } from '../geometry/nearest-paths.ts';
import type { TubeRef } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import type { Bar, Frame } from '../solve/types.ts';

/**
 * The bars whose tube reaches into this one's somewhere between its ends, in build order: the centrelines pass each other nearer than the two
 * radii together, and that farther from either end, along this bar, than the other's radius. Its own mirror image may be among them.
 */
export function crossedBy({ bars }: Frame, id: TubeRef): readonly TubeRef[] {
  const bar = bars.get(id);
  if (bar === undefined) return [];
  const known = knownOf(bar);
  return [...bars.values()].flatMap((other) => {
    const is = known.get(other) ?? crosses(bar, other);
    known.set(other, is);
    return is ? [other.id] : [];
  });
}

/** As old as both bars: most edits leave them what they were. */
const knownOf = remembered((_bar: Bar) => new WeakMap<Bar, boolean>());

function crosses(bar: Bar, other: Bar): boolean {
  if (bar === other) return false;
  const { at, distance } = nearestToPath(bar.path, other.path);
  const radius = other.section.outerDiameter / 2;
  const reach = bar.section.outerDiameter / 2 + radius;
  return distance < reach && at > radius && at < bar.developedLength - radius;
}
