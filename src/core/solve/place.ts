/**
 * Where a node stands, each kind of place in closed form. Those on a tube's centreline: place-on-tube.ts.
 */
import { FARTHEST } from '../geometry/tolerance.ts';
import { AXIS_INDEX, add, addScaled, interpolate, type Vec3 } from '../geometry/vector.ts';
import { figure } from '../job/fault.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { clearShift } from '../job/places/point.ts';
import type { RayPlace } from '../job/places/ray.ts';
import { placeAtCrossing, placeOnTube } from './place-on-tube.ts';
import { coordinateOf, pointAt, type Placing, type Solved } from './solved.ts';

/** The node's place, or the trouble with the field of `at` it stands in. */
export function placeNode(node: FrameNode, solved: Solved): Placing {
  const placing = placeOf(node, solved);
  if ('position' in placing && placing.position.some((value) => !(Math.abs(value) <= FARTHEST))) {
    return { trouble: 'lies farther than 100 m from the datum', field: '' };
  }
  return placing;
}

function placeOf({ id, at }: FrameNode, solved: Solved): Placing {
  switch (at.kind) {
    case 'fixed':
      return { position: at.position };
    case 'point': {
      const beside = add(pointAt(at.point, solved), at.offset);
      return { position: add(beside, clearShift(at.clear, solved.thickest(id))) };
    }
    case 'between':
      return { position: interpolate(solved.node(at.nodes[0]), solved.node(at.nodes[1]), at.fraction) };
    case 'on':
      return placeOnTube(at, solved);
    case 'ray':
      return placeOnRay(at, solved);
    case 'lined-up':
      return {
        position: [coordinateOf(at.x, 'x', solved), coordinateOf(at.y, 'y', solved), coordinateOf(at.z, 'z', solved)],
      };
    case 'crossing':
      return placeAtCrossing(at, solved);
  }
}

function placeOnRay(at: RayPlace, solved: Solved): Placing {
  const from = solved.node(at.from);
  const axis = AXIS_INDEX[at.until.axis];
  const reach = (at.until.value - from[axis]) / at.direction[axis];
  if (!(reach >= 0) || reach === Infinity) {
    return {
      trouble: `from there this direction never reaches ${at.until.axis} = ${figure(at.until.value)}`,
      field: '.direction',
    };
  }
  const end = addScaled(from, at.direction, reach);
  // The plane's own coordinate exactly, not through the division and back.
  const position: Vec3 = [
    axis === 0 ? at.until.value : end[0],
    axis === 1 ? at.until.value : end[1],
    axis === 2 ? at.until.value : end[2],
  ];
  return { position };
}
