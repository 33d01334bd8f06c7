/** Which cope an edit would lose that gives a member's steel another place in the build order. */
import { fault, type Fault } from '../job/fault.ts';
import { hostOf } from '../job/places.ts';
import { bareId, type MemberId } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Bar, Frame } from '../solve/types.ts';

const BOTH = [0, 1] as const;

/**
 * Names a member built between the two that is coped to the one that goes, or that one to it, only since the one was built before the other; null where there is none. What
 * is named, and what an end's node stands on, is coped to wherever it is built.
 *
 * @param takes in whose place of the build order the steel is built afterwards
 * @param which ends of the one that goes stay ends
 * @param apart members that are no matter
 */
export function copedBetween(
  { job, bars }: Frame,
  goes: MemberId,
  takes: MemberId,
  which: readonly (0 | 1)[] = BOTH,
  apart: ReadonlySet<MemberId> = new Set(),
): Fault | null {
  const places = [goes, takes].map((each) => job.members.findIndex(({ id }) => id === each));
  const between = job.members.slice(Math.min(...places) + 1, Math.max(...places));
  const coped = (one: MemberId, ends: readonly (0 | 1)[], to: MemberId): boolean =>
    [...bars.values()].some((bar) => bar.member.id === one && ends.some((end) => isFound(job, bar, end, to)));
  for (const { id, name } of between) {
    if (apart.has(id)) continue;
    const [own, other] = [name, job.members.find((each) => each.id === goes)!.name].map(shownName) as [string, string];
    const isCoped = coped(id, BOTH, goes);
    if (!isCoped && !coped(goes, which, id)) continue;
    const cope = isCoped ? `is coped to ${other}` : `${other} is coped to it`;
    return fault('', `${own} is built between the two, and ${cope}: change the build order first`);
  }
  return null;
}

/** Whether the end is coped to the member for no other reason than that it is built later. */
function isFound({ nodes }: Job, { ends }: Bar, which: 0 | 1, to: MemberId): boolean {
  const { spec, cuts, node } = ends[which];
  if (spec.fit !== 'auto' || !cuts.some(({ against }) => bareId(against) === to)) return false;
  const at = node === null ? undefined : nodes.find(({ id }) => id === bareId(node))?.at;
  return at === undefined || bareId(hostOf(at) ?? '') !== to;
}
