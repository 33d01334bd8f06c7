import { describe, expect, it } from 'vitest';
import { derived, faultsOf } from '../frame.ts';

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
