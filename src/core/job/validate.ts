/**
 * What the shape of a job cannot tell: ids are unique, references resolve, walls are thinner than their tubes,
 * directions have a length, an end is not coped to its own tube. Whether references form a loop, and whether the
 * tubes can be bent at all, is found when the job is derived.
 */
import { fault, figure, quoted, type Fault } from './fault.ts';
import { MOST_AT_AN_END, MOST_BOXES, MOST_PULLS } from './limits.ts';
import { bareId, isPrimed } from './reference.ts';
import type { BentTube } from './kinds/bent.ts';
import type { EndFit } from './kinds/end.ts';
import type { Member } from './kinds/member.ts';
import type { Section } from './kinds/section.ts';
import type { Place } from './places.ts';
import type { Job } from './types.ts';

/** Collections of records that carry an id, in the order in which a file holds them. */
export const COLLECTIONS = ['points', 'bodyLines', 'sections', 'dies', 'nodes', 'members', 'envelopes'] as const;
export type Collection = (typeof COLLECTIONS)[number];

/** Shorter than this, mm, an arrow is a slip and its direction noise. */
const LEAST_ARROW = 1e-9;

/** All that is wrong with a well-shaped job, in the order of the file. */
export function jobFaults(job: Job): readonly Fault[] {
  const has = (collection: Collection): ReadonlySet<string> => new Set(job[collection].map(({ id }) => id));
  const known: Known = {
    points: has('points'),
    nodes: has('nodes'),
    sections: has('sections'),
    dies: has('dies'),
    members: new Map(job.members.map((member) => [member.id, member])),
  };
  const inRecords = COLLECTIONS.flatMap((collection) => {
    const faults = duplicates(collection, job[collection]);
    switch (collection) {
      case 'points':
      case 'dies':
      case 'envelopes':
        return faults;
      case 'bodyLines':
        return faults.concat(
          job.bodyLines.flatMap(({ points }, i) =>
            points.flatMap((ref, j) => mirrorable(known.points, 'point', ref, `bodyLines[${i}].points[${j}]`)),
          ),
        );
      case 'sections':
        return faults.concat(job.sections.flatMap((section, i) => wallFaults(section, `sections[${i}]`)));
      case 'nodes':
        return faults.concat(job.nodes.flatMap(({ at }, i) => placeFaults(at, `nodes[${i}].at`, known)));
      case 'members':
        return faults.concat(job.members.flatMap((member, i) => memberFaults(member, `members[${i}]`, known)));
    }
  });
  const inPulls = job.pulls.flatMap(({ die, section }, i) => [
    ...plain(known.dies, 'die', die, `pulls[${i}].die`),
    ...plain(known.sections, 'section', section, `pulls[${i}].section`),
  ]);
  const bentAt = new Map(job.bent.map(({ tube }, i) => [tube, i] as const).toReversed());
  const inBent = job.bent.flatMap((bent, i) => bentFaults(bent, `bent[${i}]`, known, bentAt.get(bent.tube)!));
  const inRooms = job.dies.flatMap(({ bender }, i) =>
    (bender?.room ?? []).flatMap((obstacle, j) =>
      obstacle.kind === 'plane' ? arrowFaults(obstacle.normal, `dies[${i}].bender.room[${j}].normal`) : [],
    ),
  );
  return [...inRecords, ...inRooms, ...inPulls, ...inBent, ...tooMany(job)];
}

const tooMany = ({ envelopes, dies, pulls }: Job): Fault[] => [
  ...atMost(MOST_BOXES, envelopes, 'envelopes'),
  ...dies.flatMap(({ bender }, i) => atMost(MOST_BOXES, bender?.room ?? [], `dies[${i}].bender.room`)),
  ...atMost(MOST_PULLS, pulls, 'pulls'),
];

const atMost = (most: number, list: readonly unknown[], where: string): Fault[] =>
  list.length <= most ? [] : [fault(where, `more than ${most}`)];

interface Known {
  readonly points: ReadonlySet<string>;
  readonly nodes: ReadonlySet<string>;
  readonly sections: ReadonlySet<string>;
  readonly dies: ReadonlySet<string>;
  readonly members: ReadonlyMap<string, Member>;
}

function duplicates(collection: Collection, records: readonly { readonly id: string }[]): Fault[] {
  const first = new Map<string, number>();
  const faults: Fault[] = [];
  records.forEach(({ id }, index) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, index);
    else faults.push(fault(`${collection}[${index}].id`, `${quoted(id)} is already ${collection}[${before}]`));
  });
  return faults;
}

function wallFaults({ outerDiameter, wall }: Section, at: string): Fault[] {
  if (outerDiameter <= 0 || wall < outerDiameter / 2) return [];
  return [fault(`${at}.wall`, `${figure(wall)} is not less than the tube's radius, ${figure(outerDiameter / 2)}`)];
}

function placeFaults(at: Place, where: string, known: Known): Fault[] {
  switch (at.kind) {
    case 'fixed':
      return [];
    case 'point':
      return mirrorable(known.points, 'point', at.point, `${where}.point`);
    case 'on':
      return tubeFaults(known, at.member, `${where}.member`);
    case 'between':
      return at.nodes.flatMap((ref, i) => mirrorable(known.nodes, 'node', ref, `${where}.nodes[${i}]`));
    case 'ray':
      return [
        ...mirrorable(known.nodes, 'node', at.from, `${where}.from`),
        ...arrowFaults(at.direction, `${where}.direction`),
      ];
  }
}

function memberFaults(member: Member, where: string, known: Known): Fault[] {
  return [
    ...member.path.flatMap((ref, i) => mirrorable(known.nodes, 'node', ref, `${where}.path[${i}]`)),
    ...plain(known.sections, 'section', member.section, `${where}.section`),
    ...(member.die === undefined ? [] : plain(known.dies, 'die', member.die, `${where}.die`)),
    ...member.ends.flatMap((end, i) => endFaults(end, member, `${where}.ends[${i}]`, known)),
  ];
}

function endFaults(end: EndFit, member: Member, where: string, known: Known): Fault[] {
  if (end.fit === 'plate') return arrowFaults(end.normal, `${where}.normal`);
  if (end.fit !== 'cope') return [];
  if (end.against.length > MOST_AT_AN_END) return atMost(MOST_AT_AN_END, end.against, `${where}.against`);
  return end.against.flatMap((ref, i) =>
    ref === member.id
      ? [fault(`${where}.against[${i}]`, `${quoted(ref)} is the member itself`)]
      : tubeFaults(known, ref, `${where}.against[${i}]`),
  );
}

/** Its tube exists and is bent once, `first` being where it is; no bend stands twice in the order or among those made. */
function bentFaults({ tube, order, bends }: BentTube, where: string, known: Known, first: number): Fault[] {
  const twice = (made: readonly { readonly bend: number }[], list: string): Fault[] => {
    const seen = new Set<number>();
    return made.flatMap(({ bend }, i) =>
      seen.size < seen.add(bend).size ? [] : [fault(`${where}.${list}[${i}].bend`, `bend ${bend} is there already`)],
    );
  };
  return [
    ...tubeFaults(known, tube, `${where}.tube`, ', yet its twin has a bend run: take that out first, in the Shop'),
    ...(where === `bent[${first}]` ? [] : [fault(`${where}.tube`, `${quoted(tube)} is already bent[${first}]`)]),
    ...twice(order, 'order'),
    ...twice(bends, 'bends'),
  ];
}

const arrowFaults = (arrow: readonly number[], where: string): Fault[] =>
  arrow.some((part) => Math.abs(part) >= LEAST_ARROW) ? [] : [fault(where, 'has no length, so no direction')];

const plain = (ids: ReadonlySet<string>, what: string, ref: string, where: string): Fault[] =>
  ids.has(ref) ? [] : [fault(where, `no ${what} ${quoted(ref)}`)];

/** A point or a node: each has its mirror image, named with a prime. */
const mirrorable = (ids: ReadonlySet<string>, what: string, ref: string, where: string): Fault[] =>
  ids.has(bareId(ref)) ? [] : [fault(where, `no ${what} ${quoted(ref)}`)];

/** A member, or with a prime the twin, which only a mirrored member has; `remedy` is what to do where it has none. */
function tubeFaults(known: Known, ref: string, where: string, remedy = ''): Fault[] {
  const member = known.members.get(bareId(ref));
  if (!member) return [fault(where, `no member ${quoted(ref)}`)];
  if (!isPrimed(ref) || member.mirror) return [];
  return [fault(where, `no member ${quoted(ref)}: ${quoted(member.id)} is not mirrored${remedy}`)];
}
