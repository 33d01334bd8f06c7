/** The car's axes laid otherwise: the cage stays where it is on the car. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { setDatum, withoutDatum } from '../../../src/core/edit/datum.ts';
import { datumOf, datumTrouble, type Datum } from '../../../src/core/survey/datum.ts';
import { moved } from '../../../src/core/geometry/rigid-motion.ts';
import { distance } from '../../../src/core/geometry/vector.ts';
import type { Measurement } from '../../../src/core/job/kinds/measurement.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { isPrimed } from '../../../src/core/job/reference.ts';
import { referencesOf } from '../../../src/core/job/references.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { motionBetween, movedWithCar } from '../../../src/core/shape/move-with-car.ts';

const solved = (job: Job): Derived => {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
};

/** The demo with every point read by its three coordinates. */
const measured: Job = (() => {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  if (!parsed.ok) throw new Error('the demo must open');
  const { points } = parsed.job;
  return {
    ...parsed.job,
    points: points.map((point) => ({ ...point, by: 'survey' })),
    measurements: points.flatMap(({ id, position }) =>
      (['x', 'y', 'z'] as const).map((axis, k): Measurement => ({
        id: `${id}-${axis}`,
        kind: 'coordinate',
        point: id,
        axis,
        value: position[k]!,
      })),
    ),
  };
})();

/** Whether neither the node nor what it stands on, however far down, names an image or a tube that crosses the centre plane. */
const goesByNoImage = (id: string): boolean => {
  const node = measured.nodes.find((each) => each.id === id);
  if (node === undefined) return false;
  const named = referencesOf('nodes', node);
  return named.every(({ list, to }) => !isPrimed(to) && (list === 'points' || (list === 'nodes' && goesByNoImage(to))));
};

const ids = measured.points.filter(({ position }) => position[1] > 100).map(({ id }) => id);
const place = (id: string) => measured.points.find((each) => each.id === id)!.position;
const far = ids.toSorted((a, b) => place(a)[0] - place(b)[0]);
const [rear, front] = [far[0]!, far.at(-1)!];
const third = ids.find((id) => id !== rear && id !== front)!;

describe('another datum', () => {
  it('can be taken back, and is read from what is held', () => {
    const datum: Datum = {
      level: [rear, front, third],
      height: 300,
      centre: [[rear], [front]],
      zero: rear,
      station: -10,
    };
    const job = setDatum(measured, datum);
    expect(datumOf(job)).toEqual(datum);
    expect(parseJob(serialiseJob(job))).toEqual({ ok: true, job });
    expect(withoutDatum(job)).toEqual(measured);
    expect(datumTrouble(measured, datum)).toBeNull();
    expect(datumTrouble(measured, { ...datum, level: [rear, rear, front] })).toBe('level-twice');
    expect(datumTrouble(measured, { ...datum, centre: [[rear], [rear]] })).toBe('centre-twice');
    expect(datumTrouble({ ...measured, points: [] }, datum)).toBe('not-measured');
  });

  // Turned about the car's own left, and shifted along and up: the centre plane is where it was.
  it('in the same centre plane changes no tube', () => {
    const before = solved(measured);
    const turn = (1.3 * Math.PI) / 180;
    const after: Job = {
      ...measured,
      measurements: measured.measurements.map((each): Measurement => {
        if (each.kind !== 'coordinate') return each;
        const [x, y, z] = place(each.point);
        const turned = [Math.cos(turn) * x + Math.sin(turn) * z + 40, y, Math.cos(turn) * z - Math.sin(turn) * x - 25];
        return { ...each, value: turned[{ x: 0, y: 1, z: 2 }[each.axis]]! };
      }),
    };
    const motion = motionBetween(measured, after)!;
    const there = solved(movedWithCar(after, before, motion));
    expect(there.tubes).toHaveLength(before.tubes.length);
    for (const tube of before.tubes) {
      const same = there.byId.get(tube.id)!;
      tube.corners.forEach((corner, i) => expect(distance(moved(motion, corner), same.corners[i]!)).toBeLessThan(1e-6));
      expect(same.blankLength).toBeCloseTo(tube.blankLength, 4);
      tube.bends.forEach(({ angle }, i) => expect(same.bends[i]!.angle).toBeCloseTo(angle, 9));
    }
    there.job.envelopes.forEach(({ centre }, i) =>
      expect(distance(centre, moved(motion, before.job.envelopes[i]!.centre))).toBeLessThan(1e-9),
    );
    expect(there.findings.map(({ id }) => id)).toEqual(before.findings.map(({ id }) => id));
  });

  it('turned out of that plane leaves each node where it is on the car, but for what goes by images', () => {
    const before = solved(measured);
    const turn = (0.4 * Math.PI) / 180;
    const after: Job = {
      ...measured,
      measurements: measured.measurements.map((each): Measurement => {
        if (each.kind !== 'coordinate') return each;
        const [x, y, z] = place(each.point);
        const turned = [Math.cos(turn) * x - Math.sin(turn) * y, Math.sin(turn) * x + Math.cos(turn) * y, z];
        return { ...each, value: turned[{ x: 0, y: 1, z: 2 }[each.axis]]! };
      }),
    };
    const motion = motionBetween(measured, after)!;
    const there = solved(movedWithCar(after, before, motion));
    const placed = measured.nodes.filter(
      ({ id, at }) => goesByNoImage(id) && ['fixed', 'lined-up', 'ray'].includes(at.kind),
    );
    expect(placed.length).toBeGreaterThan(0);
    for (const { id } of placed) {
      expect(distance(there.nodes.get(id)!, moved(motion, before.nodes.get(id)!)), id).toBeLessThan(1e-6);
    }
  });

  it('wants three points to see a motion by', () => {
    expect(motionBetween(measured, { ...measured, points: measured.points.slice(0, 2) })).toBeNull();
  });
});
