import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { signedAngle } from '../../../src/core/geometry/angle.ts';
import { placeAt, type ArcPiece } from '../../../src/core/geometry/path.ts';
import { distance, normalize, rotateAbout, subtract, X_AXIS, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import type { Pose } from '../../../src/core/rehearse/types.ts';
import type { RotationReading } from '../../../src/core/run/rotation-reading.ts';
import { tapeList } from '../../../src/core/marks/tape.ts';
import { onTheWay } from '../../../src/view/rehearsal/motion.ts';
import { layStages } from '../../../src/view/rehearsal/rehearsed.ts';
import { layWall, makeWall, ringsOf } from '../../../src/view/rehearsal/wall.ts';
import { bentTube, orderOf } from './bent.ts';

/** Places along the blank from end A, by the part of its length. */
function along(pose: Pose, front: 'A' | 'B', part: number): Vec3 {
  const length = pose.front.length + (pose.arc?.length ?? 0) + pose.rear.length;
  const fromFront = (front === 'A' ? part : 1 - part) * length;
  if (fromFront <= pose.front.length) return placeAt(pose.front, pose.front.length - fromFront).point;
  const left = fromFront - pose.front.length;
  const arc = pose.arc;
  if (arc !== null && left <= arc.length) return placeAt(arc, arc.length - left).point;
  return placeAt(pose.rear, left - (arc?.length ?? 0)).point;
}

/** Radians: half of the level's division, a tenth of a degree. */
const SHOWN = (0.05 * Math.PI) / 180 + 1e-9;

/** Clockwise as seen from behind, along the feed. */
const rolled = (turn: RotationReading | null): number =>
  ((turn!.sense === 'anticlockwise' ? -1 : 1) * turn!.turn * Math.PI) / 180;

const PARTS = [0, 0.13, 0.31, 0.5, 0.77, 0.9, 1];

describe.each(['left', 'right'] as const)('a bender that turns %s', (turns) => {
  const tube = bentTube(turns);
  const orders = {
    plain: orderOf(tube, [
      [1, 'A', null],
      [2, 'A', 1],
      [3, 'A', 2],
      [4, 'A', 3],
    ]),
    'out of the middle, turned end for end': orderOf(tube, [
      [3, 'A', null],
      [4, 'A', 3],
      [2, 'B', 3],
      [1, 'B', 2],
    ]),
    'with a made bend behind': orderOf(tube, [
      [3, 'A', null],
      [1, 'A', 3],
      [2, 'A', 1],
      [4, 'B', 3],
    ]),
  };

  it.each(Object.entries(orders))('%s: each way leads from where the last bend left the tube', (_, order) => {
    const stages = layStages(tube, order);
    expect(stages[0]!.way).toBeNull();
    for (let i = 1; i < stages.length; i += 1) {
      const [last, next] = [stages[i - 1]!, stages[i]!];
      const before = last.poseAt(last.step.net);
      const ready = next.poseAt(0);
      const [atStart, atEnd] = [onTheWay(next.way!, 0), onTheWay(next.way!, 1)];
      for (const part of PARTS) {
        const place = along(ready, next.step.front, part);
        const began = new Vector3(...place).applyMatrix4(atStart).toArray();
        expect(distance(began, along(before, last.step.front, part)), `step ${i + 1}, ${part}`).toBeLessThan(0.01);
        expect(distance(new Vector3(...place).applyMatrix4(atEnd).toArray(), place)).toBeLessThan(1e-6);
      }
    }
  });

  it('in the plain order the tube stays on the feed all the way, and is turned by the roll that is given', () => {
    const stages = layStages(tube, orders.plain);
    for (const { way, turn, poseAt } of stages.slice(1)) {
      const roll = rolled(turn);
      expect(way!.fed).toBe(true);
      const { rear } = poseAt(0);
      for (const part of [0, 0.3, 0.6, 0.9]) {
        const [, y, z] = new Vector3(...rear.pieces.at(-1)!.to).applyMatrix4(onTheWay(way!, part)).toArray();
        expect(Math.hypot(y, z - 900)).toBeLessThan(1e-6);
      }
      // A leg that stood level to the machine's side stands so much clockwise of it, seen along the feed, to what the level shows.
      const side: Vec3 = [0, turns === 'left' ? 1 : -1, 0];
      const turned = new Vector3(...side).applyQuaternion(way!.turn).toArray();
      expect(Math.abs(signedAngle(side, turned, X_AXIS) - roll)).toBeLessThan(SHOWN);
      expect(distance(rotateAbout(side, X_AXIS, roll), turned)).toBeLessThan(SHOWN);
    }
  });

  it('shows each roll as the tape has it, in any order of bending', () => {
    const bends = [1, 2, 3, 4];
    const all: readonly (readonly number[])[] = bends.flatMap((a) =>
      bends.flatMap((b) =>
        bends.flatMap((c) => bends.filter((d) => new Set([a, b, c, d]).size === 4).map((d) => [a, b, c, d])),
      ),
    );
    expect(all).toHaveLength(24);
    for (const [i, numbers] of all.entries()) {
      // Each order with ends in front of its own; all sixteen ways come up.
      const order = numbers.map((bend, k): BendStep => ({ bend, front: ((i * 5) >> k) & 1 ? 'A' : 'B' }));
      const taped = tapeList(tube, { from: 'A', mark: 'start', step: 1, order })!.steps;
      const stages = layStages(
        tube,
        orderOf(
          tube,
          taped.map(({ bend, front, rotationFrom }) => [bend, front, rotationFrom]),
        ),
      );
      for (const [k, { turn, step, poseAt }] of stages.entries()) {
        if (turn === null) continue;
        // Read off the tube as it lies: towards what side the bend leads that the turn counts from.
        const { front, rear } = poseAt(0);
        const ahead = turn.zeroOn < step.bend === (step.front === 'A');
        const arc = (ahead ? front : rear).pieces.find((piece): piece is ArcPiece => piece.kind === 'arc')!;
        const leads = normalize(subtract(arc.centre, arc.from));
        const side: Vec3 = [0, turns === 'left' ? 1 : -1, 0];
        const off = signedAngle(rotateAbout(side, X_AXIS, rolled(turn)), leads, X_AXIS);
        expect(Math.abs(off), `${JSON.stringify(order)}, step ${k + 1}`).toBeLessThan(SHOWN);
      }
    }
  });

  it('lifts the tube over the machine where it is turned end for end', () => {
    const [, , turned] = layStages(tube, orders['out of the middle, turned end for end']);
    expect(turned!.turned).toBe(true);
    expect(turned!.way!.fed).toBe(false);
    const middle = new Vector3(0, 0, 900).applyMatrix4(onTheWay(turned!.way!, 0.5));
    expect(middle.z).toBeGreaterThan(1100);
  });

  it('sweeps the end in front from where it lies ready to where it is let go', () => {
    for (const { step, swept, poseAt } of layStages(tube, orders.plain)) {
      expect(distance(swept[0]!, poseAt(0).front.pieces.at(-1)!.to)).toBeLessThan(1e-9);
      expect(distance(swept.at(-1)!, poseAt(step.pulled).front.pieces.at(-1)!.to)).toBeLessThan(1e-9);
      // The die's axis stays as far from it all the way.
      const y = turns === 'left' ? 152.4 : -152.4;
      const away = swept.map((place) => Math.hypot(place[0], place[1] - y));
      for (const one of away) expect(one).toBeCloseTo(away[0]!, 6);
    }
  });
});

it('a wall lies round its path, and is laid anew without leaving anything of the last one', () => {
  const [, stage] = layStages(
    bentTube(),
    orderOf(bentTube(), [
      [1, 'A', null],
      [2, 'A', 1],
    ]),
  );
  const { front, rear } = stage!.poseAt(0.7);
  const wall = makeWall(Math.max(ringsOf(front), ringsOf(rear)));
  for (const path of [front, rear, front]) {
    const count = layWall(wall, path, 22);
    const used = new Set(wall.indices.subarray(0, count));
    expect(used.size).toBe(20 * ringsOf(path));
    let onWall = 0;
    for (const vertex of used) {
      const place = [0, 1, 2].map((axis) => wall.positions[3 * vertex + axis]!) as unknown as Vec3;
      const nearest = Math.min(
        ...Array.from({ length: 400 }, (_, i) => distance(place, placeAt(path, (path.length * i) / 399).point)),
      );
      expect(nearest).toBeLessThan(22.6);
      if (nearest > 21.9) onWall += 1;
    }
    expect(onWall).toBe(20 * (ringsOf(path) - 1));
  }
});
