import { describe, expect, it } from 'vitest';
import { derived, faultsOf, tube } from '../frame.ts';

/** A quarter bend in the x-z plane: up 400, then back 500; radius 152.4, so arc 239.389 and straights 247.6 and 347.6. */
const ELL = {
  nodes: { foot: [0, 0, 0], knee: [0, 0, 400], tail: [-500, 0, 400] },
  members: [{ id: 'ell', path: ['foot', 'knee', 'tail'] }],
};
const withNode = (at: object) => ({ ...ELL, nodes: { ...ELL.nodes, n: at } });
const place = (at: object) => derived(withNode(at)).nodes.get('n')!;
const expectPlace = (at: object, position: readonly number[]) =>
  place(at).forEach((value, i) => expect(value).toBeCloseTo(position[i]!, 9));
const SIN45 = Math.SQRT1_2;

describe('a node on a tube', () => {
  it('counts along the real centreline from either end', () => {
    expectPlace({ kind: 'on', member: 'ell', from: 'start', distance: 100 }, [0, 0, 100]);
    expectPlace({ kind: 'on', member: 'ell', from: 'end', distance: 100 }, [-400, 0, 400]);
  });
  it('lies on the arc, not at the sharp corner', () => {
    expectPlace({ kind: 'on', member: 'ell', bend: 1, where: 'start' }, [0, 0, 247.6]);
    expectPlace({ kind: 'on', member: 'ell', bend: 1, where: 'middle' }, [
      -152.4 * (1 - SIN45),
      0,
      247.6 + 152.4 * SIN45,
    ]);
    expectPlace({ kind: 'on', member: 'ell', bend: 1, where: 'end', distance: 50 }, [-202.4, 0, 400]);
    expectPlace({ kind: 'on', member: 'ell', bend: 1, where: 'start', distance: -47.6 }, [0, 0, 200]);
  });
  it('is moved off the axis by its offset', () => {
    expectPlace({ kind: 'on', member: 'ell', from: 'start', distance: 100, offset: [3, -4, 5] }, [3, -4, 105]);
  });
  it('may not lie beyond the tube, nor on a bend it has not', () => {
    expect(faultsOf(withNode({ kind: 'on', member: 'ell', from: 'start', distance: 900 }))).toEqual([
      {
        place: 'nodes[3].at.distance',
        message: '900 mm along lies beyond the ends of "ell", which is 834.589 mm long',
      },
    ]);
    expect(faultsOf(withNode({ kind: 'on', member: 'ell', bend: 2, where: 'start' }))).toEqual([
      { place: 'nodes[3].at.bend', message: '"ell" has 1 bend: there is no bend 2' },
    ]);
  });
});

describe('the other kinds of place', () => {
  it('between: a share of the way, also beyond', () => {
    expectPlace({ kind: 'between', nodes: ['foot', 'tail'], fraction: 0.25 }, [-125, 0, 100]);
    expectPlace({ kind: 'between', nodes: ['foot', 'tail'], fraction: 1.5 }, [-750, 0, 600]);
  });
  it('ray: down at an angle until a plane is met, exactly on it', () => {
    const down = { kind: 'ray', from: 'knee', direction: [0, 0.4226, -0.9063], until: { axis: 'y', value: 133.7 } };
    expectPlace(down, [0, 133.7, 400 - (133.7 * 0.9063) / 0.4226]);
    expect(place(down)[1]).toBe(133.7);
  });
  it('ray: a plane behind it, or along it, is never reached', () => {
    for (const direction of [
      [0, -1, -1],
      [0, 0, -1],
    ]) {
      const faults = faultsOf(withNode({ kind: 'ray', from: 'knee', direction, until: { axis: 'y', value: 100 } }));
      expect(faults).toEqual([
        { place: 'nodes[3].at.direction', message: 'from there this direction never reaches y = 100' },
      ]);
    }
  });
  it('point: the hard point plus the offset; primed, its mirror image', () => {
    const points = [{ id: 'sill', position: [10, 640.25, 310] }];
    const at = (point: string) => derived({ ...withNode({ kind: 'point', point, offset: [0, -32, 1] }), points }).nodes;
    expect(at('sill').get('n')).toEqual([10, 608.25, 311]);
    expect(at("sill'").get('n')).toEqual([10, -672.25, 311]);
    expect(at('sill').get("n'")).toEqual([10, -608.25, 311]);
  });
  it('is refused beyond 100 m', () => {
    const faults = faultsOf(withNode({ kind: 'between', nodes: ['foot', 'tail'], fraction: 900 }));
    expect(faults).toEqual([{ place: 'nodes[3].at', message: 'lies farther than 100 m from the datum' }]);
  });
});

/** Up and down again over a quarter bend; R 152.4, so that its top is 152.4 (sqrt 2 - 1) = 63.126 under the corner. */
const ROOF = {
  nodes: { a: [-400, 50, 0], b: [0, 50, 400], c: [400, 50, 0] },
  members: [{ id: 'roof', path: ['a', 'b', 'c'] }],
};
const TOP = 400 - 152.4 * (Math.SQRT2 - 1);
const roofUntil = (value: number, nth = 1) => ({
  ...ROOF,
  nodes: { ...ROOF.nodes, n: { kind: 'on', member: 'roof', until: { axis: 'z', value }, nth } },
});

describe('a node on a tube where it comes to a coordinate', () => {
  it('is there to the last digit, and counted from end A', () => {
    expect(derived(roofUntil(100)).nodes.get('n')).toEqual([expect.closeTo(-300, 9), 50, 100]);
    expect(derived(roofUntil(100, 2)).nodes.get('n')).toEqual([expect.closeTo(300, 9), 50, 100]);
  });

  it('counts a touch once; just under it are two places', () => {
    expect(derived(roofUntil(TOP)).nodes.get('n')![0]).toBeCloseTo(0, 4);
    expect(faultsOf(roofUntil(TOP, 2))).toEqual([
      { place: 'nodes[3].at.nth', message: '"roof" only comes to z = 336.874 once: there is no place 2' },
    ]);
    const [left, right] = [1, 2].map((nth) => derived(roofUntil(TOP - 0.001, nth)).nodes.get('n')![0]);
    // Half the chord of a circle of R 152.4 at a depth of 0.001: the root of 2 R 0.001.
    expect(left).toBeCloseTo(-Math.sqrt(2 * 152.4 * 0.001), 4);
    expect(right).toBeCloseTo(Math.sqrt(2 * 152.4 * 0.001), 4);
  });

  it('counts a stretch that lies in the plane once, at its first place', () => {
    expectPlace({ kind: 'on', member: 'ell', until: { axis: 'z', value: 400 } }, [-152.4, 0, 400]);
    expectPlace({ kind: 'on', member: 'ell', until: { axis: 'y', value: 0 } }, [0, 0, 0]);
    expect(faultsOf(withNode({ kind: 'on', member: 'ell', until: { axis: 'z', value: 400 }, nth: 2 }))[0]?.place).toBe(
      'nodes[3].at.nth',
    );
    // Two level stretches at one height, with a dip between them: two places.
    const nodes = { a: [0, 0, 90], b: [400, 0, 90], c: [700, 0, 0], d: [1000, 0, 90], e: [1400, 0, 90] };
    const at = (nth: number) => ({ kind: 'on', member: 'm', until: { axis: 'z', value: 90 }, nth });
    const dip = {
      nodes: { ...nodes, one: at(1), two: at(2) },
      members: [{ id: 'm', path: ['a', 'b', 'c', 'd', 'e'] }],
    };
    const found = derived(dip);
    expect(found.nodes.get('one')).toEqual([0, 0, 90]);
    expect(found.nodes.get('two')![0]).toBeCloseTo(tube(found, 'm').path.pieces.at(-1)!.from[0], 9);
  });

  it('meets a plane through a place where line and arc join once', () => {
    const start = derived(ELL).byId.get('ell')!.bends[0]!.start;
    expectPlace({ kind: 'on', member: 'ell', until: { axis: 'z', value: start } }, [0, 0, start]);
    const twice = withNode({ kind: 'on', member: 'ell', until: { axis: 'z', value: start }, nth: 2 });
    expect(faultsOf(twice)[0]?.message).toContain('only comes to z = 247.6 once');
  });

  it('follows a node or a point, and is moved off the axis by its offset', () => {
    const until = { axis: 'z', node: 'side', plus: -20 };
    const nodes = { ...ELL.nodes, side: [7, 8, 120], n: { kind: 'on', member: 'ell', until, offset: [1, 2, 3] } };
    expect(derived({ ...ELL, nodes }).nodes.get('n')).toEqual([1, 2, 103]);
    const points = [{ id: 'p', position: [0, -40, 0] }];
    const bar = { nodes: { a: [0, -100, 0], b: [0, 100, 50] }, members: [{ id: 'bar', path: ['a', 'b'] }], points };
    const byPoint = { kind: 'on', member: 'bar', until: { axis: 'y', point: "p'" } };
    expect(derived({ ...bar, nodes: { ...bar.nodes, n: byPoint } }).nodes.get('n')).toEqual([
      0,
      40,
      expect.closeTo(35, 9),
    ]);
  });

  it('is refused where the tube never comes to it, at the place in the file', () => {
    for (const value of [-0.001, TOP + 0.001, 99_999]) {
      const message = `"roof" never comes to z = ${Number(value.toFixed(3))}`;
      expect(faultsOf(roofUntil(value))).toEqual([{ place: 'nodes[3].at.until', message }]);
    }
    const far = { kind: 'on', member: 'ell', until: { axis: 'z', node: 'knee', plus: 100_000 } };
    expect(faultsOf(withNode(far))[0]?.place).toBe('nodes[3].at.until');
  });
});

describe('a node where a line crosses a tube', () => {
  const crossing = (line: readonly string[], more: object = {}) => ({
    ...ELL,
    nodes: { ...ELL.nodes, ...more, n: { kind: 'crossing', member: 'ell', line } },
  });
  const at = (job: Parameters<typeof derived>[0]) => derived(job).nodes.get('n');

  it('is on the centreline, where the line goes through it or passes nearest; the line has no end', () => {
    expect(at(crossing(['p', 'q'], { p: [50, 60, 100], q: [40, 48, 100] }))).toEqual([0, 0, 100]);
    expect(at(crossing(['p', 'q'], { p: [90, -100, 130], q: [90, 100, 130] }))).toEqual([0, 0, 130]);
    // Through the bend's centre, at 45 degrees and a little above its plane: the middle of the arc is nearest.
    const skew = at(crossing(['p', 'q'], { p: [-152.4, 5, 247.6], q: [-52.4, 5, 347.6] }));
    expect(skew).toEqual([
      expect.closeTo(-152.4 * (1 - SIN45), 9),
      expect.closeTo(0, 9),
      expect.closeTo(247.6 + 152.4 * SIN45, 9),
    ]);
  });

  it('is an end where that is nearest, and of equally near places the first from end A', () => {
    expect(at(crossing(['p', 'q'], { p: [0, 300, -50], q: [10, 300, -50] }))).toEqual([0, 0, 0]);
    // Level across both legs of the roof.
    const nodes = {
      ...ROOF.nodes,
      p: [-9, 7, 40],
      q: [9, 7, 40],
      n: { kind: 'crossing', member: 'roof', line: ['p', 'q'] },
    };
    expect(derived({ ...ROOF, nodes }).nodes.get('n')![0]).toBeCloseTo(-360, 9);
    // The axis of the bend: every place of the arc is as near, and none of the legs.
    const axis = at(crossing(['p', 'q'], { p: [-152.4, 0, 247.6], q: [-152.4, 1, 247.6] }));
    expect(axis).toEqual([0, 0, expect.closeTo(247.6, 9)]);
    // Along the leg behind the bend: the leg's first place.
    const along = at(crossing(['p', 'q'], { p: [0, 20, 420], q: [90, 20, 420] }));
    expect(along).toEqual([expect.closeTo(-152.4, 9), expect.closeTo(0, 9), expect.closeTo(400, 9)]);
    // And on it.
    const on = at(crossing(['p', 'q'], { p: [-900.1, 0, 400], q: [90.3, 0, 400] }));
    expect(on).toEqual([expect.closeTo(-152.4, 9), expect.closeTo(0, 9), expect.closeTo(400, 9)]);
  });

  it('is refused without a line, and where the line runs along a straight tube', () => {
    expect(faultsOf(crossing(['p', 'q'], { p: [5, 5, 5], q: [5, 5, 5] }))).toEqual([
      { place: 'nodes[5].at.line', message: '"p" and "q" stand at the same place: no line runs through them' },
    ]);
    expect(faultsOf(crossing(['foot', "foot'"]))[0]?.place).toBe('nodes[3].at.line');
    const bar = {
      nodes: {
        a: [0, 0, 0],
        b: [300, 400, 0],
        p: [0, 9, 9],
        q: [-3, 5, 9],
        n: { kind: 'crossing', member: 'bar', line: ['p', 'q'] },
      },
      members: [{ id: 'bar', path: ['a', 'b'] }],
    };
    expect(faultsOf(bar)).toEqual([
      { place: 'nodes[4].at.line', message: 'the line runs along "bar": no place of it is nearer than another' },
    ]);
  });

  it('has its image on the twin of its host', () => {
    const nodes = { a: [0, 300, 0], b: [0, 500, 800], p: [-90, 0, 400], q: [-90, 800, 400] };
    const job = {
      nodes: { ...nodes, n: { kind: 'crossing', member: "bar'", line: ["p'", "q'"] } },
      members: [{ id: 'bar', path: ['a', 'b'], mirror: true }],
    };
    expect(derived(job).nodes.get('n')).toEqual([0, expect.closeTo(-400, 9), expect.closeTo(400, 9)]);
    expect(derived(job).nodes.get("n'")).toEqual([0, expect.closeTo(400, 9), expect.closeTo(400, 9)]);
  });

  it('is what its member is coped to, wherever that stands in the build order, and the image of it on both sides', () => {
    const job = {
      nodes: {
        foot: [0, 500, 0],
        top: [0, 500, 1000],
        far: [-600, 400, 300],
        p: [-100, 900, 700],
        q: [100, 100, 700],
        n: { kind: 'crossing', member: 'hoop', line: ['p', 'q'] },
      },
      members: [
        { id: 'stay', path: ['n', 'far'], mirror: true },
        { id: 'hoop', path: ['foot', 'top', "top'", "foot'"] },
      ],
    };
    const frame = derived(job);
    for (const id of ['stay', "stay'"])
      expect(tube(frame, id).ends[0].cuts.map(({ against }) => against)).toEqual(['hoop']);
  });
});

describe('a node in line with others', () => {
  it('has each coordinate from where it is said, primed ones from the other side of the car', () => {
    const points = [{ id: 'sill', position: [10, 640.25, 310] }];
    const nodes = {
      top: [5, 500, 1100],
      n: { kind: 'lined-up', x: { value: -70 }, y: { node: "top'", plus: 12 }, z: { point: 'sill' } },
      m: { kind: 'lined-up', x: { point: "sill'" }, y: { point: "sill'", plus: 0.25 }, z: { node: 'n', plus: 1 } },
    };
    const frame = derived({ nodes, points });
    expect(frame.nodes.get('n')).toEqual([-70, -488, 310]);
    expect(frame.nodes.get("n'")).toEqual([-70, 488, 310]);
    expect(frame.nodes.get('m')).toEqual([10, -640, 311]);
  });

  it('is refused beyond 100 m', () => {
    const z = { node: 'knee', plus: 100_000 };
    expect(faultsOf(withNode({ kind: 'lined-up', x: { value: 0 }, y: { value: 0 }, z }))).toEqual([
      { place: 'nodes[3].at', message: 'lies farther than 100 m from the datum' },
    ]);
  });
});

describe('a node clear of a point', () => {
  const points = [{ id: 'trim', position: [0, 700, 900] }];
  const clear = (direction: readonly number[], more: object = {}) => ({
    kind: 'point',
    point: 'trim',
    clear: { direction, gap: 31.75 },
    ...more,
  });
  const sections = [
    { id: 'main', outerDiameter: 44.45, wall: 3 },
    { id: 'wide', outerDiameter: 50, wall: 3 },
  ];

  it('stands off by the gap and half of the widest tube through it or its image', () => {
    const nodes = { n: clear([0, -3, 0], { offset: [1, 2, 3] }), a: [0, 0, 0], b: [500, 0, 0] };
    const place = (members: object[]) => derived({ nodes, points, sections, members }).nodes.get('n');
    expect(place([])).toEqual([1, 702 - 31.75, 903]);
    const narrow = { id: 'x', path: ['n', 'a'] };
    expect(place([narrow])).toEqual([1, 702 - 31.75 - 22.225, 903]);
    expect(place([narrow, { id: 'y', path: ['b', "n'"], section: 'wide' }])).toEqual([1, 702 - 31.75 - 25, 903]);
  });

  it('keeps the surface of a straight tube square to the direction that far off', () => {
    const nodes = { n: clear([0.6, 0, -0.8]), m: clear([0.6, 0, -0.8], { offset: [40, 90, 30] }) };
    const { byId } = derived({ nodes, points, members: [{ id: 'bar', path: ['n', 'm'] }] });
    const [a, b] = byId.get('bar')!.corners;
    const along = [b![0] - a![0], b![1] - a![1], b![2] - a![2]];
    const to = [0 - a![0], 700 - a![1], 900 - a![2]];
    const t = (along[0]! * to[0]! + along[1]! * to[1]! + along[2]! * to[2]!) / Math.hypot(...along);
    expect(Math.sqrt(Math.hypot(...to) ** 2 - t ** 2) - 22.225).toBeCloseTo(31.75, 9);
  });

  it('lies on the other side for the image, and off an image of the point', () => {
    const nodes = { n: { ...clear([0, 1, 0]), point: "trim'" } };
    const frame = derived({ nodes, points });
    expect(frame.nodes.get('n')).toEqual([0, -700 + 31.75, 900]);
    expect(frame.nodes.get("n'")).toEqual([0, 700 - 31.75, 900]);
  });
});

describe('reference loops', () => {
  it('are named, round and round', () => {
    const faults = faultsOf({
      nodes: {
        a: { kind: 'between', nodes: ['b', 'foot'], fraction: 0.5 },
        b: { kind: 'on', member: 'bar', from: 'start', distance: 5 },
        foot: [0, 0, 0],
      },
      members: [{ id: 'bar', path: ['a', 'foot'] }],
    });
    expect(faults).toEqual([
      { place: 'nodes[0].at', message: 'reference loop: node "a" needs node "b" needs member "bar" needs node "a"' },
    ]);
  });
  it('of a node on itself', () => {
    const faults = faultsOf({
      nodes: { a: { kind: 'ray', from: "a'", direction: [1, 0, 0], until: { axis: 'x', value: 1 } } },
    });
    expect(faults).toEqual([{ place: 'nodes[0].at', message: 'reference loop: node "a" needs node "a"' }]);
  });
  it('through a line, a height and what is in line are named too', () => {
    const line = { kind: 'crossing', member: 'bar', line: ['foot', 'up'] };
    const lined = { kind: 'lined-up', x: { value: 0 }, y: { value: 0 }, z: { node: "high'" } };
    const high = { kind: 'on', member: 'bar', until: { axis: 'z', node: 'up' } };
    const bar = { id: 'bar', path: ['foot', 'head'] };
    const base = { foot: [0, 0, 0], head: [0, 100, 900] };
    const loop = (nodes: Record<string, unknown>, path = bar.path) =>
      faultsOf({ nodes: { ...base, ...nodes }, members: [{ ...bar, path }] });
    expect(loop({ up: lined, high })).toEqual([
      { place: 'nodes[2].at', message: 'reference loop: node "up" needs node "high" needs node "up"' },
    ]);
    expect(loop({ up: line }, ['foot', 'head'])).toEqual([
      { place: 'nodes[2].at', message: 'reference loop: node "up" needs node "up"' },
    ]);
    expect(loop({ up: { ...line, line: ['foot', 'head'] } }, ['foot', "up'"])).toEqual([
      { place: 'nodes[2].at', message: 'reference loop: node "up" needs member "bar" needs node "up"' },
    ]);
    expect(loop({ up: { ...lined, z: { node: "up'" } } })).toEqual([
      { place: 'nodes[2].at', message: 'reference loop: node "up" needs node "up"' },
    ]);
  });
  it('are all named, each once, however much hangs on them', () => {
    const on = (member: string) => ({ kind: 'on', member, from: 'start', distance: 5 });
    const faults = faultsOf({
      nodes: { p: [0, 0, 0], q: [9, 9, 9], a: on('one'), b: on('two'), c: on('one') },
      members: [
        { id: 'one', path: ['a', 'p'] },
        { id: 'two', path: ['b', 'q'] },
        { id: 'three', path: ['a', 'c'] },
      ],
    });
    expect(faults.map((fault) => fault.message)).toEqual([
      'reference loop: node "a" needs member "one" needs node "a"',
      'reference loop: node "b" needs member "two" needs node "b"',
    ]);
  });
  it('a long chain is no loop and needs no deep stack', () => {
    const nodes: Record<string, unknown> = { n0: [0, 0, 0] };
    for (let i = 1; i < 20_000; i++) nodes[`n${i}`] = { kind: 'between', nodes: [`n${i - 1}`, 'n0'], fraction: 0.5 };
    expect(derived({ nodes }).nodes.get('n19999')).toEqual([0, 0, 0]);
  });
});
