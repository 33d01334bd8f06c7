/** Findings said once, and marked as seen until their numbers change. The demo's eight warnings are three joints. */
import { describe, expect, it } from 'vitest';
import { grouped } from '../../../src/core/checks/grouped.ts';
import { isSeen, seenOf, unseen } from '../../../src/core/checks/seen.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { markSeen, unmarkSeen } from '../../../src/core/edit/seen.ts';
import { setOnDistance } from '../../../src/core/edit/nodes.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { alsoInWords } from '../../../src/core/words/groups.ts';

const read = (records: object): Job => {
  const parsed = parseJob(JSON.stringify({ format: 'cagewright/job', version: 1, ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
};

const derived = (job: Job): Derived => {
  const result = derive(job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
};

/** A hoop, and on it beside its bends a stay and a leg that end at one node, on both sides of the car. */
const job = read({
  sections: [{ id: 's', outerDiameter: 40, wall: 2.5 }],
  dies: [{ id: 'd', outerDiameter: 40, centrelineRadius: 130 }],
  nodes: [
    { id: 'foot', at: { kind: 'fixed', position: [0, 600, 0] } },
    { id: 'top', at: { kind: 'fixed', position: [0, 500, 1100] } },
    { id: 'joint', at: { kind: 'on', member: 'hoop', bend: 1, where: 'start', distance: -23.5 } },
    { id: 'rear', at: { kind: 'fixed', position: [-900, 450, 400] } },
    { id: 'fore', at: { kind: 'fixed', position: [900, 610, 400] } },
  ],
  members: [
    {
      id: 'hoop',
      path: ['foot', 'top', "top'", "foot'"],
      section: 's',
      die: 'd',
      ends: [{ fit: 'square' }, { fit: 'square' }],
    },
    {
      id: 'stay',
      name: 'Stay',
      path: ['joint', 'rear'],
      section: 's',
      mirror: true,
      ends: [{ fit: 'auto' }, { fit: 'square' }],
    },
    {
      id: 'leg',
      name: 'Leg',
      path: ['joint', 'fore'],
      section: 's',
      mirror: true,
      ends: [{ fit: 'cope', against: ['hoop'] }, { fit: 'square' }],
    },
  ],
});

const nearBend = ({ findings }: Derived) => findings.filter(({ id }) => id === 'joint/near-bend');

describe('findings', () => {
  it('of one joint are one thing, whichever tube and side they are named at', () => {
    const frame = derived(job);
    const found = nearBend(frame);
    expect(found.map(({ tube }) => tube).toSorted()).toEqual(['leg', "leg'", 'stay', "stay'"]);
    const groups = grouped(found, frame);
    expect(groups).toHaveLength(1);
    expect(alsoInWords(groups[0]!, frame)).toBe(
      'The same at Stay (right), end A, Leg (left), end A and Leg (right), end A.',
    );
    expect(grouped(frame.findings, frame).flatMap(({ first, more }) => [first, ...more])).toHaveLength(
      frame.findings.length,
    );
  });

  it('of one built tube name each place with how far off it is', () => {
    const frame = derived(job);
    const off = (node: string, distance: number) => ({
      id: 'made/off-node' as const,
      severity: 'note' as const,
      source: 'practice' as const,
      tube: 'hoop',
      node,
      at: [0, 0, 0] as const,
      distance,
      others: [],
    });
    const groups = grouped([off('foot', 5.9), off('top', 1.7), off("foot'", 4.2)], frame);
    expect(groups).toHaveLength(1);
    expect(alsoInWords(groups[0]!, frame)).toBe('The same at top, by 1.7 mm and foot, mirrored, by 4.2 mm.');
  });

  it('that are marked as seen stay so until their numbers change', () => {
    const marks = nearBend(derived(job)).map(seenOf);
    const marked = markSeen(job, marks);
    expect(read(JSON.parse(serialiseJob(marked)) as object).seen).toEqual(marks);
    expect(markSeen(marked, marks)).toBe(marked);
    const frame = derived(marked);
    expect(nearBend(frame).every((finding) => isSeen(finding, marked.seen))).toBe(true);
    expect(unseen(frame.findings, marked.seen)).toHaveLength(frame.findings.length - 4);
    const moved = setOnDistance(marked, 'joint', -24);
    const after = nearBend(derived(moved));
    expect(after).toHaveLength(4);
    expect(after.some((finding) => isSeen(finding, moved.seen))).toBe(false);
    // Marked anew, the older marks of the same findings go.
    expect(markSeen(moved, after.map(seenOf)).seen).toHaveLength(4);
    expect(unmarkSeen(marked, marks)).toEqual(job);
  });

  it('that are errors are never left', () => {
    const [first] = nearBend(derived(job));
    const error = { ...first!, severity: 'error' as const };
    expect(isSeen(error, [seenOf(error)])).toBe(false);
  });
});
