import { describe, expect, it } from 'vitest';
import { nearestOnPath } from '../../../src/core/geometry/path.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import { type BendableTube } from '../../../src/core/rehearse/bendable.ts';
import { poseAt } from '../../../src/core/rehearse/pose.ts';
import { pulledAngle } from '../../../src/core/rehearse/rehearse.ts';
import { firstHit } from '../../../src/core/rehearse/sweep.ts';
import type { Hit, SolidId } from '../../../src/core/rehearse/types.ts';
import { oneOfEach } from '../../draws.ts';
import { degrees } from '../frame.ts';
import { drawnTube, seeded } from './draws.ts';
import { away, sampler, solidsAt, type Gap, type Stretch } from './sampling.ts';
import { bendable, DIE } from './tubes.ts';

const TOUCH = 0.1;
/** What the sweep says it leaves open beyond that. */
const OPEN = 0.03;

interface Case {
  readonly tube: BendableTube;
  readonly made: ReadonlySet<number>;
  readonly step: BendStep;
  readonly hit: Hit | null;
}

const CASES: readonly Case[] = Array.from({ length: 300 }, (_, seed) => {
  const draw = seeded(1000 + seed);
  const count = 2 + (seed % 5);
  const tube = drawnTube(seed, count);
  const bend = 1 + Math.floor(count * draw());
  const made = new Set(Array.from({ length: count }, (__, i) => i + 1).filter((each) => each !== bend && draw() < 0.8));
  const step = { bend, front: draw() < 0.5 ? 'A' : 'B' } as const;
  return { tube, made, step, hit: firstHit(tube, made, step, pulledAngle(tube, bend)) };
});

const DEGREE = Math.PI / 180;
/** mm. A place half of it aside is farther from a corner at a tube's radius by 0.25^2 / 44.45 = 0.0014 mm. */
const FINE_SPACING = 0.5;

/** mm a radian at most, of any place in front about the die, or of the die's own parts past what slides behind. */
function fastest({ tube, made, step }: Case): number {
  const { front } = poseAt(tube, made, step, 0);
  return 1000 + front.length;
}

/** The angles of the `most` deepest dips among those every `by` or so, from the deepest on. */
function leastAngles(gapAt: (angle: number) => Gap, from: number, to: number, by: number, most: number) {
  const count = Math.max(1, Math.ceil((to - from) / by));
  const row = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  const gaps = row.map((angle) => gapAt(angle).gap);
  const isDip = (i: number) => gaps[i]! <= (gaps[i - 1] ?? Infinity) && gaps[i]! <= (gaps[i + 1] ?? Infinity);
  const dips = row.map((_, i) => i).filter(isDip);
  return dips
    .toSorted((a, b) => gaps[a]! - gaps[b]!)
    .slice(0, most)
    .map((i) => row[i]!);
}

const round = (at: number | null): Stretch['front'] => (at === null ? null : [at - 40, at + 40]);

/** The steel about the place that is nearest. */
const about = ({ front, rear }: Gap): Stretch => ({ front: round(front), rear: round(rear) });

/** The steel about the place that a hit names; where the tube meets itself, about the other place as well. */
function steelAt({ tube, made, step }: Case, { angle, by, solid, at }: Hit): Stretch {
  const pose = poseAt(tube, made, step, angle);
  if (by === 'rear') {
    const slid = tube.die.centrelineRadius * angle;
    return { front: null, rear: round(nearestOnPath(pose.rear, at).at + slid) };
  }
  const front = round(nearestOnPath(pose.front, at).at);
  if (solid !== null) return { front, rear: null };
  return about(sampler(tube, made, step, 2, { front, rear: [0, Infinity] })(angle));
}

const nameOf = (solid: SolidId): string => (solid.part === 'room' ? solid.name : solid.part);
const touchedIn = (hit: Hit | null): string =>
  hit === null ? 'nothing' : hit.solid === null ? 'itself' : nameOf(hit.solid);

describe('the sweep of one bend', () => {
  it('meets a wall where trigonometry says', () => {
    // The end of a leg of 900 mm beyond the tangent stands 152.4 (1 - cos t) + 900 sin t to the left of the feed. A wall at
    // 700 mm is touched where that is 700 - 22.225 - 0.1 mm: 900 sin t - 152.4 cos t = 525.275, so t = 44.74 degrees.
    const wall = { name: 'Wall', kind: 'plane', point: [0, 700, 0], normal: [0, -1, 0] } as const;
    const leg = bendable({ bends: [{ rotation: 0, angle: 90 }], straights: [900, 900] }, { room: [wall] });
    const hit = firstHit(leg, new Set(), { bend: 1, front: 'A' }, Math.PI / 2)!;
    const byHand = Math.asin(525.275 / Math.hypot(900, 152.4)) + Math.atan(152.4 / 900);
    expect(hit.angle).toBeGreaterThan(byHand - 0.01 / 900 - 1e-6);
    expect(hit.angle).toBeLessThan(byHand);
    expect(degrees(hit.angle)).toBeCloseTo(44.74, 2);
    expect(hit).toMatchObject({ solid: { part: 'room', kind: 'plane', name: 'Wall' }, by: 'front' });
    expect(firstHit(leg, new Set(), { bend: 1, front: 'A' }, byHand - 0.001)).toBeNull();
  });

  it('meets the floor before it is turned where the leg in front hangs lower than the bend plane is high', () => {
    // 152.4 of bend, 900 of leg, 22.225 of tube and 0.1: 1074.7 mm.
    const shape = {
      bends: [
        { rotation: 0, angle: 90 },
        { rotation: -90, angle: 90 },
      ],
      straights: [900, 300, 900],
    };
    const at = (planeHeight: number) =>
      firstHit(bendable(shape, { planeHeight }), new Set([1]), { bend: 2, front: 'A' }, 1.5);
    expect(at(1074)).toMatchObject({ angle: 0, solid: { part: 'floor' }, by: 'front' });
    expect(at(1075)).toBeNull();
  });

  it('passes over a bench that is just lower, and under a shelf that is just higher, however little', () => {
    // Every place keeps its height: all of this tube is 22.225 mm over and under the bend plane, and 0.1 counts as touched.
    const shape = { bends: [70, 80, 90].map((angle) => ({ rotation: 0, angle })), straights: [900, 400, 300, 900] };
    const slab = (name: string, centre: number) =>
      ({ name, kind: 'box', centre: [0, 0, centre], size: [9000, 9000, 400], rotation: [0, 0, 0] }) as const;
    const hitWith = (gap: number, sign: 1 | -1, front: 'A' | 'B') => {
      const tube = bendable(shape, { room: [slab('Slab', 900 + sign * (200 + 22.225 + 0.1 + gap))] });
      const hit = firstHit(tube, new Set([1, 3]), { bend: 2, front }, Math.PI / 2);
      return touchedIn(hit);
    };
    for (const sign of [1, -1] as const) {
      for (const front of ['A', 'B'] as const) {
        for (const gap of [0.006, 0.02]) expect(hitWith(gap, sign, front)).not.toBe('Slab');
        expect(hitWith(-0.01, sign, front)).toBe('Slab');
      }
    }
  });

  it('does not count as touched what the tools hold, nor a bend as near as the clamp allows, whichever way it goes', () => {
    const ends = [
      { bend: 1, front: 'B' },
      { bend: 2, front: 'A' },
    ] as const;
    for (const rotation of [0, 30, 60, 90, 120, 180, -45, -90, -150]) {
      for (const angle of [8, 45, 90]) {
        for (const made of [8, 60, 100]) {
          const shape = {
            bends: [
              { rotation: 0, angle: made },
              { rotation, angle },
            ],
            straights: [300, DIE.leastStraight, 300],
          };
          const tube = bendable(shape, { planeHeight: 2000 });
          for (const step of ends) {
            expect(firstHit(tube, new Set([3 - step.bend]), step, pulledAngle(tube, step.bend))).toBeNull();
          }
        }
      }
    }
  });

  it('is tried on tubes that touch at once, on the way and never, with all parts of machine and room', () => {
    const touched = new Set(CASES.map(({ hit }) => touchedIn(hit)));
    expect([...touched].toSorted()).toEqual(
      expect.arrayContaining(['Bench', 'Wall', 'itself', 'nothing', 'floor', 'die']),
    );
    const later = CASES.filter(({ hit }) => hit !== null && hit.angle > 0.05);
    expect(later.length).toBeGreaterThan(30);
    expect(CASES.filter(({ hit }) => hit === null).length).toBeGreaterThan(40);
  });

  /** Least clearance found over `count` angles up to the first touch, or to the end. */
  const sampled = ({ tube, made, step, hit }: Case, count: number, spacing: number): number => {
    const until = hit === null ? pulledAngle(tube, step.bend) : hit.angle * (1 - 1e-9);
    const angles = Array.from({ length: count + 1 }, (_, i) => (until * i) / count);
    const gapAt = sampler(tube, made, step, spacing);
    return Math.min(...angles.map((angle) => gapAt(angle).gap));
  };

  it('touches nothing before its first touch, by sampling', () => {
    for (const each of CASES) if (each.hit?.angle !== 0) expect(sampled(each, 12, 12)).toBeGreaterThan(TOUCH);
  });

  /**
   * Finer than what the sweep leaves open, 0.03 mm: from one angle to the next nothing moves by more than a tenth of that, and
   * between two places on the steel a touch hides by less than a tenth of it. So fine it is only just before the touch that is
   * found and about the least gaps, which are looked for by the degree, then by the tenth of a degree; elsewhere by the degree.
   */
  it('touches nothing before it by samples ten times finer than what it leaves open, about its touch and its least gaps', () => {
    const onTheWay = CASES.filter(({ hit }) => hit !== null && hit.angle > 0.05);
    const never = CASES.filter(({ hit, made }) => hit === null && made.size > 0).slice(0, 40);
    expect(onTheWay.length + never.length).toBeGreaterThan(70);
    let touched = 0;
    const kindOf = ({ step, hit }: Case): string => [step.front, touchedIn(hit), hit?.by].join(', ');
    const tried = oneOfEach([...onTheWay, ...never], kindOf);
    for (const each of tried) {
      const { tube, made, step, hit } = each;
      const until = hit === null ? pulledAngle(tube, step.bend) : hit.angle * (1 - 1e-12);
      const fine = OPEN / 10 / fastest(each);
      const whole = sampler(tube, made, step, 9);
      for (const near of leastAngles(whole, 0, until, DEGREE, 3)) {
        const [closer] = leastAngles(whole, Math.max(0, near - DEGREE), Math.min(until, near + DEGREE), DEGREE / 10, 1);
        let [least, spread] = [closer!, DEGREE / 10];
        const gapAt = sampler(tube, made, step, FINE_SPACING, about(whole(least)));
        while (spread > fine) {
          const [low, high] = [Math.max(0, least - spread), Math.min(until, least + spread)];
          spread = Math.max(fine, spread / 10);
          [least] = leastAngles(gapAt, low, high, spread, 1) as [number];
          expect(gapAt(least).gap).toBeGreaterThan(TOUCH);
          if (spread === fine) break;
        }
      }
      if (hit === null) continue;
      const gapAt = sampler(tube, made, step, FINE_SPACING, steelAt(each, hit));
      for (let i = 0; i < 200; i++) expect(gapAt(Math.max(0, until - i * fine)).gap).toBeGreaterThan(TOUCH);
      // And there it is touched, as the samples have it too; what is behind is not sampled past the arc that is being made.
      if (hit.by === 'rear' && hit.solid === null) continue;
      expect(gapAt(hit.angle).gap).toBeLessThan(TOUCH + OPEN + OPEN / 10);
      touched += 1;
    }
    expect(touched).toBeGreaterThan(tried.length / 4);
  });

  it('touches there and then, at the place it names', () => {
    for (const { tube, made, step, hit } of CASES) {
      if (hit === null) continue;
      const { front, arc, rear } = poseAt(tube, made, step, hit.angle);
      const own = hit.by === 'front' ? front : rear;
      expect(nearestOnPath(own, hit.at).distance).toBeLessThan(0.006);
      const radius = tube.section.outerDiameter / 2;
      if (hit.solid === null) {
        const others = [hit.by === 'front' ? rear : front, ...(arc === null ? [] : [arc])];
        const gap = Math.min(...others.map((path) => nearestOnPath(path, hit.at).distance)) - 2 * radius;
        expect(gap).toBeLessThan(TOUCH + OPEN);
      } else {
        const solid = solidsAt(tube, hit.angle).find(({ id }) => nameOf(id) === nameOf(hit.solid!))!;
        expect(away(hit.at, solid) - radius).toBeLessThan(TOUCH + OPEN);
      }
    }
  });
});
