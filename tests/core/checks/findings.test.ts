import { describe, expect, it } from 'vitest';
import { derived, inWords } from '../frame.ts';

type Records = Parameters<typeof derived>[0];
const found = (records: Records) => inWords(derived(records));
const ids = (records: Records) => derived(records).findings.map((finding) => `${finding.severity} ${finding.id}`);
const bent = (corner: readonly number[], end: readonly number[], more: object = {}): Records => ({
  nodes: { a: [0, 0, 0], b: [600, 0, 0], c: corner, d: end },
  members: [{ id: 'bar', name: 'Bar', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
  ...more,
});
const die = (fields: object) => ({
  dies: [{ id: 'd', name: '6 in CLR', outerDiameter: 44.45, centrelineRadius: 152.4, ...fields }],
});

describe('findings of bends', () => {
  it('a good tube has none', () => {
    expect(ids(bent([600, 600, 0], [1200, 600, 0], die({ leastStraight: 60, leastGrip: 150 })))).toEqual([]);
  });
  it('overlap, and a bend that runs past the end', () => {
    expect(ids(bent([600, 250, 0], [1200, 250, 0]))).toEqual(['error bend/overlap']);
    expect(ids(bent([600, 600, 0], [700, 600, 0]))).toEqual(['error bend/past-end']);
  });
  it('a straight too short to clamp, said in the job unit with what would mend it', () => {
    const findings = found({
      ...bent([600, 350, 0], [1200, 350, 0], die({ leastStraight: 60 })),
      lengthUnit: 'in',
    });
    expect(findings).toMatchObject([
      { id: 'bend/short-straight', severity: 'error', tube: 'bar', bend: 1, source: 'common practice' },
    ]);
    // 350 - 2 x 152.4 = 45.2 mm = 1.780 in; 60 mm = 2.362 in; 14.8 mm = 0.583 in.
    expect(findings[0]!.message).toContain('1.780 in of straight between bends 1 and 2');
    expect(findings[0]!.message).toContain('0.583 in further apart');
  });
  it('a tail shorter than the clamp grips', () => {
    expect(ids(bent([600, 600, 0], [850, 600, 0], die({ leastGrip: 150 })))).toEqual(['warning bend/short-tail']);
    expect(ids(bent([600, 600, 0], [910, 600, 0], die({ leastGrip: 150 })))).toEqual([]);
  });
  it('a tail that is left long enough grips; the message asks for what is missing', () => {
    const tail = (allowance: number): Records => ({
      ...bent([600, 600, 0], [850, 600, 0], die({ leastGrip: 150 })),
      members: [{ id: 'bar', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square', allowance }] }],
    });
    // 250 - 152.4 = 97.6 of straight.
    expect(found(tail(20))[0]!.message).toContain('117.6 mm of tail behind bend 2');
    expect(found(tail(20))[0]!.message).toContain('The length to cut has 32.4 mm more on end B');
    expect(ids(tail(52.4))).toEqual([]);
  });
  it('a bender that leaves the measured end behind grips at end A and clamps beyond the last bend', () => {
    const set = die({ leastGrip: 500, clampOffset: 480, bender: { bendLies: 'before' } });
    const findings = found(bent([600, 600, 0], [1060, 600, 0], set));
    expect(findings.map(({ id, end, bend }) => [id, end, bend])).toEqual([
      ['bend/short-tail', 'A', 1],
      ['bend/clamp-off-tube', 'B', 2],
    ]);
    // 600 - 152.4 = 447.6 of tail; 480 over the 460 - 152.4 in front.
    expect(findings[0]!.message).toContain('The length to cut has 52.4 mm more on end A');
    expect(findings[1]!.message).toContain('172.4 mm beyond the finished end B');
  });
  it('an angle beyond the die; exactly at it is allowed', () => {
    expect(ids(bent([600, 600, 0], [1200, 600, 0], die({ greatestAngle: 89.9 })))).toEqual([
      'error bend/beyond-die',
      'error bend/beyond-die',
    ]);
    expect(ids(bent([600, 600, 0], [1200, 600, 0], die({ greatestAngle: 90 })))).toEqual([]);
  });
  // CLR >= 3 x OD: FIA Appendix J art. 253-8 (as quoted), Motorsport UK NCR 2026 ch. 7 app. 3 art. 20.3, Formula SAE 2026 F.5.2.
  it('centreline radius under three diameters, and the wrong die', () => {
    expect(ids(bent([600, 600, 0], [1200, 600, 0], die({ centrelineRadius: 133.3 })))).toEqual([
      'warning bend/tight-radius',
    ]);
    expect(ids(bent([600, 600, 0], [1200, 600, 0], die({ centrelineRadius: 3 * 44.45 })))).toEqual([]);
    expect(ids(bent([600, 600, 0], [1200, 600, 0], die({ outerDiameter: 38.1 })))).toEqual(['error bend/wrong-die']);
  });
});

describe('findings of stock', () => {
  /** Straights 447.6, 295.2, 97.6 and two arcs of 239.389: a blank of 1319.178, and 52.4 of grip when end B is behind. */
  const on = (stick: number, role = 'brace', leastGrip = 150): Records => ({
    ...bent([600, 600, 0], [850, 600, 0], {
      ...die({ leastGrip }),
      sections: [{ id: 'main', name: '1 3/4', outerDiameter: 44.45, wall: 3.048, stick }],
    }),
    members: [
      { id: 'bar', name: 'Bar', role, path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] },
    ],
  });
  const stock = (records: Records) => found(records).filter(({ id }) => id === 'stock/longer-than-stick');
  it('a blank over the stick: with the grip, and with what would need less of it', () => {
    expect(stock(on(1372))).toEqual([]);
    const [fits] = stock(on(1371));
    expect(fits).toMatchObject({ severity: 'warning', tube: 'bar', source: 'common practice' });
    expect(fits!.message).toContain('the blank is 1371.6 mm long, 52.4 mm of it for the grip');
    expect(fits!.message).toContain('Bent from end B');
    expect(stock(on(1319))[0]!.message).toContain('joint');
    expect(stock(on(1319, 'brace', 0))[0]!.message).not.toContain('grip');
  });
  // One piece, no joints: Motorsport UK NCR 2026 ch. 7 app. 3; main hoop: Formula SAE Rules 2026 V1.0.
  it('a hoop is one piece: an error that names its rule books', () => {
    expect(stock(on(1300, 'main-hoop'))).toMatchObject([
      { severity: 'error', source: expect.stringContaining('Motorsport UK NCR 2026 ch. 7 app. 3') },
    ]);
    expect(stock(on(1371, 'main-hoop'))[0]!.severity).toBe('warning');
    expect(stock(on(1300, 'Lateral rollbar'))[0]!.severity).toBe('error');
  });
  it('a straight tube too; nothing where no stick is said', () => {
    const straight = { ...on(500), members: [{ id: 'bar', path: ['a', 'b'] }] };
    expect(stock(straight)).toHaveLength(1);
    expect(stock(bent([600, 600, 0], [850, 600, 0]))).toEqual([]);
  });
});

describe('findings of many bends', () => {
  const zigzag = (bends: number, role: string): Records => {
    const places = Array.from({ length: bends + 2 }, (_, i) => [`n${i}`, [i * 500, i % 2 === 0 ? 0 : 60, 0]] as const);
    const ends = [{ fit: 'square' }, { fit: 'square' }];
    return { nodes: Object.fromEntries(places), members: [{ id: 'bar', role, path: places.map(([id]) => id), ends }] };
  };
  it('a hoop of more than four is found, any tube of more than eight: no order is searched for those', () => {
    expect(ids(zigzag(4, 'main-hoop'))).toEqual([]);
    expect(ids(zigzag(5, 'main-hoop'))).toEqual(['note bend/many-bends']);
    expect(ids(zigzag(5, 'sill-bar'))).toEqual([]);
    expect(ids(zigzag(8, 'sill-bar'))).toEqual([]);
    expect(ids(zigzag(9, 'sill-bar'))).toEqual(['note bend/many-bends']);
    expect(ids(zigzag(9, 'main-hoop'))).toEqual(['note bend/many-bends']);
  });
});

describe('findings of ends', () => {
  const post = { id: 'post', name: 'Post', path: ['p', 'q'], ends: [{ fit: 'square' }, { fit: 'square' }] };
  const on = (records: object, end: object = { fit: 'auto' }): Records => ({
    nodes: { p: [0, 0, 0], q: [0, 0, 1000], a: [0, 0, 500], b: [700, 0, 500], ...records },
    members: [post, { id: 'bar', name: 'Bar', path: ['a', 'b'], ends: [end, { fit: 'plate', normal: [1, 0, 0] }] }],
  });
  it('a coped end and a plated end have none', () => expect(ids(on({}))).toEqual([]));
  it('an end that meets nothing', () =>
    expect(ids(on({ a: [5, 0, 500] }))).toEqual(['error gap/runs-through', 'warning end/meets-nothing']));
  it('a cutter that does not reach', () => {
    expect(ids(on({ a: [0, 80, 500], b: [700, 80, 500] }, { fit: 'cope', against: ['post'] }))).toEqual([
      'error end/cutter-misses',
    ]);
  });
  it('a branch that passes the run by in part', () => {
    expect(ids(on({ a: [0, 30, 500], b: [700, 30, 500] }, { fit: 'cope', against: ['post'] }))).toEqual([
      'warning end/wider-than-run',
    ]);
  });
  it('a plate along the tube', () => {
    expect(ids(on({}, { fit: 'plate', normal: [0, 0, 1] }))).toEqual([
      'error end/plate-along-tube',
      'error gap/runs-through',
    ]);
  });
  it('a joint in a bend, and one within a diameter of it, but not farther', () => {
    const at = (distance: number): Records => ({
      nodes: {
        f: [0, 0, 0],
        k: [0, 0, 600],
        t: [-900, 0, 600],
        a: { kind: 'on', member: 'ell', bend: 1, where: 'start', distance },
        b: [100, 900, 500],
      },
      members: [
        { id: 'ell', path: ['f', 'k', 't'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'bar', path: ['a', 'b'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
      ],
    });
    expect(ids(at(20))).toEqual(['warning joint/in-bend']);
    expect(ids(at(-40))).toEqual(['warning joint/near-bend']);
    expect(ids(at(-45))).toEqual([]);
  });
  it('a saddle that runs past the end of its run, but not where that end is coped', () => {
    const records = (foot: object): Records => ({
      nodes: { p: [0, 0, 0], q: [0, 0, 1000], b: [700, 0, 300], u: [0, -500, 0], v: [0, 500, 0] },
      members: [
        { id: 'sill', path: ['u', 'v'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'post', path: ['p', 'q'], ends: [foot, { fit: 'square' }] },
        { id: 'bar', path: ['p', 'b'], ends: [{ fit: 'cope', against: ['post'] }, { fit: 'square' }] },
      ],
    });
    expect(ids(records({ fit: 'plate', normal: [0, 0, 1] }))).toEqual([
      'error gap/runs-through', // the plated post, into the sill
      'error gap/runs-through', // the bar, coped to the post alone
      'warning joint/off-run-end',
    ]);
    expect(ids(records({ fit: 'auto' }))).toEqual(['error gap/runs-through']);
  });
  it('no saddle that goes on over a tube that is butted to its run there', () => {
    const records = (upper: readonly string[]): Records => ({
      nodes: { p: [0, 0, 0], m: [0, 0, 500], q: [0, 0, 1000], b: [700, 0, 500] },
      members: [
        { id: 'low', path: ['p', 'm'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'high', path: ['m', 'q'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
        { id: 'bar', path: ['m', 'b'], ends: [{ fit: 'cope', against: ['low', ...upper] }, { fit: 'square' }] },
      ],
    });
    expect(ids(records(['high']))).not.toContain('warning joint/off-run-end');
    expect(ids(records([]))).toContain('warning joint/off-run-end');
  });
  it('a cope that runs into the tube own bend', () => {
    const records: Records = {
      nodes: { p: [0, 0, 0], q: [0, 0, 1000], a: [0, 0, 500], k: [172, 0, 500], b: [172, 900, 500] },
      members: [post, { id: 'bar', path: ['a', 'k', 'b'], ends: [{ fit: 'auto' }, { fit: 'square' }] }],
    };
    expect(ids(records)).toEqual(['warning end/cope-in-own-bend']);
  });
  it('an end that meets only its own mirror image: how it is mitred is said', () => {
    const findings = found({
      nodes: { p: [0, 0, 500], a: [0, 700, 300] },
      members: [{ id: 'vee', path: ['a', 'p'], mirror: true, ends: [{ fit: 'square' }, { fit: 'auto' }] }],
    });
    expect(findings.map((finding) => finding.id)).toEqual([
      'gap/runs-through',
      'end/meets-nothing',
      'end/meets-nothing',
    ]);
    expect(findings[1]!.message).toContain('its own mirror image');
  });
});

describe('findings of what the machine and the saw would do', () => {
  it('a clamp mark before the end of the tube', () => {
    const marked = (clampOffset: number) => ids(bent([600, 600, 0], [1200, 600, 0], die({ clampOffset })));
    expect(marked(447)).toEqual([]); // bend 1 starts at 600 - 152.4 = 447.6
    expect(marked(448)).toEqual(['warning bend/clamp-off-tube']);
  });
  it('a cut that runs out at the other end of the tube', () => {
    // 44.45 mm on 44.45 mm at 4 degrees: throat (22.225 cos 4 + 22.225) / sin 4 = 636 mm, on a tube of 500.
    const slant = (4 * Math.PI) / 180;
    const nodes = {
      p: [0, 0, 0],
      q: [3000, 0, 0],
      a: [1500, 0, 0],
      b: [1500 + 500 * Math.cos(slant), 500 * Math.sin(slant), 0],
    };
    const square = [{ fit: 'square' }, { fit: 'square' }];
    const records: Records = {
      nodes,
      members: [
        { id: 'post', path: ['p', 'q'], ends: square },
        { id: 'bar', path: ['a', 'b'], ends: [{ fit: 'cope', against: ['post'] }, { fit: 'square' }] },
      ],
    };
    expect(ids(records)).toEqual(['error end/cut-through']);
  });
});

describe('findings of twins', () => {
  const mirrored = (nodes: Record<string, unknown>): Records => ({
    nodes,
    members: [
      { id: 'bar', name: 'Bar', path: Object.keys(nodes), mirror: true, ends: [{ fit: 'square' }, { fit: 'square' }] },
    ],
  });
  it('a member on the centre plane, or across it, whose twin lies on it', () => {
    expect(ids(mirrored({ a: [0, 0, 0], b: [0, 0, 900] }))).toEqual(['error member/twin-in-same-place']);
    expect(ids(mirrored({ a: [0, 500, 0], b: [0, -500, 0] }))).toEqual(['error member/twin-in-same-place']);
    expect(ids(mirrored({ a: [0, 500, 0], b: [0, 1, 0] }))).toEqual(['warning gap/no-room-for-torch']);
    expect(ids(mirrored({ a: [0, 500, 0], b: [0, 13, 0] }))).toEqual([]);
  });
});

describe('findings of clearance', () => {
  const head = (gap: number) => ({
    id: 'head',
    name: 'Helmet',
    kind: 'box',
    centre: [0, 0, 1000],
    size: [300, 280, 330],
    gap,
  });
  const over = (z: number, gap: number): Records => ({
    nodes: { a: [-600, 0, z], b: [600, 0, z] },
    members: [{ id: 'bar', name: 'Bar', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
    envelopes: [head(gap)],
  });
  it('an end cut on a slant counts to where it is nearest', () => {
    // A plate at 45 degrees on a 44.45 mm tube: the wall reaches 22.225 past the node, towards the box 100 away.
    const records: Records = {
      nodes: { a: [250, 0, 1000], b: [900, 0, 1000] },
      members: [{ id: 'bar', path: ['a', 'b'], ends: [{ fit: 'plate', normal: [1, 0, 1] }, { fit: 'square' }] }],
      envelopes: [head(50)],
    };
    expect(derived(records).clearances[0]!.distance).toBeCloseTo(100 - 22.225, 6);
  });
  it('a tube nearer than the gap, one exactly at it, one inside', () => {
    // Top of the box 1165, tube radius 22.225.
    expect(ids(over(1165 + 22.225 + 49.9, 50))).toEqual(['error clearance/too-close']);
    expect(ids(over(1165 + 22.225 + 50, 50))).toEqual([]);
    expect(derived(over(1150, 50)).clearances[0]!.distance).toBeCloseTo(-15 - 22.225, 4);
    expect(found(over(1150, 50))[0]!.message).toContain('goes 37.2 mm into Helmet');
  });
});
