/**
 * How near the tubes come to what was measured of the car: of each place the nearest tube, and all that come nearer than is wanted there.
 * Boxes round the pieces of the tubes stand in a tree and every place asks it, so that all of them cost n log n. After an edit a place
 * that is what it was asks only the tubes that are not.
 */
import { boxRound, buildBoxTree, visitBoxes, type Box, type BoxTree } from '../geometry/box-tree.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, subtract, type Vec3 } from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { outsideOf, sameOutside } from './outside.ts';
import { gapToStretch, type NearestToStretch } from './stretch-gap.ts';
import { samePlace, type TrimPlace } from './trim-places.ts';
import { boxesOf, meet } from './tube-boxes.ts';

/** A tube that comes near a place of the car. */
export interface TrimGap {
  readonly tube: TubeRef;
  /** mm from the place, or the face of the trim over it, to the tube's outside; negative where it lies in the tube, by the deepest. */
  readonly distance: number;
  /** Nearest place on the tube's outside, and on the trim. */
  readonly at: Vec3;
  readonly onTrim: Vec3;
}

/** A place of the car and what comes near it, the nearest first; of equally near ones, in build order. */
export interface TrimGaps extends TrimPlace {
  readonly gaps: readonly TrimGap[];
}

/** mm. Of steel farther away than this nobody asks at a place, unless a gap is wanted there. */
export const TRIM_REACH = 150;

/** What was measured before, of the tubes that there were. */
export type TrimBefore = Pick<Frame, 'byId'> & { readonly trimGaps: readonly TrimGaps[] };

/** Of each of these places. What is as it was in `last` is handed on. */
export function measureTrim(
  { tubes }: Pick<Frame, 'tubes'>,
  places: readonly TrimPlace[],
  last?: TrimBefore,
): readonly TrimGaps[] {
  const isOld = (tube: SolvedTube | undefined): boolean => {
    const before = tube && last?.byId.get(tube.id);
    return before !== undefined && sameOutside(before, tube!);
  };
  const before = new Map(last?.trimGaps.map((each) => [`${each.trim.kind} ${each.trim.id}`, each]));
  const orderOf = new Map(tubes.map(({ id }, i) => [id, i]));
  const fresh = askOf(tubes, (tube) => !isOld(tube));
  const all = askOf(tubes, () => true);
  const measured = places.map((place) => {
    const known = before.get(`${place.trim.kind} ${place.trim.id}`);
    const isKept =
      known !== undefined &&
      samePlace(known, place) &&
      known.gaps.every(({ tube }) => isOld(tubes[orderOf.get(tube) ?? -1]));
    const gaps = isKept ? nearTo(place, fresh(), known.gaps) : nearTo(place, all(), []);
    gaps.sort((one, other) => one.distance - other.distance || orderOf.get(one.tube)! - orderOf.get(other.tube)!);
    const isSame = isKept && known.gaps.length === gaps.length && gaps.every((gap, i) => gap === known.gaps[i]);
    return isSame ? known : { ...place, gaps };
  });
  const isAsItWas = last?.trimGaps.length === measured.length && measured.every((each, i) => each === last.trimGaps[i]);
  return isAsItWas ? last.trimGaps : measured;
}

/** Tubes to ask, by the boxes round their pieces. */
interface Asked {
  readonly tree: BoxTree;
  readonly boxes: readonly Box[];
  /** Whose box each is. */
  readonly owners: readonly SolvedTube[];
}

/** Put in a tree when a place first asks them. */
function askOf(tubes: readonly SolvedTube[], isAsked: (tube: SolvedTube) => boolean): () => Asked {
  let made: Asked | null = null;
  return () => {
    if (made !== null) return made;
    const owned = tubes.filter(isAsked).flatMap((tube) => boxesOf(tube).map((box) => ({ box, tube })));
    const boxes = owned.map(({ box }) => box);
    made = { tree: buildBoxTree(boxes), boxes, owners: owned.map(({ tube }) => tube) };
    return made;
  };
}

/** Of those that are asked and those that are known; where a gap is wanted, the nearest however far it is. */
function nearTo(place: TrimPlace, asked: Asked, known: readonly TrimGap[]): TrimGap[] {
  const wanted = place.wanted ?? -Infinity;
  for (const reach of place.wanted === null ? [TRIM_REACH] : [Math.max(TRIM_REACH, wanted), Infinity]) {
    const found = [...known];
    const met = new Set<SolvedTube>();
    let nearest = known[0]?.distance ?? Infinity;
    // Equally near but for rounding counts as nearest, whichever is asked first.
    const limit = (): number => Math.min(reach, Math.max(wanted, nearest + 2 * ROUNDING));
    const rounds = place.stretches.map(({ from, to }) => boxRound([from, to], 0));
    for (const round of rounds) {
      visitBoxes(
        asked.tree,
        asked.boxes,
        (box) => meet(box, round, limit() + place.trimOver),
        (index) => {
          const tube = asked.owners[index]!;
          if (met.has(tube)) return;
          met.add(tube);
          const gap = gapTo(tube, place, rounds, limit());
          if (gap === null) return;
          found.push(gap);
          nearest = Math.min(nearest, gap.distance);
        },
      );
    }
    const listed = found.filter(
      ({ distance }) => distance < reach && (distance < wanted || distance <= nearest + ROUNDING),
    );
    if (listed.length > 0) return listed;
  }
  return [];
}

/** Null where the tube does not come nearer than `below`. */
function gapTo(
  tube: SolvedTube,
  { stretches, trimOver }: TrimPlace,
  rounds: readonly Box[],
  below: number,
): TrimGap | null {
  const outside = outsideOf(tube);
  const boxes = boxesOf(tube);
  let best: NearestToStretch | null = null;
  stretches.forEach((stretch, i) => {
    const most: number = best?.distance ?? below + trimOver;
    if (!boxes.some((box) => meet(box, rounds[i]!, most))) return;
    const found = gapToStretch(outside, stretch, most);
    if (found !== null && found.distance < most) best = found;
  });
  return best && gapOf(tube.id, best, trimOver);
}

/** From the face of what lies over the place, so much nearer to the tube; a place on the tube's outside has no way to it, and the face counts as there. */
const gapOf = (tube: TubeRef, { distance, onTube, onStretch }: NearestToStretch, trimOver: number): TrimGap => ({
  tube,
  distance: distance - trimOver,
  at: onTube,
  onTrim:
    Math.abs(distance) < ROUNDING ? onStretch : addScaled(onStretch, subtract(onTube, onStretch), trimOver / distance),
});
