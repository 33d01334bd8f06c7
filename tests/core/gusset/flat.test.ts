/** The flat gusset's sheet, by hand and against the tubes' surfaces as another formula has them. */
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { inCar } from '../../../src/core/gusset/corner.ts';
import { areaWithin, endOf, extentOf, placesRound, startOf } from '../../../src/core/gusset/edges.ts';
import {
  cross,
  distance,
  dot,
  length,
  mirrored,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '../../../src/core/geometry/vector.ts';
import { gussetsOf } from '../../../src/core/gusset/gussets.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { drawn } from '../../draws.ts';
import { derived } from '../frame.ts';
import { bendJob, jointJob, madeOf, R, setOf, whyNot } from './gusset-jobs.ts';

const near = (at: readonly number[], to: readonly number[], digits = 9): void =>
  at.forEach((value, i) => expect(value).toBeCloseTo(to[i]!, digits));

/** From a point to the endless line through `from` along `way`, by the area of the parallelogram. */
const toLine = (at: Vec3, from: Vec3, way: Vec3): number => length(cross(subtract(at, from), way)) / length(way);

describe('by hand', () => {
  // Two tubes of 44.45 at a right angle, axes along x and z. Their insides run at x = 22.225 and z = 22.225 and meet there; 100 along each.
  it('a right angle is a right triangle off both axes by the radius', () => {
    const { sheet, corner } = madeOf(jointJob());
    const places = sheet.edges.map((edge) => inCar(corner, startOf(edge), 0));
    near(places.flat(), [22.225, 0, 22.225, 122.225, 0, 22.225, 22.225, 0, 122.225]);
    expect(sheet.area).toBeCloseTo(5000, 9);
    // 5000 mm2 x 3.2 mm x 7.85 g/cm3 = 125.6 g.
    expect(sheet.mass).toBeCloseTo(0.1256, 9);
  });

  it('a relief snips the corner: half its square is off', () => {
    const { sheet } = madeOf(jointJob({ gusset: { relief: 8 } }));
    expect(sheet.edges).toHaveLength(4);
    expect(sheet.area).toBeCloseTo(5000 - 32, 9);
  });

  // 60 degrees, equal tubes: the lines meet on the bisector, 22.225 / sin 30 = 44.45 from the axes' meeting, so 44.45 cos 30 along x.
  it('at 60 degrees the corner stands on the bisector', () => {
    const { sheet } = madeOf(jointJob({ to: [300, 0, 300 * Math.sqrt(3)] }));
    near(startOf(sheet.edges[0]!), [44.45 * Math.cos(Math.PI / 6), 22.225]);
    expect(sheet.area).toBeCloseTo((100 * 100 * Math.sin(Math.PI / 3)) / 2, 9);
  });

  // A branch of 30 on a run of 44.45, square: x = 15 from the branch's axis, y = 22.225 from the run's.
  it('unlike tubes: each line off its own axis', () => {
    near(startOf(madeOf(jointJob({ diameter: 30 })).sheet.edges[0]!), [15, 22.225]);
  });

  // CLR 152.4, 90 degrees: tangents 152.4 from the corner, inside radius 152.4 - 22.225 = 130.175 about [152.4, 152.4].
  // The triangle on the sharp inside corner has 200 x 200 / 2; between it and the arc lies a square less a quarter of a circle.
  it('across a right-angled bend one edge is a quarter of the inside', () => {
    const { sheet, corner } = madeOf(bendJob());
    expect(sheet.edges.map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'arc']);
    expect(sheet.area).toBeCloseTo(20000 - (1 - Math.PI / 4) * 130.175 ** 2, 8);
    near(inCar(corner, startOf(sheet.edges[0]!), 0), [152.4, 0, 22.225]);
    near(inCar(corner, endOf(sheet.edges[0]!), 0), [222.225, 0, 22.225]);
    near(inCar(corner, startOf(sheet.edges[3]!), 0), [22.225, 0, 152.4]);
  });

  // Axes 0.8 apart: the sheet half-way, 0.4 off each, cuts either tube at sqrt(22.225^2 - 0.4^2) from its axis.
  it('axes that pass by within the tolerance', () => {
    const { corner, sheet } = madeOf(jointJob({ from: [0, 0.8, 0], to: [0, 0.8, 600] }));
    const off = Math.sqrt(R ** 2 - 0.16);
    near(inCar(corner, startOf(sheet.edges[0]!), 0), [off, 0.4, off]);
  });
});

it('random corners: both edges lie on the tubes and nowhere in them, the legs are as long as typed, the outline is closed', () => {
  const draw = drawFrom(41);
  for (let i = 0; i < drawn(40, 1500); i++) {
    const angle = draw.between(0.4, 2.7);
    const turn = draw.between(0, 6.28);
    const to: Vec3 = [
      600 * Math.cos(angle),
      600 * Math.sin(angle) * Math.cos(turn),
      600 * Math.sin(angle) * Math.sin(turn),
    ];
    const diameter = draw.between(25, 50);
    const legs = [draw.between(40, 160), draw.between(40, 160)] as const;
    const skew = draw.chance(0.5)
      ? scale(normalize(cross([1, 0, 0], to)), draw.between(-0.9, 0.9))
      : ([0, 0, 0] as const);
    const shifted = to.map((part, axis) => part + skew[axis]!) as unknown as Vec3;
    const { corner, sheet } = madeOf(jointJob({ to: shifted, from: skew, diameter, legs }));
    const places = sheet.edges.map((edge) => inCar(corner, startOf(edge), 0));
    const [at, one, two] = places as [Vec3, Vec3, Vec3];
    for (const place of [at, one]) expect(Math.abs(toLine(place, [0, 0, 0], [1, 0, 0]) - R)).toBeLessThan(1e-9);
    for (const place of [at, two]) expect(Math.abs(toLine(place, skew, to) - diameter / 2)).toBeLessThan(1e-9);
    expect(distance(at, one)).toBeCloseTo(legs[0], 9);
    expect(distance(at, two)).toBeCloseTo(legs[1], 9);
    near(normalize(subtract(one, at)), [1, 0, 0]);
    near(normalize(subtract(two, at)), normalize(to));
    // Within the triangle no place is nearer to an axis than its surface.
    const inside = at.map(
      (_, axis) => (places[0]![axis]! + places[1]![axis]! + places[2]![axis]!) / 3,
    ) as unknown as Vec3;
    expect(toLine(inside, [0, 0, 0], [1, 0, 0])).toBeGreaterThan(R);
    expect(toLine(inside, skew, to)).toBeGreaterThan(diameter / 2);
    sheet.edges.forEach((edge, k) => near(endOf(edge), startOf(sheet.edges[(k + 1) % sheet.edges.length]!)));
  }
});

it('random bends: the edge lies on the tube all along, and the area is that of its places', () => {
  const draw = drawFrom(42);
  for (let i = 0; i < drawn(30, 800); i++) {
    // Between the legs; the tube turns by the rest of 180 degrees.
    const angle = draw.between(0.9, 2.7);
    const turn = draw.between(0, 6.28);
    const way: Vec3 = [Math.cos(angle), Math.sin(angle) * Math.cos(turn), Math.sin(angle) * Math.sin(turn)];
    const tangent = 152.4 / Math.tan(angle / 2);
    const least = tangent - R / Math.tan(angle / 2);
    const legs = [least + draw.between(0, 60), least + draw.between(0, 60)] as const;
    const { corner, sheet } = madeOf(bendJob({ to: scale(way, 900), legs }));
    const places = placesRound(sheet.edges).map((place) => inCar(corner, place, 0));
    const normal = normalize(cross([1, 0, 0], way));
    const centre = scale(normalize([1 + way[0], way[1], way[2]]), 152.4 / Math.sin(angle / 2));
    for (const place of places) {
      expect(Math.abs(dot(place, normal))).toBeLessThan(1e-9);
      // Nearest on the tube's axis: on the arc where the place lies between the tangents, else on a straight.
      const beside = [[1, 0, 0] as const, way].filter((leg) => dot(place, leg) >= tangent - 1e-9);
      const off =
        beside.length === 0
          ? 152.4 - distance(place, centre)
          : Math.min(...beside.map((leg) => toLine(place, [0, 0, 0], leg)));
      expect(Math.abs(off - R)).toBeLessThan(1e-9);
    }
    const chords = placesRound(sheet.edges);
    const polygon = chords.reduce((sum, [x, y], k) => {
      const [u, v] = chords[(k + 1) % chords.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0);
    // The arc bulges out of its chords of 2 degrees or less by so much: r^2 (a - sin a) / 2 each.
    const bulge = ((152.4 - R) ** 2 * (Math.PI - angle) * (Math.PI / 90) ** 2) / 12;
    expect(sheet.area - polygon).toBeGreaterThan(-1e-6);
    expect(sheet.area - polygon).toBeLessThan(bulge * 1.01);
  }
});

it('legs changed about give the mirror image in the bisector', () => {
  const [a, b] = [[90, 130] as const, [130, 90] as const].map(
    (legs) => madeOf(bendJob({ legs: [legs[0] + 60, legs[1] + 60] })).sheet,
  );
  expect(a!.area).toBeCloseTo(b!.area, 9);
  const joint = [[90, 130] as const, [130, 90] as const].map((legs) =>
    extentOf(madeOf(jointJob({ legs })).sheet.edges),
  );
  near(joint[0]![0], joint[1]![1]);
  near(joint[0]![1], joint[1]![0]);
});

describe('what cannot be made says why, with its number', () => {
  it.each([
    ['axes 5 apart', jointJob({ from: [0, 5, 0], to: [0, 5, 600] }), { why: 'skew', off: 5 }],
    ['a node off the run', jointJob({ from: [0, 0, 50], to: [0, 0, 600] }), { why: 'off-node', bar: 'run', off: 50 }],
    ['too flat', jointJob({ to: [-600, 0, 60] }), { why: 'angle' }],
    ['too sharp', jointJob({ to: [600, 0, 60] }), { why: 'angle' }],
    // The run ends 130 from the node: 130 - 22.225 is left of its line.
    [
      'a leg past the run',
      jointJob({ runHalf: 130, legs: [110, 90] }),
      { why: 'leg-long', bar: 'run', leg: 110, longest: 107.775 },
    ],
    [
      'a leg past the branch',
      jointJob({ to: [0, 0, 100] }),
      { why: 'leg-long', bar: 'branch', leg: 100, longest: 77.775 },
    ],
    ['a leg that ends in the bend', bendJob({ legs: [120, 200] }), { why: 'leg-in-bend', leg: 120, least: 130.175 }],
    ['no bend there', bendJob({ gusset: { node: 'a' } }), { why: 'no-bend', bar: 'tube' }],
  ] as const)('%s', (_, frame, why) => {
    const no = whyNot(frame);
    for (const [key, value] of Object.entries(why)) {
      if (typeof value === 'number') expect(no[key as keyof typeof no]).toBeCloseTo(value, 9);
      else expect(no[key as keyof typeof no]).toBe(value);
    }
  });

  // The branch begins 5 over the run's axis and leans: the two cross 5 / tan 45 behind its beginning, at x = -5.
  it('axes that cross beside the node are measured from where they cross', () => {
    const { corner } = madeOf(jointJob({ from: [0, 0, 5], to: [500, 0, 505] }));
    near(corner.place, [-5, 0, 0]);
    near([corner.sides[0].room, corner.sides[1].room], [505, 505 * Math.SQRT2]);
  });

  it('a leg just as long as it can be is made, and one just longer is not', () => {
    madeOf(jointJob({ runHalf: 130, legs: [107.775, 90] }));
    expect(whyNot(jointJob({ runHalf: 130, legs: [107.776, 90] })).why).toBe('leg-long');
  });

  it('a node on a bend of the run', () => {
    const why = bendJob({
      gusset: {
        node: 'on',
        between: [
          { member: 'tube', towards: 'A', leg: 80 },
          { member: 'strut', towards: 'B', leg: 80 },
        ],
      },
      nodes: { on: { kind: 'on', member: 'tube', bend: 1, where: 'middle', distance: 0 }, far: [600, 0, 600] },
      members: [{ id: 'strut', path: ['on', 'far'], ends: [{ fit: 'cope', against: ['tube'] }, { fit: 'square' }] }],
    });
    expect(whyNot(why)).toMatchObject({ why: 'in-bend', bar: 'tube', bend: 1 });
  });
});

describe('the mirror image', () => {
  /** A hoop across the car with a mirrored stay on it, and the gusset between the two. */
  const hoop = (towards: 'A' | 'B') =>
    jointJob({
      nodes: {
        foot: [0, 600, 0],
        top: [0, 500, 1100],
        on: { kind: 'on', member: 'hoop', from: 'start', distance: 600 },
        back: [-900, 450, 100],
      },
      members: [
        { id: 'hoop', path: ['foot', 'top', "top'", "foot'"], ends: [{ fit: 'square' }, { fit: 'square' }] },
        {
          id: 'stay',
          path: ['on', 'back'],
          mirror: true,
          ends: [{ fit: 'cope', against: ['hoop'] }, { fit: 'square' }],
        },
      ],
      gusset: {
        node: 'on',
        between: [
          { member: 'hoop', towards, leg: 100 },
          { member: 'stay', towards: 'B', leg: 120 },
        ],
      },
    });

  it.each(['A', 'B'] as const)('of a gusset on a mirrored stay, along the hoop towards %s', (towards) => {
    const frame = hoop(towards);
    const [own, image] = [madeOf(frame), madeOf(frame, "g'")];
    expect(setOf(frame, "g'").ways.map(({ bar, towards: to }) => [bar.id, to])).toEqual([
      ['hoop', towards === 'A' ? 'B' : 'A'],
      ["stay'", 'B'],
    ]);
    const places = ({ corner, sheet }: typeof own): Vec3[] =>
      sheet.edges.map((edge) => inCar(corner, startOf(edge), 0));
    const there = places(image);
    places(own).forEach((place, i) => near(there[i]!, mirrored(place), 7));
    expect(areaWithin(image.sheet.edges)).toBeCloseTo(own.sheet.area, 6);
  });

  it('none where the bars do not run there, and none of one that is for one side', () => {
    expect(() => setOf(bendJob(), "g'")).toThrow();
    const across = derived({
      nodes: { foot: [0, 600, 0], top: [0, 500, 1100] },
      members: [{ id: 'hoop', path: ['foot', 'top', "top'", "foot'"], ends: [{ fit: 'square' }, { fit: 'square' }] }],
      gussets: [true, false].map((mirror) => ({
        id: mirror ? 'both' : 'one',
        kind: 'flat',
        node: 'top',
        between: [
          { member: 'hoop', towards: 'A', leg: 200 },
          { member: 'hoop', towards: 'B', leg: 200 },
        ],
        thickness: 3,
        mirror,
      })),
    });
    expect(gussetsOf(across).map(({ id, node }) => [id, node])).toEqual([
      ['both', 'top'],
      ["both'", "top'"],
      ['one', 'top'],
    ]);
  });
});

it('an edit elsewhere hands on what was made, one of its bars makes it anew', () => {
  const frame = jointJob({
    nodes: { far: [0, 900, 0], further: [0, 900, 400] },
    members: [{ id: 'lone', path: ['far', 'further'] }],
  });
  const moved = (id: string, position: Vec3) => {
    const nodes = frame.job.nodes.map((node) =>
      node.id === id ? { ...node, at: { kind: 'fixed' as const, position } } : node,
    );
    const result = derive({ ...frame.job, nodes }, frame);
    if (!result.ok) throw new Error('not derived');
    return madeOf(result.value);
  };
  const before = madeOf(frame);
  expect(moved('further', [0, 900, 500])).toBe(before);
  const leaning = moved('end', [300, 0, 300]);
  expect(leaning).not.toBe(before);
  expect(leaning.corner.angle).toBeCloseTo(Math.PI / 4, 9);
});
