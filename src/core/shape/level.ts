/**
 * A straight bar made level, and kept so: one of its ends follows the height of the other. An end of its own keeps its place along and
 * across the car; one that stands on a tube stays on that tube, where that comes to the height. An image has its node's height,
 * so that primes do not matter here.
 */
import type { Edited } from '../edit/records.ts';
import { setPlace } from '../edit/nodes.ts';
import { dependentNodes } from '../edit/references.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { subtract, type Vec3 } from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { hostOf, type Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { bareId, type MemberId, type NodeId } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { nearestNth } from './ways.ts';

/**
 * The job with the member level: of its two ends the one follows that gives up less of how it is placed, then the one that fewer
 * members share, then end B. Refused, in words, where neither can, and where one does already.
 */
export function levelMember(job: Job, frame: Frame, id: MemberId): Edited {
  const path = job.members.find((member) => member.id === id)?.path ?? [];
  if (path.length !== 2) return refused('it has corners: a bar is made level by its two ends alone');
  const [a, b] = path.map((reference) => job.nodes.find((node) => node.id === bareId(reference))!) as [
    FrameNode,
    FrameNode,
  ];
  if (a === b) return refused('it is level already: its ends are mirror images of each other');
  if (follows(a, b.id) || follows(b, a.id))
    return refused('it is level already: one end follows the height of the other');
  const answers = [following(job, frame, b, a.id), following(job, frame, a, b.id)];
  const possible = answers
    .filter((answer) => 'at' in answer)
    .toSorted((one, other) => one.gives - other.gives || one.shared - other.shared);
  const best = possible[0];
  if (best !== undefined) return setPlace(job, best.id, best.at);
  const [whyB, whyA] = answers.map((answer) => ('why' in answer ? answer.why : ''));
  return refused(`end B cannot follow: ${whyB}; nor can end A: ${whyA}`);
}

/** The end of the member that has the other's height already, by the way in which it is placed; null where neither has. */
export function levelBy(job: Job, id: MemberId): 'A' | 'B' | null {
  const path = job.members.find((member) => member.id === id)?.path ?? [];
  const [a, b] = path.map((reference) => job.nodes.find((node) => node.id === bareId(reference)));
  if (path.length !== 2 || a === undefined || b === undefined) return null;
  return follows(b, a.id) ? 'B' : follows(a, b.id) ? 'A' : null;
}

const refused = (message: string): Edited => [{ place: '', message }];

/** Whether the node has the height of the other already, by the way it is placed. */
function follows({ at }: FrameNode, other: NodeId): boolean {
  if (at.kind === 'lined-up') return at.z.node !== undefined && bareId(at.z.node) === other && at.z.plus === 0;
  if (at.kind !== 'on' || at.until === undefined || at.until.axis !== 'z' || at.until.node === undefined) return false;
  return bareId(at.until.node) === other && at.until.plus + at.offset[2] === 0;
}

/** The node placed at the height of the other; `gives` is 1 where that gives up what it was placed by, `shared` the members through it. */
type Following =
  | { readonly id: NodeId; readonly at: Place; readonly gives: 0 | 1; readonly shared: number }
  | { readonly why: string };

function following(job: Job, frame: Frame, { id, name, at }: FrameNode, other: NodeId): Following {
  if (dependentNodes(job, id).has(other)) return { why: `the other end hangs on ${shownName(name)}` };
  const shared = job.members.filter(({ path }) => path.some((reference) => bareId(reference) === id)).length;
  const host = hostOf(at);
  if (host === null) {
    const [along, across, gives] = keptOf(at, frame.nodes.get(id)!);
    return { id, at: { kind: 'lined-up', x: along, y: across, z: { node: other, plus: 0 } }, gives, shared };
  }
  const offset: Vec3 = at.kind === 'on' ? at.offset : [0, 0, 0];
  const { path, name: tube } = frame.bars.get(host)!;
  const place = nearestOnPath(path, subtract(frame.nodes.get(id)!, offset));
  const nth = nearestNth(path, 'z', frame.nodes.get(other)![2] - offset[2], place.at);
  if (nth === null) return { why: `${shownName(tube)} never comes to that height` };
  const until = { axis: 'z', node: other, plus: 0 - offset[2] } as const;
  return { id, at: { kind: 'on', member: host, until, nth, offset }, gives: at.kind === 'on' ? 0 : 1, shared };
}

/** Along and across the car as the place has them: by the same point, or by numbers where it is given in another way altogether. */
function keptOf(at: Place, [x, y]: Vec3): readonly [Coordinate, Coordinate, 0 | 1] {
  if (at.kind === 'lined-up') return [at.x, at.y, 0];
  if (at.kind !== 'point' || at.clear !== undefined) return [{ value: x }, { value: y }, at.kind === 'fixed' ? 0 : 1];
  const { point, offset } = at;
  return [{ point, plus: offset[0] }, { point, plus: offset[1] }, 0];
}
