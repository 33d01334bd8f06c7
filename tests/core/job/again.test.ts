/** The short way through the door says what the long one does, for records good and bad. */
import { describe, expect, it } from 'vitest';
import { parseJob, readAgain, shapeAgain } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { latticeOf } from '../../bench/lattice.ts';
import { sampleFile } from './sample.ts';

const job = (): Job => {
  const parsed = parseJob(JSON.stringify(sampleFile()));
  if (!parsed.ok) throw new Error('the sample must open');
  return parsed.job;
};

const BEFORE = job();
const first = (key: 'points' | 'nodes' | 'members' | 'sections', change: object): Job => ({
  ...BEFORE,
  [key]: BEFORE[key].map((record, i) => (i === 0 ? { ...record, ...change } : record)),
});

const EDITS: readonly (readonly [string, Job])[] = [
  ['nothing', { ...BEFORE }],
  ['another name', { ...BEFORE, name: 'Club coupe' }],
  ['a moved point', first('points', { position: [1, 2, 3] })],
  ['a point at no number', first('points', { position: [1, Number.NaN, 3] })],
  ['a point beyond all', first('points', { position: [1, Number.POSITIVE_INFINITY, 3] })],
  ['a point in the plane', first('points', { position: [1, 2] })],
  ['a wall of nothing', first('sections', { wall: 0 })],
  ['a wall thicker than its tube', first('sections', { wall: 1000 })],
  ['a path through no node', first('members', { path: ['nobody', 'nowhere'] })],
  ['an unknown unit', { ...BEFORE, lengthUnit: 'ell' as unknown as Job['lengthUnit'] }],
  ['a key that every object has', first('nodes', JSON.parse('{ "constructor": 1 }') as object)],
  ['sections gone', { ...BEFORE, sections: [] }],
  ['a record twice', { ...BEFORE, nodes: [...BEFORE.nodes, BEFORE.nodes[0]!] }],
  ['a list that is none', { ...BEFORE, pulls: null as unknown as Job['pulls'] }],
  ['the order turned round', { ...BEFORE, members: BEFORE.members.toReversed() }],
];

describe('a job made from one that has passed', () => {
  it.each(EDITS)('with %s is judged as its whole text is', (_, next) => {
    const whole = parseJob(serialiseJob(next));
    expect(readAgain(next, { file: BEFORE, job: BEFORE })).toEqual(whole.ok ? whole.job : null);
  });

  it.each<[string, object]>([
    ['a member without its ends and its mirror', first('members', { ends: undefined, mirror: undefined })],
    ['no pulls', { ...BEFORE, pulls: undefined }],
    ['a zero below zero', first('points', { position: [-0, 2, 3] })],
    ['a record between others', { ...BEFORE, nodes: BEFORE.nodes.toSpliced(1, 0, { ...BEFORE.nodes[0]!, id: 'new' }) }],
  ])('with %s comes out as its whole text does, and is what is handed on', (_, next) => {
    const read = readAgain(next, { file: BEFORE, job: BEFORE })!;
    expect({ ok: true, job: read }).toStrictEqual(parseJob(serialiseJob(next as Job)));
    expect(read.sections).toBe(BEFORE.sections);
    expect(read.points.at(-1)).toBe(BEFORE.points.at(-1));
  });

  it('made from the data of an old file is read beside what that was read as', () => {
    const file = { ...BEFORE, members: BEFORE.members.map((member) => ({ ...member, ends: undefined })) };
    const job = shapeAgain(file, { file: {}, job: BEFORE })!;
    const next = { ...file, members: [file.members[1]!, { ...file.members[0]!, name: 'Other' }] };
    const read = shapeAgain(next, { file, job })!;
    expect({ ok: true, job: read }).toEqual(parseJob(serialiseJob(next as unknown as Job)));
    expect(read.members[0]).toBe(job.members[1]);
  });

  it('is read again only where it is new', () => {
    const before = latticeOf(500);
    // What is the same object is not looked into: a record that would be refused shows it.
    const spoilt = { ...before.nodes[7]!, at: { kind: 'fixed', position: [Number.NaN, 0, 0] } } as const;
    const passed = { ...before, nodes: before.nodes.with(7, spoilt) };
    const moved = { ...passed.nodes[9]!, name: 'moved' };
    const next = readAgain({ ...passed, nodes: passed.nodes.with(9, moved) }, { file: passed, job: passed })!;
    expect(next.nodes[7]).toBe(spoilt);
    expect(next.nodes[9]).toEqual(moved);
    expect(readAgain({ ...passed, nodes: passed.nodes.with(9, spoilt) }, { file: before, job: before })).toBeNull();
  });
});
