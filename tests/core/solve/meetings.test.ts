import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { degrees, derived, faultsOf, jobOf, tube } from '../frame.ts';

const POST = {
  nodes: {
    foot: [0, 0, 0],
    top: [0, 0, 1000],
    mid: { kind: 'on', member: 'post', from: 'start', distance: 500 },
    out: [700, 0, 900],
  },
};
const post = { id: 'post', path: ['foot', 'top'] };
const cuts = (frame: ReturnType<typeof derived>, id: string, end: 0 | 1) =>
  tube(frame, id).ends[end].cuts.map((cut) => cut.against);

describe('who an automatic end is coped to', () => {
  it('its host, wherever that stands in the build order', () => {
    const branch = { id: 'branch', path: ['mid', 'out'] };
    for (const members of [
      [post, branch],
      [branch, post],
    ])
      expect(cuts(derived({ ...POST, members }), 'branch', 0)).toEqual(['post']);
  });
  it('fifty earlier tubes at one place, and no more: each would be a cut of its own', () => {
    const count = 2000;
    const spokes = Array.from({ length: count }, (_, i) => {
      const turn = (2 * Math.PI * i) / count;
      return [900 * Math.cos(turn), 900 * Math.sin(turn), 300];
    });
    const star = (tubes: number) => ({
      nodes: { hub: [0, 0, 0], ...Object.fromEntries(spokes.slice(0, tubes).map((place, i) => [`n${i}`, place])) },
      members: Array.from({ length: tubes }, (_, i) => ({ id: `m${i}`, path: ['hub', `n${i}`], die: undefined })),
    });
    const { cuts: coped, butted } = tube(derived(star(51)), 'm50').ends[0];
    expect(coped.length + butted.length).toBe(50);
    expect(faultsOf(star(count))).toEqual([
      {
        place: 'members[51].ends[0]',
        message: 'meets 51 tubes that are built before it; more than 50 cannot be fitted at one place',
      },
    ]);
  });
  it('an earlier tube that passes within 1 mm, not a later one', () => {
    const nodes = { ...POST.nodes, near: [0.9, 0, 300], off: [600, 0, 300] };
    const bar = { id: 'bar', path: ['near', 'off'] };
    expect(cuts(derived({ nodes, members: [post, bar] }), 'bar', 0)).toEqual(['post']);
    expect(cuts(derived({ nodes, members: [bar, post] }), 'bar', 0)).toEqual([]);
    expect(cuts(derived({ nodes: { ...nodes, near: [1.1, 0, 300] }, members: [post, bar] }), 'bar', 0)).toEqual([]);
  });
  it('goes by the real centreline: a node at a sharp corner is not on the tube', () => {
    const nodes = { foot: [0, 0, 0], knee: [0, 0, 500], tail: [-600, 0, 500], out: [400, 0, 900] };
    const members = [
      { id: 'ell', path: ['foot', 'knee', 'tail'] },
      { id: 'bar', path: ['knee', 'out'] },
    ];
    expect(cuts(derived({ nodes, members }), 'bar', 0)).toEqual([]);
  });
  it('every earlier tube of a cluster, host first, then in build order', () => {
    const nodes = { ...POST.nodes, left: [0, 600, 700], right: [0, -600, 800] };
    const members = [
      { id: 'a', path: ['mid', 'left'] },
      { id: 'b', path: ['mid', 'right'] },
      post,
      { id: 'c', path: ['out', 'mid'] },
    ];
    const frame = derived({ nodes, members });
    expect(cuts(frame, 'a', 0)).toEqual(['post']);
    expect(cuts(frame, 'b', 0)).toEqual(['post', 'a']);
    expect(cuts(frame, 'c', 1)).toEqual(['post', 'a', 'b']);
  });
  it('a tube in line within 5 degrees is butted, not coped', () => {
    const run = (dz: number) => {
      const nodes = { a: [0, 0, 0], b: [500, 0, 0], c: [1000, 0, dz] };
      return tube(
        derived({
          nodes,
          members: [
            { id: 'one', path: ['a', 'b'] },
            { id: 'two', path: ['b', 'c'] },
          ],
        }),
        'two',
      ).ends[0];
    };
    expect(run(0)).toMatchObject({ fit: 'square', butted: ['one'], cuts: [] });
    expect(run(500 * Math.tan((4.9 * Math.PI) / 180))).toMatchObject({ fit: 'square', butted: ['one'] });
    expect(run(500 * Math.tan((5.1 * Math.PI) / 180))).toMatchObject({ fit: 'cope', butted: [] });
  });
  it('only what the file names, when it names', () => {
    const ends = [{ fit: 'cope', against: ['far'] }, { fit: 'square' }];
    const nodes = { ...POST.nodes, f1: [300, -400, 650], f2: [300, 400, 650] };
    const frame = derived({
      nodes,
      members: [post, { id: 'far', path: ['f1', 'f2'] }, { id: 'bar', path: ['mid', 'out'], ends }],
    });
    expect(cuts(frame, 'bar', 0)).toEqual(['far']);
    expect(tube(frame, 'bar').ends[1].fit).toBe('square');
  });
});

describe('mirror twins', () => {
  const nodes = {
    'hoop-foot': [0, 600, 0],
    'hoop-top': [0, 500, 1100],
    'stay-top': { kind: 'on', member: 'hoop', bend: 1, where: 'end', distance: 40 },
    'stay-foot': [-900, 450, 300],
    'rail-a': { kind: 'on', member: 'stay', from: 'start', distance: 400 },
    'rail-b': [-300, 700, 200],
  };
  const members = [
    { id: 'hoop', path: ['hoop-foot', 'hoop-top', "hoop-top'", "hoop-foot'"] },
    { id: 'stay', name: 'Stay', path: ['stay-top', 'stay-foot'], mirror: true },
    {
      id: 'rail',
      name: 'Rail',
      path: ['rail-a', 'rail-b'],
      mirror: true,
      ends: [{ fit: 'auto' }, { fit: 'plate', normal: [0.2, 0.5, 1] }],
    },
  ];
  const frame = derived({ nodes, members });
  it('meet the hosts twin, or the one host that spans the car', () => {
    expect(cuts(frame, "stay'", 0)).toEqual(['hoop']);
    expect(cuts(frame, "rail'", 0)).toEqual(["stay'"]);
  });
  it('meet nothing where the mirror image of their place is on no tube', () => {
    const oneSided = derived({
      nodes: {
        p: [0, 400, 0],
        q: [0, 400, 1000],
        on: { kind: 'on', member: 'post', from: 'start', distance: 500 },
        out: [500, 300, 500],
      },
      members: [
        { id: 'post', path: ['p', 'q'] },
        { id: 'arm', path: ['on', 'out'], mirror: true },
      ],
    });
    expect(cuts(oneSided, 'arm', 0)).toEqual(['post']);
    expect(tube(oneSided, "arm'").ends[0]).toMatchObject({ fit: 'square', cuts: [], tip: 0 });
  });
  it('are told apart where they lie on neither side', () => {
    const across = derived({
      nodes: { p: [0, 300, 0], q: [500, -300, 0] },
      members: [{ id: 'x', name: 'X', path: ['p', 'q'], mirror: true }],
    });
    expect(across.tubes.map(({ name }) => name)).toEqual(['X (across)', 'X (across, twin)']);
  });
  it('take their square side anew when what they are cut by gains a twin', () => {
    const nodes = { l: [0, -800, 0], r: [0, -200, 0], f: [0, 500, 0], t: [0, 500, 300] };
    const job = (mirror: boolean) =>
      jobOf({
        nodes,
        members: [
          { id: 'x', path: ['l', 'r'], mirror },
          { id: 'm', path: ['f', 't'], mirror: true },
        ],
      });
    const before = derive(job(false));
    if (!before.ok) throw new Error('does not derive');
    expect(derive(job(true), before.value)).toEqual(derive(job(true)));
  });
  it('stand in build order after their member and are told apart by side', () => {
    expect(frame.tubes.map((each) => [each.number, each.id, each.name])).toEqual([
      [1, 'hoop', 'hoop'],
      [2, 'stay', 'Stay (left)'],
      [3, "stay'", 'Stay (right)'],
      [4, 'rail', 'Rail (left)'],
      [5, "rail'", 'Rail (right)'],
    ]);
  });
  it('are cut as mirror images: profiles run the other way about', () => {
    for (const id of ['stay', 'rail']) {
      for (const end of [0, 1] as const) {
        const [one, other] = [tube(frame, id).ends[end], tube(frame, `${id}'`).ends[end]];
        for (let k = 0; k < 360; k += 7) expect(other.outer[(360 - k) % 360]).toBeCloseTo(one.outer[k]!, 8);
      }
    }
  });
  it('take the mirrored side of a square cut, also against a run that spans the car', () => {
    const square = derived({
      nodes: { l: [0, 500, 0], out: [800, 300, 0], on: { kind: 'on', member: 'beam', from: 'start', distance: 200 } },
      members: [
        { id: 'beam', path: ['l', "l'"] },
        { id: 'bar', path: ['on', 'out'], mirror: true, ends: [{ fit: 'auto' }, { fit: 'auto' }] },
      ],
    });
    const [bar, twin] = [tube(square, 'bar'), tube(square, "bar'")];
    expect(degrees(bar.ends[0].cuts[0]!.includedAngle)).toBeCloseTo(90, 9);
    expect(twin.ends[0].reference[1]).toBeCloseTo(-bar.ends[0].reference[1], 12);
  });
});
