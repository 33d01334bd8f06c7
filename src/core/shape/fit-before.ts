/** How two ends at a joint change places in the order in which they are fitted, and why some cannot. */
import { moveMember, setEnd } from '../edit/members.ts';
import type { EndFit } from '../job/kinds/end.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { endOf, isCopedTo, isEnd, type AtJoint, type EndAtJoint } from './joint-order.ts';

/** Why an end cannot be fitted before another. */
export type NotBefore = 'runs-through' | 'not-coped' | 'one-member' | 'cut-flat';

/** Null where `fitBefore` changes their places. */
export function whyNotBefore(one: AtJoint, other: AtJoint): NotBefore | null {
  if (!isEnd(one) || !isEnd(other)) return 'runs-through';
  if (one.bar.member === other.bar.member) return 'one-member';
  if (!isCopedTo(one, other)) return 'not-coped';
  return endOf(other).plateNormal === null ? null : 'cut-flat';
}

/**
 * The end that is coped to the other goes first, and the other is coped to it. Ends that find by themselves what they meet go by
 * the build order: there the member is moved to just before the other. Where that would not do, one end naming what it is coped to or its node
 * standing on the other bar, both name what they are coped to from then on. On a mirrored member both sides change.
 */
export function fitBefore(job: Job, frame: Pick<Frame, 'job' | 'bars'>, one: EndAtJoint, other: EndAtJoint): Job {
  const [first, second] = [one.bar.member, other.bar.member];
  const isFound = [one, other].every((each) => endOf(each).spec.fit === 'auto');
  if (isFound && !standsOn(job, one, other)) {
    return moveMember(
      job,
      first.id,
      job.members.findIndex(({ id }) => id === second.id),
    );
  }
  const names = (each: EndAtJoint): readonly TubeRef[] =>
    endOf(each).cuts.map(({ against }) => asMemberSees(frame.job, each.bar, against));
  const [toOther, toOne] = [
    asMemberSees(frame.job, one.bar, other.bar.id),
    asMemberSees(frame.job, other.bar, one.bar.id),
  ];
  const freed = coped(
    endOf(one).spec,
    names(one).filter((tube) => tube !== toOther),
  );
  const bound = coped(endOf(other).spec, [...new Set([...names(other), toOne])]);
  return setEnd(setEnd(job, first.id, one.which, freed), second.id, other.which, bound);
}

/** Cut to these tubes, or square where there is none, and left as long as it was. */
const coped = ({ allowance }: EndFit, against: readonly TubeRef[]): EndFit =>
  against.length === 0 ? { fit: 'square', allowance } : { fit: 'cope', against, allowance };

/** The node of the end is given on the other bar, which then cuts it wherever that is in the build order. */
function standsOn(job: Job, one: EndAtJoint, other: EndAtJoint): boolean {
  const named = endOf(one).node;
  const node = named === null ? undefined : job.nodes.find(({ id }) => id === bareId(named));
  const host = node === undefined ? null : hostOf(node.at);
  return host !== null && bareId(host) === other.bar.member.id;
}

/** The tube as it is named in the record of the bar's member, which speaks of the side that it is drawn on: for a twin, the image. */
const asMemberSees = (job: Job, bar: Bar, tube: TubeRef): TubeRef =>
  isPrimed(bar.id) && job.members.some(({ id, mirror }) => mirror && id === bareId(tube)) ? primed(tube) : tube;
