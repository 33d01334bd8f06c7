/**
 * Every two tubes that are not joined and come near one another. Which come near at all, boxes round their pieces say: those of the
 * tubes that are new are kept in a tree, and every tube asks it, so that all of them cost n log n, and after an edit only what changed
 * is measured.
 */
import { buildBoxTree, visitBoxes, type Box } from '../geometry/box-tree.ts';
import { interpolate, type Vec3 } from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { joined } from './joined.ts';
import { outsideOf, sameOutside } from './outside.ts';
import { boxesOf, meet } from './tube-boxes.ts';
import { gapBetween } from './tube-gap.ts';

/** Two tubes that come near one another, the one built earlier first. */
export interface TubeGap {
  readonly tubes: readonly [TubeRef, TubeRef];
  /** mm between their outsides; negative: the deepest place of one inside the other. */
  readonly distance: number;
  /** Half-way between the nearest places. */
  readonly at: Vec3;
  /** The nearest place on each; of tubes that run into each other the deepest place on one, and straight out of the other from there. */
  readonly on: readonly [Vec3, Vec3];
}

/** mm. Tubes as far apart as this, or farther, have no gap that a file lists; where the torch wants more room, they are measured to there. */
export const LISTED = 25;

/** In build order. A record whose tubes have the outsides that they had in `previous` is handed on. */
export function measureGaps(
  { job, tubes }: Frame,
  last?: Pick<Frame, 'job' | 'byId'> & { readonly gaps: readonly TubeGap[] },
): readonly TubeGap[] {
  const below = measuredTo(job);
  const previous = last !== undefined && measuredTo(last.job) === below ? last : undefined;
  const isOld = (tube: SolvedTube): boolean => {
    const before = previous?.byId.get(tube.id);
    return before !== undefined && sameOutside(before, tube);
  };
  const old = tubes.map(isOld);
  const fresh = [...old.keys()].filter((i) => !old[i]);
  const orderOf = new Map(tubes.map(({ id }, i) => [id, i]));
  const kept: { readonly gap: TubeGap; readonly order: number }[] = [];
  const orderOfPair = (earlier: number, later: number): number => later * tubes.length + earlier;
  for (const gap of previous?.gaps ?? []) {
    const [a, b] = gap.tubes.map((id) => orderOf.get(id));
    if (a === undefined || b === undefined || !old[a] || !old[b]) continue;
    // Built the other way round, the same two are named the other way round.
    const again = a < b ? gap : measure(tubes[b]!, tubes[a]!, below);
    if (again !== null) kept.push({ gap: again, order: orderOfPair(Math.min(a, b), Math.max(a, b)) });
  }
  for (const [earlier, later] of pairsNear(tubes, fresh, below)) {
    const gap = measure(tubes[earlier]!, tubes[later]!, below);
    if (gap !== null) kept.push({ gap, order: orderOfPair(earlier, later) });
  }
  const gaps = kept.toSorted((one, other) => one.order - other.order).map(({ gap }) => gap);
  const before = previous?.gaps;
  return before?.length === gaps.length && gaps.every((gap, i) => gap === before[i]) ? before : gaps;
}

const measuredTo = ({ torchGap = 0 }: Job): number => Math.max(LISTED, torchGap);

function measure(a: SolvedTube, b: SolvedTube, below: number): TubeGap | null {
  if (joined(a, b)) return null;
  const nearest = gapBetween(outsideOf(a), outsideOf(b), below);
  if (nearest === null) return null;
  const { distance: apart, onA, onB } = nearest;
  return { tubes: [a.id, b.id], distance: apart, at: interpolate(onA, onB, 0.5), on: [onA, onB] };
}

/** By their places in the list, the earlier first: every two of which one is fresh whose boxes meet. */
function pairsNear(
  tubes: readonly SolvedTube[],
  fresh: readonly number[],
  below: number,
): readonly (readonly [number, number])[] {
  const boxes: Box[] = [];
  const owners: number[] = [];
  for (const i of fresh) {
    for (const box of boxesOf(tubes[i]!)) {
      boxes.push(box);
      owners.push(i);
    }
  }
  const tree = buildBoxTree(boxes);
  const isFresh = new Uint8Array(tubes.length);
  for (const i of fresh) isFresh[i] = 1;
  const met = new Int32Array(tubes.length).fill(-1);
  const pairs: (readonly [number, number])[] = [];
  tubes.forEach((tube, i) => {
    for (const box of boxesOf(tube)) {
      visitBoxes(
        tree,
        boxes,
        (other) => meet(box, other, below),
        (index) => {
          const other = owners[index]!;
          // Two fresh ones are met from either side.
          if (other === i || met[other] === i || (isFresh[i] === 1 && other > i)) return;
          met[other] = i;
          pairs.push(other < i ? [other, i] : [i, other]);
        },
      );
    }
  });
  return pairs;
}
