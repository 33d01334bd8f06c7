/**
 * Who refers to whom. One walk over every reference in the job serves two questions: may this record go, and what moves
 * when this node does.
 */
import { fault, quoted } from '../job/fault.ts';
import { bareId } from '../job/reference.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Job } from '../job/types.ts';
import type { Collection } from '../job/validate.ts';
import { takeOut, type Edited } from './records.ts';

interface Reference {
  /** Who refers: the place of its record in the file, its id, and its name as a person knows it. */
  readonly place: string;
  readonly from: Collection | 'pulls' | 'bent';
  readonly owner: string;
  readonly name: string;
  /** The place within the record. */
  readonly where: string;
  /** What it refers to. */
  readonly target: Collection;
  readonly id: string;
}

/** The job without the record; where others refer to it, one fault for each of them, naming it and the place. */
export function removeUnused(job: Job, collection: Collection, id: string): Edited {
  const users = new Map<string, Reference>();
  for (const reference of referencesOf(job)) {
    const isUser = reference.target === collection && reference.id === id;
    const isItself = reference.from === collection && reference.owner === id;
    if (isUser && !isItself && !users.has(reference.place)) users.set(reference.place, reference);
  }
  if (users.size === 0) return takeOut(job, collection, id);
  return [...users.values()].map(({ place, where, name }) =>
    fault(`${place}.${where}`, `${name} uses it: change or delete that first`),
  );
}

/** A node or a member. */
interface Moving {
  readonly kind: 'nodes' | 'members';
  readonly id: string;
}

/** The ids of the nodes that move with this one, itself included: those that stand on it, or on a tube through it. */
export function dependentNodes(job: Job, nodeId: string): ReadonlySet<string> {
  const carried = { nodes: new Map<string, Moving[]>(), members: new Map<string, Moving[]>() };
  for (const { from, owner, where, target, id } of referencesOf(job)) {
    // An end is coped to what it meets; only the path says where the tube runs.
    if ((from !== 'nodes' && from !== 'members') || where.startsWith('ends')) continue;
    if (target !== 'nodes' && target !== 'members') continue;
    const others = carried[target].get(id);
    const moving = { kind: from, id: owner };
    if (others === undefined) carried[target].set(id, [moving]);
    else others.push(moving);
  }
  const moved = { nodes: new Set([nodeId]), members: new Set<string>() };
  const waiting: Moving[] = [{ kind: 'nodes', id: nodeId }];
  for (const carrier of waiting) {
    for (const moving of carried[carrier.kind].get(carrier.id) ?? []) {
      if (moved[moving.kind].has(moving.id)) continue;
      moved[moving.kind].add(moving.id);
      waiting.push(moving);
    }
  }
  return moved.nodes;
}

function* referencesOf(job: Job): Generator<Reference> {
  for (const [i, line] of job.bodyLines.entries()) {
    const by = { place: `bodyLines[${i}]`, from: 'bodyLines', owner: line.id, name: quoted(line.name) } as const;
    for (const [j, point] of line.points.entries())
      yield { ...by, where: `points[${j}]`, target: 'points', id: bareId(point) };
  }
  for (const [i, node] of job.nodes.entries()) {
    const by = { place: `nodes[${i}]`, from: 'nodes', owner: node.id, name: quoted(node.name) } as const;
    for (const reference of ofPlace(node)) yield { ...by, ...reference };
  }
  for (const [i, member] of job.members.entries()) {
    const by = { place: `members[${i}]`, from: 'members', owner: member.id, name: quoted(member.name) } as const;
    for (const reference of ofMember(member)) yield { ...by, ...reference };
  }
  for (const [i, { die, section }] of job.pulls.entries()) {
    const by = { place: `pulls[${i}]`, from: 'pulls', owner: '', name: 'a logged pull' } as const;
    yield { ...by, where: 'die', target: 'dies', id: die };
    yield { ...by, where: 'section', target: 'sections', id: section };
  }
  for (const [i, { tube }] of job.bent.entries()) {
    const by = { place: `bent[${i}]`, from: 'bent', owner: '', name: 'its bend run' } as const;
    yield { ...by, where: 'tube', target: 'members', id: bareId(tube) };
  }
}

type Pointing = Pick<Reference, 'where' | 'target' | 'id'>;

function* ofPlace({ at }: FrameNode): Generator<Pointing> {
  switch (at.kind) {
    case 'fixed':
      return;
    case 'point':
      yield { where: 'at.point', target: 'points', id: bareId(at.point) };
      return;
    case 'on':
      yield { where: 'at.member', target: 'members', id: bareId(at.member) };
      return;
    case 'between':
      for (const [j, node] of at.nodes.entries()) yield { where: `at.nodes[${j}]`, target: 'nodes', id: bareId(node) };
      return;
    case 'ray':
      yield { where: 'at.from', target: 'nodes', id: bareId(at.from) };
  }
}

function* ofMember({ path, section, die, ends }: Member): Generator<Pointing> {
  for (const [j, node] of path.entries()) yield { where: `path[${j}]`, target: 'nodes', id: bareId(node) };
  yield { where: 'section', target: 'sections', id: section };
  if (die !== undefined) yield { where: 'die', target: 'dies', id: die };
  for (const [j, end] of ends.entries()) {
    if (end.fit !== 'cope') continue;
    for (const [k, run] of end.against.entries()) {
      yield { where: `ends[${j}].against[${k}]`, target: 'members', id: bareId(run) };
    }
  }
}
