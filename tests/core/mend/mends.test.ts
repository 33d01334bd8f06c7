/** What would mend a finding: each is taken, and the frame derived anew no longer has it. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/checks/types.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { mended, mendsOf } from '../../../src/core/mend/mends.ts';
import { mendInWords } from '../../../src/core/words/mends.ts';

const head = {
  format: 'cagewright/job',
  version: 1,
  sections: [{ id: 's', outerDiameter: 40, wall: 2.5 }],
  dies: [{ id: 'd', name: 'Die', outerDiameter: 40, centrelineRadius: 130 }],
  feet: [{ id: 'pad', kind: 'plate', size: [120, 120], thickness: 3 }],
};
const square = [{ fit: 'square' }, { fit: 'square' }];
const fixed = (id: string, position: readonly number[]): object => ({ id, at: { kind: 'fixed', position } });
const hoop = {
  id: 'hoop',
  name: 'Hoop',
  role: 'main-hoop',
  path: ['foot', 'top', "top'", "foot'"],
  section: 's',
  die: 'd',
  ends: square,
};
const corners = [fixed('foot', [0, 600, 0]), fixed('top', [0, 500, 1100])];

function derived(job: Job): Derived {
  const result = derive(job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

function found(records: object, id: Finding['id']): { job: Job; frame: Derived; finding: Finding } {
  const parsed = parseJob(JSON.stringify({ ...head, ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const frame = derived(parsed.job);
  return { job: parsed.job, frame, finding: frame.findings.find((each) => each.id === id)! };
}

/** Takes the first mend; answers its words. */
function taken(records: object, id: Finding['id']): string {
  const { job, frame, finding } = found(records, id);
  const [mend] = mendsOf(finding, frame);
  const after = mended(job, mend!, finding, frame);
  if (Array.isArray(after)) throw new Error(JSON.stringify(after));
  expect(derived(after as Job).findings.filter((each) => each.id === id && each.tube === finding.tube)).toEqual([]);
  return mendInWords(mend!, frame);
}

const onHoop = (at: object): object => ({
  nodes: [
    ...corners,
    { id: 'joint', name: 'Joint', at: { kind: 'on', member: 'hoop', ...at } },
    fixed('rear', [-900, 450, 400]),
  ],
  members: [
    hoop,
    { id: 'stay', name: 'Stay', path: ['joint', 'rear'], section: 's', ends: [{ fit: 'auto' }, { fit: 'square' }] },
  ],
});

describe('one edit mends', () => {
  it('a joint near a bend: along its run tube to the nearer side, a diameter off', () => {
    // 23.5 before the bend, 40 asked for.
    expect(taken(onHoop({ bend: 1, where: 'start', distance: -23.5 }), 'joint/near-bend')).toBe(
      'Move Joint 16.6 mm along Hoop, towards A',
    );
    expect(taken(onHoop({ bend: 2, where: 'end', distance: 12 }), 'joint/near-bend')).toBe(
      'Move Joint 28.1 mm along Hoop, towards B',
    );
    // Counted from the other end, the same way in the car.
    const { frame } = found(onHoop({ bend: 1, where: 'start', distance: -23.5 }), 'joint/near-bend');
    const from = frame.bars.get('hoop')!.developedLength - (frame.bars.get('hoop')!.bends[0]!.start - 23.5);
    expect(taken(onHoop({ from: 'end', distance: from }), 'joint/near-bend')).toBe(
      'Move Joint 16.6 mm along Hoop, towards A',
    );
  });

  it('a saddle that runs past the end of its run tube', () => {
    expect(taken(onHoop({ from: 'start', distance: 8 }), 'joint/off-run-end')).toMatch(
      /^Move Joint \d+\.\d mm along Hoop, towards B$/u,
    );
  });

  it('on the half of a hoop that mirrors a node: the same way along the tube, by its image', () => {
    const onImage = (at: object): object => {
      const { nodes, members } = onHoop(at) as { nodes: object[]; members: { id: string }[] };
      const imaged = members.map((member) =>
        member.id === 'stay' ? { ...member, path: ["joint'", "rear'"] } : member,
      );
      return { nodes, members: imaged };
    };
    expect(taken(onImage({ from: 'start', distance: 8 }), 'joint/off-run-end')).toMatch(
      /^Move Joint, mirrored \d+\.\d mm along Hoop, towards A$/u,
    );
    expect(taken(onImage({ bend: 1, where: 'start', distance: -23.5 }), 'joint/near-bend')).toBe(
      'Move Joint, mirrored 16.6 mm along Hoop, towards B',
    );
  });

  it('an end that runs into a tube it is not coped to', () => {
    const { nodes, members, ...rest } = onHoop({ from: 'start', distance: 300 }) as {
      nodes: object[];
      members: object[];
    };
    const ends = [{ fit: 'cope', against: ['hoop'] }, { fit: 'square' }];
    const brace = { id: 'brace', name: 'Brace', path: ['joint', 'aside'], section: 's', ends };
    const records = { ...rest, nodes: [...nodes, fixed('aside', [-900, 700, 800])], members: [...members, brace] };
    expect(taken(records, 'gap/runs-through')).toBe('Cope end A of Brace to Stay too');
  });

  it('an end that meets what is built later', () => {
    const records = {
      nodes: [...corners, fixed('rear', [-900, 450, 400])],
      members: [
        { id: 'stay', name: 'Stay', path: ['foot', 'rear'], section: 's', ends: [{ fit: 'auto' }, { fit: 'square' }] },
        { id: 'sill', name: 'Sill', path: ['foot', 'fore'], section: 's', ends: square },
      ],
    };
    expect(taken({ ...records, nodes: [...records.nodes, fixed('fore', [900, 610, 30])] }, 'end/meets-nothing')).toBe(
      'Build it after Sill',
    );
  });

  it('an end that meets its own mirror image alone, by a mitre', () => {
    const header = {
      id: 'header',
      name: 'Header',
      path: ['mid', 'out'],
      section: 's',
      mirror: true,
      ends: [{ fit: 'auto' }, { fit: 'square' }],
    };
    expect(
      taken(
        { nodes: [fixed('mid', [0, 0, 1000]), fixed('out', [30, 500, 900])], members: [header] },
        'end/meets-nothing',
      ),
    ).toBe('Mitre end A of Header');
  });

  it('a mitre that one tube alone makes, from either side of the car', () => {
    const ends = (a: object, b: object): readonly object[] => [
      { id: 'roof', name: 'Roof', path: ['a', 'm'], section: 's', mirror: true, ends: [{ fit: 'square' }, a] },
      { id: 'pillar', name: 'Pillar', path: ['m', 'b'], section: 's', mirror: true, ends: [b, { fit: 'square' }] },
    ];
    const nodes = [fixed('a', [-700, 400, 1000]), fixed('m', [100, 520, 1130]), fixed('b', [600, 300, 500])];
    expect(
      taken({ nodes, members: ends({ fit: 'mitre', with: 'pillar' }, { fit: 'square' }) }, 'mitre/one-sided'),
    ).toBe('Mitre end A of Pillar');
  });

  it('a member that is its own mirror image', () => {
    expect(taken({ nodes: corners, members: [{ ...hoop, mirror: true }] }, 'member/twin-in-same-place')).toBe(
      'Turn its mirror off',
    );
  });

  it('a hoop in pieces', () => {
    const brace = { id: 'brace', name: 'Brace', path: ['p', 'q'], section: 's', ends: square };
    const nodes = [...corners, fixed('p', [-300, 572, 308]), fixed('q', [300, 572, 308])];
    expect(taken({ nodes, members: [{ ...hoop, cutBy: ['brace'] }, brace] }, 'piece/hoop')).toBe(
      'Let it run through, cut Brace',
    );
  });

  it('a bar in pieces that does not meet the axis of the one that cuts it', () => {
    const nodes = [
      fixed('p', [-500, 300, 0]),
      fixed('q', [500, 300, 600]),
      fixed('r', [-500, 302, 620]),
      fixed('t', [500, 302, 10]),
    ];
    const bar = { section: 's', ends: square };
    const through = { id: 'through', name: 'Through', path: ['p', 'q'], ...bar };
    for (const mirror of [false, true]) {
      const cut = { id: 'cut', name: 'Cut', path: ['r', 't'], cutBy: ['through'], mirror, ...bar };
      const words = taken({ nodes, members: [{ ...through, mirror }, cut] }, 'piece/strip-holds');
      expect(words).toBe(`Split Cut there, both parts onto the axis of Through${mirror ? ' (left)' : ''}`);
    }
  });

  it('two bars that run through each other: one of them cut, either one', () => {
    const nodes = [
      fixed('p', [-500, 300, 0]),
      fixed('q', [500, 300, 600]),
      fixed('r', [-500, 310, 620]),
      fixed('t', [500, 310, 10]),
    ];
    const bars = (mirror: boolean): object => ({
      nodes,
      members: [
        { id: 'one', name: 'One', path: ['p', 'q'], section: 's', mirror, ends: square },
        { id: 'two', name: 'Two', path: ['r', 't'], section: 'wide', mirror, ends: square },
      ],
    });
    const sections = [...head.sections, { id: 'wide', outerDiameter: 80, wall: 3 }];
    const { job, frame, finding } = found({ ...bars(false), sections }, 'gap/runs-through');
    expect(mendsOf(finding, frame).map((mend) => mendInWords(mend, frame))).toEqual([
      'Cut Two where One runs through',
      'Cut One where Two runs through',
    ]);
    // The wide one would be left with a strip by the narrow one: tried, and refused.
    const [wide, narrow] = mendsOf(finding, frame).map((mend) => mended(job, mend, finding, frame));
    expect(wide).toEqual([{ place: '', message: 'tried, and it brings an error that was not there' }]);
    expect(derived(narrow as Job).tubes.map(({ id }) => id)).toEqual(['one.1', 'one.2', 'two']);
    expect(derived(narrow as Job).findings.filter(({ id }) => id === 'gap/runs-through')).toEqual([]);
    expect(
      found({ ...bars(true), sections }, 'gap/runs-through').frame.findings.filter(
        ({ id }) => id === 'gap/runs-through',
      ),
    ).toHaveLength(2);
  });

  it('an end that runs into a tube, by a cope to that too', () => {
    const nodes = [
      fixed('p', [-500, 300, 0]),
      fixed('q', [0, 300, 0]),
      fixed('r', [10, 305, -400]),
      fixed('t', [10, 305, 400]),
    ];
    const members = [
      { id: 'post', name: 'Post', path: ['r', 't'], section: 's', ends: square },
      { id: 'bar', name: 'Bar', path: ['p', 'q'], section: 's', ends: [{ fit: 'square' }, { fit: 'auto' }] },
    ];
    expect(taken({ nodes, members }, 'gap/runs-through')).toBe('Cope end B of Bar to Post too');
  });

  it('a foot that is turned away', () => {
    const leg = {
      id: 'leg',
      name: 'Leg',
      path: ['top', 'foot'],
      section: 's',
      ends: [{ fit: 'square' }, { fit: 'foot', foot: 'pad', normal: [0.1, 0, -1] }],
    };
    expect(taken({ nodes: corners, members: [leg] }, 'foot/upside-down')).toBe('Turn the foot round');
  });
});

describe('no edit is offered', () => {
  it('for a joint in a bend, which may be meant', () => {
    const { frame, finding } = found(onHoop({ bend: 1, where: 'middle' }), 'joint/in-bend');
    expect(mendsOf(finding, frame)).toEqual([]);
  });

  it('for a node that is not placed by how far it is along the tube', () => {
    const { frame, finding } = found(
      {
        nodes: [...corners, fixed('joint', [0, 509.09, 1000]), fixed('rear', [-900, 450, 400])],
        members: (onHoop({}) as { members: object[] }).members,
      },
      'joint/near-bend',
    );
    expect(finding === undefined ? [] : mendsOf(finding, frame)).toEqual([]);
  });
});

it('a mend that mends nothing there is refused, in words', () => {
  const { job, frame, finding } = found(onHoop({ bend: 1, where: 'start', distance: -23.5 }), 'joint/near-bend');
  expect(mended(job, { kind: 'move-along', node: 'joint', bar: 'hoop', by: 2 }, finding, frame)).toEqual([
    { place: '', message: 'tried, and it does not mend it: something else stands in the way there' },
  ]);
});
