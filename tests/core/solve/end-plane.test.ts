/**
 * Ends that a plane cuts: feet and mitres. What is expected is solid geometry by hand: a plane at a known height over the car, and a mitre as
 * the mirror between two like tubes (common practice: each is cut at half the angle between them).
 */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { addScaled, cross, distance, dot, normalize, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';

const head = {
  format: 'cagewright/job',
  version: 1,
  name: 'Planes',
  sections: [
    { id: 's', outerDiameter: 44.45, wall: 3.048 },
    { id: 'thin', outerDiameter: 38.1, wall: 2.4 },
  ],
};
const node = (id: string, position: Vec3): object => ({ id, at: { kind: 'fixed', position } });

function derived(records: object): Derived {
  const parsed = parseJob(JSON.stringify({ ...head, ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const result = derive(parsed.job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

/** The places of the cut on the outer surface, degree by degree. */
function rimOf({ ends, section }: SolvedTube, which: 0 | 1): readonly Vec3[] {
  const { position, direction, reference, outer } = ends[which];
  const beside = cross(direction, reference);
  return Array.from(outer, (s, degree) => {
    const phi = (degree * Math.PI) / 180;
    const r = section.outerDiameter / 2;
    const on = addScaled(addScaled(position, reference, r * Math.cos(phi)), beside, r * Math.sin(phi));
    return addScaled(on, direction, s);
  });
}

const idsOf = ({ findings }: Derived): readonly string[] =>
  findings.filter(({ severity }) => severity === 'error').map(({ id, tube, end }) => `${id} ${tube} ${end}`);

describe('a foot', () => {
  const nodes = [node('top', [120, 500, 900]), node('floor', [0, 610, 80])];
  const feet = [
    { id: 'flat', kind: 'plate', size: [120, 120], thickness: 3 },
    { id: 'box', kind: 'box', size: [150, 100], thickness: 4, height: 50 },
  ];
  const leg = (end: object, mirror = false): object => ({
    id: 'leg',
    path: ['top', 'floor'],
    section: 's',
    mirror,
    ends: [{ fit: 'square' }, { fit: 'foot', normal: [0, 0, 1], ...end }],
  });

  it.each([
    ['flat', 3],
    ['box', 54],
  ] as const)('of kind %s has the tube cut %d mm above the place on the car', (foot, height) => {
    const { tubes } = derived({ nodes, feet, members: [leg({ foot }, true)] });
    for (const tube of tubes) {
      expect(tube.ends[1].fit).toBe('foot');
      for (const place of rimOf(tube, 1)) expect(place[2]).toBeCloseTo(80 + height, 9);
    }
  });

  it('leans with its normal, on a twin as its mirror image does', () => {
    const normal: Vec3 = [0.1, -0.2, 1];
    const { tubes } = derived({ nodes, feet, members: [leg({ foot: 'box', normal }, true)] });
    const lean = normalize(normal);
    for (const place of rimOf(tubes[0]!, 1)) expect(dot(subtract(place, [0, 610, 80]), lean)).toBeCloseTo(54, 9);
    for (const place of rimOf(tubes[1]!, 1)) {
      expect(dot(subtract(place, [0, -610, 80]), [lean[0], -lean[1], lean[2]])).toBeCloseTo(54, 9);
    }
  });

  it('shortens the blank, and its mass, by what it is high', () => {
    const of = (end: object) => fabrication(derived({ nodes, feet, members: [leg(end)] })).tubes[0]!;
    const [onCar, onBox] = [of({ fit: 'plate', normal: [0, 0, 1] }), of({ foot: 'box' })];
    // The leg's slope from its own two ends: 820 down over its length.
    const along = 54 / (820 / Math.hypot(120, 110, 820));
    expect(onCar.blankLength - onBox.blankLength).toBeCloseTo(along, 9);
    const perMm = Math.PI * 3.048 * (44.45 - 3.048) * 7850e-9;
    expect(onCar.mass - onBox.mass).toBeCloseTo(along * perMm, 9);
    expect(onBox.ends[1]).toMatchObject({ fit: 'foot', foot: 'box' });
  });

  it('is found upside down, or along the tube; one that is not there is refused', () => {
    expect(idsOf(derived({ nodes, feet, members: [leg({ foot: 'flat', normal: [0, 0, -1] })] }))).toEqual([
      'foot/upside-down leg B',
    ]);
    const along = cross(normalize([120, -110, 820]), [1, 0, 0]);
    expect(idsOf(derived({ nodes, feet, members: [leg({ foot: 'flat', normal: along })] }))).toEqual([
      'end/plate-along-tube leg B',
    ]);
    const parsed = parseJob(JSON.stringify({ ...head, nodes, feet, members: [leg({ foot: 'gone' })] }));
    expect(parsed.ok ? [] : parsed.faults.map(({ place, message }) => `${place}: ${message}`)).toEqual([
      'members[0].ends[1].foot: no foot "gone"',
    ]);
  });

  it('that grows makes its tubes anew, and leaves others what they are', () => {
    const members = [leg({ foot: 'box' }), { id: 'other', path: ['top', 'far'], section: 's' }];
    const job = { nodes: [...nodes, node('far', [900, 0, 0])], feet, members };
    const before = derived(job);
    const grown = {
      ...before.job,
      feet: before.job.feet.map((foot) => (foot.id === 'box' ? { ...foot, thickness: 6 } : foot)),
    };
    const after = derive(grown, before);
    if (!after.ok) throw new Error(JSON.stringify(after.faults));
    expect(after.value).toEqual(derived(JSON.parse(JSON.stringify({ ...job, feet: grown.feet })) as object));
    expect(after.value.byId.get('leg')).not.toBe(before.byId.get('leg'));
    expect(after.value.byId.get('other')!.ends[1]).toBe(before.byId.get('other')!.ends[1]);
  });
});

describe('a mitre', () => {
  const nodes = [
    node('a', [-700, 400, 1000]),
    node('m', [100, 520, 1130]),
    node('b', [600, 300, 500]),
    node('x', [0, 0, 0]),
  ];
  const bars = (withA: object, withB: object, section = 's'): object => ({
    nodes,
    members: [
      { id: 'roof', path: ['a', 'm'], section: 's', ends: [{ fit: 'square' }, withA] },
      { id: 'pillar', path: ['m', 'b'], section, ends: [withB, { fit: 'square' }] },
    ],
  });
  const both = [
    { fit: 'mitre', with: 'pillar' },
    { fit: 'mitre', with: 'roof' },
  ] as const;

  it('cuts both tubes on one plane, and each face is the other one mirrored in it', () => {
    const { byId } = derived(bars(...both));
    const [roof, pillar] = [byId.get('roof')!, byId.get('pillar')!];
    const m: Vec3 = [100, 520, 1130];
    // Each axis is as far from the plane as the other: square to the difference of the two unit directions.
    const [u, w] = [normalize(subtract([-700, 400, 1000], m)), normalize(subtract([600, 300, 500], m))];
    const normal = normalize(subtract(u, w));
    for (const place of [...rimOf(roof, 1), ...rimOf(pillar, 0)])
      expect(dot(subtract(place, m), normal)).toBeCloseTo(0, 9);
    expect([roof.ends[1].fit, pillar.ends[0].fit]).toEqual(['mitre', 'mitre']);
    // Two like tubes meet in one curve: every place of the one lies on the other's surface.
    for (const place of rimOf(roof, 1)) {
      const off = subtract(place, m);
      expect(distance(off, [0, 1, 2].map((k) => dot(off, w) * w[k]!) as unknown as Vec3)).toBeCloseTo(22.225, 9);
    }
    expect(idsOf(derived(bars(...both)))).toEqual([]);
  });

  it('is found where it cannot be, or where one tube alone makes it', () => {
    expect(idsOf(derived(bars(both[0], { fit: 'auto' })))).toEqual(['mitre/one-sided roof B']);
    // Cut square, the two run into each other, too.
    expect(idsOf(derived(bars(both[0], both[1], 'thin')))).toEqual([
      'mitre/cannot roof B',
      'mitre/cannot pillar A',
      'gap/runs-through pillar undefined',
    ]);
    const apart = {
      ...bars(...both),
      members: [(bars(...both) as { members: object[] }).members[0], { id: 'pillar', path: ['x', 'b'], section: 's' }],
    };
    expect(idsOf(derived(apart))).toEqual(['mitre/cannot roof B']);
  });

  it('with its own twin closes on the centre plane', () => {
    const header = derived({
      nodes: [node('c', [100, 0, 1100]), node('d', [60, 500, 1080])],
      members: [
        {
          id: 'header',
          path: ['c', 'd'],
          section: 's',
          mirror: true,
          ends: [{ fit: 'mitre', with: "header'" }, { fit: 'square' }],
        },
      ],
    });
    for (const tube of header.tubes) for (const place of rimOf(tube, 0)) expect(place[1]).toBeCloseTo(0, 9);
    expect(idsOf(header)).toEqual([]);
  });
});
