/**
 * Points and nodes that a cage was begun with and nobody has said: what goes by them is not to be cut. One finding each, of the first tube that goes by
 * it, through whatever nodes and tubes.
 */
import { bareId, isPrimed, type MemberId, type NodeId, type PointId, type TubeRef } from '../job/reference.ts';
import { carriersOf, referencesOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { OnGuess, OnStandIn } from './car-types.ts';

/** In the order of the points, then of the nodes; none of one that nothing goes by. */
export function* guessTrouble(frame: Pick<Frame, 'job' | 'tubes' | 'nodes'>): Generator<OnGuess> {
  const { job } = frame;
  for (const { id, position, guessed } of job.points) {
    const made = guessed ? tubesGoingBy(frame, nodesAt(job, id)) : null;
    if (made !== null) yield { ...BASE, ...made, id: 'point/guessed', at: position, point: id };
  }
  for (const { id, guessed } of job.nodes) {
    const made = guessed ? tubesGoingBy(frame, [id]) : null;
    if (made !== null) yield { ...BASE, ...made, id: 'node/guessed', at: frame.nodes.get(id)!, node: id };
  }
}

/** What goes by a stand-in, in the order of the points: known to the person who measured, and not to be forgotten. */
export function* standInTrouble(frame: Pick<Frame, 'job' | 'tubes'>): Generator<OnStandIn> {
  for (const { id, position, standIn } of frame.job.points) {
    const made = standIn ? tubesGoingBy(frame, nodesAt(frame.job, id)) : null;
    if (made !== null) {
      yield { severity: 'note', source: 'practice', ...made, id: 'point/stand-in', at: position, point: id };
    }
  }
}

/** Whether the member goes by that guess, whichever tube the finding names. */
export function goesByGuess(job: Job, finding: OnGuess, member: MemberId): boolean {
  const from = finding.id === 'point/guessed' ? nodesAt(job, finding.point) : [finding.node];
  return membersGoingBy(job, from).has(member);
}

const BASE = { severity: 'warning', source: 'practice' } as const;

/** The nodes that are placed by the point itself. */
export const nodesAt = (job: Job, point: PointId): readonly NodeId[] =>
  job.nodes
    .filter((node) => referencesOf('nodes', node).some(({ list, to }) => list === 'points' && bareId(to) === point))
    .map(({ id }) => id);

/** The first of them that is no twin, and how many they are; null where there is none. */
export function tubesGoingBy(
  { job, tubes }: Pick<Frame, 'job' | 'tubes'>,
  from: readonly NodeId[],
): { readonly tube: TubeRef; readonly tubes: number } | null {
  const going = membersGoingBy(job, from);
  const made = tubes.filter(({ member }) => going.has(member.id));
  const first: SolvedTube | undefined = made.find((tube) => !isPrimed(tube.id));
  return first === undefined ? null : { tube: first.id, tubes: made.length };
}

/** Ids of the members whose nodes are among these, or go by what is. */
function membersGoingBy(job: Job, from: readonly NodeId[]): ReadonlySet<string> {
  const nodes = new Set<string>(from);
  const members = new Set<string>();
  const stands = (list: 'nodes' | 'members', record: Job[typeof list][number]): boolean =>
    carriersOf(list, record).some((carrier) => (carrier.list === 'nodes' ? nodes : members).has(carrier.id));
  // What stands on what was just found is found in the next round; a round without news is the last.
  for (let found = -1; found < nodes.size + members.size;) {
    found = nodes.size + members.size;
    for (const member of job.members) if (stands('members', member)) members.add(member.id);
    for (const node of job.nodes) if (stands('nodes', node)) nodes.add(node.id);
  }
  return members;
}
