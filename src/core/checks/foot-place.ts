/**
 * Where a tube that stands as it was built, or lies as it was cut, comes down beside its foot, which is on the car where its node is. The foot stays; the
 * tube's axis meets its upper face at another place, or not as high.
 */
import { fitsOn } from '../feet/fits.ts';
import type { Outline } from '../feet/outline.ts';
import { standsOf, type Stand } from '../feet/stand.ts';
import { addScaled, dot, length, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { UNSEEN } from './limits.ts';
import type { OffFoot } from './made-types.ts';

/** Of a tube that leaves the drawing. Less than the tape shows is nothing; how high one stands that is cut already is said of its end. mm. */
export function* offFeet(tube: SolvedTube, frame: Frame): Generator<OffFoot> {
  for (const stand of standsOf(tube)) {
    const { node, position: at, direction } = tube.ends[stand.which];
    const steep = dot(direction, stand.normal);
    if (node === null || stand.outline === null) continue;
    const off = subtract(at, frame.nodes.get(node)!);
    const height = dot(off, stand.normal);
    const aside = seen(addScaled(off, direction, -height / steep));
    const up = tube.held !== null || Math.abs(height) <= UNSEEN ? 0 : height;
    if (length(aside) === 0 && up === 0) continue;
    const { over } = fitsOn(movedBy(stand, stand.outline, aside))!;
    const past = over > UNSEEN ? over : 0;
    yield {
      id: 'made/off-foot',
      severity: past > 0 || up !== 0 ? 'warning' : 'note',
      source: 'practice',
      tube: tube.id,
      end: stand.which === 0 ? 'A' : 'B',
      node,
      at,
      foot: stand.foot.id,
      aside,
      up,
      along: up / steep,
      over: past,
    };
  }
}

/** Along each of the car's axes what a tape shows. */
const seen = ([x, y, z]: Vec3): Vec3 => [shown(x), shown(y), shown(z)];
const shown = (part: number): number => (Math.abs(part) > UNSEEN ? part : 0);

const movedBy = (stand: Stand, outline: Outline, aside: Vec3): Stand => {
  const [a, c] = outline.centre;
  return {
    ...stand,
    outline: { ...outline, centre: [a + dot(aside, stand.along), c + dot(aside, stand.across)] },
  };
};
