/**
 * Who refers to whom. One walk over every reference in the job serves three edits: giving a record another id
 * rewrites them, deleting asks whether there are any, and a node's dependents are found along them.
 */
import { fault, quoted } from '../job/fault.ts';
import { bareId, isPrimed } from '../job/reference.ts';
import { LONGEST_ID } from '../job/schema.ts';
import type { EndFit, Fault, FrameNode, Job, Member, Place, Pull } from '../job/types.ts';
import type { Collection } from '../job/validate.ts';
import { findRecord, mapKeeping, patched, takeOut, withRecords, type Edited } from './records.ts';

/** Answers what should stand in the reference's place; `where` is its place within the record. */
type Visit = (target: Collection, reference: string, where: string) => string;

/** The record under another id, and every reference to it, primed ones too, rewritten. Faults if the id cannot be had. */
export function changeId(job: Job, collection: Collection, id: string, next: string): Edited {
  if (id === next) return job;
  if (next === '') return [fault('', 'an id cannot be empty')];
  if (next.length > LONGEST_ID) return [fault('', `an id has at most ${LONGEST_ID} characters`)];
  if (isPrimed(next)) return [fault('', "an id cannot end in a prime ('): that stands for the mirror image")];
  if (findRecord(job, collection, next)) return [fault('', `${quoted(next)} is there already`)];
  const pointed = withReferences(job, (target, reference) => {
    if (target !== collection || bareId(reference) !== id) return reference;
    return isPrimed(reference) ? `${next}'` : next;
  });
  const records: readonly { readonly id: string }[] = pointed[collection];
  return {
    ...pointed,
    [collection]: mapKeeping(records, (record) => (record.id === id ? { ...record, id: next } : record)),
  };
}

/** The job without the record; where others refer to it, one fault for each of them, naming it and the place. */
export function removeUnused(job: Job, collection: Collection, id: string): Edited {
  const faults = usersOf(job, collection, id);
  return faults.length > 0 ? faults : takeOut(job, collection, id);
}

/** The other records that refer to this one: `members[3].path[1]: "Rear stay" uses it`. */
export function usersOf(job: Job, collection: Collection, id: string): readonly Fault[] {
  const users: Fault[] = [];
  const look = <R extends { readonly id: string; readonly name: string }>(
    from: Collection,
    records: readonly R[],
    walk: (record: R, visit: Visit) => unknown,
  ): void => {
    records.forEach((record, index) => {
      if (from === collection && record.id === id) return;
      const places: string[] = [];
      walk(record, (target, reference, where) => {
        if (target === collection && bareId(reference) === id) places.push(where);
        return reference;
      });
      const [first] = places;
      if (first !== undefined) users.push(fault(`${from}[${index}].${first}`, `${quoted(record.name)} uses it`));
    });
  };
  look('bodyLines', job.bodyLines, bodyLineWith);
  look('nodes', job.nodes, nodeWith);
  look('members', job.members, memberWith);
  job.pulls.forEach((pull, index) =>
    pullWith(pull, (target, reference, where) => {
      if (target === collection && reference === id)
        users.push(fault(`pulls[${index}].${where}`, 'a logged pull uses it'));
      return reference;
    }),
  );
  return users;
}

/** The ids of the nodes that move with this one, itself included: those that stand on it, or on a tube through it. */
export function dependentNodes(job: Job, nodeId: string): ReadonlySet<string> {
  const nodes = new Set([nodeId]);
  const members = new Set<string>();
  const dependsOn = (target: Collection, reference: string): boolean =>
    (target === 'nodes' && nodes.has(bareId(reference))) || (target === 'members' && members.has(bareId(reference)));
  const gather = (found: Set<string>, records: readonly (FrameNode | Member)[]): void => {
    for (const record of records) {
      const visit: Visit = (target, reference, where) => {
        // An end is coped to what it meets; only the path says where the tube runs.
        if (dependsOn(target, reference) && !where.startsWith('ends')) found.add(record.id);
        return reference;
      };
      if ('at' in record) nodeWith(record, visit);
      else memberWith(record, visit);
    }
  };
  for (let before = -1; before !== nodes.size + members.size;) {
    before = nodes.size + members.size;
    gather(members, job.members);
    gather(nodes, job.nodes);
  }
  return nodes;
}

function withReferences(job: Job, visit: Visit): Job {
  const lined = withRecords(
    job,
    'bodyLines',
    mapKeeping(job.bodyLines, (line) => bodyLineWith(line, visit)),
  );
  const placed = withRecords(
    lined,
    'nodes',
    mapKeeping(job.nodes, (node) => nodeWith(node, visit)),
  );
  const framed = withRecords(
    placed,
    'members',
    mapKeeping(job.members, (member) => memberWith(member, visit)),
  );
  const pulls = mapKeeping(job.pulls, (pull) => pullWith(pull, visit));
  return pulls === job.pulls ? framed : { ...framed, pulls };
}

const pullWith = (pull: Pull, visit: Visit): Pull =>
  patched(pull, { die: visit('dies', pull.die, 'die'), section: visit('sections', pull.section, 'section') });

const bodyLineWith = (line: Job['bodyLines'][number], visit: Visit): Job['bodyLines'][number] =>
  patched(line, { points: mapKeeping(line.points, (point, i) => visit('points', point, `points[${i}]`)) });

const nodeWith = (node: FrameNode, visit: Visit): FrameNode => patched(node, { at: placeWith(node.at, visit) });

function placeWith(at: Place, visit: Visit): Place {
  switch (at.kind) {
    case 'fixed':
      return at;
    case 'point':
      return patched(at, { point: visit('points', at.point, 'at.point') });
    case 'on':
      return patched(at, { member: visit('members', at.member, 'at.member') });
    case 'between': {
      const nodes = mapKeeping(at.nodes, (node, i) => visit('nodes', node, `at.nodes[${i}]`));
      return patched(at, { nodes: nodes as typeof at.nodes });
    }
    case 'ray':
      return patched(at, { from: visit('nodes', at.from, 'at.from') });
  }
}

function memberWith(member: Member, visit: Visit): Member {
  const ends = mapKeeping<EndFit>(member.ends, (end, i) =>
    end.fit === 'cope'
      ? patched(end, {
          against: mapKeeping(end.against, (run, j) => visit('members', run, `ends[${i}].against[${j}]`)),
        })
      : end,
  );
  return patched(member, {
    path: mapKeeping(member.path, (node, i) => visit('nodes', node, `path[${i}]`)),
    section: visit('sections', member.section, 'section'),
    ...(member.die !== undefined && { die: visit('dies', member.die, 'die') }),
    ends: ends as Member['ends'],
  });
}
