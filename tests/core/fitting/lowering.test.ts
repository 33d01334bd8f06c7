/** Air above joints under the roof, how far the cage is lowered for a torch, what gives it and what is in the way: by hand, and beside dense looking. */
import { describe, expect, it } from 'vitest';
import { besideJoint, roofOver } from '../../../src/core/fitting/air.ts';
import { jointsUnderRoof, UNDER_ROOF, type Joint } from '../../../src/core/fitting/joints.ts';
import { lowering, metOnTheWay } from '../../../src/core/fitting/lowering.ts';
import { lowerBy } from '../../../src/core/fitting/lower.ts';
import { stretchBetween } from '../../../src/core/gaps/stretch-gap.ts';
import type { TrimPlace } from '../../../src/core/gaps/trim-places.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { jobFrom } from '../../../src/core/shop/exchange.ts';
import { EMPTY_SHOP } from '../../../src/core/shop/types.ts';
import { distance, interpolate, type Vec3 } from '../../../src/core/geometry/vector.ts';
import {
  boxesInWords,
  inTheWayInWords,
  jointName,
  lowerInWords,
  stoppedInWords,
} from '../../../src/core/words/fitting.ts';
import { drawn } from '../../draws.ts';
import { derived } from '../frame.ts';
import { seeded } from '../rehearse/draws.ts';

type Records = Parameters<typeof derived>[0];
const show = { atLeast: (mm: number) => `${mm.toFixed(1)} mm`, atMost: (mm: number) => `${mm.toFixed(1)} mm` };
const point = (id: string, position: Vec3) => ({ id, name: id, position });
const BOX = { id: 'box', name: 'Box', kind: 'box', size: [120, 120], thickness: 3, height: 60 };
const PLATE = { id: 'plate', name: 'Plate', kind: 'plate', size: [120, 120], thickness: 3 };
const onFoot = (foot: string, normal: Vec3 = [0, 0, 1]) => ({ fit: 'foot', foot, normal });

/**
 * A hoop over y with its top at z = 1000, and a bar that lands on the middle of that; both 44.45 over the outside. The hoop stands on the
 * floor by `foot`.
 */
const cage = (points: object[], more: Records = {}, foot: object = onFoot('box')): Records => ({
  lengthUnit: 'mm',
  points,
  feet: [BOX, PLATE],
  nodes: {
    'foot-l': [0, 500, 0],
    'top-l': [0, 500, 1000],
    'top-r': [0, -500, 1000],
    'foot-r': [0, -500, 0],
    rear: [-800, 0, 1000],
    middle: { kind: 'on', member: 'hoop', until: { axis: 'y', value: 0 } },
  },
  members: [
    { id: 'hoop', name: 'Hoop', path: ['foot-l', 'top-l', 'top-r', 'foot-r'], ends: [foot, foot] },
    { id: 'bar', name: 'Bar', path: ['middle', 'rear'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
  ],
  ...more,
});
const TOP = 1000 + 44.45 / 2;
const found = (records: Records) => lowering(derived(records));
const airOf = (...points: Vec3[]) => found(cage(points.map((at, i) => point(`p${i}`, at)))).joints[0]!;

describe('a joint under the roof', () => {
  it('is where an end is coped, or ends meet; its top is the higher of its tubes', () => {
    const joints = jointsUnderRoof(derived(cage([])));
    expect(joints).toHaveLength(1);
    expect(joints[0]).toMatchObject({ node: 'middle', tube: 'bar', end: 'A', to: ['hoop'], at: [0, 0, 1000] });
    expect(joints[0]!.top).toBeCloseTo(TOP, 9);
    // A bar that rises at 60 degrees: the top of its round section is r cos 60 over its axis, the level hoop's r.
    const steep = cage([], {
      members: [
        ...(cage([]).members as object[]).slice(0, 1),
        { id: 'bar', path: ['middle', 'low'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
      ],
    });
    (steep.nodes as Record<string, unknown>)['low'] = [-100, 0, 1000 - 100 * Math.sqrt(3)];
    expect(jointsUnderRoof(derived(steep))[0]!.top).toBeCloseTo(TOP, 9);
  });
  it('counts once where several ends meet, and not where it lies lower than a roof falls', () => {
    const members = [
      { id: 'hoop', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      { id: 'one', path: ['m', 'c'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
      { id: 'two', path: ['m', 'd'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
      { id: 'low', path: ['e', 'f'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
    ];
    const at = (z: number): Records => ({
      members,
      nodes: {
        a: [0, -400, 1000],
        b: [0, 400, 1000],
        m: [0, 0, 1000],
        c: [-500, 0, 1000],
        d: [-500, 300, 1000],
        e: [-250, 0, z],
        f: [-250, 0, z - 300],
      },
    });
    expect(jointsUnderRoof(derived(at(1000))).map(({ node, tube }) => [node, tube])).toEqual([
      ['m', 'one'],
      ['e', 'low'],
    ]);
    // The bar below: an end that stands up to nothing is no joint.
    expect(jointsUnderRoof(derived(at(1000 - UNDER_ROOF)))).toHaveLength(1);
  });
});

describe('the air above a joint', () => {
  it('is the height of the point over the top of the tube', () => {
    expect(airOf([0, 0, 1050]).roof).toMatchObject({ trim: { kind: 'point', id: 'p0' }, aside: 0 });
    expect(airOf([0, 0, 1050]).roof!.air).toBeCloseTo(1050 - TOP, 9);
    expect(airOf([30, 40, 1050]).roof!.aside).toBeCloseTo(50, 9);
    expect(airOf([0, 0, 1050], [60, 0, 1040]).roof!.air).toBeCloseTo(1040 - TOP, 9);
  });
  it('is less than nothing where the tube stands in the roof, and not known where nothing lies over it', () => {
    expect(airOf([0, 0, 1010]).roof!.air).toBeCloseTo(1010 - TOP, 9);
    expect(airOf([0, 0, 990])).toMatchObject({ roof: null, short: null });
    expect(airOf([100.1, 0, 1050])).toMatchObject({ roof: null, short: null });
    expect(found(cage([point('p', [100.1, 0, 1050])], { roofReach: 101 })).joints[0]!.roof!.aside).toBeCloseTo(
      100.1,
      9,
    );
  });
  it('goes to no guess, nor to a line through one', () => {
    const guess = { ...point('a', [0, 0, 1040]), guessed: true };
    const lines = [{ id: 'roof', name: 'Roof', points: ['a', 'b'] }];
    const records = cage([guess, point('b', [0, 300, 1040])], { bodyLines: lines });
    expect(found(records).joints[0]!.roof).toBeNull();
    const { guessed: _, ...confirmed } = guess;
    expect(found({ ...records, points: [confirmed, point('b', [0, 300, 1040])] }).joints[0]!.roof).not.toBeNull();
  });
  it('of a line is where that passes the joint, seen from above', () => {
    const line = (from: Vec3, to: Vec3) =>
      found(cage([point('a', from), point('b', to)], { bodyLines: [{ id: 'roof', name: 'Roof', points: ['a', 'b'] }] }))
        .joints[0]!.roof;
    // Across, 40 ahead, falling from 1100 to 1060: 1080 in the middle.
    expect(line([40, 500, 1100], [40, -500, 1060])).toMatchObject({
      trim: { kind: 'bodyLine', id: 'roof' },
      at: [40, 0, 1080],
      aside: 40,
    });
    // A pillar that leans away: its upper end.
    expect(line([0, 50, 1050], [0, 200, 300])!.at).toEqual([0, 50, 1050]);
    expect(line([0, 50, 300], [0, 50, 1050])!.at).toEqual([0, 50, 1050]);
  });
  it('is as dense looking has it, for lines and joints as they come', () => {
    const random = seeded(7);
    for (let i = 0; i < drawn(40, 400); i++) {
      const at = (size: number): Vec3 => [0, 1, 2].map(() => (random() - 0.5) * size) as unknown as Vec3;
      const joint = { at: [0, 0, 0], top: 22, axis: 0 } as unknown as Joint;
      const [from, to] = [at(500), at(500)];
      const places: TrimPlace[] = [
        { trim: { kind: 'bodyLine', id: 'l' }, wanted: null, trimOver: 0, stretches: [stretchBetween(from, to)] },
      ];
      let [best, least] = [from, Infinity];
      for (let k = 0; k <= 20_000; k++) {
        const p = interpolate(from, to, k / 20_000);
        if (Math.hypot(p[0], p[1]) < least) [best, least] = [p, Math.hypot(p[0], p[1])];
      }
      const beside = besideJoint(joint, places, 100);
      expect(beside.length).toBe(least <= 100 ? 1 : 0);
      if (beside.length === 0) continue;
      expect(distance(beside[0]!.at, best)).toBeLessThan(0.05);
      expect(roofOver(joint, beside) !== null).toBe(best[2] >= 0);
      expect(beside[0]!.air).toBeCloseTo(best[2] - 22, 1);
    }
  });
});

describe('how far the cage is lowered', () => {
  it('is what the joint with the least air lacks', () => {
    const { lowered, room } = found(cage([point('p', [0, 0, 1050])]));
    expect(room).toBe(60);
    expect(lowered.by).toBeCloseTo(60 - (1050 - TOP), 9);
    expect(lowered.decides!.joint.node).toBe('middle');
    expect(found(cage([point('p', [0, 0, 1050])], { torchRoom: 20 })).lowered).toEqual({ by: 0, decides: null });
  });
  it('is more where lowered so far a rail beside the joint comes over it', () => {
    // The rail lies 10 under the axis: beside the joint. 32.2 lower it is 22.2 over the axis, level with the tube's top.
    const { lowered } = found(cage([point('roof', [0, 0, 1050]), point('rail', [0, 80, 990])]));
    expect(lowered.decides!.roof.trim.id).toBe('rail');
    expect(lowered.by).toBeCloseTo(60 + TOP - 990, 9);
    const frame = derived(cage([point('roof', [0, 0, 1050]), point('rail', [0, 80, 990])]));
    expect(lowerInWords(lowering(frame), frame, show)[1]).toBe(
      'The joint that decides is middle: rail lies beside it, and comes over it on the way down.',
    );
    const alone = found(cage([point('rail', [0, 80, 990])]));
    expect(alone.lowered.by).toBe(0);
  });
  it('is the least that does it, beside lowering it step by step', () => {
    const random = seeded(11);
    const step = 1;
    for (let i = 0; i < drawn(60, 600); i++) {
      const joints = Array.from({ length: 4 }, (_, k) => {
        const joint = { at: [k * 1000, 0, 0], top: 20 + k, axis: 0 } as unknown as Joint;
        const places = Array.from({ length: 3 }, (__, n): TrimPlace => {
          const p: Vec3 = [k * 1000, random() * 90, random() * 260 - 120];
          return {
            trim: { kind: 'point', id: `${k}.${n}` },
            wanted: null,
            trimOver: 0,
            stretches: [stretchBetween(p, p)],
          };
        });
        return { joint, places, beside: besideJoint(joint, places, 100) };
      });
      const isRoomAt = (by: number): boolean =>
        joints.every(({ joint, places }) => {
          const low = { ...joint, top: joint.top - by, axis: joint.axis - by };
          const roof = roofOver(low, besideJoint(low, places, 100));
          return roof === null || roof.air >= 60 - 1e-6;
        });
      const { by } = lowerBy(joints, 60);
      expect(isRoomAt(by)).toBe(true);
      for (let less = 0; less < by - 1e-3; less += step) expect(isRoomAt(less), `${i}: ${less} of ${by}`).toBe(false);
    }
  });
});

describe('the room that a torch wants', () => {
  it('is 60 mm until the job says otherwise, and a new job takes the shop’s', () => {
    expect(jobFrom({ ...EMPTY_SHOP, torchRoom: 80 }, 'mm').torchRoom).toBe(80);
    expect(jobFrom(EMPTY_SHOP, 'mm')).not.toHaveProperty('torchRoom');
  });
  it('is from 0 to 300', () => {
    const refused = (torchRoom: unknown) => {
      const parsed = parseJob(JSON.stringify({ ...jobFrom(EMPTY_SHOP, 'mm'), torchRoom }));
      return parsed.ok ? [] : parsed.faults.map(({ place, message }) => [place, message]);
    };
    expect(refused(0)).toEqual([]);
    expect(refused(-1)).toEqual([['torchRoom', 'below zero']]);
    expect(refused(301)).toEqual([['torchRoom', 'beyond 300 mm']]);
  });
});

describe('what gives it', () => {
  it('are the boxes, whole; a plate gives nothing, what leans more than its height, and a wall stops nothing', () => {
    const ends = (foot: object) =>
      found(cage([], {}, foot)).ends.map(({ isBox, gives }) => [isBox, Number(gives.toFixed(6))]);
    expect(ends(onFoot('box'))).toEqual([
      [true, 63],
      [true, 63],
    ]);
    expect(ends(onFoot('plate'))).toEqual([
      [false, 0],
      [false, 0],
    ]);
    expect(ends({ fit: 'plate', normal: [0, 0, 1] })).toEqual([
      [false, 0],
      [false, 0],
    ]);
    expect(ends(onFoot('box', [0, 0.6, 0.8]))).toEqual([
      [true, 78.75],
      [true, 78.75],
    ]);
    expect(ends(onFoot('box', [1, 0, 0]))).toEqual([]);
  });
  it('is said, with what to do where they give too little', () => {
    const said = (points: object[], foot?: object, more: Records = {}) => {
      const frame = derived(cage(points, more, foot));
      const low = lowering(frame);
      return [...lowerInWords(low, frame, show), boxesInWords(low, show), ...stoppedInWords(low, frame, show)];
    };
    const roof = [point('Roof', [0, 0, 1050])];
    expect(said(roof)).toEqual([
      'Lower the cage by 32.2 mm to weld every joint under the roof.',
      'The joint that decides is middle: Roof lies 27.8 mm over its top.',
      'The boxes of its feet give 63.0 mm: weld those joints before the boxes are in, then lift the cage onto them.',
    ]);
    expect(said(roof, onFoot('plate')).slice(2)).toEqual([
      'No foot is a box: the ends that stand on the floor need holes in it, 32.2 mm deep.',
      'Hoop, end A: 32.2 mm',
      'Hoop, end B: 32.2 mm',
    ]);
    expect(said(roof, onFoot('box'), { torchRoom: 100 })[2]).toBe(
      'The boxes of its feet give 63.0 mm: 9.2 mm too little. Take boxes that much higher, or make holes that deep under them.',
    );
    expect(said(roof, { ...onFoot('box'), allowance: 6 })[2]).toContain('once the ends on them are trimmed');
    expect(said([])).toEqual([
      'Nothing was measured over these joints: how far the cage is to be lowered cannot be said.',
      null,
      null,
    ]);
    expect(said([point('Roof', [0, 0, 1100])])).toEqual([
      'Nothing has to be lowered: 60.0 mm is free above every joint under the roof.',
      null,
      null,
    ]);
  });
  it('names a joint where a bar is cut by what is cut there', () => {
    const frame = derived({
      nodes: { a: [0, -400, 1000], b: [0, 400, 1000], c: [-400, 0, 1000], d: [400, 0, 1000] },
      members: [
        { id: 'one', name: 'Brace', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        {
          id: 'two',
          name: 'Cut brace',
          path: ['c', 'd'],
          ends: [{ fit: 'square' }, { fit: 'square' }],
          cutBy: ['one'],
        },
      ],
    });
    expect(jointsUnderRoof(frame).map((joint) => jointName(frame, joint))).toEqual(['Cut brace at Brace']);
  });
});

describe('what is in the way', () => {
  const roof = point('Roof', [0, 0, 1040]); // 42.225 lower
  const bar = (points: object[], more: Records = {}) => {
    const frame = derived(cage([roof, ...points], more));
    return metOnTheWay(frame).map((each) => inTheWayInWords(each, frame, show));
  };
  it('is a point that the tube comes down onto, to its deepest, also where it has passed it', () => {
    // 30 under the bar's axis: 7.775 clear, and then 12.225 above it.
    expect(bar([point('Seat', [-400, 0, 970])])).toEqual(['Bar runs 22.2 mm into Seat']);
    expect(bar([point('Seat', [-400, 0, 930])])).toEqual([]);
    expect(bar([point('Seat', [-400, 0, 950])])).toEqual(['Bar runs 14.5 mm into Seat']);
  });
  it('is no point where a tube stands on the car, nor one that lies in a tube as it is', () => {
    expect(bar([point('Floor', [0, 500, 0])])).toEqual([]);
    expect(bar([point('In it', [-400, 0, 990])])).toEqual([]);
  });
  it('is a line and a box too', () => {
    const points = [point('l', [-400, 300, 950]), point('r', [-400, -300, 950])];
    const lines = [{ id: 'shelf', name: 'Shelf', points: ['l', 'r'] }];
    expect(bar(points, { bodyLines: lines })).toEqual(['Bar runs 14.5 mm into the body line Shelf']);
    const seat = {
      id: 'seat',
      name: 'Seat',
      kind: 'box',
      centre: [-400, 0, 800],
      size: [200, 200, 300],
      rotation: [0, 0, 0],
      gap: 0,
    };
    // 14.45, to what is known of a depth.
    expect(bar([], { envelopes: [seat] })).toEqual([expect.stringMatching(/^Bar runs 14\.[45] mm into Seat$/u)]);
  });
});
