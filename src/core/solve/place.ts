/**
 * Where a node stands. Each kind of place in closed form; `on` goes along the host's real centreline, arcs included.
 */
import { placeAt, type Path } from '../geometry/path.ts';
import { FARTHEST, ROUNDING } from '../geometry/tolerance.ts';
import { add, addScaled, interpolate, mirrored, type Vec3 } from '../geometry/vector.ts';
import { figure, quoted } from '../job/fault.ts';
import { bareId, isPrimed, type NodeRef, type TubeRef } from '../job/reference.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Point } from '../job/kinds/point.ts';
import type { OnMember } from '../job/places/on.ts';
import type { Bend } from './types.ts';

/** What a place may refer to, already solved. */
export interface Solved {
  point(id: string): Point;
  node(reference: NodeRef): Vec3;
  tube(reference: TubeRef): { readonly path: Path; readonly bends: readonly Bend[]; readonly developedLength: number };
}

type Placing = { readonly position: Vec3 } | { readonly trouble: string; readonly field: string };

/** The node's place, or the trouble with the field of `at` it stands in. */
export function placeNode(node: FrameNode, solved: Solved): Placing {
  const placing = placeOf(node, solved);
  if ('position' in placing && placing.position.some((value) => !(Math.abs(value) <= FARTHEST))) {
    return { trouble: 'lies farther than 100 m from the datum', field: '' };
  }
  return placing;
}

function placeOf({ at }: FrameNode, solved: Solved): Placing {
  switch (at.kind) {
    case 'fixed':
      return { position: at.position };
    case 'point': {
      const { position } = solved.point(bareId(at.point));
      return { position: add(isPrimed(at.point) ? mirrored(position) : position, at.offset) };
    }
    case 'between':
      return { position: interpolate(solved.node(at.nodes[0]), solved.node(at.nodes[1]), at.fraction) };
    case 'on':
      return placeOnTube(at, solved);
    case 'ray': {
      const from = solved.node(at.from);
      const axis = 'xyz'.indexOf(at.until.axis);
      const reach = (at.until.value - from[axis]!) / at.direction[axis]!;
      if (!(reach >= 0) || reach === Infinity) {
        return {
          trouble: `from there this direction never reaches ${at.until.axis} = ${figure(at.until.value)}`,
          field: '.direction',
        };
      }
      const end = addScaled(from, at.direction, reach);
      // The plane's own coordinate exactly, not through the division and back.
      return {
        position: [
          axis === 0 ? at.until.value : end[0],
          axis === 1 ? at.until.value : end[1],
          axis === 2 ? at.until.value : end[2],
        ],
      };
    }
  }
}

function placeOnTube(at: OnMember, solved: Solved): Placing {
  const { path, bends, developedLength } = solved.tube(at.member);
  let along: number;
  if (at.bend === undefined) {
    along = at.from === 'start' ? at.distance : developedLength - at.distance;
  } else {
    const bend = bends[at.bend - 1];
    if (bend === undefined) {
      const count = bends.length === 1 ? '1 bend' : `${bends.length} bends`;
      return { trouble: `${quoted(at.member)} has ${count}: there is no bend ${at.bend}`, field: '.bend' };
    }
    along = { start: bend.start, middle: (bend.start + bend.end) / 2, end: bend.end }[at.where] + at.distance;
  }
  if (along < -ROUNDING || along > developedLength + ROUNDING) {
    const beyond = `${figure(along)} mm along lies beyond the ends of ${quoted(at.member)}`;
    return { trouble: `${beyond}, which is ${figure(developedLength)} mm long`, field: '.distance' };
  }
  return { position: add(placeAt(path, along).point, at.offset) };
}
