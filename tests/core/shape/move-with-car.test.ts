/** The car's axes laid otherwise: the cage stays where it is on the car. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { setDatum, withoutDatum } from '../../../src/core/edit/datum.ts';
import { withoutHolds } from '../../../src/core/edit/holds.ts';
import {
  datumOf,
  datumTrouble,
  heldOtherwise,
  laidBy,
  tooFewHeld,
  type Datum,
} from '../../../src/core/survey/datum.ts';
import { moved, type RigidMotion } from '../../../src/core/geometry/rigid-motion.ts';
import { distance, dot } from '../../../src/core/geometry/vector.ts';
import type { Hold } from '../../../src/core/job/kinds/hold.ts';
import type { Measurement } from '../../../src/core/job/kinds/measurement.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { isPrimed } from '../../../src/core/job/reference.ts';
import { referencesOf } from '../../../src/core/job/references.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { envelopeBox, placeAmong } from '../../../src/core/solve/envelope-box.ts';
import { align, residualsOf } from '../../../src/core/scan/align.ts';
import { inCar, placingOf } from '../../../src/core/scan/place.ts';
import { laidByPairs, pairsInCar } from '../../../src/core/shape/scans.ts';
import { notLaidInWords } from '../../../src/core/words/datum.ts';
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

const AT = { x: 0, y: 1, z: 2 } as const;

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
    expect(setDatum(job, datum)).toBe(job);
    expect(withoutDatum(measured)).toBe(measured);
    expect(datumTrouble(measured, datum)).toBeNull();
    expect(datumTrouble(measured, { ...datum, level: [rear, rear, front] })).toBe('level-twice');
    expect(datumTrouble(measured, { ...datum, centre: [[rear], [rear]] })).toBe('centre-twice');
    expect(datumTrouble({ ...measured, points: [] }, datum)).toBe('not-measured');
  });

  it('is not read from what is held otherwise: laid again, another car would come of it', () => {
    const datum: Datum = {
      level: [rear, front, third],
      height: 300,
      centre: [[rear, third], [front]],
      zero: rear,
      station: -10,
    };
    const job = setDatum(measured, datum);
    const other = (change: (hold: Hold, i: number) => Hold | null) => ({
      ...job,
      holds: job.holds.flatMap((hold, i) => change(hold, i) ?? []),
    });
    expect(setDatum(measured, datumOf(job)!)).toEqual(job);
    expect(heldOtherwise(job)).toEqual([]);
    for (const i of [0, 1, 2, 3, 4]) {
      const off = other((hold, k) => (k === i ? { ...hold, value: hold.value + 3 } : hold));
      expect(datumOf(off), `hold ${i}`).toBeNull();
      expect(heldOtherwise(off)).toBe(off.holds);
      expect(tooFewHeld(off)).toBeNull();
    }
    expect(datumOf(other((hold, k) => (k === 5 ? { ...hold, and: third } : hold)))).toBeNull();
    // A point goes, and with it what is held of it: three of six of the rear one, itself and in the mean.
    expect(laidBy(job, new Set([rear]))).toEqual([job.holds[0], job.holds[3], job.holds[5]]);
    expect(laidBy(job, new Set([third]))).toEqual([job.holds[2], job.holds[3]]);
    expect(laidBy(withoutDatum(job), new Set([rear]))).toEqual([]);
    const left = withoutHolds(job, new Set([rear]));
    expect(tooFewHeld(left)).toBe(3);
    expect(notLaidInWords(3)).toBe('The car’s axes are not laid: three of six coordinates are held.');
    expect(tooFewHeld(withoutDatum(job))).toBeNull();
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
        return { ...each, value: turned[AT[each.axis]]! };
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
    // A helmet hangs straight down from its top in whatever axes the car has: the top itself stays where it is on the car.
    const centres = (of: Derived) =>
      of.job.envelopes.map((each) =>
        each.kind === 'box' ? envelopeBox(of.job.points, each).centre : placeAmong(of.job.points, each.helmetTop)!,
      );
    centres(there).forEach((centre, i) =>
      expect(distance(centre, moved(motion, centres(before)[i]!))).toBeLessThan(1e-9),
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
        return { ...each, value: turned[AT[each.axis]]! };
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

  describe('moves all that is given by figures, each as the car moves', () => {
    const own = measured.nodes.find(({ id }) => id === 'rear-top')!;
    const hoop = measured.members.find(({ id }) => id === 'hoop')!;
    /** A node beside its tube, a tube that stands where it was measured, a scan laid by four pairs that do not quite agree. */
    const job: Job = laidByPairs(
      {
        ...measured,
        nodes: measured.nodes.map((node) =>
          node === own && node.at.kind === 'on' ? { ...node, at: { ...node.at, offset: [3, 4, 5] } } : node,
        ),
        bent: [
          {
            tube: hoop.id,
            order: [],
            done: [],
            bends: [],
            checks: [],
            seat: [
              { at: 'A', x: 10, y: 20, z: 30 },
              { at: 'middle', z: 900 },
              { at: 'B', point: rear },
            ],
          },
        ],
        scans: [
          {
            id: 'scan-1',
            name: 'Scan',
            kind: 'points',
            accuracy: 3,
            file: 'scan.ply',
            data: 'sum',
            unit: 'm',
            up: 'y',
            placement: { rotation: [0, 0, 0], shift: [0, 0, 0] },
            pairs: [rear, front, third, `${third}'`].map((point, i) => ({ at: [i, i * i, 1 - i / 2], point })),
            count: 100,
            shown: true,
          },
        ],
      },
      'scan-1',
    );
    const before = solved(job);
    const turn = (2 * Math.PI) / 180;
    const shown = ([x, y, z]: readonly [number, number, number]) =>
      [Math.cos(turn) * x + Math.sin(turn) * z + 40, y, Math.cos(turn) * z - Math.sin(turn) * x - 25] as const;
    const after: Job = {
      ...job,
      measurements: job.measurements.map((each): Measurement =>
        each.kind === 'coordinate' ? { ...each, value: shown(place(each.point))[AT[each.axis]] } : each,
      ),
    };
    const motion: RigidMotion = motionBetween(job, after)!;
    const there = movedWithCar(after, before, motion);
    const close = (one: readonly number[], other: readonly number[]) =>
      one.forEach((value, i) => expect(value).toBeCloseTo(other[i]!, 6));

    it('every place on a scan, so that its pairs fit as well as before', () => {
      const [was, is] = [job.scans[0]!, there.scans[0]!];
      const spots = [[0, 0, 0], [1.2, -0.4, 0.9], ...was.pairs.map(({ at }) => at)] as const;
      spots.forEach((at) => close(inCar(placingOf(is), at), shown(inCar(placingOf(was), at))));
      expect(is.pairs).toBe(was.pairs);
      const [off, stays] = [
        residualsOf(was, pairsInCar(job, was)).distances,
        residualsOf(is, pairsInCar(there, is)).distances,
      ];
      expect(Math.max(...off)).toBeGreaterThan(1);
      close(stays, off);
      // And laid anew by these pairs it comes to lie where it lies.
      const laid = align(is, pairsInCar(there, is));
      expect(laid.ok).toBe(true);
      const anew = laidByPairs(there, 'scan-1').scans[0]!;
      spots.forEach((at) => close(inCar(placingOf(anew), at), inCar(placingOf(is), at)));
    });

    it('every node, also those beside a point or a tube', () => {
      const nodes = solved(there).nodes;
      const beside = job.nodes.filter(({ at }) => 'offset' in at && at.offset.some((value) => value !== 0));
      expect(new Set(beside.map(({ at }) => at.kind))).toEqual(new Set(['on', 'point']));
      for (const [id, at] of before.nodes) expect(distance(nodes.get(id)!, shown(at)), id).toBeLessThan(1e-6);
    });

    it('the normals of feet, each at the angle to its tube at which it was', () => {
      const lean = (frame: Derived) =>
        frame.job.members.flatMap(({ id, ends }) =>
          ends.flatMap((end) =>
            'normal' in end ? [dot(end.normal, frame.byId.get(id)!.path.pieces[0]!.startTangent)] : [],
          ),
        );
      expect(lean(before).length).toBeGreaterThan(3);
      close(lean(solved(there)), lean(before));
      const tilted = there.members.flatMap(({ ends }) =>
        ends.flatMap((end) => ('normal' in end ? [end.normal[0]] : [])),
      );
      expect(Math.max(...tilted.map(Math.abs))).toBeGreaterThan(Math.sin(turn) / 2);
    });

    it('figures by which a tube stands, as many as were read', () => {
      const [a, middle, b] = there.bent[0]!.seat!;
      close([a!.x!, a!.y!, a!.z!], shown([10, 20, 30]));
      expect(Object.keys(middle!)).toEqual(['at', 'z']);
      expect(b).toEqual({ at: 'B', point: rear });
    });

    it('nothing else: what names no figure is the same object', () => {
      const kept = job.nodes.filter(({ at }) => at.kind === 'between');
      expect(kept.length).toBeGreaterThan(0);
      for (const node of kept) expect(there.nodes).toContain(node);
      const plain = job.members.filter(({ ends }) => ends.every((end) => !('normal' in end)));
      expect(plain.length).toBeGreaterThan(0);
      for (const member of plain) expect(there.members).toContain(member);
      expect(there.points).toBe(job.points);
    });
  });

  it('wants three points to see a motion by', () => {
    expect(motionBetween(measured, { ...measured, points: measured.points.slice(0, 2) })).toBeNull();
  });
});
