/** Halves that are meant as one line: what they are out of it by, against angles drawn by hand; and the one edit that makes them one bar. */
import { describe, expect, it } from 'vitest';
import type { OutOfLine } from '../../../src/core/checks/types.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { mended, mendsOf } from '../../../src/core/mend/mends.ts';
import { mendInWords } from '../../../src/core/words/mends.ts';

/** A post, and two bars on it from either side: the second is turned so many degrees in the plane of both, and set off along the post. */
function halves(degrees: number, along: number, more: { mirror?: boolean; section?: string } = {}): Job {
  const turn = (degrees * Math.PI) / 180;
  const member = { section: 's', mirror: more.mirror ?? false };
  const parsed = parseJob(
    JSON.stringify({
      format: 'cagewright/job',
      version: 1,
      sections: [
        { id: 's', outerDiameter: 38.1, wall: 2.4 },
        { id: 'other', outerDiameter: 38.1, wall: 3 },
        { id: 'wide', outerDiameter: 63.5, wall: 3 },
      ],
      nodes: [
        { id: 'low', at: { kind: 'fixed', position: [0, 400, 0] } },
        { id: 'high', at: { kind: 'fixed', position: [0, 400, 1000] } },
        { id: 'joint', at: { kind: 'on', member: 'post', from: 'start', distance: 500 } },
        { id: 'aside', at: { kind: 'on', member: 'post', from: 'start', distance: 500 + along } },
        { id: 'left', at: { kind: 'fixed', position: [-600, 400, 500] } },
        {
          id: 'right',
          at: { kind: 'fixed', position: [600 * Math.cos(turn), 400 + 600 * Math.sin(turn), 500 + along] },
        },
      ],
      members: [
        {
          id: 'post',
          name: 'Post',
          path: ['low', 'high'],
          ...member,
          section: 'wide',
          ends: [{ fit: 'square' }, { fit: 'square' }],
        },
        { id: 'rear', name: 'Rear', path: ['left', 'joint'], ...member, ends: [{ fit: 'square' }, { fit: 'auto' }] },
        {
          id: 'fore',
          name: 'Fore',
          path: ['aside', 'right'],
          ...member,
          section: more.section ?? 's',
          ends: [{ fit: 'auto' }, { fit: 'square' }],
        },
      ],
    }),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}

function derived(job: Job, previous?: Derived): Derived {
  const result = derive(job, previous);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

const outOfLine = ({ findings }: Derived) =>
  findings.filter((each): each is OutOfLine => each.id === 'joint/out-of-line');

describe('two halves on a post', () => {
  it.each([
    [0.19, 0, null],
    [0.21, 0, [0.21, 0]],
    [4.9, 0, [4.9, 0]],
    [5.1, 0, null],
    [0, 0.9, null],
    [0, 1.1, [0, 1.1]],
    [3, 12, [3, 12]],
    [0, 19.5, null],
  ] as const)('at %d degrees and %d mm aside', (degrees, along, expected) => {
    const found = outOfLine(derived(halves(degrees, along)));
    if (expected === null) {
      expect(found).toEqual([]);
      return;
    }
    expect(found.map(({ tube, end, mate, mateEnd, through }) => [tube, end, mate, mateEnd, through])).toEqual([
      ['fore', 'A', 'rear', 'B', 'post'],
    ]);
    expect((found[0]!.angle * 180) / Math.PI).toBeCloseTo(expected[0], 6);
    expect(found[0]!.offset).toBeCloseTo(expected[1], 6);
  });

  it('are found the same after an edit elsewhere', () => {
    const job = halves(2, 0);
    const before = derived(job);
    const moved = {
      ...job,
      nodes: [...job.nodes, { id: 'x', name: 'x', at: { kind: 'fixed' as const, position: [9, 9, 9] as const } }],
    };
    expect(outOfLine(derived(moved, before))[0]).toBe(outOfLine(before)[0]);
  });

  it.each([false, true])('become one bar in pieces, in line (mirrored: %s)', (mirror) => {
    const job = halves(2, 3, { mirror });
    const frame = derived(job);
    const [first] = outOfLine(frame);
    const [mend] = mendsOf(first!, frame);
    expect(mendInWords(mend!, frame)).toMatch(
      /^Draw Rear and Fore as one bar, cut where Post( \(left\))? runs through$/u,
    );
    const after = mended(job, mend!, first!, frame) as Job;
    expect(after.members.map(({ id, path, cutBy }) => [id, path, cutBy])).toEqual([
      ['post', ['low', 'high'], undefined],
      ['rear', ['left', 'right'], ['post']],
    ]);
    // The nodes between them stood for nothing else.
    expect(after.nodes.map(({ id }) => id)).toEqual(['low', 'high', 'left', 'right']);
    expect(outOfLine(derived(after))).toEqual([]);
  });

  it('of two sections are no one bar: the edit leaves the job', () => {
    const job = halves(2, 0, { section: 'other' });
    const frame = derived(job);
    const [first] = outOfLine(frame);
    const answer = mended(job, mendsOf(first!, frame)[0]!, first!, frame);
    expect(Array.isArray(answer)).toBe(true);
  });
});

it('halves end to end, butted, are held to the same line', () => {
  const job = halves(3, 0);
  const butted: Job = {
    ...job,
    members: job.members.flatMap((member) =>
      member.id === 'post' ? [] : [member.id === 'fore' ? { ...member, path: ['joint', 'right'] } : member],
    ),
    nodes: job.nodes.flatMap((node) =>
      node.id === 'aside'
        ? []
        : [node.id === 'joint' ? { ...node, at: { kind: 'fixed' as const, position: [0, 400, 500] as const } } : node],
    ),
  };
  const found = outOfLine(derived(butted));
  expect(found.map(({ tube, mate, through }) => [tube, mate, through])).toEqual([['fore', 'rear', null]]);
});
