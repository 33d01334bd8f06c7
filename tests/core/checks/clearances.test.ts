import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import type { Envelope } from '../../../src/core/job/kinds/envelope.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { jobOf } from '../frame.ts';

/** Two boxes and two tubes whose ids run together to the same text whatever stands between them. */
function alike(between: string): Job {
  const job = jobOf({
    nodes: { a: [0, 0, 0], b: [600, 0, 0], c: [0, 300, 0], d: [600, 300, 0] },
    members: [
      { id: 'first', path: ['a', 'b'] },
      { id: 'second', path: ['c', 'd'] },
    ],
    envelopes: [
      { id: 'near', kind: 'box', centre: [300, 0, 400], size: [100, 100, 100] },
      { id: 'far', kind: 'box', centre: [300, 0, 900], size: [100, 100, 100] },
    ],
  });
  const renamed = <R extends { readonly id: string }>(record: R, id: string): R => ({ ...record, id });
  return {
    ...job,
    members: [renamed(job.members[0]!, `x${between}y`), renamed(job.members[1]!, 'y')],
    envelopes: [renamed(job.envelopes[0]!, 'e'), renamed(job.envelopes[1]!, `e${between}x`)],
  };
}

it.each(['\n', ' ', ',', '/', '\u0000'])('no pair is given the distance of another, with %j within ids', (between) => {
  const job = alike(between);
  const first = derive(job);
  if (!first.ok) throw new Error('derives');
  expect(new Set(first.value.clearances.map(({ distance }) => distance)).size).toBe(4);
  // Everything unchanged is handed on by what is remembered of `first`.
  const again = derive({ ...job, name: 'again' }, first.value);
  expect(again.ok && again.value.clearances).toEqual(first.value.clearances);
  expect(again.ok && again.value.clearances.every((each, i) => each === first.value.clearances[i])).toBe(true);
});

/** The distance from a place to a box turned about x, then z, by its own sine and cosine. */
function toBox(p: readonly number[], size: readonly number[], turns: readonly [number, number]): number {
  const [cx, sx, cz, sz] = turns.flatMap((degrees) => [
    Math.cos((degrees * Math.PI) / 180),
    Math.sin((degrees * Math.PI) / 180),
  ]) as [number, number, number, number];
  const [x, y, z] = [cz * p[0]! + sz * p[1]!, cz * p[1]! - sz * p[0]!, p[2]!];
  const own = [x, cx * y + sx * z, cx * z - sx * y];
  return Math.hypot(...own.map((each, axis) => Math.max(0, Math.abs(each) - size[axis]! / 2)));
}

it('a long straight beside a box that is turned is as near as its axis, less its radius', () => {
  const coordinate = fc.integer({ min: -4000, max: 4000 }).map((tenths) => tenths / 10);
  const side = fc.integer({ min: 60, max: 400 });
  const degrees = fc.integer({ min: -80, max: 80 });
  fc.assert(
    fc.property(
      fc.tuple(coordinate, coordinate),
      fc.tuple(coordinate, coordinate),
      fc.tuple(side, side, side),
      fc.tuple(degrees, degrees),
      (start, stop, size, turns) => {
        const [from, to] = [
          [-3000, ...start],
          [3000, ...stop],
        ] as [[number, number, number], [number, number, number]];
        const off = (share: number): number =>
          toBox(
            from.map((each, i) => each + share * (to[i]! - each)),
            size,
            turns,
          );
        // Convex along the line: thirds close in on the least.
        let [low, high] = [0, 1];
        for (let step = 0; step < 120; step++) {
          const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
          if (off(a) < off(b)) high = b;
          else low = a;
        }
        const least = off((low + high) / 2);
        fc.pre(least > 30);
        const derived = derive(
          jobOf({
            nodes: { a: from, b: to },
            members: [{ id: 'm', path: ['a', 'b'] }],
            envelopes: [{ id: 'e', kind: 'box', centre: [0, 0, 0], size, rotation: [turns[0], 0, turns[1]] }],
          }),
        );
        if (!derived.ok) throw new Error(JSON.stringify(derived.faults));
        const { clearances, tubes } = derived.value;
        expect(clearances[0]!.distance).toBeCloseTo(least - tubes[0]!.section.outerDiameter / 2, 6);
      },
    ),
    { seed: 20261129, numRuns: 200 },
  );
});

describe('a driver', () => {
  const helmetTop = { id: 'top', name: 'Top', position: [300, 40, 520] } as const;
  const other = { id: 'sill', name: 'Sill', position: [0, 600, 0] } as const;
  const driver: Envelope = {
    id: 'driver',
    name: 'Driver',
    kind: 'driver',
    helmetTop: 'top',
    helmet: [350, 260, 270],
    motion: { forward: 60, back: 10, side: 30, up: 20 },
    gap: 50,
  };
  const base = { ...alike(' '), envelopes: [driver] };
  const withPoints = (points: Job['points']): Job => ({ ...base, points });
  const measured = (job: Job, previous?: Derived): Derived => {
    const derived = derive(job, previous);
    if (!derived.ok) throw new Error(JSON.stringify(derived.faults));
    return derived.value;
  };
  const first = measured(withPoints([helmetTop, other]));

  it('is as far from a tube as the box of the helmet with its motion is', () => {
    // The underside of the box stands at 520 - 270, over both tubes, which lie at height 0 as far as y = 300.
    const radius = first.tubes[0]!.section.outerDiameter / 2;
    expect(first.clearances.map(({ distance }) => distance)).toEqual([
      expect.closeTo(250 - radius, 6),
      expect.closeTo(Math.hypot(250, 300 - (40 + 130 + 30)) - radius, 6),
    ]);
  });

  it('is measured again when its point moves, and not when another does', () => {
    const kept = measured(withPoints([helmetTop, { ...other, position: [0, 590, 0] }]), first);
    expect(kept.clearances.every((each, i) => each === first.clearances[i])).toBe(true);
    const lower = withPoints([{ ...helmetTop, position: [300, 40, 510] }, other]);
    const again = measured(lower, first);
    expect(again.clearances).toEqual(measured(lower).clearances);
    expect(again.clearances[0]!.distance).toBeCloseTo(first.clearances[0]!.distance - 10, 6);
  });

  it('stands where its point was measured, not where it was guessed', () => {
    const surveyed = (value: number): Job => ({
      ...withPoints([{ ...helmetTop, by: 'survey', position: [290, 30, 900] }, other]),
      measurements: [
        { id: 'x', kind: 'coordinate', point: 'top', axis: 'x', value: 300 },
        { id: 'y', kind: 'coordinate', point: 'top', axis: 'y', value: 40 },
        { id: 'z', kind: 'coordinate', point: 'top', axis: 'z', value },
      ],
    });
    const read = measured(surveyed(520));
    read.clearances.forEach(({ distance }, i) => expect(distance).toBeCloseTo(first.clearances[i]!.distance, 6));
    const again = measured(surveyed(530), read);
    expect(again.clearances[0]!.distance).toBeCloseTo(read.clearances[0]!.distance + 10, 6);
  });
});
