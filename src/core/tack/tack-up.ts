/**
 * What sets a cage up with a tape before it is welded: of every tube, in build order, three tapes from each of its ends to places that stand already; of the
 * first, how it stands and how far its feet are apart; and the diagonals of the bays. Car axes, mm.
 *
 * What stands when a tube comes are the tubes before it in the build order, its own twin's not yet. An end without an edge to hold a tape to has
 * no tapes, nor has one from which no three places that fix it can be taped.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { distance } from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { baysOf, type Bay } from './bays.ts';
import { leanOf, type Lean } from './lean.ts';
import { cornersOf, edgesOf, spotsOf, topsOf, type CornerPlace, type EdgePlace, type TackPlace } from './places.ts';
import { fixedBy, type Fixed, type Tape } from './tapes.ts';

export interface TackEnd extends Fixed {
  readonly end: 'A' | 'B';
  /** Where the tapes begin. */
  readonly from: EdgePlace;
}

export interface TackTube {
  readonly tube: TubeRef;
  /** Null where no three tapes fix the end. */
  readonly ends: readonly [TackEnd | null, TackEnd | null];
}

export interface TackUp {
  /** Of the tube that is set first; null without tubes. */
  readonly first: {
    readonly tube: TubeRef;
    readonly lean: Lean;
    readonly feet: (Tape & { readonly from: CornerPlace }) | null;
  } | null;
  readonly tubes: readonly TackTube[];
  readonly bays: readonly Bay[];
}

export function tackUp(frame: Pick<Frame, 'tubes'>): TackUp {
  const { tubes } = frame;
  const first = tubes[0];
  // Of an end on a foot, the foot's corners.
  const placed = tubes.map(placesOf);
  return {
    first: first === undefined ? null : { tube: first.id, lean: leanOf(first), feet: feetApart(first) },
    tubes: tubes.map((tube, i) =>
      tackTube(tube, tubes.slice(0, i), placed.slice(0, i).flat(), tubes.slice(i + 1).flatMap(spotsOf)),
    ),
    bays: baysOf(frame),
  };
}

/** Between the corners of its two feet that are nearest to one another; of equal ones those farthest to the front. Null without two feet. */
function feetApart(tube: SolvedTube): (Tape & { readonly from: CornerPlace }) | null {
  const corners = cornersOf(tube);
  const [a, b] = (['A', 'B'] as const).map((end) => corners.filter((corner) => corner.end === end)) as [
    CornerPlace[],
    CornerPlace[],
  ];
  if (a.length === 0 || b.length === 0) return null;
  const pairs = a.flatMap((from) =>
    b.map((to) => ({ from, to, tape: distance(from.mark, to.mark), centres: distance(from.centre, to.centre) })),
  );
  const least = Math.min(...pairs.map(({ tape }) => tape));
  return pairs
    .filter(({ tape }) => tape <= least + ROUNDING)
    .reduce((best, pair) => (pair.from.mark[0] > best.from.mark[0] + ROUNDING ? pair : best));
}

function placesOf(tube: SolvedTube): TackPlace[] {
  const corners = cornersOf(tube);
  const edges = ([0, 1] as const).flatMap((which) =>
    tube.ends[which].foot === null ? edgesOf(tube, which).slice(0, 1) : [],
  );
  return [...corners, ...edges, ...topsOf(tube)];
}

function tackTube(
  tube: SolvedTube,
  before: readonly SolvedTube[],
  places: readonly TackPlace[],
  spots: readonly TackPlace[],
): TackTube {
  const steel = [...before, tube];
  const end = (which: 0 | 1): TackEnd | null => {
    const fixed = fixedBy(edgesOf(tube, which), places, spots, steel);
    return fixed === null ? null : { end: which === 0 ? 'A' : 'B', ...fixed };
  };
  return { tube: tube.id, ends: [end(0), end(1)] };
}
