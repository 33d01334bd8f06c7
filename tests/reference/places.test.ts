/**
 * Places on a tube's centreline against search alone: the centreline is laid out by the oracle's own route and stepped along, and a
 * change of sign between two steps is halved to the last digit. Expected values: computed.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import type { Place } from '../../src/core/job/places.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { SolvedTube } from '../../src/core/solve/types.ts';
import { drawn } from '../draws.ts';
import { derivedOrSkipped, isSound, mirroredFrame, plainFrame } from '../laws/frames.ts';
import { developed, walkOf, type Step } from './oracles/centreline.ts';
import { difference, inner, size, square, unit, type Triple } from './oracles/space.ts';

const FRAMES = drawn(6, 500);
const STEP = 1;
const CLR = 135;
const image = ([x, y, z]: Triple): Triple => [x, -y, z];

const some = { seed: 20261, numRuns: FRAMES };
const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);

/** A tube as the oracle walks it. */
function walked(tube: SolvedTube): { readonly length: number; readonly at: (s: number) => Step } {
  const length = developed(tube.corners, CLR);
  const walk = walkOf(tube.corners, CLR);
  return { length, at: (s) => walk(Math.min(Math.max(s, 0), length)) };
}

/** Where the function changes its sign between 0 and `length`, mm along; each halved until nothing is left between. */
function signChanges(f: (s: number) => number, length: number): number[] {
  const steps = Math.ceil(length / STEP);
  const found: number[] = [];
  let before = f(0);
  for (let i = 1; i <= steps; i++) {
    const now = f((i / steps) * length);
    if (before === 0 ? i === 1 : before * now < 0) {
      let [low, high] = [((i - 1) / steps) * length, (i / steps) * length];
      for (let halving = 0; halving < 60; halving++) {
        const middle = (low + high) / 2;
        if (f(middle) * before > 0) low = middle;
        else high = middle;
      }
      found.push(before === 0 ? 0 : low);
    }
    before = now;
  }
  return found;
}

/** The job with one more node; what it comes to, or its fault. */
function placed(job: Job, at: Place): { frame: Derived; place: Triple } | string {
  const outcome = derive({ ...job, nodes: [...job.nodes, { id: 'new', name: 'new', at }] });
  return outcome.ok
    ? { frame: outcome.value, place: outcome.value.nodes.get('new')! }
    : `${outcome.faults[0]!.place.split('.at')[1]}: ${outcome.faults[0]!.message}`;
}

const AXES = ['x', 'y', 'z'] as const;
const frames = fc.oneof(plainFrame, mirroredFrame);

/** A tube of the frame that can be bent, and its twin where it is drawn as one. */
function soundTube(frame: Derived, at: number): SolvedTube {
  const tubes = frame.tubes.filter(isSound);
  fc.pre(tubes.length > 0);
  return tubes[at % tubes.length]!;
}

describe('on a tube until a coordinate', () => {
  it('is each place where search finds it, in the order of the tube, and no more', () => {
    let many = 0;
    let primed = 0;
    fc.assert(
      fc.property(frames, fc.nat(20), fc.constantFrom(0, 1, 2), share, (job, which, axis, along) => {
        const tube = soundTube(derivedOrSkipped(job), which);
        const { length, at } = walked(tube);
        // A coordinate that the tube has, and off every round one, so that nothing only touches or lies in it.
        const value = at(along * length).at[axis] + 0.0123;
        const expected = signChanges((s) => at(s).at[axis] - value, length);
        many += Number(expected.length > 1);
        primed += Number(tube.id.endsWith("'"));
        const until = { axis: AXES[axis], value };
        const on = (nth: number): Place => ({ kind: 'on', member: tube.id, until, nth, offset: [0, 0, 0] });
        expected.forEach((s, i) => {
          const found = placed(job, on(i + 1));
          if (typeof found === 'string') return expect(found, `${i + 1} of ${expected.length}`).toBe('');
          expect(size(difference(found.place, at(s).at))).toBeLessThan(1e-6);
          expect(found.place[axis]).toBe(value);
          expect(found.frame.nodes.get("new'")).toEqual(image(found.place));
        });
        const beyond = placed(job, on(expected.length + 1));
        expect(beyond).toMatch(expected.length === 0 ? /^\.until: .* never comes to/u : /^\.nth: .* only comes to/u);
      }),
      some,
    );
    // The draw must hold what the sentence speaks of.
    expect(Math.min(many, primed)).toBeGreaterThan(FRAMES / 20);
  });

  it('follows a node and a point on either side of the car', () => {
    fc.assert(
      fc.property(
        mirroredFrame,
        fc.nat(20),
        fc.constantFrom(0, 1, 2),
        share,
        fc.boolean(),
        (job, n, axis, s, prime) => {
          const points = [{ id: 'tape', name: 'tape', position: [31, 407, 555] as const }];
          const frame = derivedOrSkipped(job);
          const tube = soundTube(frame, n);
          const { length, at } = walked(tube);
          const value = at(s * length).at[axis];
          const node = `${job.nodes[n % job.nodes.length]!.id}${prime ? "'" : ''}`;
          const point = prime ? "tape'" : 'tape';
          const by = (given: object): Place => ({
            kind: 'on',
            member: tube.id,
            until: { axis: AXES[axis], ...given } as never,
            nth: 1,
            offset: [3, -2, 1],
          });
          const plain = placed({ ...job, points }, by({ value }));
          fc.pre(typeof plain !== 'string');
          const seen = [31, prime ? -407 : 407, 555];
          for (const given of [
            { node, plus: value - frame.nodes.get(node)![axis] },
            { point, plus: value - seen[axis]! },
          ]) {
            const other = placed({ ...job, points }, by(given));
            // A node that hangs on the tube cannot be followed on it; one that does not is as good as the number.
            if (typeof other === 'string') expect(other).toMatch(/reference loop|comes to/u);
            else {
              const near = (plain as { place: Triple }).place;
              expect(Math.abs(other.place[axis] - near[axis])).toBeLessThan(1e-9);
            }
          }
        },
      ),
      { ...some, numRuns: Math.ceil(FRAMES / 4) },
    );
  });
});

describe('where a line crosses a tube', () => {
  const end = fc.tuple(fc.nat(40), fc.boolean());

  it('is the place that search finds nearest the line, and the first of equal ones', () => {
    let [primed, apart] = [0, 0];
    fc.assert(
      fc.property(frames, fc.nat(20), end, end, (job, which, ...ends) => {
        const frame = derivedOrSkipped(job);
        const tube = soundTube(frame, which);
        const line = ends.map(([n, prime]) => `${job.nodes[n % job.nodes.length]!.id}${prime ? "'" : ''}`);
        const [a, b] = line.map((reference) => frame.nodes.get(reference)!) as [Triple, Triple];
        fc.pre(size(difference(a, b)) > 1);
        const found = placed(job, { kind: 'crossing', member: tube.id, line: [line[0]!, line[1]!] });
        if (typeof found === 'string') {
          expect(found).toMatch(/runs along/u);
          return;
        }
        const { length, at } = walked(tube);
        const direction = unit(difference(b, a));
        const away = (s: number): Triple => square(difference(at(s).at, a), direction);
        // Where the distance stops falling; and the ends.
        const turns = signChanges((s) => inner(away(s), at(s).direction), length);
        const candidates = [0, ...turns, length];
        const least = Math.min(...candidates.map((s) => size(away(s))));
        const got = size(square(difference(found.place, a), direction));
        expect(got).toBeLessThan(least + 1e-7);
        // Of those that the search cannot tell apart either, the first; a shallow one is known no better than its depth lets it.
        const equal = candidates.filter((s) => size(away(s)) < least + 1e-6);
        const steep = equal.every((s) => size(square(at(s).direction, direction)) > 0.02);
        if (steep) expect(size(difference(found.place, at(equal[0]!).at))).toBeLessThan(1e-4);
        expect(found.frame.nodes.get("new'")).toEqual(image(found.place));
        primed += Number(tube.id.endsWith("'"));
        apart += Number(least > 1);
      }),
      some,
    );
    expect(Math.min(primed, apart)).toBeGreaterThan(FRAMES / 20);
  });
});
