/**
 * The three tapes that fix an end: which of the places that stand already are taken, how well they fix it, and what is in a tape's way. mm.
 *
 * Lengths read with a deviation of 1 put the end with one of sqrt(trace (U^T U)^-1), U the unit vectors along the three tapes: 1.732 where they stand square to
 * each other, without bound where they lie in one plane. With a, b and c the cosines between them that is sqrt((3 - s) / (1 + 2abc - s)), s = a^2 + b^2 + c^2. Derivation: docs/maths/tack-up.md.
 */
import { boxRound, type Box } from '../geometry/box-tree.ts';
import { foot, setFoot } from '../geometry/foot.ts';
import { nearPlaces } from '../geometry/near-places.ts';
import { linePiece, type LinePiece, type Piece } from '../geometry/path.ts';
import { distance, dot, interpolate, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import type { SolvedTube } from '../solve/types.ts';
import type { TackPlace } from './places.ts';

export interface Tape {
  readonly to: TackPlace;
  /** From mark to mark, and from centre to centre. */
  readonly tape: number;
  readonly centres: number;
}

export interface Fixed {
  readonly tapes: readonly Tape[];
  /** What the end's place comes off for each mm that the tapes are read off. */
  readonly spread: number;
}

/** mm: what one person reads along one tape, and less than what its hook is good for. */
const LONGEST = 3000;
const SHORTEST = 150;
/** So many of the nearest places are looked through for the best three. */
const LOOKED_AT = 28;
/** Good enough that no spot on the car is asked for. */
const GOOD = 3;
/** From here on the three fix nothing that is worth a tape. */
export const POOR = 8;
/** mm. A tape that is pressed this far aside by a tube still reads true to a tenth over half a metre. */
const GRAZES = 2;

/** Whether a straight tape runs past all tubes, each taken as whole to its nodes. */
export function isClear(from: Vec3, to: Vec3, tubes: readonly SolvedTube[]): boolean {
  const tape = linePiece(from, to, 0);
  const { low, high } = boxRound([from, to], 0);
  return !tubes.some((tube) => {
    const round = boxOf(tube);
    for (let i = 0; i < 3; i++) if (low[i]! > round.high[i]! || high[i]! < round.low[i]!) return false;
    const near = tube.section.outerDiameter / 2 - GRAZES;
    return tube.path.pieces.some((piece) => isInTheWay(tape, piece, near));
  });
}

const boxOf: (tube: SolvedTube) => Box = remembered(({ path, section }) => {
  // A bend lies within the ball on its chord.
  const bulge = Math.max(
    0,
    ...path.pieces.map((piece) => (piece.kind === 'arc' ? distance(piece.from, piece.to) / 2 : 0)),
  );
  return boxRound(
    path.pieces.flatMap(({ from, to }) => [from, to]),
    bulge + section.outerDiameter / 2,
  );
});

function isInTheWay(tape: LinePiece, piece: Piece, near: number): boolean {
  // An arc lies in the ball on its chord, a straight in a larger one: most lie far off.
  const middle = interpolate(piece.from, piece.to, 0.5);
  setFoot(tape, middle);
  if (foot.apart > distance(piece.from, piece.to) / 2 + near) return false;
  let found = false;
  nearPlaces(tape, piece, near, () => {
    found = true;
  });
  return found;
}

/**
 * The best three, from one of the places that an end is held by, the first of them if it does as well. `spots` are asked where `places` do not fix it well.
 * Null where nothing does.
 */
export function fixedBy<From extends TackPlace>(
  froms: readonly From[],
  places: readonly TackPlace[],
  spots: readonly TackPlace[],
  steel: readonly SolvedTube[],
): (Fixed & { readonly from: From }) | null {
  const near = froms.map((from) => {
    let kept: readonly TackPlace[] | null = null;
    return { from, free: () => (kept ??= reachable(from, places, steel)) };
  });
  const own = bestOf(near);
  if (own !== null && own.spread <= GOOD) return own;
  const wider = near.map(({ from, free }) => ({
    from,
    free: () => nearest(from, [...free(), ...reachable(from, spots, steel)]),
  }));
  return bestOf(wider);
}

/** From the first of the places that an end is held by, or another where that is much better. */
function bestOf<From extends TackPlace>(
  froms: readonly { readonly from: From; readonly free: () => readonly TackPlace[] }[],
): (Fixed & { readonly from: From }) | null {
  let best: (Three & { readonly from: From }) | null = null;
  for (const { from, free } of froms) {
    // No three are better than three that stand square to each other.
    if (best !== null && best.spread * MUCH <= SQUARE) break;
    const three = bestThree(from, free());
    if (three !== null && (best === null || three.spread < best.spread * MUCH)) best = { from, ...three };
  }
  if (best === null) return null;
  const { from, three, spread } = best;
  return {
    from,
    spread,
    tapes: three.map((to) => ({ to, tape: distance(from.mark, to.mark), centres: distance(from.centre, to.centre) })),
  };
}

const SQUARE = Math.sqrt(3);

/** The other side of an end is worth it where it fixes the end by a quarter better. */
const MUCH = 0.75;

/** The nearest first, so many as are looked at. */
function reachable({ mark }: TackPlace, places: readonly TackPlace[], steel: readonly SolvedTube[]): TackPlace[] {
  const inReach = nearest(
    { mark },
    places.filter((to) => {
      const far = distance(mark, to.mark);
      return far >= SHORTEST && far <= LONGEST;
    }),
    Infinity,
  );
  const free: TackPlace[] = [];
  for (const to of inReach) {
    if (isClear(mark, to.mark, steel)) free.push(to);
    if (free.length === LOOKED_AT) break;
  }
  return free;
}

const nearest = ({ mark }: Pick<TackPlace, 'mark'>, places: readonly TackPlace[], most = LOOKED_AT): TackPlace[] =>
  places
    .map((to) => ({ to, far: distance(mark, to.mark) }))
    .toSorted((a, b) => a.far - b.far)
    .slice(0, most)
    .map(({ to }) => to);

interface Three {
  readonly three: readonly TackPlace[];
  readonly spread: number;
}

/** Of equally good ones the nearest. Null where no three fix it better than POOR. */
function bestThree({ mark }: TackPlace, near: readonly TackPlace[]): Three | null {
  const ways = near.map((to) => normalize(subtract(mark, to.mark)));
  const cosines = ways.map((one) => ways.map((other) => dot(one, other)));
  let least = POOR;
  let three: readonly [number, number, number] | null = null;
  for (let i = 0; i < near.length; i++) {
    for (let j = i + 1; j < near.length; j++) {
      for (let k = j + 1; k < near.length; k++) {
        const spread = spreadOf(cosines[i]![j]!, cosines[j]![k]!, cosines[k]![i]!);
        if (spread < least - BETTER) [least, three] = [spread, [i, j, k]];
      }
    }
  }
  return three === null ? null : { three: three.map((i) => near[i]!), spread: least };
}

/** Less is no reason to run a longer tape. */
const BETTER = 0.02;

/** By the cosines between three tapes; Infinity where they lie in one plane. */
export function spreadOf(a: number, b: number, c: number): number {
  const squares = a * a + b * b + c * c;
  const volume = 1 + 2 * a * b * c - squares;
  return volume <= 0 ? Infinity : Math.sqrt((3 - squares) / volume);
}
