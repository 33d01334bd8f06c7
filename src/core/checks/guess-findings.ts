/**
 * Points that a cage was begun with and nobody has measured: what goes by them is not to be cut. One finding a point, of the first tube that goes by
 * it, through whatever nodes and tubes.
 */
import { bareId, isPrimed, type PointId } from '../job/reference.ts';
import { carriersOf, referencesOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { OnGuess } from './car-types.ts';

/** In the order of the points; none of a point that nothing goes by. */
export function* guessTrouble({ job, tubes }: Pick<Frame, 'job' | 'tubes'>): Generator<OnGuess> {
  for (const { id, position, guessed } of job.points) {
    if (!guessed) continue;
    const going = membersGoingBy(job, id);
    const made = tubes.filter(({ member }) => going.has(member.id));
    const first: SolvedTube | undefined = made.find((tube) => !isPrimed(tube.id));
    if (first === undefined) continue;
    const base = { severity: 'warning', source: 'practice', tube: first.id, at: position } as const;
    yield { ...base, id: 'point/guessed', point: id, tubes: made.length };
  }
}

/** Ids of the members whose nodes go by the point, or by what does. */
function membersGoingBy(job: Job, point: PointId): ReadonlySet<string> {
  const nodes = new Set<string>(
    job.nodes
      .filter((node) => referencesOf('nodes', node).some(({ list, to }) => list === 'points' && bareId(to) === point))
      .map(({ id }) => id),
  );
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
