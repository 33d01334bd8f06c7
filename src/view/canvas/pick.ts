/**
 * What lies under a pointer. Worked out on the screen, so that it costs little and a gloved finger may miss a thin tube by a
 * few pixels.
 */
import { inCar, type Stand } from '../../core/feet/stand.ts';
import type { SolidBox } from '../../core/geometry/solid-box.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { heightOf } from '../../core/job/kinds/foot.ts';
import { remembered } from '../../core/remembered.ts';
import type { EnvelopeId } from '../../core/job/reference.ts';
import type { Selection } from '../../store/types.ts';
import type { OnScreen, Projection } from '../camera/projection.ts';
import { boxCorners, BOX_FACES } from '../meshes/box.ts';
import { tubeAt, type Sight } from './sight.ts';

export interface Spot {
  readonly selection: Selection;
  readonly at: Vec3;
}

export interface Pickable {
  readonly tubes: Sight;
  /** Nodes and points that are drawn, over everything else. */
  readonly spots: readonly Spot[];
  /** A press on one chooses the tube on it. */
  readonly feet: readonly Stand[];
  readonly envelopes: readonly { readonly id: EnvelopeId; readonly box: SolidBox }[];
}

function isInside(polygon: readonly OnScreen[], x: number, y: number): boolean {
  let turns = 0;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    turns += Math.sign((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x));
  });
  return Math.abs(turns) === polygon.length;
}

/** A foot's corners as a box has them; beyond a kink it is taken to lie on. */
const roomOf = remembered((stand: Stand): readonly Vec3[] => {
  const { foot } = stand;
  const side = (i: number, bit: 0 | 1): number => (foot.size[bit] / 2) * ((i >> bit) & 1 ? 1 : -1);
  return Array.from({ length: 8 }, (_, i) => inCar(stand, [side(i, 0), side(i, 1), i & 4 ? heightOf(foot) : 0]));
});

/** Spots first, then tubes, then the feet under them, then envelopes; null over bare floor. `reach` is how far, in pixels, a pointer may miss. */
export function pick(scene: Pickable, view: Projection, x: number, y: number, reach: number): Selection | null {
  let nearest: { selection: Selection; away: number } | null = null;
  for (const spot of scene.spots) {
    const { x: sx, y: sy } = view.toScreen(spot.at);
    const away = Math.hypot(sx - x, sy - y);
    if (away <= 6 + reach && (nearest === null || away < nearest.away)) nearest = { selection: spot.selection, away };
  }
  if (nearest !== null) return nearest.selection;
  const seen = tubeAt(scene.tubes, view, x, y, reach);
  if (seen !== null) return { kind: 'tube', id: seen.tube.id };
  const isOver = (places: readonly Vec3[]): boolean => {
    const corners = places.map(view.toScreen);
    return BOX_FACES.some((face) =>
      isInside(
        face.map((i) => corners[i]!),
        x,
        y,
      ),
    );
  };
  const stand = scene.feet.find((each) => isOver(roomOf(each)));
  if (stand !== undefined) return { kind: 'tube', id: stand.tube.id };
  const envelope = scene.envelopes.find(({ box }) => isOver(boxCorners(box)));
  return envelope === undefined ? null : { kind: 'envelope', id: envelope.id };
}
