/**
 * The joints of a frame as they are welded, each once: an end with all that it is fitted to is one joint; two ends that meet in a mitre, or
 * end against end, are one together. A gusset's legs are no joint of two tubes: they stand with the gusset.
 */
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { NodeRef, TubeRef } from '../job/reference.ts';
import { landedOn, tubeNearest } from '../solve/bar-tubes.ts';
import type { Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

export interface Weld {
  readonly tube: SolvedTube;
  readonly which: 0 | 1;
  readonly end: TubeEnd;
  /** `none`: it is cut square and meets no tube. */
  readonly kind: 'cope' | 'butt' | 'mitre' | 'foot' | 'plate' | 'none';
  /** The tubes that it is welded to, those that it is coped to first; empty on the car. */
  readonly to: readonly SolvedTube[];
  /** Null where a bar in pieces is cut. */
  readonly node: NodeRef | null;
  /** Where it is, car axes. */
  readonly place: Vec3;
}

/** In build order, end A of a tube before its end B. */
export function weldList(frame: Frame): readonly Weld[] {
  const found: Weld[] = [];
  for (const tube of frame.tubes) {
    for (const which of [0, 1] as const) {
      const weld = weldAt(frame, tube, which);
      if (!found.some((each) => isSame(each, weld))) found.push(weld);
    }
  }
  return found;
}

function weldAt(frame: Frame, tube: SolvedTube, which: 0 | 1): Weld {
  const end = tube.ends[which];
  const coped = end.cuts.filter(({ reaches }) => reaches).map((cut) => landedOn(frame.byId, cut));
  const butted = end.butted.map((id) => tubeNearest(frame.byId, frame.bars.get(id)!, end.position));
  const to = [...new Set([...coped, ...butted])];
  return { tube, which, end, kind: kindOf(end, coped, butted), to, node: end.node, place: end.position };
}

function kindOf({ fit }: TubeEnd, coped: readonly SolvedTube[], butted: readonly SolvedTube[]): Weld['kind'] {
  if (fit === 'foot' || fit === 'plate' || fit === 'mitre') return fit;
  if (coped.length > 0) return 'cope';
  return butted.length > 0 ? 'butt' : 'none';
}

/** Two ends that name each other at one place. */
const isSame = (one: Weld, other: Weld): boolean =>
  one.kind === other.kind &&
  (one.kind === 'mitre' || one.kind === 'butt') &&
  names(one, other.tube.id) &&
  names(other, one.tube.id) &&
  distance(one.place, other.place) <= MEETING_DISTANCE;

const names = ({ to }: Weld, tube: TubeRef): boolean => to.some(({ id }) => id === tube);
