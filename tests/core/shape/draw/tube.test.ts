/** A tube drawn between places of a frame: it can be made, it ends where it was drawn to, it doubles no node, and undo leaves nothing of it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../../src/core/derive.ts';
import { distanceToPath } from '../../../../src/core/geometry/path.ts';
import { distance, type Vec3 } from '../../../../src/core/geometry/vector.ts';
import { moveNode } from '../../../../src/core/edit/nodes.ts';
import { parseJob } from '../../../../src/core/job/parse.ts';
import { bareId, type NodeRef } from '../../../../src/core/job/reference.ts';
import { serialiseJob } from '../../../../src/core/job/serialise.ts';
import type { Job } from '../../../../src/core/job/types.ts';
import { commitEdit, newHistory, undo } from '../../../../src/core/session/history.ts';
import { standsAt, stillThere, type Ground } from '../../../../src/core/shape/draw/ground.ts';
import { snapsOf } from '../../../../src/core/shape/draw/snaps.ts';
import { drawnTube, isForBothSides, usualSection } from '../../../../src/core/shape/draw/tube.ts';
import { typedDemoText } from '../../../command-line.ts';
import { drawn } from '../../../draws.ts';
import { derivedOrSkipped, mirroredFrame, place, plainFrame } from '../../../laws/frames.ts';

const demo = read(typedDemoText());

function read(text: string): Job {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}

function derivedOf(job: Job, before?: Derived): Derived {
  const result = derive(job, before);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

/** What is drawn onto; which record its number means is known once there is a frame. */
type Pick =
  | { readonly onto: 'snap'; readonly at: number }
  | { readonly onto: 'tube'; readonly at: number; readonly share: number }
  | { readonly onto: 'space'; readonly position: Vec3 }
  | { readonly onto: 'line'; readonly at: number; readonly axis: number; readonly position: Vec3 };

const picks: fc.Arbitrary<readonly Pick[]> = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.record({ onto: fc.constant('snap' as const), at: fc.nat(5000) }) },
    {
      weight: 2,
      arbitrary: fc.record({
        onto: fc.constant('tube' as const),
        at: fc.nat(500),
        share: fc.integer({ min: 0, max: 100 }),
      }),
    },
    { weight: 1, arbitrary: fc.record({ onto: fc.constant('space' as const), position: place }) },
    {
      weight: 1,
      arbitrary: fc.record({
        onto: fc.constant('line' as const),
        at: fc.nat(5000),
        axis: fc.nat(2),
        position: place,
      }),
    },
  ),
  { minLength: 2, maxLength: 4 },
);

function groundOf(frame: Derived, pick: Pick): Ground {
  if (pick.onto === 'space') return { kind: 'space', position: pick.position };
  if (pick.onto === 'snap') {
    const snaps = snapsOf(frame);
    return snaps[pick.at % snaps.length]!.ground;
  }
  if (pick.onto === 'line') {
    const owners = snapsOf(frame).filter(({ ground }) => ground.kind === 'node' || ground.kind === 'point');
    const { ground, at } = owners[pick.at % owners.length]!;
    const own = <T>(axis: number, owned: T, other: T): T => (axis === pick.axis ? owned : other);
    return {
      kind: 'space',
      position: pick.position.map((each, axis) => own(axis, at[axis]!, each)) as unknown as Vec3,
      by: [own(0, ground, null), own(1, ground, null), own(2, ground, null)],
    };
  }
  const bars = [...frame.bars.values()];
  const bar = bars[pick.at % bars.length]!;
  return { kind: 'along', tube: bar.id, distance: (bar.developedLength * pick.share) / 100 };
}

/** Every place at which two nodes stand that were not there together before. */
function doubled(before: Derived, after: Derived): readonly (readonly [NodeRef, NodeRef])[] {
  const added = after.job.nodes.filter(({ id }) => !before.nodes.has(id)).map(({ id }) => id);
  return added.flatMap((id) =>
    [...after.nodes]
      .filter(([other, at]) => bareId(other) !== id && distance(at, after.nodes.get(id)!) <= 1e-7)
      .map(([other]) => [id, other] as const),
  );
}

function holds(job: Job, frame: Derived, chosen: readonly Pick[]): void {
  const grounds = chosen.map((pick) => groundOf(frame, pick));
  const stood = grounds.map((ground) => standsAt(frame, ground));
  // A bar whose bends overlap by more than it is long has no place along it.
  fc.pre(stood.every((at) => at !== null));
  const places = stood as readonly Vec3[];
  const mirror = isForBothSides(
    frame,
    grounds.map((ground, i) => ({ ground, at: places[i]! })),
  );
  const made = drawnTube(job, frame, grounds, { name: 'Drawn', section: usualSection(job)!, mirror });
  // Two places that are one, a tube that turns back or that no die bends: said in words, and nothing is drawn.
  fc.pre(typeof made !== 'string');
  const grown = made;
  expect(read(serialiseJob(grown))).toEqual(grown);
  const after = derivedOf(grown, frame);
  const member = grown.members.at(-1)!;
  member.path.forEach((node, i) => expect(distance(after.nodes.get(node)!, places[i]!)).toBeLessThanOrEqual(1e-9));
  expect(after.bars.get(member.id)!.ends.map(({ spec }) => spec.fit)).toEqual(['auto', 'auto']);
  expect(after.bars.has(`${member.id}'`)).toBe(mirror);
  expect(doubled(frame, after)).toEqual([]);
  const history = commitEdit(newHistory(job), 'Draw Drawn', grown);
  expect(history.past).toHaveLength(1);
  expect(serialiseJob(undo(history).job)).toBe(serialiseJob(job));
}

describe('a tube drawn between places', () => {
  it('of the demo', () => {
    const frame = derivedOf(demo);
    fc.assert(
      fc.property(picks, (chosen) => holds(demo, frame, chosen)),
      { seed: 20261130, numRuns: drawn(20, 600) },
    );
  }, 180_000);

  it('of any frame', () => {
    fc.assert(
      fc.property(fc.oneof(plainFrame, mirroredFrame), picks, (job, chosen) =>
        holds(job, derivedOrSkipped(job), chosen),
      ),
      { seed: 20261130, numRuns: drawn(20, 400) },
    );
  }, 180_000);
});

describe('what a place becomes', () => {
  const frame = derivedOf(demo);
  const hoop = [...frame.bars.values()].find(({ name }) => name.startsWith('Main hoop'))!;
  const nodesOf = (...grounds: readonly Ground[]) => {
    const made = drawnTube(demo, frame, grounds, { name: 'New', section: demo.sections[0]!.id, mirror: false });
    if (typeof made === 'string') throw new Error(made);
    return { added: made.nodes.slice(demo.nodes.length), path: made.members.at(-1)!.path, made };
  };
  const far: Ground = { kind: 'space', position: [3000, 700, 900] };

  it('a node where there is one, also under another name', () => {
    const [reference, at] = [...frame.nodes][0]!;
    const { path, added } = nodesOf({ kind: 'node', node: reference }, far);
    expect([path[0], added.length]).toEqual([reference, 1]);
    expect(nodesOf({ kind: 'space', position: at }, far).path[0]).toBe(reference);
  });

  it('a node on the point, on the tube, on the centre of the tube, or at coordinates', () => {
    const offset = [0, 0, 0];
    const [spare] = demo.points.filter(({ position }) =>
      [...frame.nodes.values()].every((at) => distance(at, position) > 1),
    );
    const ats = (ground: Ground) => nodesOf(ground, far).added.at(0)!.at;
    expect(ats({ kind: 'point', point: `${spare!.id}'` })).toEqual({ kind: 'point', point: `${spare!.id}'`, offset });
    expect(ats({ kind: 'along', tube: hoop.id, distance: 333 })).toEqual({
      kind: 'on',
      member: hoop.id,
      from: 'start',
      distance: 333,
      offset,
    });
    expect(ats({ kind: 'bend', tube: hoop.id, bend: 1, where: 'end' })).toMatchObject({
      bend: 1,
      where: 'end',
      distance: 0,
    });
    expect(ats({ kind: 'space', position: [10, 20, 30] })).toEqual({ kind: 'fixed', position: [10, 20, 30] });
  });

  it('so that it follows: moved points take the tube along', () => {
    const spare = demo.points.find(({ position }) =>
      [...frame.nodes.values()].every((at) => distance(at, position) > 1),
    )!;
    const { made, path } = nodesOf({ kind: 'point', point: spare.id }, far);
    const [x, y, z] = spare.position;
    const moved = derivedOf({
      ...made,
      points: made.points.map((each) => (each.id === spare.id ? { ...each, position: [x, y, z + 50] } : each)),
    });
    expect(moved.nodes.get(path[0]!)).toEqual([x, y, z + 50]);
  });

  it('a node in line with what its coordinates are of, and with numbers for the rest: it follows each', () => {
    const spare = demo.points.find(({ position }) =>
      [...frame.nodes.values()].every((at) => distance(at, position) > 1),
    )!;
    const [x, y, z] = spare.position;
    const point: Ground = { kind: 'point', point: spare.id };
    const foot: Ground = { kind: 'space', position: [x, y + 90, 30], by: [point, null, null] };
    const top: Ground = { kind: 'space', position: [x, y + 90, z], by: [foot, foot, point] };
    const end: Ground = { kind: 'space', position: [x + 700, y + 90, z], by: [null, top, top] };
    const { made, path, added } = nodesOf(foot, top, end);
    expect(added.map(({ at }) => at)).toEqual([
      { kind: 'lined-up', x: { point: spare.id, plus: 0 }, y: { value: y + 90 }, z: { value: 30 } },
      {
        kind: 'lined-up',
        x: { node: path[0], plus: 0 },
        y: { node: path[0], plus: 0 },
        z: { point: spare.id, plus: 0 },
      },
      { kind: 'lined-up', x: { value: x + 700 }, y: { node: path[1], plus: 0 }, z: { node: path[1], plus: 0 } },
    ]);
    const moved = derivedOf({
      ...made,
      points: made.points.map((each) => (each.id === spare.id ? { ...each, position: [x + 7, y + 5, z - 11] } : each)),
    });
    expect(path.map((id) => moved.nodes.get(id))).toEqual([
      [x + 7, y + 90, 30],
      [x + 7, y + 90, z - 11],
      [x + 700, y + 90, z - 11],
    ]);
  });

  it('over a node on the centre plane, a node that stays on it', () => {
    const centre = snapsOf(frame).find(({ ground, at }) => ground.kind === 'node' && at[1] === 0)!;
    const over: Ground = { kind: 'space', position: [centre.at[0], 0, 2000], by: [centre.ground, centre.ground, null] };
    const { at } = nodesOf(over, far).added[0]!;
    expect(at).toMatchObject({ kind: 'lined-up', y: { value: 0 }, z: { value: 2000 } });
    expect(at.kind === 'lined-up' && at.x.node).toBe(centre.ground.kind === 'node' && centre.ground.node);
  });

  it('a node at the height of the first place, on the tube: raised, that takes it along', () => {
    const foot: Ground = { kind: 'space', position: [800, 500, 400] };
    const level: Ground = { kind: 'level', tube: hoop.id, with: foot, nth: 1 };
    expect(standsAt(frame, level)![2]).toBeCloseTo(400, 9);
    const { made, path, added } = nodesOf(foot, level);
    expect(added[1]!.at).toEqual({
      kind: 'on',
      member: hoop.id,
      until: { axis: 'z', node: path[0], plus: 0 },
      nth: 1,
      offset: [0, 0, 0],
    });
    const raised = derivedOf(moveNode(made, path[0]!, [800, 500, 430]));
    expect(raised.nodes.get(path[1]!)![2]).toBeCloseTo(430, 9);
    expect(distanceToPath(raised.bars.get(hoop.id)!.path, raised.nodes.get(path[1]!)!)).toBeLessThan(1e-9);
  });

  it('while it is drawn it goes along too; a coordinate whose owner is gone is the number that it was', () => {
    const [reference, at] = [...frame.nodes][0]!;
    const owner: Ground = { kind: 'node', node: reference };
    let ground: Ground = { kind: 'space', position: [1, 2, at[2]], by: [null, null, owner] };
    // A long row of places, each in line with the one before by all but one coordinate, is reckoned at once.
    for (let i = 0; i < 60; i += 1) ground = { kind: 'space', position: [i, 2, at[2]], by: [null, ground, ground] };
    const nodes = new Map([...frame.nodes, [reference, [at[0], at[1], at[2] + 9] as Vec3] as const]);
    expect(standsAt({ ...frame, nodes }, ground)).toEqual([59, 2, at[2] + 9]);
    expect(standsAt({ ...frame, nodes: new Map() }, ground)).toEqual([59, 2, at[2]]);
  });

  it('the same node, mirrored, where the tube comes to the mirror image of a place of its own', () => {
    const [foot, top] = [
      { kind: 'space', position: [3000, 700, 0] },
      { kind: 'space', position: [3000, 600, 900] },
    ] as const;
    const { path, added } = nodesOf(foot, top, { kind: 'image', of: top }, { kind: 'image', of: foot });
    expect(added).toHaveLength(2);
    expect(path.slice(2)).toEqual([`${path[1]}'`, `${path[0]}'`]);
  });

  it('the centre of a hoop, which stays on the centre plane', () => {
    const centre = snapsOf(frame).find(({ ground }) => ground.kind === 'centre' && ground.tube === hoop.id)!;
    expect(centre.at[1]).toBe(0);
    const { made, path } = nodesOf(centre.ground, far);
    expect(derivedOf(made).nodes.get(path[0]!)![1]).toBe(0);
  });
});

describe('what cannot be drawn', () => {
  const frame = derivedOf(demo);
  const space = (...position: [number, number, number]): Ground => ({ kind: 'space', position });
  const trouble = (job: Job, ...grounds: readonly Ground[]) =>
    drawnTube(job, frame, grounds, { name: 'New', section: job.sections[0]!.id, mirror: false });

  it('is said', () => {
    expect(trouble(demo, space(0, 0, 0))).toBe('too-few');
    expect(trouble(demo, space(0, 0, 0), space(0, 0, 0))).toBe('same-place');
    expect(trouble(demo, space(0, 0, 0), space(900, 0, 0), space(10, 0, 0))).toBe('doubles-back');
    expect(trouble({ ...demo, dies: [] }, space(0, 0, 0), space(900, 0, 0), space(900, 900, 0))).toBe('no-die');
    expect(trouble(demo, space(0, 0, 0), { kind: 'node', node: 'none' })).toBe('gone');
    expect(trouble(demo, space(0, 0, 0), { kind: 'bend', tube: 'none', bend: 1, where: 'end' })).toBe('gone');
  });

  it('but straight through without a die it can', () => {
    expect(typeof trouble({ ...demo, dies: [] }, space(0, 0, 0), space(400, 0, 0), space(900, 0, 0))).toBe('object');
  });
});

describe('a tube is for both sides', () => {
  const frame = derivedOf(demo);
  const isFor = (...grounds: readonly Ground[]) =>
    isForBothSides(
      frame,
      grounds.map((ground) => ({ ground, at: standsAt(frame, ground)! })),
    );
  const space = (...position: [number, number, number]): Ground => ({ kind: 'space', position });
  const barNamed = (name: RegExp) => [...frame.bars.values()].find((bar) => name.test(bar.name))!;

  it('where it is on one, and touches the centre plane at most', () => {
    expect(isFor(space(0, 300, 0), space(0, 400, 0))).toBe(true);
    expect(isFor(space(0, -300, 0), space(0, 0, 0))).toBe(true);
    expect(isFor(space(0, 0, 0), space(100, 0, 0))).toBe(false);
    expect(isFor(space(0, 300, 0), space(0, -300, 0))).toBe(false);
  });

  it('where what it stands on has a mirror image: a hoop or a bar of a pair, not a diagonal', () => {
    const [hoop, diagonal, leg] = [barNamed(/^Main hoop/u), barNamed(/^Main diagonal/u), barNamed(/^Front leg/u)];
    const on = (tube: string, distance: number): Ground => ({ kind: 'along', tube, distance });
    const far = space(500, Math.sign(standsAt(frame, on(diagonal.id, 200))![1]) * 300, 500);
    expect(isFor(on(hoop.id, 300), space(500, Math.sign(standsAt(frame, on(hoop.id, 300))![1]) * 300, 500))).toBe(true);
    expect(isFor(on(leg.id, 300), space(500, Math.sign(standsAt(frame, on(leg.id, 300))![1]) * 300, 500))).toBe(true);
    expect(isFor(on(diagonal.id, 200), far)).toBe(false);
  });
});

describe('a half-drawn tube whose job is edited', () => {
  const frame = derivedOf(demo);
  const last = demo.members.at(-1)!;
  const on = (tube: string, distance: number) => ({ ground: { kind: 'along', tube, distance } as Ground });
  const space = (x: number) => ({ ground: { kind: 'space', position: [x, 0, 0] } as Ground });

  it('keeps what is there still, and loses what stood on a tube that is gone or shorter', () => {
    const without = derivedOf({ ...demo, members: demo.members.slice(0, -1) });
    const hoop = demo.members[0]!.id;
    const places = [space(1), on(last.id, 20), on(hoop, 500), space(2)];
    expect(stillThere(frame, places)).toEqual(places);
    expect(stillThere(without, places)).toEqual([places[0], places[2], places[3]]);
    expect(stillThere(frame, [on(hoop, frame.bars.get(hoop)!.developedLength + 1)])).toEqual([]);
  });

  it('has no leg of no length where a lost place lay between two at one', () => {
    const without = derivedOf({ ...demo, members: demo.members.slice(0, -1) });
    expect(stillThere(without, [space(1), on(last.id, 20), space(1), space(2)])).toEqual([space(1), space(2)]);
  });
});
