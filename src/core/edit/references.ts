/** Who refers to whom serves two questions of an edit: may this record go, and what moves when this node does. */
import { fault, quoted, type Fault } from '../job/fault.ts';
import { placeOfList } from '../job/in-blocks.ts';
import { COLLECTIONS, kindOf, LISTS } from '../job/kinds.ts';
import { bareId, pieceNamed } from '../job/reference.ts';
import type { Reference } from '../job/kinds/kind.ts';
import { carriersOf, referencesOf, type Carrier } from '../job/references.ts';
import type { Collection, Job, NamedList } from '../job/types.ts';
import { takeOut, type Edited } from './records.ts';

/** The job without the record; where others refer to it, one fault for each of them, naming it and the place. */
export const removeUnused = (job: Job, collection: Collection, id: string): Edited =>
  removeAllUnused(job, { [collection]: new Set([id]) });

/** Ids of records, by their lists. */
export type Going = { readonly [C in Collection]?: ReadonlySet<string> };

/** The same of several, of whatever kinds: that they refer to one another does not hold them. */
export function removeAllUnused(job: Job, asked: Going): Edited {
  const going = withWhatGoes(job, asked);
  const users = usersOf(job, going);
  if (users.length > 0) return users;
  return COLLECTIONS.reduce((left, list) => takeOut(left, list, going[list] ?? NONE), job);
}

/** To clear up after another edit: without the record where nothing refers to it, else the same job. What would go with it, as a gusset with its node, holds it here. */
export const withoutUnreferred = (job: Job, collection: Collection, id: string): Job =>
  usersOf(job, { [collection]: new Set([id]) }).length > 0 ? job : takeOut(job, collection, new Set([id]));

/** A fault for each record that refers to one of these and does not go too. */
function usersOf(job: Job, going: Going): readonly Fault[] {
  return LISTS.flatMap((list) =>
    job[list].flatMap((record, i) => {
      const use = referencesOf(list, record).find((to) => names(to, going[to.list] ?? NONE));
      const goesToo = 'id' in record && going[list as Collection]?.has(record.id);
      if (use === undefined || goesToo) return [];
      const name = kindOf(list).inWords ?? quoted((record as Job[NamedList][number]).name);
      return [fault(`${placeOfList(list)}[${i}]${use.place}`, `${name} uses it: change or delete that first`)];
    }),
  );
}

const NONE: ReadonlySet<string> = new Set();

/** These, and the records that go with them: a gusset with a bar that it is welded to. */
const withWhatGoes = (job: Job, going: Going): Going =>
  Object.fromEntries(
    COLLECTIONS.map((list) => {
      const goes = job[list].filter((record) =>
        referencesOf(list, record).some(
          (reference) => reference.goes && names(reference, going[reference.list] ?? NONE),
        ),
      );
      return [list, new Set([...(going[list] ?? NONE), ...goes.map(({ id }) => id)])];
    }),
  );

/** Whether the reference leads to a record of these ids, to its image, or to a piece of it. */
const names = ({ to, made }: Reference, ids: ReadonlySet<string>): boolean =>
  ids.has(bareId(to)) || (made === true && ids.has(pieceNamed(to)?.member ?? ''));

/** The ids of the nodes that move with this one, itself included: those that stand on it, or on a tube through it. */
export const dependentNodes = (job: Job, nodeId: string): ReadonlySet<string> =>
  dependentsOf(job, [{ list: 'nodes', id: nodeId }]).nodes;

/** The ids of all nodes and members that are placed from these, themselves included, however many stand between. */
export function dependentsOf(job: Job, on: readonly Carrier[]): Readonly<Record<Carrier['list'], ReadonlySet<string>>> {
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
  const moved = { nodes: new Set<string>(), members: new Set<string>() };
  for (const { list, id } of on) moved[list].add(id);
  const waiting: Carrier[] = [...on];
  for (const carrier of waiting) {
    for (const moving of carried[carrier.list].get(carrier.id) ?? []) {
      if (moved[moving.list].has(moving.id)) continue;
      moved[moving.list].add(moving.id);
      waiting.push(moving);
    }
  }
  return moved;
}
