import { describe, expect, it } from 'vitest';
import { addBodyLine, removeBodyLine, updateBodyLine } from '../../../src/core/edit/bodyLines.ts';
import { addDie, removeDie, updateDie } from '../../../src/core/edit/dies.ts';
import * as envelopes from '../../../src/core/edit/envelopes.ts';
import { nextId } from '../../../src/core/edit/ids.ts';
import {
  addMember,
  insertPathNode,
  moveMember,
  removePathNode,
  setDie,
  leaveLong,
  setEnd,
  updateMember,
} from '../../../src/core/edit/members.ts';
import * as nodes from '../../../src/core/edit/nodes.ts';
import { addPoint, movePoint, removePoint, renamePoint } from '../../../src/core/edit/points.ts';
import type { Edited } from '../../../src/core/edit/records.ts';
import { dependentNodes } from '../../../src/core/edit/references.ts';
import { addSection, removeSection, updateSection } from '../../../src/core/edit/sections.ts';
import { removeSeveral } from '../../../src/core/edit/several.ts';
import { frontOfHoop } from '../../../src/core/fitting/front-of-hoop.ts';
import { faultLine } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Place } from '../../../src/core/job/places.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleJob } from '../job/sample.ts';

const job = deepFreeze(sampleJob());
const refusal = (edited: Edited): readonly string[] => (Array.isArray(edited) ? edited.map(faultLine) : []);
const made = (edited: Edited): Job => {
  expect(Array.isArray(edited)).toBe(false);
  return edited as Job;
};
const at = (result: Job, id: string): Place => result.nodes.find((node) => node.id === id)!.at;

describe('adding', () => {
  it.each([
    ['points', (old: Job) => addPoint(old, 'Pillar', [1, 2, 3])],
    ['bodyLines', (old: Job) => addBodyLine(old, 'Roof rail', ['post', "post'"])],
    ['sections', (old: Job) => addSection(old, () => 'New')],
    ['dies', (old: Job) => addDie(old, () => 'New')],
    ['nodes', (old: Job) => nodes.addNode(old, 'New', { kind: 'fixed', position: [0, 0, 0] })],
    ['members', (old: Job) => addMember(old, { name: 'New', path: ['foot', 'tower'], section: 'main' })],
    ['envelopes', (old: Job) => envelopes.addBox(old, 'knees', 'Knees')],
    ['envelopes', (old: Job) => envelopes.addDriver(old, 'Co-driver', "post'")],
    ['envelopes', (old: Job) => envelopes.addGuessedDriver(old, 'Driver', 'Top')],
  ] as const)('to %s leaves a job that a file can hold, with a new last record', (collection, add) => {
    const once = add(job);
    const twice = add(once);
    expect(twice[collection]).toHaveLength(job[collection].length + 2);
    expect(new Set(twice[collection].map(({ id }) => id)).size).toBe(twice[collection].length);
    expect(parseJob(serialiseJob(twice))).toEqual({ ok: true, job: twice });
  });

  it('starts sections and dies from the commonest where there are none', () => {
    const bare: Job = {
      ...job,
      pulls: [],
      bent: [],
      made: [],
      feeds: [],
      gussets: [],
      sections: [],
      dies: [],
      nodes: [],
      members: [],
      certificates: [],
      stickSorts: [],
      spares: [],
      sawn: [],
    };
    const named = addSection(bare, ({ outerDiameter, wall }) => `${outerDiameter} by ${wall}`);
    // 1 3/4 in by .120, on 6 in: what most cages are built of (common practice).
    expect(named.sections[0]!.name).toBe('44.45 by 3.048');
    const both = addDie(named, ({ centrelineRadius }) => `on ${centrelineRadius}`);
    expect(both.dies[0]!.name).toBe('on 152.4');
    expect(parseJob(serialiseJob(both)).ok).toBe(true);
  });

  it('gives a member with corners the die of its diameter, and a straight one none', () => {
    const straight = addMember(job, { name: 'A', path: ['foot', 'tower'], section: 'main' });
    const bent = addMember(job, { name: 'B', path: ['foot', 'top', 'tower'], section: 'main' });
    expect(straight.members.at(-1)!.die).toBeUndefined();
    expect(bent.members.at(-1)!.die).toBe('d1');
  });

  it('finds a free id', () => {
    expect(nextId(job, 'nodes')).toBe('n13');
    const crowded = {
      ...job,
      points: ['p1', 'p3', 'p4'].map((id) => ({ id, name: id, position: [0, 0, 0] as const })),
    };
    expect(nextId(crowded, 'points')).toBe('p5');
    expect(nextId({ ...job, points: [] }, 'points')).toBe('p1');
  });
});

describe('boxes and drivers', () => {
  const { points } = job;
  const bare: Job = { ...job, envelopes: [] };
  const placed = (of: Job) => of.envelopes.flatMap((each) => (each.kind === 'box' ? [each.centre] : []));

  it('a box begins where the driver makes it likely: before the chest, under the eyes, the door outside', () => {
    const top = points.find(({ id }) => id === 'post')!.position;
    for (const helmetTop of ['post', "post'"]) {
      const [x, y, z] = helmetTop === 'post' ? top : [top[0], -top[1], top[2]];
      const at = (use: envelopes.BoxUse) =>
        placed(envelopes.addBox(envelopes.addDriver(bare, 'Driver', helmetTop), use, 'New'))[0]!;
      expect([at('head')[0], at('head')[1]]).toEqual([x, y]);
      expect(at('head')[2]).toBeLessThan(z);
      expect(at('wheel')[0]).toBeGreaterThan(x);
      expect(at('knees')[2]).toBeLessThan(at('wheel')[2]);
      expect(at('sight')[2]).toBeGreaterThan(at('wheel')[2]);
      expect(Math.abs(at('door')[1])).toBeGreaterThan(Math.abs(y));
      expect(Math.sign(at('door')[1])).toBe(Math.sign(y));
    }
    expect(placed(envelopes.addBox(bare, 'head', 'New'))[0]![1]).toBe(0);
    // A sight line begins at the eye, where that was measured.
    const [eye] = points;
    const seeing = envelopes.setEye(envelopes.addDriver(bare, 'Driver', 'post'), 'e1', eye!.id);
    const [sx, sy, sz] = placed(envelopes.addBox(seeing, 'sight', 'New'))[0]!;
    expect([sx > eye!.position[0], sy, sz]).toEqual([true, eye!.position[1], eye!.position[2]]);
  });

  it('a second driver who is not measured sits on the other side', () => {
    const two = envelopes.addGuessedDriver(envelopes.addGuessedDriver(bare, 'Driver', 'Top'), 'Co-driver', 'Top');
    const [one, other] = two.points.slice(-2);
    expect([one!.guessed, other!.guessed, one!.position[1] + other!.position[1]]).toEqual([true, true, 0]);
    expect(one!.position[1]).toBeGreaterThan(0);
    // On top of the box that was put round a head.
    const guess = envelopes
      .addGuessedDriver({ ...bare, envelopes: [job.envelopes[0]!] }, 'Driver', 'Top')
      .points.at(-1);
    expect(guess!.position).toEqual([-150, 330, 1010 + 330 / 2]);
  });

  it('a guessed driver sits ahead of the main hoop behind, unless a box says where the head is', () => {
    const guessed = (behind: number | null, from: Job) =>
      envelopes.addGuessedDriver(from, 'Driver', 'Top', behind).points.at(-1)!.position[0];
    const boxless = { ...bare, envelopes: [] };
    // The back of a helmet of 350 mm then stands two inches and one more ahead of the wall.
    expect(guessed(100, boxless) - 350 / 2 - 100).toBeCloseTo(3 * 25.4, 9);
    expect(guessed(-2000, boxless)).toBe(guessed(null, boxless));
    expect(guessed(100, { ...bare, envelopes: [job.envelopes[0]!] })).toBe(-150);
    const hoop = {
      member: { role: 'Main hoop' },
      section: { outerDiameter: 40 },
      corners: [
        [0, 0, 0],
        [-90, 0, 1],
      ],
    };
    const frame = { bars: new Map([['hoop', hoop]]) } as unknown as Parameters<typeof frontOfHoop>[0];
    expect(frontOfHoop(frame)).toBe(20);
  });

  it('what is set as it is, or on the other kind, leaves the job as it is', () => {
    const [, driver] = job.envelopes;
    if (driver?.kind !== 'driver') throw new Error('the sample has a driver');
    expect(envelopes.setEye(job, 'driver', driver.eye!)).toBe(job);
    expect(envelopes.setShoulders(job, 'driver', [...driver.shoulders!])).toBe(job);
    expect(envelopes.updateBox(job, 'driver', { centre: [0, 0, 0] })).toBe(job);
    expect(envelopes.updateDriver(job, 'head', { helmetTop: 'post' })).toBe(job);
    expect(envelopes.setEye(job, 'driver', null).envelopes[1]).not.toHaveProperty('eye');
    expect(envelopes.setShoulders(job, 'driver', null).envelopes[1]).not.toHaveProperty('shoulders');
  });
});

describe('changing', () => {
  it.each<readonly [string, Job, Job]>([
    [
      'a point',
      movePoint(job, 'post', [9, 9, 9]),
      { ...job, points: [job.points[0]!, { id: 'post', name: 'Post', position: [9, 9, 9] }, job.points[2]!] },
    ],
    [
      'a name',
      renamePoint(job, 'post', 'Pillar'),
      { ...job, points: [job.points[0]!, { ...job.points[1]!, name: 'Pillar' }, job.points[2]!] },
    ],
    ['a section', updateSection(job, 'main', { wall: 4 }), { ...job, sections: [{ ...job.sections[0]!, wall: 4 }] }],
    ['a die', updateDie(job, 'd1', { leastGrip: 99 }), { ...job, dies: [{ ...job.dies[0]!, leastGrip: 99 }] }],
    [
      'a box',
      envelopes.updateEnvelope(job, 'head', { gap: 60 }),
      { ...job, envelopes: [{ ...job.envelopes[0]!, gap: 60 }, job.envelopes[1]!] },
    ],
    [
      'a line',
      updateBodyLine(job, 'door', { name: 'Sill' }),
      { ...job, bodyLines: [{ ...job.bodyLines[0]!, name: 'Sill' }] },
    ],
  ])('%s changes it alone', (_, result, expected) => {
    expect(result).toEqual(expected);
    expect(result.members).toBe(job.members);
    expect(result.nodes).toBe(job.nodes);
  });

  it('keeps the untouched neighbours as the same objects', () => {
    const result = movePoint(job, 'post', [9, 9, 9]);
    expect(result.points[0]).toBe(job.points[0]);
    expect(result.sections).toBe(job.sections);
  });

  it('nothing gives the same job', () => {
    expect(renamePoint(job, 'post', 'Post')).toBe(job);
    expect(renamePoint(job, 'gone', 'Post')).toBe(job);
    expect(updateMember(job, 'hoop', { name: 'Main hoop', mirror: false })).toBe(job);
    expect(setDie(job, 'stay', null)).toBe(job);
    expect(moveMember(job, 'stay', 1)).toBe(job);
    expect(moveMember(job, 'gone', 0)).toBe(job);
    expect(envelopes.removeEnvelope(job, 'gone')).toBe(job);
  });
});

describe('members', () => {
  it('change their ends one by one', () => {
    const result = setEnd(job, 'hoop', 1, { fit: 'square', allowance: 2 });
    expect(result.members[0]!.ends).toEqual([job.members[0]!.ends[0], { fit: 'square', allowance: 2 }]);
    expect(result.members[1]).toBe(job.members[1]);
  });

  it('leave an end long and keep how it is cut; nothing changes where it is so already', () => {
    const left = leaveLong(job, 'hoop', 0, 28.6);
    expect(left.members[0]!.ends).toEqual([{ ...job.members[0]!.ends[0], allowance: 28.6 }, job.members[0]!.ends[1]]);
    expect(leaveLong(left, 'hoop', 0, 28.6)).toBe(left);
  });

  it('lose and get their die', () => {
    const without = setDie(job, 'hoop', null);
    expect('die' in without.members[0]!).toBe(false);
    expect(setDie(without, 'hoop', 'd1')).toEqual(job);
  });

  it('take nodes into their path and give them up, two at least', () => {
    const longer = insertPathNode(job, 'stay', 1, 'mid');
    expect(longer.members[1]!.path).toEqual(['stay-top', 'mid', 'tower']);
    expect(insertPathNode(job, 'stay', 2, 'mid').members[1]!.path).toEqual(['stay-top', 'tower', 'mid']);
    expect(made(removePathNode(longer, 'stay', 1))).toEqual(job);
    expect(refusal(removePathNode(job, 'stay', 0))).toEqual([
      'members[1].path: a member runs between two nodes at least',
    ]);
  });

  it('move in the build order', () => {
    const order = (result: Job) => result.members.map(({ id }) => id);
    const three = addMember(job, { name: 'Third', path: ['foot', 'top'], section: 'main' });
    expect(order(moveMember(three, 'm3', 0))).toEqual(['m3', 'hoop', 'stay']);
    expect(order(moveMember(three, 'hoop', 1))).toEqual(['stay', 'hoop', 'm3']);
    expect(order(moveMember(three, 'hoop', 99))).toEqual(['stay', 'm3', 'hoop']);
    expect(order(moveMember(three, 'm3', -1))).toEqual(['m3', 'hoop', 'stay']);
  });
});

describe('deleting', () => {
  it('is refused while others use it, and names them', () => {
    expect(refusal(removePoint(job, 'sill-l'))).toEqual([
      'bodyLines[0].points[0]: "Door opening" uses it: change or delete that first',
      'nodes[2].at.point: "sill" uses it: change or delete that first',
      'envelopes[1].shoulders[0]: "Driver" uses it: change or delete that first',
      'bent[0].seat[0].point: its bend run uses it: change or delete that first',
      'scans[0].pairs[0].point: "Inside" uses it: change or delete that first',
    ]);
    expect(refusal(removePoint(job, 'post'))).toEqual([
      'bodyLines[0].points[1]: "Door opening" uses it: change or delete that first',
      'nodes[8].at.point: "off-post" uses it: change or delete that first',
      'nodes[10].at.y.point: "in-line" uses it: change or delete that first',
      'envelopes[1].eye: "Driver" uses it: change or delete that first',
    ]);
    expect(refusal(nodes.removeNode(job, 'level'))).toEqual([
      'nodes[11].at.line[0]: "across" uses it: change or delete that first',
    ]);
    expect(refusal(nodes.removeNode(job, 'tower'))).toEqual([
      'nodes[9].at.until.node: "level" uses it: change or delete that first',
      'nodes[10].at.z.node: "in-line" uses it: change or delete that first',
      'members[1].path[1]: "Rear stay" uses it: change or delete that first',
    ]);
    expect(refusal(nodes.removeNode(job, 'foot'))).toEqual([
      'nodes[5].at.nodes[0]: "mid" uses it: change or delete that first',
      'members[0].path[0]: "Main hoop" uses it: change or delete that first',
    ]);
    expect(refusal(removeSeveral(job, 'members', ['hoop']))).toEqual([
      'nodes[3].at.member: "stay-top" uses it: change or delete that first',
      'nodes[4].at.member: "on-bend" uses it: change or delete that first',
      'nodes[9].at.member: "level" uses it: change or delete that first',
      'nodes[11].at.member: "across" uses it: change or delete that first',
      'members[1].ends[0].against[0]: "Rear stay" uses it: change or delete that first',
      'bent[0].tube: its bend run uses it: change or delete that first',
    ]);
    expect(refusal(removeSection(job, 'main'))).toEqual([
      'members[0].section: "Main hoop" uses it: change or delete that first',
      'members[1].section: "Rear stay" uses it: change or delete that first',
      'stock.sticks[0].section: a stick uses it: change or delete that first',
      'stock.spares[0].section: a spare length uses it: change or delete that first',
      'stock.sawn[0].section: a stick that was sawn uses it: change or delete that first',
      'pulls[0].section: a logged pull uses it: change or delete that first',
      'certificates[0].section: a certificate uses it: change or delete that first',
    ]);
    expect(refusal(removeDie(job, 'd1'))).toEqual([
      'members[0].die: "Main hoop" uses it: change or delete that first',
      'pulls[0].die: a logged pull uses it: change or delete that first',
    ]);
  });

  it('works when nothing but itself refers to it', () => {
    // What is cut is not deleted: it is set back to drawn first.
    expect(Array.isArray(removeSeveral(job, 'members', ['stay']))).toBe(true);
    const result = made(removeSeveral({ ...job, made: [] }, 'members', ['stay']));
    expect(result.members).toEqual([job.members[0]]);
    // The gusset between hoop and stay went with the stay; the one in the hoop's own bend did not.
    expect(result.gussets).toEqual([job.gussets[1]]);
    expect(made(nodes.removeNode(job, 'leg')).nodes).toHaveLength(11);
    expect(removeBodyLine(job, 'door').bodyLines).toEqual([]);
    expect(envelopes.removeEnvelope(job, 'head').envelopes).toEqual([job.envelopes[1]]);
  });
});

describe('moving a node', () => {
  it('keeps the offsets of a node on a point that do not change, to the last digit', () => {
    const points = [{ id: 'p', name: 'p', position: [1023.9375, 598.4875, 58.7375] as const }];
    const offset = [-1.5875, 0.1, -3.175] as const;
    const on: Job = {
      ...job,
      points: [...job.points, ...points],
      nodes: [{ id: 'n', name: 'n', at: { kind: 'point', point: 'p', offset } }],
    };
    const moved = nodes.moveNode(on, 'n', [1023.9375 - 1.5875, 600, 58.7375 - 3.175]);
    expect(at(moved, 'n')).toMatchObject({ offset: [-1.5875, 600 - 598.4875, -3.175] });
  });

  it('puts a fixed one, or its image, where it is asked to be', () => {
    expect(at(nodes.moveNode(job, 'foot', [1, 2, 3]), 'foot')).toEqual({ kind: 'fixed', position: [1, 2, 3] });
    expect(at(nodes.moveNode(job, "foot'", [1, 2, 3]), 'foot')).toEqual({ kind: 'fixed', position: [1, -2, 3] });
    expect(at(nodes.moveNode(job, "foot'", [1, 0, 3]), 'foot')).toEqual({ kind: 'fixed', position: [1, 0, 3] });
  });

  it('changes the offset of one that stands on a point', () => {
    // sill-l is at (0, 640, 310).
    expect(at(nodes.moveNode(job, 'sill', [5, 600, 320]), 'sill')).toMatchObject({ offset: [5, -40, 10] });
    expect(at(nodes.moveNode(job, "sill'", [5, -600, 320]), 'sill')).toMatchObject({ offset: [5, -40, 10] });
    const onImage = nodes.setPlace(job, 'sill', { kind: 'point', point: "sill-l'", offset: [0, 0, 0] });
    expect(at(nodes.moveNode(onImage, 'sill', [0, -650, 310]), 'sill')).toMatchObject({ offset: [0, -10, 0] });
  });

  it('sets the one parameter of the others', () => {
    expect(at(nodes.setOnDistance(job, 'stay-top', 950), 'stay-top')).toMatchObject({ from: 'start', distance: 950 });
    expect(at(nodes.setFraction(job, 'mid', 0.25), 'mid')).toMatchObject({ fraction: 0.25 });
    expect(at(nodes.setRayValue(job, 'leg', 600), 'leg')).toMatchObject({ until: { axis: 'y', value: 600 } });
    expect(at(nodes.setRayValue(job, "leg'", -600), 'leg')).toMatchObject({ until: { axis: 'y', value: 600 } });
    const upright = nodes.setPlace(job, 'leg', {
      kind: 'ray',
      from: 'top',
      direction: [0, 0, 1],
      until: { axis: 'z', value: 0 },
    });
    expect(at(nodes.setRayValue(upright, "leg'", 40), 'leg')).toMatchObject({ until: { axis: 'z', value: 40 } });
  });

  it('does nothing to a node of another kind, or to none', () => {
    expect(nodes.setFraction(job, 'foot', 1)).toBe(job);
    expect(nodes.moveNode(job, 'stay-top', [0, 0, 0])).toBe(job);
    expect(nodes.moveNode(job, 'gone', [0, 0, 0])).toBe(job);
  });
});

describe('dependentNodes', () => {
  it('follows places and tubes, and not what an end is coped to', () => {
    expect([...dependentNodes(job, 'foot')].toSorted()).toEqual([
      'across',
      'foot',
      'level',
      'mid',
      'on-bend',
      'stay-top',
    ]);
    expect([...dependentNodes(job, 'top')].toSorted()).toEqual([
      'across',
      'leg',
      'level',
      'on-bend',
      'stay-top',
      'top',
    ]);
    expect([...dependentNodes(job, 'tower')].toSorted()).toEqual(['across', 'in-line', 'level', 'tower']);
    expect([...dependentNodes(job, 'stay-top')]).toEqual(['stay-top']);
  });
});
