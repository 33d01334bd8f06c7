/**
 * Bars that are meant as one line and are not: the halves of an X or of a harness bar, drawn as two, that meet a tube from both sides, or end to
 * end. They count as meant so when they run into each other within 5 degrees and a radius (common practice: an eye sees a fifth of a degree over a bar).
 */
import { angleBetween, toRadians, type Radians } from '../geometry/angle.ts';
import { IN_LINE_ANGLE, MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { dot, length, rejectFrom, scale, subtract } from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';
import type { OutOfLine } from './types.ts';

/** Two bars that an eye takes for one line. */
const LINE: Radians = toRadians(0.2);

interface EndThere {
  readonly tube: SolvedTube;
  readonly end: TubeEnd;
  /** In build order; the tube's number may be another. */
  readonly order: number;
  /** Along the run tube, mm from its end A's node; 0 where ends are butted. */
  readonly at: number;
}

/** In build order of the later of each two. n log n. */
export function lineTrouble(tubes: readonly SolvedTube[]): readonly OutOfLine[] {
  const found: OutOfLine[] = [];
  for (const ends of endsByRun(tubes).values()) {
    if (ends.length < 2) continue;
    ends.sort((a, b) => a.at - b.at || a.order - b.order);
    for (const [i, one] of ends.entries()) {
      for (let k = i + 1; k < ends.length && ends[k]!.at - one.at <= one.tube.section.outerDiameter; k++) {
        const trouble = outOfLine(one, ends[k]!);
        if (trouble !== null) found.push(trouble);
      }
    }
  }
  return found;
}

/** Ends that are coped to one bar; and those that end at one node, coped to nothing there. */
function endsByRun(tubes: readonly SolvedTube[]): ReadonlyMap<string, EndThere[]> {
  const byRun = new Map<string, EndThere[]>();
  const put = (key: string, there: EndThere) => {
    const others = byRun.get(key);
    if (others === undefined) byRun.set(key, [there]);
    else others.push(there);
  };
  for (const [order, tube] of tubes.entries()) {
    for (const end of tube.ends) {
      for (const { against, landingAt } of end.cuts) put(against, { tube, end, order, at: landingAt });
      if (end.cuts.length === 0 && end.node !== null && end.fit !== 'mitre')
        put(`at ${end.node}`, { tube, end, order, at: 0 });
    }
  }
  return byRun;
}

const known = new WeakMap<TubeEnd, WeakMap<TubeEnd, OutOfLine | null>>();

/** The same finding as long as both ends are the same. */
function outOfLine(one: EndThere, other: EndThere): OutOfLine | null {
  const [earlier, later] = one.order < other.order ? [one, other] : [other, one];
  const ofLater = known.get(later.end) ?? new WeakMap<TubeEnd, OutOfLine | null>();
  known.set(later.end, ofLater);
  const before = ofLater.get(earlier.end);
  if (before !== undefined && (before === null || before.tube === later.tube.id)) return before;
  const trouble = looked(earlier, later);
  ofLater.set(earlier.end, trouble);
  return trouble;
}

function looked(earlier: EndThere, later: EndThere): OutOfLine | null {
  if (earlier.tube === later.tube) return null;
  const [a, b] = [earlier.end, later.end];
  // Most bars at a joint run apart.
  if (dot(a.direction, b.direction) > -0.9) return null;
  const angle = angleBetween(scale(a.direction, -1), b.direction);
  const offset = length(rejectFrom(subtract(b.position, a.position), a.direction));
  if (angle > IN_LINE_ANGLE || offset > earlier.tube.section.outerDiameter / 2) return null;
  if (angle <= LINE && offset <= MEETING_DISTANCE) return null;
  return {
    id: 'joint/out-of-line',
    severity: 'warning',
    tube: later.tube.id,
    end: endOf(later),
    ...(b.node !== null && { node: b.node }),
    at: b.position,
    mate: earlier.tube.id,
    mateEnd: endOf(earlier),
    through: throughBoth(a, b),
    angle,
    offset,
    source: 'practice',
  };
}

const endOf = ({ tube, end }: EndThere): 'A' | 'B' => (tube.ends[0] === end ? 'A' : 'B');

/** The bar that both are coped to. */
const throughBoth = (a: TubeEnd, b: TubeEnd): TubeRef | null =>
  a.cuts.find(({ against }) => b.cuts.some((cut) => cut.against === against))?.against ?? null;
