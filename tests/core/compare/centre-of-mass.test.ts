/** The centre of mass against a plain sum over small pieces of wall, and what is known without a sum. */
import { expect, it } from 'vitest';
import { centreOfMass, centreOfTube } from '../../../src/core/compare/centre-of-mass.ts';
import { placeAt } from '../../../src/core/geometry/path.ts';
import { cross, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { derived, tube } from '../frame.ts';

/** Every bit of wall: at so many places along the tube, round it and through it, weighed by what it is of the bend. */
function summed({ path, ends, section }: SolvedTube): Vec3 {
  const [from, to] = [ends[0].meanTrim, path.length - ends[1].meanTrim];
  const sum = [0, 0, 0];
  let whole = 0;
  const [along, round, through] = [1200, 48, 6];
  for (let i = 0; i < along; i++) {
    const at = from + ((i + 0.5) * (to - from)) / along;
    const { point, tangent } = placeAt(path, at);
    const piece = path.pieces.find((each) => at >= each.at && at <= each.at + each.length)!;
    const out = Math.abs(tangent[0]) < 0.9 ? cross(tangent, [1, 0, 0]) : cross(tangent, [0, 1, 0]);
    const size = Math.hypot(...out);
    const a = out.map((part) => part / size) as unknown as Vec3;
    const b = cross(tangent, a);
    for (let j = 0; j < round; j++) {
      const angle = (2 * Math.PI * (j + 0.5)) / round;
      for (let k = 0; k < through; k++) {
        const radius = section.outerDiameter / 2 - (section.wall * (k + 0.5)) / through;
        const away = [0, 1, 2].map((n) => radius * (Math.cos(angle) * a[n]! + Math.sin(angle) * b[n]!));
        const place = point.map((part, n) => part + away[n]!);
        // Farther from the bend's axis there is more steel to an angle.
        const share =
          piece.kind === 'line'
            ? 1
            : Math.hypot(...place.map((part, n) => part - piece.centre[n]! - axisPart(place, piece, n))) / piece.radius;
        const weight = radius * share;
        whole += weight;
        place.forEach((part, n) => (sum[n]! += weight * part));
      }
    }
  }
  return sum.map((part) => part / whole) as unknown as Vec3;
}

/** How far the place lies along the bend's axis. */
function axisPart(place: readonly number[], { centre, normal }: { centre: Vec3; normal: Vec3 }, n: number): number {
  const along = place.reduce((all, part, i) => all + (part - centre[i]!) * normal[i]!, 0);
  return along * normal[n]!;
}

it('of each tube of the demo is that of its wall, summed up bit by bit', () => {
  const frame = derivedFrom(demoText());
  for (const each of [frame.byId.get('hoop')!, frame.byId.get('leg')!, frame.byId.get('door')!]) {
    const [centre, bits] = [centreOfTube(each), summed(each)];
    for (const axis of [0, 1, 2] as const) expect(centre[axis]).toBeCloseTo(bits[axis], 1);
  }
});

it('of a cage that is the same left and right lies in the middle', () => {
  const frame = derived({
    nodes: { a: [100, 600, 0], b: [100, 600, 900] },
    members: [{ id: 'post', path: ['a', 'b'], mirror: true, ends: [{ fit: 'square' }, { fit: 'square' }] }],
  });
  expect(tube(frame, 'post').path.length).toBe(900);
  const centre = centreOfMass(frame)!;
  [100, 0, 450].forEach((mm, axis) => expect(centre[axis]).toBeCloseTo(mm, 9));
  expect(centreOfMass({ tubes: [] })).toBeNull();
});
