/** Deriving is a function of the job alone: what is kept from before only saves time, and the bytes are always the same. */
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derivation, type Derived } from '../../src/core/derive.ts';
import { drawn } from '../draws.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import type { EndFit } from '../../src/core/job/kinds/end.ts';
import type { Member } from '../../src/core/job/kinds/member.ts';
import type { Envelope } from '../../src/core/job/kinds/envelope.ts';
import type { Job } from '../../src/core/job/types.ts';
import { fabricationJson } from '../../src/exports/tables/fabrication.ts';
import { derivedOrSkipped, fixed, mirroredFrame, place, plainFrame } from './frames.ts';

type Edit = (job: Job) => Job;

const changed = <T>(list: readonly T[], at: number, change: (item: T) => T): T[] =>
  list.map((item, i) => (i === at % list.length ? change(item) : item));

const editMember =
  (at: number, change: (member: Member) => Member): Edit =>
  (job) => ({ ...job, members: changed(job.members, at, change) });
const editNode =
  (at: number, change: (node: Job['nodes'][number]) => Job['nodes'][number]): Edit =>
  (job) => ({ ...job, nodes: changed(job.nodes, at, change) });

const SQUARE: EndFit = { fit: 'square', allowance: 0 };
const fits: fc.Arbitrary<EndFit> = fc.oneof(
  fc.constant<EndFit>(SQUARE),
  fc.record({ fit: fc.constant('auto' as const), allowance: fc.constantFrom(0, 3) }),
  fc.record({
    fit: fc.constant('plate' as const),
    normal: fc.constantFrom<[number, number, number]>([0, 0, 1], [0.6, 0, 0.8]),
    allowance: fc.constant(0),
  }),
  fc.record({
    fit: fc.constant('cope' as const),
    against: fc.constantFrom(['m0'], ['m0', 'm1'], ['m1']),
    allowance: fc.constant(0),
  }),
);

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc
    .tuple(fc.nat(30), place)
    .map(([at, position]) => editNode(at, (node) => ({ ...node, at: { kind: 'fixed', position } }))),
  fc
    .tuple(fc.nat(30), fc.integer({ min: 0, max: 400 }))
    .map(([at, distance]) =>
      editNode(at, (node) =>
        node.at.kind === 'on' && node.at.from !== undefined ? { ...node, at: { ...node.at, distance } } : node,
      ),
    ),
  fc.nat(9).map((at) => editNode(at, (node) => ({ ...node, name: `${node.name}!` }))),
  fc
    .tuple(fc.nat(9), fc.constantFrom('main', 'light', 'small'))
    .map(([at, section]) => editMember(at, (member) => ({ ...member, section }))),
  fc.nat(9).map((at) => editMember(at, (member) => ({ ...member, name: `${member.name}!` }))),
  fc.nat(9).map((at) => editMember(at, (member) => ({ ...member, mirror: !member.mirror }))),
  fc.nat(9).map((at) =>
    editMember(at, (member) => ({
      ...member,
      path: member.path.toReversed(),
      ends: [member.ends[1], member.ends[0]],
    })),
  ),
  fc.tuple(fc.nat(9), fits, fits).map(([at, a, b]) => editMember(at, (member) => ({ ...member, ends: [a, b] }))),
  fc.nat(9).map((at) =>
    editMember(at, (member) => ({
      ...member,
      path: member.path.length > 2 ? member.path.toSpliced(1, 1) : member.path,
    })),
  ),
  fc.nat(9).map((at): Edit => (job) => ({
    ...job,
    members: [...job.members.slice(at % job.members.length), ...job.members.slice(0, at % job.members.length)],
  })),
  fc.integer({ min: 60, max: 200 }).map((radius): Edit => (job) => ({
    ...job,
    dies: job.dies.map((die) => ({ ...die, centrelineRadius: radius })),
  })),
  fc.integer({ min: 30, max: 60 }).map((outerDiameter): Edit => (job) => ({
    ...job,
    sections: changed(job.sections, 0, (section) => ({ ...section, outerDiameter })),
  })),
  fc.nat(9).map(
    (at): Edit =>
      (job) =>
        job.members.length > 1 ? { ...job, members: job.members.toSpliced(at % job.members.length, 1) } : job,
  ),
  fc.tuple(place, fc.integer({ min: 0, max: 90 })).map(([centre, turn]): Edit => (job) => ({
    ...job,
    envelopes: [
      { id: 'head', name: '', kind: 'box', centre, size: [330, 280, 330], rotation: [turn, 0, turn], gap: 50 },
    ],
  })),
  fc.tuple(place, fc.boolean()).map(([position, isRight]): Edit => (job) => ({
    ...job,
    points: [...job.points.filter(({ id }) => id !== 'helmet-top'), { id: 'helmet-top', name: '', position }],
    envelopes: job.envelopes.some(({ id }) => id === 'driver') && isRight ? job.envelopes : [DRIVER],
  })),
);

const DRIVER: Envelope = {
  id: 'driver',
  name: '',
  kind: 'driver',
  helmetTop: "helmet-top'",
  helmet: [350, 260, 270],
  motion: { forward: 50, back: 0, side: 20, up: 10 },
  gap: 50,
};

/** Edits that leave a reference hanging belong to another door: the job is as its file would be read back. */
const readBack = (job: Job): Job | null => {
  const parsed = parseJob(JSON.stringify(job));
  return parsed.ok ? job : null;
};

const sameDerivation = (a: Derivation, b: Derivation): boolean => isDeepStrictEqual(a, b);

describe('derive', () => {
  it('answers the same with what was derived before as without it, edit after edit', () => {
    fc.assert(
      fc.property(
        fc.oneof(plainFrame, mirroredFrame),
        fc.array(edit, { minLength: 1, maxLength: 12 }),
        (start, edits) => {
          let job = start;
          let previous: Derived = derivedOrSkipped(job);
          for (const step of edits) {
            const next = readBack(step(job));
            if (next === null) continue;
            const fresh = derive(next);
            const reused = derive(next, previous);
            if (!sameDerivation(reused, fresh)) expect(reused).toEqual(fresh);
            expect(sameDerivation(reused, fresh)).toBe(true);
            if (!fresh.ok || !reused.ok) continue;
            job = next;
            // What was handed on is handed on again: errors that creep in would add up.
            previous = reused.value;
          }
        },
      ),
      fixed(drawn(5, 60)),
    );
  });

  it('leaves the job as it was', () => {
    fc.assert(
      fc.property(mirroredFrame, (job) => {
        const before = structuredClone(job);
        derive(job);
        expect(job).toEqual(before);
      }),
      fixed(drawn(8, 30)),
    );
  });

  it('hands on, record for record, what an edit did not touch', () => {
    fc.assert(
      fc.property(fc.oneof(plainFrame, mirroredFrame), (job) => {
        const first = derivedOrSkipped(job);
        const again = derive({ ...job, name: 'Another' }, first);
        expect(again.ok && again.value.tubes.every((tube, i) => tube === first.tubes[i])).toBe(true);
      }),
      fixed(drawn(12, 60)),
    );
  });

  it('gives the same bytes for the same job, and for the job read back from its own text', () => {
    fc.assert(
      fc.property(fc.oneof(plainFrame, mirroredFrame), (job) => {
        const bytes = fabricationJson(derivedOrSkipped(job));
        expect(fabricationJson(derivedOrSkipped(structuredClone(job)))).toBe(bytes);
        const read = parseJob(JSON.stringify(job));
        expect(read.ok && fabricationJson(derivedOrSkipped(read.job))).toBe(bytes);
      }),
      fixed(drawn(8, 30)),
    );
  });
});
