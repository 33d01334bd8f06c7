/**
 * Where the mirror image of a node stands in a frame of which some tube stands as it was built: the two sides of the car are then no mirror
 * images of each other any more. The image is placed as the node itself is, in the car seen in a mirror: on the other tube of a pair, by the
 * images of what it refers to. On a tube that spans the car, seen so, a place counted from end A would be counted from the wrong end: there it
 * is the place of the tube nearest to the mirror image, where that stands on it as drawn. An image that nothing has moved is exactly the image.
 */
import { mirroredPath, nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import { add, distance, mirrored, subtract, type Vec3 } from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { bareId, primed, type TubeRef } from '../job/reference.ts';
import type { Layout } from './lay-out.ts';
import { placeNode } from './place.ts';
import type { Placing, Solved } from './solved.ts';

interface Beside {
  readonly solved: Solved;
  /** The frame as it is drawn. */
  readonly drawn: Layout;
  /** Whether a tube is one of a pair. */
  readonly isMirrored: (tube: TubeRef) => boolean;
}

/** `position` is the node's own place. */
export function placeImage(node: FrameNode, position: Vec3, { solved, drawn, isMirrored }: Beside): Placing {
  const image = mirrored(position);
  const placing = placeOfImage(node, image, { solved, drawn, isMirrored });
  return 'position' in placing && distance(placing.position, image) <= ROUNDING ? { position: image } : placing;
}

function placeOfImage(node: FrameNode, image: Vec3, { solved, drawn, isMirrored }: Beside): Placing {
  const { at } = node;
  if (at.kind === 'on' && !isMirrored(at.member)) {
    const offset = mirrored(at.offset);
    const host = bareId(at.member);
    const drawnAt = subtract(drawn.nodes.get(primed(node.id))!, offset);
    const { path } = drawn.bars.find(({ id }) => id === host)!.centreline;
    if (nearestOnPath(path, drawnAt).distance > MEETING_DISTANCE) return { position: image };
    return { position: add(nearestOnPath(solved.tube(host).path, subtract(image, offset)).point, offset) };
  }
  const placing = placeNode(node, inMirror(solved, isMirrored));
  return 'position' in placing ? { position: mirrored(placing.position) } : placing;
}

/** What has been solved as one sees it in a mirror at the centre plane; a measured point and its image change places, and so are what they were. */
const inMirror = (solved: Solved, isMirrored: (tube: TubeRef) => boolean): Solved => ({
  ...solved,
  node: (reference) => mirrored(solved.node(primed(reference))),
  tube: (reference) => {
    const tube = solved.tube(isMirrored(reference) ? primed(reference) : bareId(reference));
    return { ...tube, path: mirroredPath(tube.path) };
  },
});
