/**
 * What lies under a pointer. Worked out on the screen from centrelines, so that it costs little and a gloved finger may
 * miss a thin tube by a few pixels.
 */
import type { Vec3 } from '../core/geometry/vector.ts';
import type { Path } from '../core/geometry/path.ts';
import type { Envelope } from '../core/job/types.ts';
import type { SolvedTube } from '../core/solve/types.ts';
import type { Selection } from '../store/types.ts';
import type { OnScreen, Projection } from './camera/projection.ts';
import { boxCorners, BOX_FACES } from './meshes/box.ts';
import { centrelineChain } from '../core/mesh/sweep.ts';

export interface Spot {
  readonly selection: Selection;
  readonly at: Vec3;
}

export interface Pickable {
  readonly tubes: readonly SolvedTube[];
  /** Nodes and points that are drawn, over everything else. */
  readonly spots: readonly Spot[];
  readonly envelopes: readonly Envelope[];
}

interface Near {
  /** Pixels from the pointer. */
  readonly away: number;
  /** mm towards the eye. */
  readonly depth: number;
}

function nearestOnSegment(a: OnScreen, b: OnScreen, x: number, y: number): Near {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / square));
  return { away: Math.hypot(a.x + t * dx - x, a.y + t * dy - y), depth: a.depth + t * (b.depth - a.depth) };
}

const chains = new WeakMap<Path, readonly Vec3[]>();

function chainOf(path: Path): readonly Vec3[] {
  const known = chains.get(path);
  if (known !== undefined) return known;
  const chain = centrelineChain(path);
  chains.set(path, chain);
  return chain;
}

/** A tube's centreline on the screen. */
export interface SeenTube {
  readonly tube: SolvedTube;
  readonly chain: readonly OnScreen[];
}

export const seeTubes = (tubes: readonly SolvedTube[], view: Projection): readonly SeenTube[] =>
  tubes.map((tube) => ({ tube, chain: chainOf(tube.path).map(view.toScreen) }));

/** The tube under a pixel: of those hit the one nearest to the eye, else the one missed by least, within `reach` pixels. */
export function tubeAt(
  seen: readonly SeenTube[],
  pixelsPerMm: number,
  x: number,
  y: number,
  reach: number,
): SolvedTube | null {
  let hit: { tube: SolvedTube; depth: number } | null = null;
  let missed: { tube: SolvedTube; away: number } | null = null;
  for (const { tube, chain } of seen) {
    const radius = tube.section.outerDiameter / 2;
    const wide = radius * pixelsPerMm;
    for (let i = 1; i < chain.length; i += 1) {
      const { away, depth } = nearestOnSegment(chain[i - 1]!, chain[i]!, x, y);
      if (away <= wide) {
        const surface = depth + Math.sqrt(1 - (away / wide) ** 2) * radius;
        if (hit === null || surface > hit.depth) hit = { tube, depth: surface };
      } else if (away <= wide + reach && (missed === null || away - wide < missed.away)) {
        missed = { tube, away: away - wide };
      }
    }
  }
  return (hit ?? missed)?.tube ?? null;
}

function isInside(polygon: readonly OnScreen[], x: number, y: number): boolean {
  let turns = 0;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    turns += Math.sign((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x));
  });
  return Math.abs(turns) === polygon.length;
}

/** Spots first, then tubes, then envelopes; null over bare floor. `reach` is how far, in pixels, a pointer may miss. */
export function pick(scene: Pickable, view: Projection, x: number, y: number, reach: number): Selection | null {
  let nearest: { selection: Selection; away: number } | null = null;
  for (const spot of scene.spots) {
    const { x: sx, y: sy } = view.toScreen(spot.at);
    const away = Math.hypot(sx - x, sy - y);
    if (away <= 6 + reach && (nearest === null || away < nearest.away)) nearest = { selection: spot.selection, away };
  }
  if (nearest !== null) return nearest.selection;
  const tube = tubeAt(seeTubes(scene.tubes, view), view.pixelsPerMm, x, y, reach);
  if (tube !== null) return { kind: 'tube', id: tube.id };
  const envelope = scene.envelopes.find((box) => {
    const corners = boxCorners(box).map(view.toScreen);
    return BOX_FACES.some((face) =>
      isInside(
        face.map((i) => corners[i]!),
        x,
        y,
      ),
    );
  });
  return envelope === undefined ? null : { kind: 'envelope', id: envelope.id };
}
