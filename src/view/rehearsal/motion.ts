/**
 * The tube's way from one bend to the next, as it is seen: drawn through along the feed and then rolled, or, where it is
 * turned end for end, lifted clear of the machine and laid in again. Nothing is searched for hits here.
 */
import { Matrix4, Quaternion, Vector3 } from 'three';
import { distance, interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import { placeAt, type Path } from '../../core/geometry/path.ts';
import type { Pose } from '../../core/rehearse/types.ts';

export interface Way {
  /** From the place at the last bend to that at the next: about `about`, then along `along`. */
  readonly turn: Quaternion;
  readonly about: Vector3;
  readonly along: Vector3;
  /** It stays on the feed: fed, and rolled about it. */
  readonly fed: boolean;
  /** How high it is lifted on the way, mm. */
  readonly lift: number;
}

const SAMPLES = 24;
/** Sine of half the turn about any line but the feed: with less the tube has only been fed and rolled. */
const FED_STRAIGHT = 1e-3;
/** How high a tube is lifted to be turned, as a part of its reach from end to end. */
const LIFT = 0.3;

/** Places along the whole tube from its end in front, evenly by developed length. */
function chainOf({ front, arc, rear }: Pose): readonly Vec3[] {
  const parts: readonly { readonly path: Path; readonly back: boolean }[] = [
    { path: front, back: true },
    ...(arc === null ? [] : [{ path: arc, back: true }]),
    { path: rear, back: false },
  ];
  const length = parts.reduce((sum, { path }) => sum + path.length, 0);
  return Array.from({ length: SAMPLES + 1 }, (_, i) => {
    let along = (length * i) / SAMPLES;
    for (const { path, back } of parts) {
      if (path.pieces.length > 0 && (along <= path.length || path === rear))
        return placeAt(path, back ? path.length - along : along).point;
      along -= path.length;
    }
    return parts[0]!.path.pieces[0]!.from;
  });
}

/** The axes that three places of a rigid body give, and where they stand. */
function stand(a: Vec3, b: Vec3, c: Vec3): Matrix4 {
  const x = new Vector3(...b).sub(new Vector3(...a)).normalize();
  const z = new Vector3(...c)
    .sub(new Vector3(...a))
    .cross(x)
    .normalize();
  return new Matrix4().makeBasis(x, new Vector3().crossVectors(z, x), z).setPosition(...a);
}

/**
 * The way that leads from `before` to `after`, two poses of the tube with the same bends in it, one at least; null where
 * it is straight, as before the first bend. `turned`: the other end is in front after it. `height` of the feed, mm.
 */
export function wayBetween(before: Pose, after: Pose, turned: boolean, height: number): Way | null {
  const [from, last] = [chainOf(before), chainOf(after)];
  const to = turned ? last.toReversed() : last;
  // The place farthest from the line between the ends shows how the tube is rolled.
  const away = (i: number): number => distance(to[i]!, interpolate(to[0]!, to.at(-1)!, i / SAMPLES));
  const third = to.map((_, i) => i).reduce((best, i) => (away(i) > away(best) ? i : best), 0);
  if (away(third) < 1) return null;
  const standing = (chain: readonly Vec3[]): Matrix4 => stand(chain[0]!, chain.at(-1)!, chain[third]!);
  const moved = standing(to).multiply(standing(from).invert());
  const turn = new Quaternion().setFromRotationMatrix(moved);
  const side = Math.hypot(turn.y, turn.z);
  const fed = !turned && side < FED_STRAIGHT;
  const about = fed ? new Vector3(0, 0, height) : middleOf(from);
  const along = about.clone().applyMatrix4(moved).sub(about);
  return { turn, about, along, fed, lift: fed ? 0 : distance(to[0]!, to.at(-1)!) * LIFT };
}

const middleOf = (chain: readonly Vec3[]): Vector3 =>
  chain.reduce((sum, place) => sum.add(new Vector3(...place)), new Vector3()).divideScalar(chain.length);

const STILL = new Quaternion();
const ease = (t: number): number => t * t * (3 - 2 * t);
const clamp = (t: number): number => Math.min(1, Math.max(0, t));

/**
 * Where the tube stands when `part` (0..1) of the way is made, seen from where it will stand at its end: the identity at
 * 1. Fed before it is rolled.
 */
export function onTheWay(way: Way, part: number): Matrix4 {
  const feed = ease(way.fed ? clamp(part * 2) : part);
  const roll = ease(way.fed ? clamp(part * 2 - 1) : part);
  const place = (turned: number, moved: number, lift: number): Matrix4 => {
    const turn = STILL.clone().slerp(way.turn, turned);
    const at = way.about
      .clone()
      .addScaledVector(way.along, moved)
      .add(new Vector3(0, 0, lift));
    return new Matrix4().makeRotationFromQuaternion(turn).setPosition(at.sub(way.about.clone().applyQuaternion(turn)));
  };
  return place(roll, feed, way.lift * Math.sin(Math.PI * part)).multiply(place(1, 1, 0).invert());
}
