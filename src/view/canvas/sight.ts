/**
 * Which tube is seen at a pixel. Worked out on the screen from centrelines; a tree of boxes round their pieces, in car axes,
 * names the few tubes that can lie there, so that a label or a pointer does not ask all of them, however the frame is turned.
 */
import { boxRound, buildBoxTree, visitBoxes, type Box, type BoxTree } from '../../core/geometry/box-tree.ts';
import { dot, type Vec3 } from '../../core/geometry/vector.ts';
import { centrelineChain } from '../../core/mesh/sweep.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Projection } from '../camera/projection.ts';
import { remembered } from '../../core/remembered.ts';

/** One piece of a tube's centreline, a straight or a bend in steps. */
interface Stretch {
  readonly tube: SolvedTube;
  readonly chain: readonly Vec3[];
  readonly box: Box;
}

/** The tubes of one frame, ready to be looked for. */
export interface Sight {
  readonly stretches: readonly Stretch[];
  readonly boxes: readonly Box[];
  readonly tree: BoxTree;
}

export function sightOf(tubes: readonly SolvedTube[]): Sight {
  const stretches = tubes.flatMap(stretchesOf);
  const boxes = stretches.map(({ box }) => box);
  return { stretches, boxes, tree: buildBoxTree(boxes) };
}

const stretchesOf = remembered((tube: SolvedTube): readonly Stretch[] =>
  tube.path.pieces.map((piece) => {
    const chain = centrelineChain({ pieces: [piece], length: piece.length });
    return { tube, chain, box: boxRound(chain, tube.section.outerDiameter / 2) };
  }),
);

interface Seen {
  /** Pixels by which the pixel misses the wall; 0 or less when it hits. */
  readonly past: number;
  /** Where it hits the wall, mm towards the eye. */
  readonly depth: number;
}

/** Calls `seen` with each straight part of a stretch as it lies under, or beside, a pixel. */
function look({ tube, chain }: Stretch, view: Projection, x: number, y: number, seen: (part: Seen) => void): void {
  const radius = tube.section.outerDiameter / 2;
  const wide = radius * view.pixelsPerMm;
  let a = view.toScreen(chain[0]!);
  for (let i = 1; i < chain.length; i += 1) {
    const b = view.toScreen(chain[i]!);
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / square));
    const away = Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
    const proud = Math.sqrt(Math.max(0, 1 - (away / wide) ** 2)) * radius;
    seen({ past: away - wide, depth: a.depth + t * (b.depth - a.depth) + proud });
    a = b;
  }
}

/** A tube under a pixel. */
export interface TubeInSight {
  readonly tube: SolvedTube;
  /** Of its wall there, or beside there, mm towards the eye from the middle of the view. */
  readonly depth: number;
}

/**
 * The tube under a pixel: of those hit the one nearest to the eye, else the one missed by least, within `reach` pixels. Of
 * equals the first in build order.
 */
export function tubeAt(sight: Sight, view: Projection, x: number, y: number, reach: number): TubeInSight | null {
  const hit = { index: -1, depth: -Infinity };
  const missed = { index: -1, past: Infinity, depth: 0 };
  visitBoxes(sight.tree, sight.boxes, boxesInSight(view, x, y, reach, hit), (index) =>
    look(sight.stretches[index]!, view, x, y, ({ past, depth }) => {
      if (past <= 0) {
        if (depth > hit.depth || (depth === hit.depth && index < hit.index)) Object.assign(hit, { index, depth });
      } else if (past <= reach) {
        if (past < missed.past || (past === missed.past && index < missed.index))
          Object.assign(missed, { index, past, depth });
      }
    }),
  );
  const { index, depth } = hit.index >= 0 ? hit : missed;
  const stretch = sight.stretches[index];
  return stretch === undefined ? null : { tube: stretch.tube, depth };
}

/** Whether another tube lies before the place, which stands on the centreline of `tube`. */
export function isHidden(sight: Sight, view: Projection, place: Vec3, tube: SolvedTube): boolean {
  const { x, y, depth } = view.toScreen(place);
  const before = { depth: depth + tube.section.outerDiameter / 2 };
  let hidden = false;
  visitBoxes(sight.tree, sight.boxes, boxesInSight(view, x, y, 0, before), (index) => {
    const stretch = sight.stretches[index]!;
    if (hidden || stretch.tube === tube) return;
    look(stretch, view, x, y, (part) => {
      if (part.past <= 0 && part.depth > before.depth) hidden = true;
    });
    // One is enough: nothing more is looked for.
    if (hidden) before.depth = Infinity;
  });
  return hidden;
}

/** mm, for what arithmetic leaves over. */
const SLACK = 1e-6;

/** Whether a box comes within reach of the line of sight through a pixel, and is not all behind the depth asked for. */
function boxesInSight(
  view: Projection,
  x: number,
  y: number,
  reach: number,
  least: { readonly depth: number },
): (box: Box) => boolean {
  const { right, up, toEye } = view;
  const place = view.toPlace(x, y);
  const margin = reach / view.pixelsPerMm + SLACK;
  const [across, high] = [dot(place, right), dot(place, up)];
  // Depths count from the plane in which the place lies.
  const level = dot(place, toEye);
  /** From its middle to its farthest corner that way. */
  const half = ({ low, high: top }: Box, way: Vec3): number =>
    ((top[0] - low[0]) * Math.abs(way[0]) +
      (top[1] - low[1]) * Math.abs(way[1]) +
      (top[2] - low[2]) * Math.abs(way[2])) /
    2;
  const middle = ({ low, high: top }: Box, way: Vec3): number =>
    ((top[0] + low[0]) * way[0] + (top[1] + low[1]) * way[1] + (top[2] + low[2]) * way[2]) / 2;
  return (box) =>
    Math.abs(middle(box, right) - across) <= half(box, right) + margin &&
    Math.abs(middle(box, up) - high) <= half(box, up) + margin &&
    middle(box, toEye) - level + half(box, toEye) + SLACK >= least.depth;
}
