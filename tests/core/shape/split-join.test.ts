/** A member made two and two made one: the steel stays, every reference says the same place, and one is the other undone. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/core/derive.ts';
import { numbersOf } from '../../../src/core/job/numbers.ts';
import { keepNumbers, numberByBuildOrder } from '../../../src/core/edit/numbers.ts';
import { setDie } from '../../../src/core/edit/members.ts';
import { placeAt } from '../../../src/core/geometry/path.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { joinMembers, jointsOf } from '../../../src/core/shape/join.ts';
import { namedPlaces } from '../../../src/core/shape/places-along.ts';
import { splitMember } from '../../../src/core/shape/split.ts';
import { drawn } from '../../draws.ts';
import { derivedOrSkipped, fixed, mirroredFrame, plainFrame } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, made, placesIn, read, solved } from './sides.ts';

const DEMO = read(readFileSync('tests/fixtures/demo-typed.cagewright.json', 'utf8'));
const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((v, i) => v - b[i]!));
const why = (answer: unknown): string => (Array.isArray(answer) ? (answer[0] as { message: string }).message : '');

/** Each place of the old bar's centreline lies on the two new ones, so far along as it was; and no other bar is another. */
function expectSameSteel(before: Derived, after: Derived, id: string, other: string, along: number): void {
  for (const bar of before.bars.values()) {
    const prime = bar.id.endsWith("'") ? "'" : '';
    for (let i = 0; i <= 20; i++) {
      const at = (i / 20) * bar.developedLength;
      const isOther = bar.member.id === id && at > along;
      const now = after.bars.get(isOther ? `${other}${prime}` : bar.id)!;
      const place = placeAt(now.path, isOther ? at - along : at).point;
      expect(apart(place, placeAt(bar.path, at).point), bar.id).toBeLessThan(1e-9);
    }
  }
}
/** Every node that was there is where it was, on either side of the car. */
function expectSamePlaces(before: Derived, job: Job): void {
  const places = placesIn(job);
  for (const [node, place] of before.nodes) {
    if (places.has(node)) expect(apart(place, places.get(node)!), node).toBeLessThan(1e-9);
  }
}
const hasBend = ({ nodes }: Job, i: number): boolean => {
  const at = nodes[i]?.at;
  return at?.kind === 'on' && at.bend !== undefined;
};
/** Where the member can be split: every place that the card offers. */
const cases = DEMO.members.flatMap(({ id, cutBy }) =>
  namedPlaces(solved(DEMO), solved(DEMO).bars.get(id)!).flatMap(({ at, by }) =>
    // A bar in pieces where it is cut.
    (cutBy === undefined) === (by === null) ? [[id, at] as const] : [],
  ),
);

describe('a member of the demo, split where its card offers', () => {
  const before = solved(DEMO);
  const tried = cases.filter((_, i) => i % drawn(8, 1) === 0);
  it.each(tried)('%s at %d: the steel stays, and joined again it is the same file', (id, along) => {
    const answer = splitMember(DEMO, before, id, along);
    if (Array.isArray(answer)) {
      // The hoop is named by the legs of both sides.
      expect([id, why(answer)]).toEqual(['hoop', expect.stringContaining('Front leg names Main hoop on both sides')]);
      return;
    }
    const split = again(keepNumbers(DEMO, made(answer)));
    const after = solved(split);
    const other = split.members[split.members.findIndex((each) => each.id === id) + 1]!.id;
    expectSameSteel(before, after, id, other, along);
    expectSamePlaces(before, split);
    // Pieces are the same tubes by other names.
    for (const tube of before.tubes.filter(({ member, piece }) => member.id === id && piece !== null)) {
      const now = after.tubes.find(({ number }) => number === tube.number)!;
      expect(Math.abs(now.blankLength - tube.blankLength), tube.id).toBeLessThan(1e-4);
      expect(now.member.id).toBe(tube.piece!.number === 1 ? id : other);
    }
    // All other tubes are cut as they were: a cope to one part is the cope to the whole.
    for (const tube of before.tubes.filter(({ member }) => member.id !== id)) {
      const now = after.byId.get(tube.id)!;
      expect(Math.abs(now.blankLength - tube.blankLength), tube.id).toBeLessThan(1e-4);
    }
    expect(after.findings.filter(({ severity }) => severity === 'error')).toEqual(
      before.findings.filter(({ severity }) => severity === 'error'),
    );
    const joint = jointsOf(split, id).find((each) => each.own === 1 && each.other.member === other)!;
    const joined = again(keepNumbers(split, made(joinMembers(split, after, id, joint))));
    // A place that was counted from a bend of the other part counts from an end now.
    const isRecounted = split.nodes.some(({ at }, i) => at.kind === 'on' && at.bend === undefined && hasBend(DEMO, i));
    if (isRecounted) expectSamePlaces(before, joined);
    // The number that the new tube had meanwhile is given for good.
    else expect(serialiseJob(numberByBuildOrder(joined))).toBe(serialiseJob(DEMO));
    expect(numbersOf(joined)).toEqual(numbersOf(DEMO));
  });
});

describe('on random frames', () => {
  it('a split leaves every centreline and node where it was, and joined it is the same again', () => {
    const frames = fc.oneof(plainFrame, mirroredFrame);
    let tried = 0;
    fc.assert(
      fc.property(frames, fc.nat(9), fc.integer({ min: 1, max: 999 }), (job, at, thousandths) => {
        const before = derivedOrSkipped(job);
        const { id } = job.members[at % job.members.length]!;
        const along = (thousandths / 1000) * before.bars.get(id)!.developedLength;
        const answer = splitMember(job, before, id, along);
        fc.pre(!Array.isArray(answer));
        tried += 1;
        const split = answer as Job;
        expect(parseJob(serialiseJob(split))).toEqual({ ok: true, job: split });
        const after = derivedOrSkipped(split);
        const other = split.members[split.members.findIndex((each) => each.id === id) + 1]!.id;
        expectSameSteel(before, after, id, other, along);
        expectSamePlaces(before, split);
        const joint = jointsOf(split, id).find((each) => each.other.member === other)!;
        const joined = joinMembers(split, after, id, joint);
        // Where another tube runs through, the two are coped to it: they are its pieces then, or nobody takes that from them unasked.
        if (Array.isArray(joined)) expect(why(joined)).toMatch(/coped to .* there|would not stay|comes nearest to/);
        else if (made(joined).members.some(({ cutBy }) => cutBy !== undefined)) expectSamePlaces(before, made(joined));
        else expect(serialiseJob(made(joined))).toBe(serialiseJob(job));
      }),
      fixed(drawn(15, 400)),
    );
    expect(tried).toBeGreaterThan(drawn(10, 200));
  });
});

const nodes = {
  a: [0, 300, 0],
  b: [0, 300, 800],
  c: [700, 300, 800],
  d: [900, 300, 0],
  low: { kind: 'on', member: 'bar', from: 'start', distance: 200 },
  late: { kind: 'on', member: 'bar', from: 'end', distance: 150 },
  round: { kind: 'on', member: 'bar', bend: 2, where: 'start', distance: -30 },
  back: { kind: 'on', member: 'bar', bend: 2, where: 'start', distance: -420 },
  high: { kind: 'on', member: 'bar', until: { axis: 'z', value: 500 }, nth: 2 },
  far: [450, 900, 300],
};
const job = jobOf({
  nodes,
  members: [
    { id: 'bar', path: ['a', 'b', 'c', 'd'], mirror: true, keptAngles: [{ corner: 'c', angle: 76 }] },
    { id: 'stay', path: ['high', 'far'], ends: [{ fit: 'cope', against: ['bar'] }, { fit: 'square' }] },
  ],
  pulls: [{ die: 'd', section: 'main', pulled: 80, net: 76, tube: "bar'", bend: 2 }],
  seen: [
    { finding: 'bend/short-straight', tube: 'bar', bend: 2, as: '{}' },
    { finding: 'end/meets-nothing', tube: 'bar', end: 'B', as: '{}' },
    { finding: 'end/meets-nothing', tube: 'bar', end: 'A', as: '{}' },
  ],
});

describe('what names a member that is split', () => {
  // Half of the straight between the bends: 800 less a set-back of 152.4, and so on, is where nobody has to reckon.
  const frame = solved(job);
  const [first, second] = frame.bars.get('bar')!.bends;
  const along = (first!.end + second!.start) / 2;
  const split = again(made(splitMember(job, frame, 'bar', along)));
  const at = (id: string) => split.nodes.find((node) => node.id === id)!.at;

  it('names the part that it means', () => {
    expect(split.members.map(({ id, path }) => [id, path])).toEqual([
      ['bar', ['a', 'b', 'n11']],
      ['m3', ['n11', 'c', 'd']],
      ['stay', ['high', 'far']],
    ]);
    expect(at('n11')).toMatchObject({ kind: 'between', nodes: ['b', 'c'] });
    expect(at('low')).toEqual(job.nodes.find(({ id }) => id === 'low')!.at);
    expect(at('late')).toMatchObject({ member: 'm3', from: 'end', distance: 150 });
    expect(at('round')).toMatchObject({ member: 'm3', bend: 1, where: 'start', distance: -30 });
    // Bend 2 is not of that part: so far from end A instead.
    expect(at('back')).toMatchObject({ member: 'bar', from: 'start' });
    expect(at('high')).toMatchObject({ member: 'm3', nth: 1 });
    expect(split.members[0]!.keptAngles).toBeUndefined();
    expect(split.members[1]!.keptAngles).toEqual([{ corner: 'c', angle: 76 }]);
    expect(split.members[2]!.ends[0]).toMatchObject({ against: ['m3'] });
    expect(split.pulls[0]).toMatchObject({ tube: "m3'", bend: 1 });
    expect(split.seen.map(({ tube, end, bend }) => [tube, end, bend])).toEqual([
      ['m3', undefined, 1],
      ['m3', 'B', undefined],
      ['bar', 'A', undefined],
    ]);
  });

  it('is refused in a bend, at an end, in pieces, and while the tube is being bent', () => {
    const refused = (of: Job, at: number) => why(splitMember(of, solved(of), 'bar', at));
    expect(refused(job, first!.start + 1)).toContain('within bend 1');
    expect(refused(job, 0)).toContain('an end of the tube');
    const bent = again({ ...job, bent: [{ tube: "bar'", order: [], done: [], bends: [], checks: [] }] });
    expect(refused(bent, along)).toContain('has a bend run');
    const pieces = jobOf({
      nodes: { e: [0, 0, 400], f: [0, 600, 400], ...nodes },
      members: [
        { id: 'bar', path: ['a', 'b'], cutBy: ['by'] },
        { id: 'by', path: ['e', 'f'] },
      ],
    });
    expect(refused(again({ ...pieces, nodes: pieces.nodes.slice(0, 4) }), 300)).toContain('made in pieces');
  });

  it('is refused where a mirrored bar copes to both halves of a bar across the car', () => {
    const across = jobOf({
      nodes: { l: [0, 500, 500], n: { kind: 'on', member: 'bar', from: 'start', distance: 200 }, f: [600, 300, 0] },
      members: [
        { id: 'bar', path: ['l', "l'"] },
        { id: 'leg', path: ['n', 'f'], mirror: true, ends: [{ fit: 'cope', against: ['bar'] }, { fit: 'square' }] },
      ],
    });
    expect(why(splitMember(across, solved(across), 'bar', 500))).toContain('leg names bar on both sides');
    const meets = again({
      ...across,
      members: across.members.map((each) => ({
        ...each,
        ends: [{ fit: 'auto', allowance: 0 }, each.ends[1]] as const,
      })),
    });
    const parted = solved(again(made(splitMember(meets, solved(meets), 'bar', 500))));
    expect(parted.byId.get('leg')!.ends[0].cuts.map(({ against }) => against)).toEqual(['bar']);
    expect(parted.byId.get("leg'")!.ends[0].cuts.map(({ against }) => against)).toEqual(['m3']);
  });
});

describe('a bar in pieces, split where it is cut', () => {
  const job = jobOf({
    nodes: {
      a: [0, 300, 0],
      b: [0, 300, 1000],
      c: [-300, 300, 200],
      d: [300, 300, 260],
      e: [-300, 300, 500],
      f: [300, 300, 600],
      g: [-300, 300, 800],
      h: [300, 300, 900],
    },
    members: [
      { id: 'low', path: ['c', 'd'], mirror: true },
      { id: 'middle', path: ['e', 'f'], mirror: true },
      { id: 'high', path: ['g', 'h'], mirror: true },
      { id: 'bar', path: ['a', 'b'], mirror: true, cutBy: ['low', 'middle', 'high'] },
    ],
    feeds: [{ tube: 'bar.4', from: 'B' }],
    bent: [{ tube: "bar.2'", order: [] }],
    pulls: [{ die: 'd', section: 'main', pulled: 93, net: 90, tube: "bar.3'" }],
    seen: [{ finding: 'end/meets-nothing', tube: 'bar.3', end: 'A', as: '{}' }],
  });
  const frame = solved(job);
  const [, second] = namedPlaces(frame, frame.bars.get('bar')!).filter(({ by }) => by !== null);

  it('leaves its tubes what they are, and all that is kept of them with them; joined it is the same file', () => {
    expect(second!.by).toBe('middle');
    // Within a mm of the cut is at the cut.
    const split = again(keepNumbers(job, made(splitMember(job, frame, 'bar', second!.at + 0.5))));
    expect(split.members.filter(({ cutBy }) => cutBy).map(({ id, cutBy }) => [id, cutBy])).toEqual([
      ['bar', ['low']],
      ['m5', ['high']],
    ]);
    expect(split.members.find(({ id }) => id === 'm5')!.ends[0]).toMatchObject({ fit: 'cope', against: ['middle'] });
    expect(split.feeds).toMatchObject([{ tube: 'm5.2', from: 'B' }]);
    expect(split.bent).toMatchObject([{ tube: "bar.2'" }]);
    expect(split.pulls).toMatchObject([{ tube: "m5.1'" }]);
    expect(split.seen).toMatchObject([{ tube: 'm5.1', end: 'A' }]);
    const [were, are] = [numbersOf(job), numbersOf(split)];
    expect([are.get('m5.1'), are.get("m5.2'"), are.get('bar.1')]).toEqual([
      were.get('bar.3'),
      were.get("bar.4'"),
      were.get('bar.1'),
    ]);
    const joint = jointsOf(split, 'bar').find(({ other }) => other.member === 'm5')!;
    expect(serialiseJob(keepNumbers(split, made(joinMembers(split, solved(split), 'bar', joint))))).toBe(
      serialiseJob(job),
    );
  });

  it('is refused elsewhere', () => {
    expect(why(splitMember(job, frame, 'bar', second!.at + 2))).toContain('it can be split where it is cut');
  });
});

describe('two members joined', () => {
  const two = jobOf({
    nodes: {
      a: [0, 300, 0],
      b: [0, 300, 800],
      c: [700, 300, 800],
      up: { kind: 'on', member: 'one', from: 'start', distance: 300 },
      on: { kind: 'on', member: 'two', from: 'start', distance: 200 },
      e: [0, 700, 500],
    },
    members: [
      { id: 'one', path: ['a', 'b'] },
      { id: 'two', path: ['c', 'b'] },
      { id: 'stay', path: ['on', 'e'], ends: [{ fit: 'cope', against: ['two'] }, { fit: 'square' }] },
    ],
  });
  const joint = jointsOf(two, 'one')[0]!;

  it('bend round the corner between them, and what stood on them stays', () => {
    expect(jointsOf(two, 'one')).toEqual([{ own: 1, other: { member: 'two', which: 1 } }]);
    const one = again(made(joinMembers(two, solved(two), 'one', joint)));
    expect(one.members.map(({ id, path }) => [id, path])).toEqual([
      ['one', ['a', 'b', 'c']],
      ['stay', ['on', 'e']],
    ]);
    const bar = solved(one).byId.get('one')!;
    // A right angle on 152.4: two set-backs less, a quarter turn more.
    expect(bar.bends).toHaveLength(1);
    expect(bar.developedLength).toBeCloseTo(1500 - 2 * 152.4 + (Math.PI / 2) * 152.4, 9);
    expect(one.members[1]!.ends[0]).toMatchObject({ against: ['one'] });
    expect(apart(placesIn(one).get('on')!, [500, 300, 800])).toBeLessThan(1e-9);
    expect(one.nodes.find(({ id }) => id === 'on')!.at).toMatchObject({ member: 'one', from: 'end', distance: 200 });
  });

  it.each([
    ['section', { section: 'thin' }, 'not of one section'],
    ['mirror image', { mirror: true }, 'has a mirror image'],
    ['batch', { batch: 'H-1' }, 'not of one batch'],
    ['pieces', { cutBy: ['stay'] }, 'made in pieces'],
    [
      'a plate',
      {
        ends: [
          { fit: 'square', allowance: 0 },
          { fit: 'plate', normal: [0, 0, 1], allowance: 0 },
        ],
      },
      'plate',
    ],
  ])('are refused where they differ: %s', (_, fields, words) => {
    const sections = [...two.sections, { ...two.sections[0]!, id: 'thin', name: 'thin', wall: 2 }];
    const members = two.members.map((each) => (each.id === 'two' ? { ...each, ...fields } : each));
    const other = { ...two, sections, members } as Job;
    expect(why(joinMembers(other, solved(two), 'one', joint))).toContain(words);
  });

  it('are refused where they are coped to a third, where a node would move, and where none can be bent so', () => {
    const third = again({
      ...two,
      members: [{ ...two.members[2]!, id: 'post', path: ['b', 'e'], ends: two.members[0]!.ends }, ...two.members],
    });
    expect(why(joinMembers(third, solved(third), 'one', joint))).toMatch(/coped to .* there, and would run through it/);
    const near = again({
      ...two,
      nodes: two.nodes.map(
        (node) => (node.id === 'up' ? { ...node, at: { ...node.at, distance: 750 } } : node) as typeof node,
      ),
    });
    expect(why(joinMembers(near, solved(near), 'one', joint))).toBe(
      'up would not stay where it is: place it another way first',
    );
    const noDie = again(two.members.reduce<Job>((left, { id }) => setDie(left, id, null), { ...two, dies: [] }));
    expect(why(joinMembers(noDie, solved(noDie), 'one', joint))).toContain('needs a die');
  });

  it.each([
    [
      'the far end is coped to it',
      ['m', 'far'],
      ['under', 'over'],
      'Post is built between the two, and Two is coped to it',
    ],
    ['it is coped to the other', ['far', 'm'], ['under', 'half'], 'Post is built between the two, and is coped to Two'],
  ])('are refused where what is built between would lose its cope: %s', (_, path, post, words) => {
    const between = jobOf({
      nodes: {
        a: [0, 0, 0],
        m: [500, 0, 0],
        far: [1000, 0, 0],
        half: { kind: 'between', nodes: ['m', 'far'], fraction: 0.5 },
        under: [1000, -400, 0],
        over: [1000, 400, 0],
      },
      members: [
        { id: 'one', name: 'One', path: ['a', 'm'] },
        { id: 'post', name: 'Post', path: post },
        { id: 'two', name: 'Two', path },
      ],
    });
    const order = path[0] === 'm' ? between.members : between.members.toReversed();
    const job = { ...between, members: order };
    const [first] = jointsOf(job, 'one');
    expect(why(joinMembers(job, solved(job), 'one', first!))).toBe(`${words}: change the build order first`);
    // Asked the other way round the steel that is coped stands where it did.
    const back = made(joinMembers(job, solved(job), 'two', jointsOf(job, 'two')[0]!));
    const cuts = (frame: Derived, id: string) =>
      frame.byId.get(id)!.ends.map(({ cuts: all }) => all.map(({ against }) => against));
    expect(cuts(solved(back), 'post')).toEqual(cuts(solved(job), 'post'));
    expect(solved(back).findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('are refused where a third tube ends that would stand off the bend; not where it ends on what stays straight', () => {
    const corner = (third: readonly number[]) =>
      jobOf({
        nodes: { a: [0, 0, 0], m: [800, 0, 0], b: [800, 0, 800], third, c: [700, 600, 0] },
        members: [
          { id: 'one', name: 'One', path: ['a', 'm'] },
          { id: 'two', name: 'Two', path: ['m', 'b'] },
          { id: 'tie', name: 'Tie', path: ['third', 'c'] },
        ],
      });
    const joined = (job: Job) => joinMembers(job, solved(job), 'one', jointsOf(job, 'one')[0]!);
    expect(why(joined(corner([800, 0, 0])))).toBe('Tie ends on One, and would stand off the bend');
    expect(why(joined(corner([700, 0, 0])))).toBe('Tie ends on One, and would stand off the bend');
    const after = solved(made(joined(corner([600, 0, 0]))));
    expect(after.byId.get('tie')!.ends[0].cuts.map(({ against }) => against)).toEqual(['one']);
  });
});
