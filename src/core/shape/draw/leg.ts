/** One leg of a tube that is being drawn, from the place before to the one that is aimed at: what a tape and an angle finder would say of it. */
import { angleBetween, toDegrees, type Degrees } from '../../geometry/angle.ts';
import { offLevel } from '../../geometry/lean.ts';
import { nearestOnPath } from '../../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../../geometry/tolerance.ts';
import { length, subtract, type Vec3 } from '../../geometry/vector.ts';
import { hostOf } from '../../job/places.ts';
import { bareId, primed, type NodeRef, type TubeRef } from '../../job/reference.ts';
import type { Frame } from '../../solve/types.ts';
import { placeOnBar, type Ground } from './ground.ts';

export interface Leg {
  /** From sharp corner to sharp corner, or to an end's node, mm. */
  readonly length: number;
  /** Above level, -90..90. */
  readonly slope: Degrees;
  /** From the direction of the leg before, 0..180: what the bend turns; null on the first leg. */
  readonly turn: Degrees | null;
  /** The bar that is met at the place, and the angle between the two axes, 0..90; null where none is. */
  readonly meets: { readonly tube: TubeRef; readonly angle: Degrees } | null;
}

/** The leg from the last of the places to `at`; null where that is the same place, or there is none. */
export function legTo(frame: Frame, places: readonly Vec3[], at: Vec3, ground: Ground): Leg | null {
  const last = places.at(-1);
  if (last === undefined) return null;
  const along = subtract(at, last);
  if (length(along) <= ROUNDING) return null;
  const before = places.at(-2);
  const met = barMet(frame, ground, at);
  return {
    length: length(along),
    slope: offLevel(along).slope,
    turn: before === undefined ? null : toDegrees(angleBetween(subtract(last, before), along)),
    meets: met && { tube: met.tube, angle: acute(toDegrees(angleBetween(met.tangent, along))) },
  };
}

const acute = (angle: Degrees): Degrees => Math.min(angle, 180 - angle);

/** The bar under the place, and its direction there: of a node the bar that it stands on, else the first in build order that runs through it. */
function barMet(frame: Frame, ground: Ground, at: Vec3): { readonly tube: TubeRef; readonly tangent: Vec3 } | null {
  if (ground.kind === 'point' || ground.kind === 'image' || ground.kind === 'space') return null;
  if (ground.kind !== 'node') {
    const place = placeOnBar(frame, ground);
    return place && { tube: ground.tube, tangent: place.tangent };
  }
  for (const tube of barsAt(frame, ground.node)) {
    const bar = frame.bars.get(tube);
    const place = bar && nearestOnPath(bar.path, at);
    if (place !== undefined && place.distance <= MEETING_DISTANCE) return { tube, tangent: place.tangent };
  }
  return null;
}

function barsAt({ job, bars }: Frame, node: NodeRef): readonly TubeRef[] {
  const host = job.nodes.find(({ id }) => id === bareId(node))?.at;
  const own = host === undefined ? null : hostOf(host);
  const hosts = own === null ? [] : node === bareId(node) ? [own] : [primed(own), own];
  const through = [...bars.values()].filter(({ id, member }) =>
    member.path.some((each) => (id === member.id ? each : primed(each)) === node),
  );
  return [...hosts, ...through.map(({ id }) => id)];
}
