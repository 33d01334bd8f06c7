/**
 * The bays of a cage, which a person squares by their diagonals: four corners joined round by four tubes, or by three of which one is bent between
 * its joints, where the bend that stands out farthest is the fourth corner. Car axes, mm.
 *
 * Tubes that cross another inside a bay (those in pieces, and what cuts these) are no sides. Of bays within one another only the smallest is one. A diagonal is
 * taped over the outside of the cage, from mark to mark: each mark stands on the tube that runs through, on the side that faces out of the bay, where the
 * centreline of the tube that ends there comes to it. So the tape clears what crosses the bay. Derivation: docs/maths/tack-up.md.
 */
import { nearestOnPath, placeAt, placeOnPiece, type ArcPiece } from '../geometry/path.ts';
import {
  cross,
  distance,
  dot,
  length,
  mirrored,
  normalize,
  rejectFrom,
  scale,
  subtract,
  addScaled,
  type Vec3,
} from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

export interface BayCorner {
  /** The tube that carries the mark, and the one that meets it there; null at a bend. */
  readonly on: TubeRef;
  readonly meets: TubeRef | null;
  /** The bend, from 1 at end A; null at a joint. */
  readonly bend: number | null;
  readonly centre: Vec3;
  readonly mark: Vec3;
}

export interface Bay {
  /** Round: the first side joins the first corner and the second. Of a bent side that has two of them, once. */
  readonly sides: readonly TubeRef[];
  /** Round; a diagonal joins the first and the third, the other the second and the fourth. */
  readonly corners: readonly [BayCorner, BayCorner, BayCorner, BayCorner];
  /** From mark to mark and from centre to centre, of either diagonal. */
  readonly tapes: readonly [number, number];
  readonly centres: readonly [number, number];
  /** Its own mirror image: both diagonals are alike. */
  readonly symmetric: boolean;
  /** Unit, out of the cage, square to both diagonals. */
  readonly outwards: Vec3;
}

/** mm. Corners nearer than this to one another are one. */
const CORNERS_APART = 100;
/** mm. Nodes this near count as mirror images. */
const ALIKE = 0.05;
/** How far the diagonals may pass each other by, as a share of the shorter: what is more askew is no bay. */
const ASKEW = 0.25;

/** Two bars meet: the end of one at a place of the other. */
interface Joint {
  readonly ends: SolvedTube;
  readonly on: SolvedTube;
  readonly at: Vec3;
  /** Developed length along each, mm. */
  readonly along: ReadonlyMap<SolvedTube, number>;
}

/** In the order of the tubes. */
export function baysOf({ tubes }: Pick<Frame, 'tubes'>): readonly Bay[] {
  const joints = jointsOf(tubes);
  const middle = centreOf(tubes);
  const found = new Map<string, Bay>();
  for (const loop of [...fours(joints), ...threes(joints)]) {
    const bay = bayOf(loop, middle);
    if (bay === null) continue;
    const key = bay.sides.toSorted().join(' ');
    const known = found.get(key);
    if (known === undefined || round(bay) < round(known)) found.set(key, bay);
  }
  return [...found.values()];
}

const round = ({ corners }: Bay): number =>
  corners.reduce((sum, { centre }, i) => sum + distance(centre, corners[(i + 1) % 4]!.centre), 0);

/** Of the tubes that can be sides, by each of them; what is not met stays out. */
function jointsOf(tubes: readonly SolvedTube[]): ReadonlyMap<SolvedTube, readonly Joint[]> {
  const crossing = new Set(
    tubes.flatMap(({ bar, piece, ends }) =>
      piece === null
        ? []
        : [bar, ...ends.flatMap(({ node, cuts }) => (node === null ? cuts.map(({ against }) => against) : []))],
    ),
  );
  const sides = new Map(
    tubes.filter(({ piece, bar }) => piece === null && !crossing.has(bar)).map((tube) => [tube.id, tube]),
  );
  const joints = new Map<SolvedTube, Joint[]>();
  const add = (joint: Joint): void => {
    for (const tube of [joint.ends, joint.on]) joints.set(tube, [...(joints.get(tube) ?? []), joint]);
  };
  for (const ends of sides.values()) {
    ends.ends.forEach(({ position, cuts, butted }, which) => {
      const met = [...cuts.filter(({ reaches }) => reaches).map(({ against }) => against), ...butted];
      for (const id of new Set(met)) {
        const on = sides.get(id);
        if (on === undefined) continue;
        const along = new Map([
          [ends, which === 0 ? 0 : ends.developedLength],
          [on, nearestOnPath(on.path, position).at],
        ]);
        add({ ends, on, at: position, along });
      }
    });
  }
  return joints;
}

const centreOf = (tubes: readonly SolvedTube[]): Vec3 => {
  const all = tubes.flatMap(({ corners }) => corners);
  const mean = (axis: 0 | 1 | 2): number =>
    all.reduce((sum, corner) => sum + corner[axis], 0) / Math.max(1, all.length);
  return [mean(0), mean(1), mean(2)];
};

/** Sides and joints round; the first joint lies between the first side and the second. */
interface Loop {
  readonly sides: readonly SolvedTube[];
  readonly joints: readonly Joint[];
}

interface Bridge {
  readonly by: SolvedTube;
  readonly from: Joint;
  readonly to: Joint;
}

const otherOf = ({ ends, on }: Joint, tube: SolvedTube): SolvedTube => (ends === tube ? on : ends);

/** Tubes that join two others, each with where. */
function bridges(joints: ReadonlyMap<SolvedTube, readonly Joint[]>, one: SolvedTube, other: SolvedTube): Bridge[] {
  return (joints.get(one) ?? []).flatMap((from) => {
    const by = otherOf(from, one);
    if (by === other) return [];
    return (joints.get(by) ?? []).filter((to) => otherOf(to, by) === other).map((to) => ({ by, from, to }));
  });
}

/** Whether another bridge of the same two lies between those at these places. */
const between = (
  all: readonly Bridge[],
  one: SolvedTube,
  other: SolvedTube,
  a: readonly [number, number],
  b: readonly [number, number],
): boolean =>
  all.some(({ from, to }) => {
    const [x, y] = [from.along.get(one)!, to.along.get(other)!];
    const within = (value: number, p: number, q: number): boolean =>
      value > Math.min(p, q) + CORNERS_APART / 2 && value < Math.max(p, q) - CORNERS_APART / 2;
    return within(x, a[0], b[0]) && within(y, a[1], b[1]);
  });

/** Whether each is a corner of its own. Asked before what lies between them: where dozens of tubes meet at one place, no two joints are. */
const areApart = (joints: readonly Joint[]): boolean =>
  joints.every(({ at }, i) => joints.every((other, k) => k <= i || distance(at, other.at) >= CORNERS_APART));

function fours(met: ReadonlyMap<SolvedTube, readonly Joint[]>): Loop[] {
  const sides = [...met.keys()];
  return sides.flatMap((one, i) =>
    sides.slice(i + 1).flatMap((other) => {
      const across = bridges(met, one, other);
      const wide = across.filter(({ from, to }) => areApart([from, to]));
      const places = wide.map(({ from, to }) => [from.along.get(one)!, to.along.get(other)!] as const);
      return wide.flatMap((first, k) =>
        wide.slice(k + 1).flatMap((second, m): Loop[] => {
          const joints = [first.from, first.to, second.to, second.from];
          if (first.by === second.by || !areApart(joints)) return [];
          if (between(across, one, other, places[k]!, places[k + 1 + m]!)) return [];
          // The other two sides may have something between them too.
          const [near, far] = [
            [first.from.along.get(first.by)!, second.from.along.get(second.by)!] as const,
            [first.to.along.get(first.by)!, second.to.along.get(second.by)!] as const,
          ];
          if (between(bridges(met, first.by, second.by), first.by, second.by, near, far)) return [];
          return [{ sides: [one, first.by, other, second.by], joints }];
        }),
      );
    }),
  );
}

function threes(joints: ReadonlyMap<SolvedTube, readonly Joint[]>): Loop[] {
  const sides = [...joints.keys()];
  return sides.flatMap((one, i) =>
    (joints.get(one) ?? [])
      .filter((joint) => sides.indexOf(otherOf(joint, one)) > i)
      .flatMap((joint) => {
        const other = otherOf(joint, one);
        const across = bridges(joints, one, other);
        const corner = [joint.along.get(one)!, joint.along.get(other)!] as const;
        return across.flatMap(({ by, from, to }): Loop[] => {
          if (!areApart([from, to, joint])) return [];
          const far = [from.along.get(one)!, to.along.get(other)!] as const;
          if (between(across, one, other, corner, far)) return [];
          return [{ sides: [one, by, other], joints: [from, to, joint] }];
        });
      }),
  );
}

function bayOf({ sides, joints }: Loop, middle: Vec3): Bay | null {
  const bare: Bare[] = joints.map((joint) => ({ joint, at: joint.at }));
  const corners = sides.length === 4 ? bare : withBend(sides, joints, bare);
  if (corners === null) return null;
  const at = corners.map((corner) => corner.at) as [Vec3, Vec3, Vec3, Vec3];
  const [a, b] = [subtract(at[2], at[0]), subtract(at[3], at[1])];
  const normal = cross(a, b);
  if (!isRound(at, normal)) return null;
  const outwards = outOf(normalize(normal), at, middle);
  const marked = corners.map((corner) => marks(corner, outwards)) as unknown as Bay['corners'];
  const over = (p: keyof Pick<BayCorner, 'mark' | 'centre'>) =>
    [distance(marked[0][p], marked[2][p]), distance(marked[1][p], marked[3][p])] as const;
  return {
    sides: sides.map(({ id }) => id),
    corners: marked,
    tapes: over('mark'),
    centres: over('centre'),
    symmetric: at.every((place) => at.some((image) => distance(mirrored(place), image) < ALIKE)),
    outwards,
  };
}

interface Bare {
  readonly at: Vec3;
  readonly joint?: Joint;
  readonly bent?: { readonly tube: SolvedTube; readonly number: number; readonly tangent: Vec3 };
}

/** Of three sides: the bend that stands out farthest from the line between its tube's two joints becomes a corner between them. */
function withBend(sides: readonly SolvedTube[], joints: readonly Joint[], bare: readonly Bare[]): Bare[] | null {
  const bends = sides.flatMap((tube, i) => {
    // The joints at the two ends of this side: the one before it in the round, and its own.
    const [from, to] = [joints[(i + 2) % 3]!, joints[i]!];
    const [low, high] = [from.along.get(tube)!, to.along.get(tube)!].toSorted((a, b) => a - b) as [number, number];
    const line = normalize(subtract(to.at, from.at));
    const arcs = tube.path.pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
    return arcs.flatMap((arc, k) => {
      const { point, tangent, at } = placeOnPiece(arc, arc.length / 2);
      const out = length(rejectFrom(subtract(point, from.at), line));
      return at <= low || at >= high ? [] : [{ i, out, corner: { at: point, bent: { tube, number: k + 1, tangent } } }];
    });
  });
  const far = bends.reduce<(typeof bends)[number] | null>(
    (best, each) => (best === null || each.out > best.out ? each : best),
    null,
  );
  if (far === null || far.out < CORNERS_APART) return null;
  // The joint before side i is joint i - 1 of the round, so the bend goes in before joint i.
  return [...bare.slice(0, far.i), far.corner, ...bare.slice(far.i)];
}

/** The four lie round one another, and near enough in one plane. */
function isRound(at: readonly [Vec3, Vec3, Vec3, Vec3], normal: Vec3): boolean {
  const turns = at.map((place, i) => {
    const [before, after] = [at[(i + 3) % 4]!, at[(i + 1) % 4]!];
    return dot(cross(subtract(place, before), subtract(after, place)), normal);
  });
  if (!turns.every((turn) => turn > 0)) return false;
  const shorter = Math.min(distance(at[0], at[2]), distance(at[1], at[3]));
  return Math.abs(dot(subtract(at[1], at[0]), normalize(normal))) <= ASKEW * shorter;
}

/** Of the two ways the one away from the middle of the cage; where that lies in the bay, up, or to the front or left. */
function outOf(normal: Vec3, at: readonly Vec3[], middle: Vec3): Vec3 {
  const away = at.reduce((sum, place) => sum + dot(subtract(place, middle), normal), 0) / at.length;
  const sign =
    Math.abs(away) > CORNERS_APART / 2
      ? away
      : ([2, 0, 1] as const).map((axis) => normal[axis]).find((value) => Math.abs(value) > 0.3)!;
  return sign < 0 ? scale(normal, -1) : normal;
}

function marks({ at, joint, bent }: Bare, outwards: Vec3): BayCorner {
  const tube = joint?.on ?? bent!.tube;
  const centre = joint === undefined ? at : placeAt(tube.path, joint.along.get(tube)!).point;
  const tangent = joint === undefined ? bent!.tangent : placeAt(tube.path, joint.along.get(tube)!).tangent;
  const out = normalize(rejectFrom(outwards, tangent));
  return {
    on: tube.id,
    meets: joint?.ends.id ?? null,
    bend: bent?.number ?? null,
    centre,
    mark: addScaled(centre, out, tube.section.outerDiameter / 2),
  };
}
