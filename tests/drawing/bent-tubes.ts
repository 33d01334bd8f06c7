/** Bent tubes for the tests of their pictures: 40 mm on a radius of 100 mm, their ends square. */
import fc from 'fast-check';
import { derive } from '../../src/core/derive.ts';
import { addScaled, rotateAbout, type Vec3 } from '../../src/core/geometry/vector.ts';
import { sawnTube, type SawnTube } from '../../src/core/run/sawn-tube.ts';
import { jobOf } from '../core/frame.ts';
import type { Triple } from '../laws/frames.ts';

const SECTION = { id: 's', outerDiameter: 40, wall: 3 };
const DIE = { id: 'd', outerDiameter: 40, centrelineRadius: 100 };

export function bar(path: readonly Triple[]): SawnTube {
  const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
  const ends = [{ fit: 'square' }, { fit: 'square' }];
  const members = [{ id: 'bar', section: 's', die: 'd', path: Object.keys(nodes), ends }];
  const derivation = derive(jobOf({ nodes, sections: [SECTION], dies: [DIE], members }));
  if (!derivation.ok) throw new Error('derives');
  return sawnTube(derivation.value.byId.get('bar')!);
}

/** Of 1 to 6 bends, in one plane and not: legs that are long enough for them, as one walks along it and turns. */
export const anyTube = fc
  .record({
    first: fc.integer({ min: 60, max: 700 }),
    steps: fc.array(
      fc.record({
        degrees: fc.integer({ min: 8, max: 110 }),
        turned: fc.integer({ min: -180, max: 180 }),
        leg: fc.integer({ min: 300, max: 800 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    isFlat: fc.boolean(),
  })
  .map(({ first, steps, isFlat }) => {
    let [way, normal]: [Vec3, Vec3] = [
      [1, 0, 0],
      [0, 1, 0],
    ];
    const path: Triple[] = [[100, 200, 300]];
    const go = (leg: number) => void path.push(addScaled(path.at(-1)!, way, leg));
    go(first + 150);
    for (const { degrees, turned, leg } of steps) {
      normal = rotateAbout(normal, way, isFlat ? (turned > 60 ? Math.PI : 0) : (turned * Math.PI) / 180);
      way = rotateAbout(way, normal, (degrees * Math.PI) / 180);
      go(leg);
    }
    return bar(path);
  });
