import { describe, expect, it } from 'vitest';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import { cannotHold } from '../../../src/core/rehearse/hold.ts';
import { noOrderInWords } from '../../../src/core/words/rehearsal.ts';
import type { BendableTube } from '../../../src/core/rehearse/bendable.ts';
import { pulledAngle, rehearse } from '../../../src/core/rehearse/rehearse.ts';
import { SEARCHED_BENDS } from '../../../src/core/solve/bend-order.ts';
import { firstHit } from '../../../src/core/rehearse/sweep.ts';
import { tapeList } from '../../../src/core/marks/tape.ts';
import { degrees } from '../frame.ts';
import { drawnTube } from './draws.ts';
import { bendable, DIE, type Shape } from './tubes.ts';
import { add, apart, rotated, scaled, type Triple, unlike } from './turning.ts';
import { drawn } from '../../draws.ts';

/** Every order with every choice of the end in front: n! 2^n of them. */
function* everyOrder(count: number, done: readonly BendStep[] = []): Generator<readonly BendStep[]> {
  if (done.length === count) yield done;
  for (let bend = 1; bend <= count; bend++) {
    if (done.some((step) => step.bend === bend)) continue;
    for (const front of ['A', 'B'] as const) yield* everyOrder(count, [...done, { bend, front }]);
  }
}

/** Step by step with nothing kept between orders but what is asked twice in the same words. */
function freeOrders(tube: BendableTube): readonly (readonly BendStep[])[] {
  const asked = new Map<string, boolean>();
  const isFree = (made: readonly number[], step: BendStep): boolean => {
    const key = `${made.toSorted((a, b) => a - b).join(' ')}, ${step.bend} ${step.front}`;
    if (!asked.has(key)) {
      const before = new Set(made);
      const held = cannotHold(tube, before, step) === null;
      asked.set(key, held && firstHit(tube, before, step, pulledAngle(tube, step.bend)) === null);
    }
    return asked.get(key)!;
  };
  return [...everyOrder(tube.bends.length)].filter((order) =>
    order.every((step, i) =>
      isFree(
        order.slice(0, i).map(({ bend }) => bend),
        step,
      ),
    ),
  );
}

const flips = (order: readonly BendStep[]): number =>
  order.filter((step, i) => i > 0 && step.front !== order[i - 1]!.front).length;

describe('rehearse', () => {
  it('finds as many free orders as going through all of them, and proposes one of these', () => {
    let [some, none] = [0, 0];
    for (let seed = 0; seed < drawn(24, 60); seed++) {
      const tube = drawnTube(seed, 1 + (seed % 4));
      const { free, all, proposed, reason } = rehearse(tube);
      const found = freeOrders(tube);
      expect(free).toBe(found.length);
      expect(all).toBe([2, 8, 48, 384][seed % 4]);
      expect(proposed === null).toBe(found.length === 0);
      expect(reason === null).toBe(found.length > 0);
      if (proposed === null) {
        none++;
        continue;
      }
      if (free < all) some++;
      const order = proposed.map(({ bend, front }) => ({ bend, front }));
      expect(found).toContainEqual(order);
      expect(proposed.every(({ hit, cannotHold: barred }) => hit === null && barred === null)).toBe(true);
      expect(flips(order)).toBe(Math.min(...found.map(flips)));
    }
    expect(some).toBeGreaterThan(drawn(3, 10));
    expect(none).toBeGreaterThan(drawn(1, 5));
  });

  it('rolls out to the same tube in the order proposed: every leg in front is turned as it is bent', () => {
    let tried = 0;
    for (let seed = 0; seed < drawn(24, 80); seed++) {
      const tube = drawnTube(3 * seed + 1, 2 + (seed % 4));
      for (const steps of [rehearse(tube).proposed, rehearse(tube).plain]) {
        if (steps === null) continue;
        const order = steps.map((step) => ({ ...step, rotation: step.rotation }));
        const rolled = rolledOut(tube, order);
        expect(unlike(tube.corners, rolled)).toBeLessThan(1e-6);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(drawn(30, 100));
  });

  it('takes the plain order where that is free, and says nothing', () => {
    const hoop: Shape = {
      bends: [40, 65, 65, 40].map((angle) => ({ rotation: 0, angle })),
      straights: [600, 300, 500, 300, 600],
    };
    const { plain, proposed, free, all } = rehearse(bendable(hoop));
    expect(proposed).toEqual(plain);
    expect([free, all]).toEqual([384, 384]);
  });

  it('reads every rotation from the bend that the tape reads it from, and as much', () => {
    for (let seed = 0; seed < drawn(15, 40); seed++) {
      const tube = drawnTube(seed, 4);
      const { proposed, plain } = rehearse(tube);
      for (const order of [plain, proposed ?? plain]) {
        const { steps } = tapeList(tube, { from: 'A', mark: 'start', step: 1, order })!;
        order.forEach(({ front, rotation, rotationFrom }, i) => {
          expect(steps[i]!.rotationFrom).toBe(rotationFrom);
          // The tape has it as it is seen along the feed, which runs to end A where end B is in front.
          const off = steps[i]!.rotation - (front === 'A' ? 1 : -1) * rotation;
          expect(Math.sin(off / 2)).toBeCloseTo(0, 12);
        });
      }
    }
  });

  it('goes by the end that the marks are laid out for', () => {
    const shape: Shape = { bends: [{ rotation: 0, angle: 50 }], straights: [400, 400] };
    const endInFront = (bendLies: 'beyond' | 'before') => rehearse(bendable(shape, { bendLies })).proposed![0]!.front;
    expect([endInFront('beyond'), endInFront('before')]).toEqual(['A', 'B']);
    const two: Shape = { ...shape, bends: [shape.bends[0]!, shape.bends[0]!], straights: [400, 400, 400] };
    const { plain, proposed } = rehearse(bendable(two, { bendLies: 'before' }));
    expect(plain.map(({ bend, front }) => `${bend}${front}`)).toEqual(['2B', '1B']);
    expect(proposed).toEqual(plain);
  });

  it('finds the mirror image for the mirrored tube on the machine that turns the other way', () => {
    for (let seed = 0; seed < drawn(8, 20); seed++) {
      const tube = drawnTube(seed, 3);
      const shape: Shape = {
        bends: tube.bends.map(({ angle, rotation }) => ({ angle: degrees(angle), rotation: degrees(rotation) })),
        straights: tube.straights,
      };
      const mirrored: Shape = { ...shape, bends: shape.bends.map((bend) => ({ ...bend, rotation: -bend.rotation })) };
      const [left, right] = [
        rehearse(bendable(shape, { turns: 'left', planeHeight: 420 })),
        rehearse(bendable(mirrored, { turns: 'right', planeHeight: 420 })),
      ];
      expect(right.free).toBe(left.free);
      left.plain.forEach(({ hit }, i) => {
        const other = right.plain[i]!.hit;
        expect(other?.solid).toEqual(hit?.solid);
        if (hit === null || other === null) return;
        expect(other.angle).toBeCloseTo(hit.angle, 4);
        expect(apart([hit.at[0], -hit.at[1], hit.at[2]], other.at)).toBeLessThan(0.5);
      });
    }
  });

  it('does not rehearse bends that overlap, nor search beyond the most bends, and says so', () => {
    const overlapping = bendable({
      bends: [
        { rotation: 0, angle: 90 },
        { rotation: 0, angle: 90 },
      ],
      straights: [300, -20, 300],
    });
    expect(rehearse(overlapping)).toMatchObject({
      plain: [],
      proposed: null,
      reason: { kind: 'bends-overlap' },
    });
    const many = SEARCHED_BENDS + 1;
    const long = bendable({
      bends: Array.from({ length: many }, (_, i) => ({ rotation: i % 2 === 0 ? 0 : 180, angle: 20 })),
      straights: Array.from({ length: many + 1 }, () => 200),
    });
    const { plain, proposed, reason, all } = rehearse(long);
    expect([plain.length, proposed, all]).toEqual([many, null, 0]);
    expect(reason).toEqual({ kind: 'too-many-bends', count: many });
  });

  it('says what the machine cannot hold', () => {
    const close: Shape = {
      bends: [
        { rotation: 0, angle: 30 },
        { rotation: 180, angle: 30 },
      ],
      straights: [400, DIE.leastStraight + 20, 400],
    };
    const tube = bendable(close);
    // 80 mm between them: enough for the clamp, which needs 60, too little for the follower, which needs 150.
    expect(cannotHold(tube, new Set([1]), { bend: 2, front: 'A' })).toBeNull();
    expect(cannotHold(tube, new Set([1]), { bend: 2, front: 'B' })).toMatchObject({
      kind: 'too-near',
      bend: 1,
      side: 'behind',
    });
    const { proposed } = rehearse(tube);
    expect(proposed!.map(({ bend, front }) => `${bend}${front}`)).toEqual(['1A', '2A']);
    const wide = bendable({ bends: [{ rotation: 0, angle: 130 }], straights: [500, 500] });
    expect(noOrderInWords(rehearse(wide).reason!)).toBe(
      'bend 1 cannot be made in any order: alone, it turns 130.0°, and the die goes to 120°',
    );
  });
  it('swings a first pull on to the most that the log allows, and shows what a person is given', () => {
    const shape: Shape = { bends: [{ rotation: 0, angle: 90 }], straights: [400, 400] };
    const pull = (pulled: number, net: number) => ({ die: 'd', section: 'main', pulled, net, on: '' });
    const stepOf = (...pulls: object[]) => rehearse(bendable(shape, {}, {}, { pulls })).plain[0]!;
    // 3.2 degrees for 60 are sure for 90 too; all taken for spring they are 4.8.
    const first = stepOf(pull(63.2, 60));
    expect(degrees(first.pullTo)).toBeCloseTo(93, 9);
    expect(degrees(first.pulled)).toBeCloseTo(94.8, 9);
    const law = stepOf(pull(63.2, 60), pull(26.8, 25));
    expect(degrees(law.pullTo)).toBeCloseTo(94.5, 9);
    expect(law.pulled).toBe(law.pullTo);
  });
});

/**
 * The corners of the tube as the machine leaves them, from a straight blank: at each bend all in front of it is turned
 * about the die's axis, nothing else. The plane is the one the step's rotation asks for, from the plane of the bend it
 * is read from.
 */
function rolledOut(
  tube: BendableTube,
  steps: readonly (BendStep & { readonly rotation: number; readonly rotationFrom: number | null })[],
): readonly Triple[] {
  const { bends, developedLength } = tube;
  // Marks on the blank: end A, both tangents of every bend, end B; what a mark carries is turned with it.
  const marks = [0, ...bends.flatMap(({ start, end }) => [start, end]), developedLength];
  const places: Triple[] = marks.map((at) => [at, 0, 0]);
  const ahead: Triple[] = marks.map(() => [1, 0, 0]);
  const normals = new Map<number, Triple>();
  for (const { bend, rotation, rotationFrom } of steps) {
    const { angle, radius } = bends[bend - 1]!;
    const [first, second] = [2 * bend - 1, 2 * bend];
    const along = ahead[first]!;
    const from = rotationFrom === null ? ([0, 0, 1] as const) : normals.get(rotationFrom)!;
    const normal = rotated(from, along, rotation);
    normals.set(bend, normal);
    // The second tangent, and all beyond it, comes off the straight onto the arc.
    const inwards = rotated(along, normal, Math.PI / 2);
    const centre = add(places[first]!, scaled(inwards, radius));
    const arcEnd = add(centre, rotated(scaled(inwards, -radius), normal, angle));
    const offset = places[second]!;
    for (let i = second; i < marks.length; i++) {
      const own = add(places[i]!, scaled(offset, -1));
      places[i] = add(arcEnd, rotated(own, normal, angle));
      ahead[i] = rotated(ahead[i]!, normal, angle);
    }
    for (const [other, held] of normals) if (other > bend) normals.set(other, rotated(held, normal, angle));
  }
  const corners = bends.map(({ angle, radius }, i) =>
    add(places[2 * i + 1]!, scaled(ahead[2 * i + 1]!, radius * Math.tan(angle / 2))),
  );
  return [places[0]!, ...corners, places.at(-1)!];
}
