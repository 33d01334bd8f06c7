/**
 * In which sequence nodes and members can be solved: a node needs what it is placed by, a member needs the nodes of its
 * path. References that form a loop cannot be solved; the loop is named. Primes do not matter here: a mirror image
 * needs what the record itself needs.
 */
import { quoted, type Fault, type Outcome } from '../job/fault.ts';
import { carriersOf } from '../job/references.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Job } from '../job/types.ts';

export type Step =
  | { readonly kind: 'node'; readonly index: number; readonly record: FrameNode }
  | { readonly kind: 'member'; readonly index: number; readonly record: Member };

/** Every node and member once, each after all that it needs; or one fault for each loop. */
export function sequenceOf(job: Job): Outcome<readonly Step[]> {
  const steps: Step[] = [
    ...job.nodes.map((record, index): Step => ({ kind: 'node', index, record })),
    ...job.members.map((record, index): Step => ({ kind: 'member', index, record })),
  ];
  const nodeAt = new Map(job.nodes.map((node, index) => [node.id, index]));
  const memberAt = new Map(job.members.map((member, index) => [member.id, index + job.nodes.length]));
  const needs = [
    ...job.nodes.map((node) => carriersOf('nodes', node)),
    ...job.members.map((member) => carriersOf('members', member)),
  ].map((carriers) => carriers.map(({ list, id }) => (list === 'nodes' ? nodeAt : memberAt).get(id)!));

  const waiting = needs.map((each) => each.length);
  const servedBy: number[][] = steps.map(() => []);
  needs.forEach((each, index) => each.forEach((needed) => servedBy[needed]!.push(index)));
  const ready = [...steps.keys()].filter((index) => waiting[index] === 0);
  const sequence: Step[] = [];
  for (let next = 0; next < ready.length; next++) {
    const index = ready[next]!;
    sequence.push(steps[index]!);
    for (const served of servedBy[index]!) if (--waiting[served]! === 0) ready.push(served);
  }
  return sequence.length === steps.length
    ? { ok: true, value: sequence }
    : { ok: false, faults: loops(steps, needs, waiting) };
}

/** A longer loop is named by its beginning and its end. */
const LONGEST_LOOP = 12;

/** Follows what is still waited for from each stuck step until it comes round; every loop is named once. */
function loops(steps: readonly Step[], needs: readonly (readonly number[])[], waiting: readonly number[]): Fault[] {
  const faults: Fault[] = [];
  const seen = new Set<number>();
  for (const start of steps.keys()) {
    if (waiting[start] === 0) continue;
    const trail: number[] = [];
    let index = start;
    while (!seen.has(index)) {
      seen.add(index);
      trail.push(index);
      index = needs[index]!.find((needed) => waiting[needed]! > 0)!;
    }
    const round = trail.indexOf(index);
    if (round < 0) continue;
    const loop = [...trail.slice(round), index].map((each) => `${steps[each]!.kind} ${quoted(steps[each]!.record.id)}`);
    const left = loop.length - LONGEST_LOOP;
    if (left > 0) loop.splice(LONGEST_LOOP - 1, left, `${left} more`);
    const { kind, index: place } = steps[index]!;
    faults.push({
      place: kind === 'node' ? `nodes[${place}].at` : `members[${place}].path`,
      message: `reference loop: ${loop.join(' needs ')}`,
    });
  }
  return faults;
}
