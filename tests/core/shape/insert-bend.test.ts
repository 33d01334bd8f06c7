/** A corner put in on a straight: no steel moves, and the tube bends there once its node is moved. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeAt } from '../../../src/core/geometry/path.ts';
import { setPlace } from '../../../src/core/edit/nodes.ts';
import { insertBend } from '../../../src/core/shape/insert-bend.ts';
import { namedPlaces } from '../../../src/core/shape/places-along.ts';
import { layOut } from '../../../src/core/solve/lay-out.ts';
import { sequenceOf } from '../../../src/core/solve/sequence.ts';
import { drawn } from '../../draws.ts';
import { derivedOrSkipped, fixed, mirroredFrame, plainFrame } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, made, solved } from './sides.ts';

const nodes = { a: [0, 300, 0], b: [0, 300, 800], c: [700, 300, 800] };
const bent = jobOf({ nodes, members: [{ id: 'bar', path: ['a', 'b', 'c'], mirror: true }] });
const refusal = (along: number) => {
  const answer = insertBend(bent, solved(bent), 'bar', along);
  return Array.isArray(answer) ? (answer[0] as { message: string }).message : null;
};

describe('a corner put in', () => {
  it('stands on the straight at the place that was asked for, and moves nothing', () => {
    const frames = fc.oneof(plainFrame, mirroredFrame);
    fc.assert(
      fc.property(frames, fc.nat(9), fc.integer({ min: 1, max: 999 }), (job, at, thousandths) => {
        const before = derivedOrSkipped(job);
        const { id } = job.members[at % job.members.length]!;
        const { path, developedLength } = before.bars.get(id)!;
        const along = (thousandths / 1000) * developedLength;
        const answer = insertBend(job, before, id, along);
        fc.pre(!Array.isArray(answer));
        const cornered = again(made(answer));
        const sequence = sequenceOf(cornered);
        const laid = sequence.ok ? layOut(cornered, sequence.value) : sequence;
        if (!laid.ok) throw new Error(laid.faults[0]?.message);
        const after = laid.value;
        const node = cornered.nodes.at(-1)!.id;
        const [asked, placed] = [placeAt(path, along).point, after.nodes.get(node)!];
        expect(Math.hypot(...asked.map((value, axis) => value - placed[axis]!))).toBeLessThan(1e-9);
        for (const tube of before.tubes) {
          const { centreline: same } = after.tubes.find((each) => each.id === tube.id)!;
          expect(same.bends.length).toBe(tube.bends.length);
          tube.corners.forEach((corner, i) =>
            expect(Math.hypot(...corner.map((value, axis) => value - same.corners[i]![axis]!))).toBeLessThan(1e-9),
          );
        }
      }),
      fixed(drawn(12, 400)),
    );
  });

  it('bends the tube once its node is moved off the line, with the first die that fits', () => {
    const straight = jobOf({ nodes, members: [{ id: 'bar', path: ['a', 'c'], die: undefined }] });
    const [middle] = namedPlaces(solved(straight), solved(straight).bars.get('bar')!);
    const cornered = again(made(insertBend(straight, solved(straight), 'bar', middle!.at)));
    expect(cornered.members[0]).toMatchObject({ path: ['a', 'n4', 'c'], die: 'd' });
    expect(solved(cornered).nodes.get('n4')).toEqual([350, 300, 400]);
    expect(solved(cornered).byId.get('bar')!.bends).toEqual([]);
    const moved = setPlace(cornered, 'n4', { kind: 'fixed', position: [350, 300, 500] });
    expect(solved(again(moved)).byId.get('bar')!.bends).toHaveLength(1);
  });

  it('is refused while one of its tubes has a bend run', () => {
    const job = again({ ...bent, bent: [{ tube: "bar'", order: [], done: [], bends: [], checks: [] }] });
    expect(insertBend(job, solved(job), 'bar', 400)).toMatchObject([
      { message: expect.stringContaining('has a bend run as it is: take that out first') },
    ]);
  });

  it('is refused at an end, within a bend, and where the path has a node', () => {
    expect(refusal(0)).toContain('an end of the tube');
    expect(refusal(5000)).toContain('beyond it');
    // The bend of 90 degrees on 152.4 begins 152.4 short of the corner.
    expect(refusal(800 - 152.4 + 1)).toBe('that place lies within bend 1: say one on a straight');
    expect(refusal(800 - 152.4)).toBeNull();
    const twice = again(made(insertBend(bent, solved(bent), 'bar', 400)));
    expect(insertBend(twice, solved(twice), 'bar', 400)).toMatchObject([
      { message: 'the path has a node there already: move that one' },
    ]);
  });
});

describe('the places to choose from', () => {
  it('are the longest straight, the others, and the nodes of tubes that lie on one', () => {
    const job = jobOf({
      nodes: {
        ...nodes,
        on: { kind: 'on', member: 'bar', from: 'start', distance: 500 },
        off: [500, 900, 0],
        round: { kind: 'on', member: 'bar', bend: 1, where: 'middle', distance: 0 },
      },
      members: [
        { id: 'bar', path: ['a', 'b', 'c'] },
        { id: 'stay', path: ['on', 'off'] },
        { id: 'brace', path: ['round', 'off'] },
      ],
    });
    const frame = solved(job);
    const arc = (Math.PI / 2) * 152.4;
    const expected = [
      [(800 - 152.4) / 2, null, 1],
      [800 - 152.4 + arc + (700 - 152.4) / 2, null, 2],
      [500, 'on', 1],
    ];
    const found = namedPlaces(frame, frame.bars.get('bar')!).map(({ at, node, straight }) => [at, node, straight]);
    found.forEach(([at, node, straight], i) => {
      expect(at).toBeCloseTo(expected[i]![0] as number, 9);
      expect([node, straight]).toEqual(expected[i]!.slice(1));
    });
    expect(found).toHaveLength(3);
  });
});
