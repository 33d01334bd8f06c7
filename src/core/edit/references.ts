/** Who refers to whom serves two questions of an edit: may this record go, and what moves when this node does. */
import { fault, quoted } from '../job/fault.ts';
import { kindOf, LISTS } from '../job/kinds.ts';
import { bareId, pieceNamed } from '../job/reference.ts';
import type { Reference } from '../job/kinds/kind.ts';
import { carriersOf, referencesOf, type Carrier } from '../job/references.ts';
import type { Collection, Job } from '../job/types.ts';
import { takeOut, type Edited } from './records.ts';

/** The job without the record; where others refer to it, one fault for each of them, naming it and the place. */
export const removeUnused = (job: Job, collection: Collection, id: string): Edited =>
  removeAllUnused(job, collection, new Set([id]));

/** The same of several: that they refer to one another does not hold them. */
export function removeAllUnused(job: Job, collection: Collection, ids: ReadonlySet<string>): Edited {
  const users = LISTS.flatMap((list) =>
    job[list].flatMap((record, i) => {
      const use = referencesOf(list, record).find((to) => to.list === collection && names(to, ids));
      const goesToo = list === collection && 'id' in record && ids.has(record.id);
      if (use === undefined || goesToo) return [];
      const name = kindOf(list).inWords ?? quoted((record as Job[Collection][number]).name);
      return [fault(`${list}[${i}]${use.place}`, `${name} uses it: change or delete that first`)];
    }),
  );
  return users.length > 0 ? users : takeOut(job, collection, ids);
}

/** Whether the reference leads to a record of these ids, to its image, or to a piece of it. */
const names = ({ to, made }: Reference, ids: ReadonlySet<string>): boolean =>
  ids.has(bareId(to)) || (made === true && ids.has(pieceNamed(to)?.member ?? ''));

/** The ids of the nodes that move with this one, itself included: those that stand on it, or on a tube through it. */
export function dependentNodes(job: Job, nodeId: string): ReadonlySet<string> {
  const carried = { nodes: new Map<string, Carrier[]>(), members: new Map<string, Carrier[]>() };
  for (const list of ['nodes', 'members'] as const) {
    for (const record of job[list]) {
      for (const carrier of carriersOf(list, record)) {
        const others = carried[carrier.list].get(carrier.id);
        const moving = { list, id: record.id };
        if (others === undefined) carried[carrier.list].set(carrier.id, [moving]);
        else others.push(moving);
      }
    }
  }
  const moved = { nodes: new Set([nodeId]), members: new Set<string>() };
  const waiting: Carrier[] = [{ list: 'nodes', id: nodeId }];
  for (const carrier of waiting) {
    for (const moving of carried[carrier.list].get(carrier.id) ?? []) {
      if (moved[moving.list].has(moving.id)) continue;
      moved[moving.list].add(moving.id);
      waiting.push(moving);
    }
  }
  return moved.nodes;
}
