import { describe, expect, it } from 'vitest';
import { placeAt, type Path } from '../../../src/core/geometry/path.ts';
import { poseAt } from '../../../src/core/rehearse/pose.ts';
import type { Pose } from '../../../src/core/rehearse/types.ts';
import { bendable, DIE } from './tubes.ts';
import { apart, type Triple, unlike } from './turning.ts';

const SHAPE = {
  bends: [
    { rotation: 0, angle: 40 },
    { rotation: 35, angle: 90 },
    { rotation: -120, angle: 65 },
  ],
  straights: [300, 180, 260, 420],
};

/** The tube's centreline from end to end, every 10 mm of it and at both ends. */
function along({ front, arc, rear }: Pose): readonly Triple[] {
  const row = (path: Path | null): readonly Triple[] =>
    path === null ? [] : Array.from({ length: 200 }, (_, i) => placeAt(path, (path.length * i) / 199).point);
  return [...row(front).toReversed(), ...row(arc).toReversed(), ...row(rear)];
}

const ends = ({ front, rear }: Pose): readonly Triple[] =>
  [front, rear].map((path) => placeAt(path, path.length).point);

describe('poseAt', () => {
  const tube = bendable(SHAPE);
  const HEIGHT = 900;

  it('lies along the feed before the first bend, as long as the blank', () => {
    const pose = poseAt(tube, new Set(), { bend: 2, front: 'A' }, 0);
    expect(pose.arc).toBeNull();
    expect(pose.front.length + pose.rear.length).toBeCloseTo(tube.blankLength, 9);
    for (const [, y, z] of along(pose)) {
      expect(y).toBeCloseTo(0, 9);
      expect(z).toBeCloseTo(HEIGHT, 9);
    }
  });

  it('ends, all bends made but one and that one turned to its net angle, as the tube itself', () => {
    for (const bend of [1, 2, 3]) {
      for (const front of ['A', 'B'] as const) {
        const made = new Set([1, 2, 3].filter((each) => each !== bend));
        const pose = poseAt(tube, made, { bend, front }, tube.bends[bend - 1]!.angle);
        const { path } = tube;
        // The same developed lengths on both: where the front ends and the rear begins, the arc between them.
        const { start, end } = tube.bends[bend - 1]!;
        const stations = [0.1, 0.35, 0.6, 0.85].map((share) => share * path.length);
        const onPose = stations.map((at) => {
          const onFront = front === 'A' ? start - at : at - end;
          const onRear = front === 'A' ? at - end : start - at;
          if (onFront >= 0) return placeAt(pose.front, onFront).point;
          if (onRear >= 0) return placeAt(pose.rear, onRear).point;
          return placeAt(pose.arc!, front === 'A' ? end - at : at - start).point;
        });
        const onTube = stations.map((at) => placeAt(path, at).point);
        expect(unlike(onTube, onPose)).toBeLessThan(1e-9);
      }
    }
  });

  it('hands each step the shape that the step before it left', () => {
    const order = [
      { bend: 2, front: 'A' },
      { bend: 1, front: 'A' },
      { bend: 3, front: 'B' },
    ] as const;
    const made = new Set<number>();
    for (const [i, step] of order.slice(0, -1).entries()) {
      const next = order[i + 1]!;
      const left = poseAt(tube, made, step, tube.bends[step.bend - 1]!.angle);
      made.add(step.bend);
      const taken = poseAt(tube, made, next, 0);
      const [a, b] = [ends(left), ends(taken)];
      expect(apart(a[0]!, a[1]!)).toBeCloseTo(apart(b[0]!, b[1]!), 9);
    }
  });

  it('bends to the side that the machine turns, the front going round the die and the rear along the feed', () => {
    const quarter = Math.PI / 2;
    const radius = DIE.centrelineRadius;
    for (const [turns, side] of [
      ['left', 1],
      ['right', -1],
    ] as const) {
      const pose = poseAt(bendable(SHAPE, { turns }), new Set(), { bend: 2, front: 'B' }, quarter);
      const [front, rear] = ends(pose);
      // By hand: the front starts at the die's far side and runs square to the feed.
      expect(front![0]).toBeCloseTo(radius, 9);
      expect(front![1]).toBeCloseTo(side * (radius + pose.front.length), 9);
      expect(rear![0]).toBeCloseTo(-pose.rear.length, 9);
      expect(pose.front.length + pose.rear.length + radius * quarter).toBeCloseTo(tube.blankLength, 9);
    }
  });

  it('is the mirror image on a machine that turns the other way, for the tube mirrored', () => {
    const mirroredShape = {
      ...SHAPE,
      bends: SHAPE.bends.map(({ rotation, angle }) => ({ rotation: -rotation, angle })),
    };
    const other = bendable(mirroredShape, { turns: 'right' });
    const made = new Set([1, 3]);
    const here = along(poseAt(tube, made, { bend: 2, front: 'A' }, 0.7));
    const there = along(poseAt(other, made, { bend: 2, front: 'A' }, 0.7));
    here.forEach(([x, y, z], i) => expect(apart([x, -y, z], there[i]!)).toBeLessThan(1e-9));
  });
});
