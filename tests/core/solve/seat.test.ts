/** Tubes that were measured in the car: how they lie by it, what follows, and what is said of figures that cannot all be so. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { setSeat, setSeatPoint } from '../../../src/core/edit/seat.ts';
import { setStands } from '../../../src/core/edit/bent.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Seat } from '../../../src/core/job/kinds/bent.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { setStage } from '../../../src/core/shape/made-stage.ts';
import { seatPlace } from '../../../src/core/solve/seat.ts';
import { findingInWords } from '../../../src/core/words/findings.ts';
import { seatPlaceInWords } from '../../../src/core/words/seat.ts';
import { jobOf } from '../frame.ts';

const HOOP = [
  [0, 610, 0],
  [10, 590, 700],
  [15, 430, 1120],
  [15, -430, 1120],
  [10, -590, 700],
  [0, -610, 0],
] as const;

/** A hoop, bent some tenths of a degree off, with a stay that stands on it and another at its foot. */
function frame(seat?: readonly Seat[], more: object = {}): Job {
  const bends = [45, 32, 33.5, 44].map((_, i) => ({
    bend: i + 1,
    pulled: 60,
    net: [16.2, 52.3, 52.0, 15.4][i]!,
  }));
  return jobOf({
    points: [{ id: 'p', name: 'Sill mark', position: [-4, 606, 8] }],
    nodes: {
      ...Object.fromEntries(HOOP.map((place, i) => [`h${i}`, place])),
      top: { kind: 'on', member: 'hoop', bend: 2, where: 'start', distance: -60 },
      foot: [-900, 520, 250],
    },
    sections: [{ id: 's', outerDiameter: 40, wall: 2.5 }],
    dies: [{ id: 'd', outerDiameter: 40, centrelineRadius: 120 }],
    members: [
      { id: 'hoop', name: 'Main hoop', section: 's', die: 'd', path: HOOP.map((_, i) => `h${i}`) },
      { id: 'stay', name: 'Stay', section: 's', path: ['top', 'foot'], mirror: true },
    ],
    bent: [
      {
        tube: 'hoop',
        stands: true,
        order: bends.map(({ bend }) => ({ bend, front: 'A' })),
        done: [],
        bends,
        checks: [],
        ...(seat && { seat }),
      },
    ],
    ...more,
  });
}

function derived(job: Job, previous?: Derived): Derived {
  const derivation = derive(job, previous);
  if (!derivation.ok) throw new Error(derivation.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return derivation.value;
}

const hoopOf = (frame: Derived) => frame.byId.get('hoop')!;
const said = (frame: Derived) =>
  frame.findings.flatMap((finding) =>
    finding.id === 'made/seat-missed' ? [`${finding.severity}: ${findingInWords(finding, frame)}`] : [],
  );
const apart = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((v, k) => v - b[k]!));

describe('a tube that was measured in the car', () => {
  const free = derived(frame());

  it('has what was measured to a millionth of a millimetre, is the same tube, and what stands on it follows', () => {
    const seat = [
      { at: 'A', x: 3, y: 613, z: 1 },
      { at: 'middle', x: 22 },
      { at: 'B', x: -2, z: -1 },
    ] as const;
    const now = derived(frame(seat));
    const hoop = hoopOf(now);
    const [a, middle, b] = seat.map(({ at }) => seatPlace(hoop, at)) as unknown as [number[], number[], number[]];
    [a[0]! - 3, a[1]! - 613, a[2]! - 1, middle[0]! - 22, b[0]! + 2, b[2]! + 1].forEach((miss) =>
      expect(Math.abs(miss)).toBeLessThan(1e-6),
    );
    hoop.corners.forEach((corner, i) =>
      hoop.corners.forEach((other, k) =>
        expect(apart(corner, other)).toBeCloseTo(apart(hoopOf(free).corners[i]!, hoopOf(free).corners[k]!), 8),
      ),
    );
    expect(apart(now.nodes.get('top')!, free.nodes.get('top')!)).toBeGreaterThan(1);
    expect(now.byId.get('stay')!.blankLength).not.toBeCloseTo(free.byId.get('stay')!.blankLength, 1);
    expect(said(now)).toEqual([]);
  });

  it('with one coordinate moves no more than that asks for', () => {
    const height = seatPlace(hoopOf(free), 'A')[2];
    const now = derived(frame([{ at: 'A', z: height + 4 }]));
    expect(seatPlace(hoopOf(now), 'A')[2]).toBeCloseTo(height + 4, 8);
    const moves = hoopOf(now).corners.map((corner, i) => apart(corner, hoopOf(free).corners[i]!));
    expect(Math.max(...moves)).toBeLessThan(4.5);
  });

  it('is where it was while its figures are those that it has', () => {
    const seat = (['A', 'middle', 'B'] as const).map((at) => {
      const [x, y, z] = seatPlace(hoopOf(free), at);
      return { at, x, y, z };
    });
    const now = derived(frame(seat));
    hoopOf(now).corners.forEach((corner, i) => expect(apart(corner, hoopOf(free).corners[i]!)).toBeLessThan(1e-6));
    expect(said(now)).toEqual([]);
  });

  it('says what cannot be so: by how much each place is off, and which two lie otherwise apart on the tube', () => {
    const [ax, ay, az] = seatPlace(hoopOf(free), 'A');
    const [bx, by, bz] = seatPlace(hoopOf(free), 'B');
    const width = apart([ax, ay, az], [bx, by, bz]);
    const wide = derived(
      frame([
        { at: 'A', x: 0, y: 0, z: 0 },
        { at: 'B', x: 0, y: -width - 4, z: 0 },
      ]),
    );
    const show = (mm: number) => mm.toFixed(1);
    expect(said(wide)).toEqual([
      `warning: Main hoop: what was measured in the car cannot all be so: end A and end B were measured ${show(width + 4)} mm apart and lie ${show(width)} mm apart on the tube. Measure again. It stands where the figures are missed least: end A 2.0 mm further to the right and end B 2.0 mm further to the left than measured.`,
    ]);
    const near = derived(
      frame([
        { at: 'A', x: 0, y: 0, z: 0 },
        { at: 'B', x: 0, y: -width - 1.6, z: 0 },
      ]),
    );
    expect(said(near)[0]).toMatch(/^note: .*end A 0\.8 mm/u);
    // A higher middle than the tube has, over feet that stand where they do.
    const high = derived(
      frame([
        { at: 'A', z: 0 },
        { at: 'middle', z: 1130 },
        { at: 'B', z: 0 },
      ]),
    );
    expect(said(high)[0]).toMatch(
      /^warning: Main hoop: what was measured in the car cannot all be so\. Measure again\. .*end A [\d.]+ mm higher, its middle [\d.]+ mm lower and end B [\d.]+ mm higher than measured\.$/u,
    );
  });

  it('says which figure hardly tells, against the same tube with that figure a little more and a little less', () => {
    const feet = [
      { at: 'A', z: 0 },
      { at: 'B', z: 0 },
    ] as const;
    // A little less high than it is: it can only lean, by a lot.
    const height = seatPlace(hoopOf(derived(frame([...feet, { at: 'middle', x: 15 }]))), 'middle')[2];
    const at = (z: number) => derived(frame([...feet, { at: 'middle', z }]));
    const now = at(height - 0.6);
    const loose = now.findings.flatMap((finding) => (finding.id === 'made/seat-loose' ? [finding] : []));
    expect(loose.map(({ place, axis, severity }) => [place, axis, severity])).toEqual([['middle', 'z', 'warning']]);
    const [less, more] = [hoopOf(at(height - 0.61)), hoopOf(at(height - 0.59))];
    const most = Math.max(...less.corners.map((corner, i) => apart(corner, more.corners[i]!)));
    expect(loose[0]!.moves).toBeCloseTo(most / 0.02, 0);
    expect(findingInWords(loose[0]!, now)).toMatch(
      /^Main hoop: of where it stands in the car the height of its middle hardly tells: measured 1\.0 mm otherwise, it moves the tube by [\d.]+ mm\. Clear that figure, or measure there in another direction too\.$/u,
    );
    const told = derived(frame([...feet, { at: 'middle', x: 15 }]));
    expect(told.findings.filter(({ id }) => id === 'made/seat-loose')).toEqual([]);
  });

  it('goes by a point of the job, and follows it; a change of another point leaves every tube what it was', () => {
    const job = frame([{ at: 'A', point: 'p' }]);
    const now = derived(job);
    expect(apart(seatPlace(hoopOf(now), 'A'), [-4, 606, 8])).toBeLessThan(1e-6);
    const moved = { ...job, points: job.points.map((point) => ({ ...point, position: [-4, 600, 8] as const })) };
    const then = derived(moved, now);
    expect(apart(seatPlace(hoopOf(then), 'A'), [-4, 600, 8])).toBeLessThan(1e-6);
    expect(then.tubes).toStrictEqual(derived(moved).tubes);
    const renamed = { ...job, points: job.points.map((point) => ({ ...point, name: 'Other' })) };
    expect(hoopOf(derived(renamed, now))).toBe(hoopOf(now));
    const image = derived(frame([{ at: 'B', point: "p'" }]));
    expect(apart(seatPlace(hoopOf(image), 'B'), [-4, -606, 8])).toBeLessThan(1e-6);
  });

  it('stays there once it is notched, and goes by the drawing where it does not lead', () => {
    const seat = [{ at: 'A', x: 5, y: 611, z: 2 }] as const;
    const job = frame(seat);
    const notched = derived(setStage(job, derived(job), 'hoop', 'notched'));
    expect(hoopOf(notched).held).not.toBeNull();
    expect(apart(seatPlace(hoopOf(notched), 'A'), [5, 611, 2])).toBeLessThan(1e-6);
    const drawn = derived(setStands(job, 'hoop', false));
    expect(hoopOf(drawn).corners).toEqual(hoopOf(derived(setStands(frame(), 'hoop', false))).corners);
  });
});

describe('the figures of it in the job', () => {
  const job = frame();

  it('are set one by one and cleared one by one, which leaves the file as it was, byte for byte', () => {
    const one = setSeat(job, 'hoop', 'B', 'z', 4);
    const two = setSeat(one, 'hoop', 'A', 'x', -2);
    expect(two.bent[0]!.seat).toEqual([
      { at: 'A', x: -2 },
      { at: 'B', z: 4 },
    ]);
    expect(setSeat(two, 'hoop', 'A', 'x', -2)).toBe(two);
    const point = setSeatPoint(two, 'hoop', 'A', 'p');
    expect(point.bent[0]!.seat![0]).toEqual({ at: 'A', point: 'p' });
    expect(setSeat(point, 'hoop', 'A', 'y', 600).bent[0]!.seat![0]).toEqual({ at: 'A', y: 600 });
    expect(setSeatPoint(job, 'hoop', 'A', null)).toBe(job);
    expect(setSeat(job, 'hoop', 'A', 'x', null)).toBe(job);
    expect(setSeat(job, 'stay', 'A', 'x', 1)).toBe(job);
    const cleared = setSeat(setSeatPoint(point, 'hoop', 'A', null), 'hoop', 'B', 'z', null);
    expect(serialiseJob(cleared)).toBe(serialiseJob(job));
    const again = parseJob(serialiseJob(two));
    expect(again.ok && serialiseJob(again.job)).toBe(serialiseJob(two));
  });

  it('say where on the tube they are taken', () => {
    const { byId } = derived(job);
    expect(seatPlaceInWords(byId.get('hoop')!, 'A', job)).toBe('Where its centreline ends: h0.');
    expect(seatPlaceInWords(byId.get('hoop')!, 'middle', job)).toMatch(
      /^On the centreline, half way along it: [\d.]+ mm on from where bend 2 ends\.$/u,
    );
    expect(seatPlaceInWords(byId.get('stay')!, 'middle', job)).toMatch(/: [\d.]+ mm from end A\.$/u);
  });
});
