/** Gussets in the job file: what is refused, at its place; and what becomes of them when the bars they name are edited. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { mirrored, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { inCar } from '../../../src/core/gusset/corner.ts';
import { startOf } from '../../../src/core/gusset/edges.ts';
import { gussetsOf, isMade } from '../../../src/core/gusset/gussets.ts';
import { asOneBar } from '../../../src/core/edit/pieces.ts';
import type { Edited } from '../../../src/core/edit/records.ts';
import type { Gusset } from '../../../src/core/job/kinds/gusset.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { eachSideItsOwn } from '../../../src/core/shape/each-side.ts';
import { joinMembers } from '../../../src/core/shape/join.ts';
import { oneForBothSides } from '../../../src/core/shape/one-for-both.ts';
import { reverseMember } from '../../../src/core/shape/reverse.ts';
import { splitMember } from '../../../src/core/shape/split.ts';
import { sampleFile, withValue } from '../job/sample.ts';
import { derived } from '../frame.ts';

const faultsOf = (file: object): readonly string[] => {
  const parsed = parseJob(JSON.stringify(file));
  return parsed.ok ? [] : parsed.faults.map(({ place, message }) => `${place}: ${message}`);
};

describe('refused', () => {
  it.each([
    [
      ['gussets', 0, 'width'],
      13.9,
      'gussets[0].width: 13.9 is less than the fold takes: twice radius and thickness, 14',
    ],
    [
      ['gussets', 0, 'radius'],
      0.2,
      'gussets[0].radius: is less than a tenth of the thickness: no press bends it so sharply',
    ],
    [['gussets', 0, 'kFactor'], 0.6, 'gussets[0].kFactor: beyond 0.5'],
    [['gussets', 0, 'relief'], 90, 'gussets[0].between[1].leg: 90 leaves nothing beside the relief'],
    [['gussets', 1, 'relief'], 2, 'gussets[1].relief: a bend has no weld to keep clear of'],
    [['gussets', 1, 'between', 1, 'towards'], 'A', 'gussets[1].between[1].towards: is where the first leg runs too'],
    [['gussets', 1, 'between', 1, 'member'], 'post', 'gussets[1].between[1].member: no member "post"'],
    [['gussets', 0, 'node'], 'post', 'gussets[0].node: no node "post"'],
    [['gussets', 1, 'thickness'], 0, 'gussets[1].thickness: below 0.01 mm'],
  ] as const)('%s = %s', (keys, value, fault) => {
    expect(faultsOf(withValue(sampleFile(), keys, value))).toEqual([fault]);
  });

  it('a width as wide as the fold is not', () => {
    expect(faultsOf(withValue(sampleFile(), ['gussets', 0, 'width'], 14))).toEqual([]);
    // Twice 16.35 and 3.6 come to 39.9 on paper, and to a hair more in doubles.
    const thick = withValue(withValue(sampleFile(), ['gussets', 0, 'thickness'], 3.6), ['gussets', 0, 'radius'], 16.35);
    expect(faultsOf(withValue(thick, ['gussets', 0, 'width'], 39.9))).toEqual([]);
  });
});

it('a file without gussets has none, and they come back from the text', () => {
  const parsed = parseJob(JSON.stringify(withValue(sampleFile(), ['gussets'], undefined)));
  expect(parsed.ok && parsed.job.gussets).toEqual([]);
  const whole = parseJob(JSON.stringify(sampleFile()));
  if (!whole.ok) throw new Error('refused');
  expect(parseJob(serialiseJob(whole.job))).toEqual(whole);
});

/** A hoop across the car and mirrored stays on it; a gusset in a bend of the hoop and two between hoop and stay. */
const cage = (): Derived =>
  derived({
    nodes: {
      foot: [0, 600, 0],
      top: [0, 500, 1100],
      on: { kind: 'on', member: 'hoop', from: 'start', distance: 600 },
      back: [-900, 450, 100],
    },
    members: [
      { id: 'hoop', path: ['foot', 'top', "top'", "foot'"], ends: [{ fit: 'square' }, { fit: 'square' }] },
      { id: 'stay', path: ['on', 'back'], mirror: true, ends: [{ fit: 'auto' }, { fit: 'square' }] },
    ],
    gussets: [
      { id: 'g1', kind: 'flat', node: 'top', thickness: 3, between: legs('hoop', 'A', 200, 'hoop', 'B', 210) },
      { id: 'g2', kind: 'flat', node: 'on', thickness: 3, between: legs('hoop', 'B', 100, 'stay', 'B', 120) },
      {
        id: 'g3',
        kind: 'bent',
        width: 30,
        radius: 4,
        node: 'on',
        thickness: 3,
        between: legs('stay', 'B', 90, 'hoop', 'A', 95),
      },
    ],
  });

const legs = (a: string, towardsA: string, legA: number, b: string, towardsB: string, legB: number) => [
  { member: a, towards: towardsA, leg: legA },
  { member: b, towards: towardsB, leg: legB },
];

/** Where all corners of all sheets stand in the car, to a thousandth of a millimetre. */
const standing = (frame: Derived): readonly string[] =>
  gussetsOf(frame)
    .flatMap(({ id, made }) => {
      if (!isMade(made)) throw new Error(`${id}: ${JSON.stringify(made)}`);
      const { corner, sheet } = made;
      if (sheet.shape.kind === 'bent') return [inCar(corner, sheet.shape.fold.midway, 0)];
      return sheet.edges.map((edge) => inCar(corner, startOf(edge), 0));
    })
    .map((place: Vec3) => place.map((part) => (Math.round(part * 1000) / 1000 + 0).toFixed(3)).join(' '))
    .toSorted();

function after(edited: Edited): Derived {
  if (Array.isArray(edited)) throw new Error(JSON.stringify(edited));
  const parsed = parseJob(serialiseJob(edited as Derived['job']));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const result = derive(parsed.job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

describe('edits leave them where they stand', () => {
  const frame = cage();
  const { job } = frame;
  const before = standing(frame);

  it('there are three with their mirror images', () => {
    expect(gussetsOf(frame).map(({ id }) => id)).toEqual(['g1', "g1'", 'g2', "g2'", 'g3', "g3'"]);
    expect(before).toHaveLength(2 * (4 + 3 + 1));
  });

  it.each(['hoop', 'stay'])('%s reversed', (id) => {
    expect(standing(after(reverseMember(job, frame, id)))).toEqual(before);
  });

  it.each([
    ['hoop', 300],
    ['hoop', 1500],
    ['stay', 500],
  ] as const)('%s split at %s, and joined again', (id, along) => {
    const split = after(splitMember(job, frame, id, along));
    expect(standing(split)).toEqual(before);
    const joined = joinMembers(split.job, split, id, {
      own: 1,
      other: { member: split.job.members.at(id === 'hoop' ? 1 : 2)!.id, which: 0 },
    });
    expect(standing(after(joined))).toEqual(before);
  });

  it('hoop split where the image of the stay stands', () => {
    const { length } = frame.bars.get('hoop')!.path;
    expect(standing(after(splitMember(job, frame, 'hoop', length - 600)))).toEqual(before);
  });

  it('the stays for both again, where one on the right stands otherwise than on the left', () => {
    const apart = eachSideItsOwn(job, frame, 'stay');
    if (apart === null || !('job' in apart)) throw new Error(JSON.stringify(apart));
    const [g1, g2, g3, right2, right3] = apart.job.gussets;
    const [onHoop, onStay] = right2!.between;
    const turned: Gusset = { ...right2!, between: [{ ...onHoop, towards: 'B' }, onStay] };
    expect(onHoop.towards).toBe('A');
    const two = after({ ...apart.job, gussets: [g1!, g2!, g3!, turned, { ...right3!, thickness: 4 }] });
    const one = oneForBothSides(two.job, two, 'stay');
    if (one === null || !('job' in one)) throw new Error(JSON.stringify(one));
    expect(standing(after(one.job))).toEqual(standing(two));
    expect(one.job.gussets.map(({ thickness }) => thickness)).toEqual([3, 3, 3, 3, 4]);
  });

  it('the stays told for each side, and for both again', () => {
    const apart = eachSideItsOwn(job, frame, 'stay');
    if (apart === null || !('job' in apart)) throw new Error(JSON.stringify(apart));
    const two = after(apart.job);
    expect(two.job.gussets).toHaveLength(5);
    expect(standing(two)).toEqual(before);
    const one = oneForBothSides(two.job, two, 'stay');
    if (one === null || !('job' in one)) throw new Error(JSON.stringify(one));
    expect(one.job.gussets.map(({ id }) => id)).toEqual(['g1', 'g2', 'g3']);
    expect(standing(after(one.job))).toEqual(before);
  });
});

it('two bars drawn as one take their gussets along, and the node that these stand at', () => {
  const square = { fit: 'square' };
  const cope = { fit: 'cope', against: ['run'] };
  for (const which of [0, 1] as const) {
    const frame = derived({
      nodes: { a: [-600, 0, 0], b: [600, 0, 0], m: [0, 0, 0], n: [0, 0, 0], up: [0, 0, 600], down: [0, 0, -600] },
      members: [
        { id: 'run', path: ['a', 'b'], ends: [square, square] },
        { id: 'upper', path: ['up', 'm'], ends: [square, cope] },
        which === 0
          ? { id: 'under', path: ['n', 'down'], ends: [cope, square] }
          : { id: 'under', path: ['down', 'n'], ends: [square, cope] },
      ],
      gussets: [
        { id: 'g1', kind: 'flat', node: 'm', thickness: 3, between: legs('run', 'B', 90, 'upper', 'A', 100) },
        {
          id: 'g2',
          kind: 'flat',
          node: 'n',
          thickness: 3,
          between: legs('run', 'A', 80, 'under', which === 0 ? 'B' : 'A', 110),
        },
      ],
    });
    const one = after(asOneBar(frame.job, { member: 'upper', which: 1 }, { member: 'under', which }, 'run'));
    expect(one.job.members.map(({ id }) => id)).toEqual(['run', 'upper']);
    expect(standing(one)).toEqual(standing(frame));
  }
});

it('a node that a gusset stands at stays when two bars in line are joined there', () => {
  const frame = derived({
    nodes: {
      a: [-600, 0, 0],
      b: [600, 0, 0],
      m: { kind: 'between', nodes: ['a', 'b'], fraction: 0.5 },
      n: [0, 0, 0],
      up: [0, 0, 600],
    },
    members: [
      { id: 'one', path: ['a', 'm'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      { id: 'two', path: ['m', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      { id: 'post', path: ['n', 'up'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
    ],
    gussets: [{ id: 'g', kind: 'flat', node: 'm', thickness: 3, between: legs('two', 'B', 90, 'post', 'B', 100) }],
  });
  const joined = after(joinMembers(frame.job, frame, 'one', { own: 1, other: { member: 'two', which: 0 } }));
  expect(joined.job.members.map(({ id }) => id)).toEqual(['one', 'post']);
  expect(standing(joined)).toEqual(standing(frame));
});

it('mirrored places are those of the left side with y turned round', () => {
  const all = gussetsOf(cage()).filter(({ gusset }) => gusset.id === 'g3');
  const [own, image] = all.map(({ made }) =>
    isMade(made) && made.sheet.shape.kind === 'bent' ? inCar(made.corner, made.sheet.shape.fold.midway, 0) : null,
  );
  mirrored(own!).forEach((part, i) => expect(image![i]).toBeCloseTo(part, 6));
});
