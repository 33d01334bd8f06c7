/**
 * The tubes that bars are made in. A bar is one tube, or, where its member names bars that run through it, pieces: both pieces end at the place
 * on its centreline that is nearest to the cutter's. A cut inside a bend leaves each piece its part of the arc, and a straight of 0 beside it.
 *
 * Places along the bar count from end A's node, mm of developed length.
 */
import { nearestToPath } from '../geometry/nearest-paths.ts';
import type { Path, PathPlace } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { fault, quoted, type Fault, type Outcome } from '../job/fault.ts';
import { bareId, isPrimed, pieceId, primed, type TubeRef } from '../job/reference.ts';
import type { Centreline } from './centreline.ts';
import type { LaidBar } from './lay-out.ts';
import { partOf } from './part-of.ts';
import { standingOr, type BuiltTubes } from './standing.ts';
import type { Piece } from './types.ts';

/** A bar, or a piece of one: its id and centreline are then its own. */
export interface LaidTube extends LaidBar {
  readonly bar: LaidBar;
  readonly piece: Piece | null;
  /** What its end A and its end B are cut by where they are no ends of the bar. */
  readonly cutAt: readonly [CutPlace | null, CutPlace | null];
}

/** Where a bar is cut: the bar that runs through, and the place on the one that is cut. */
export interface CutPlace {
  readonly by: TubeRef;
  readonly place: PathPlace;
}

/** Every bar's tubes, in the order of the bars; or the fault of a piece that would have no length. */
export function tubesOf(bars: readonly LaidBar[], built: BuiltTubes): Outcome<readonly LaidTube[]> {
  const byId = new Map(bars.map((bar) => [bar.id, bar]));
  const tubes: LaidTube[] = [];
  for (const bar of bars) {
    if (bar.member.cutBy === undefined) {
      tubes.push({ ...bar, bar, piece: null, cutAt: [null, null] });
      continue;
    }
    const cutters = bar.member.cutBy.map((named) => byId.get(isPrimed(bar.id) ? imageOf(named, byId) : named)!);
    const made = cutUp(bar, cutters, built);
    if (!Array.isArray(made)) return { ok: false, faults: [made as Fault] };
    tubes.push(...(made as readonly LaidTube[]));
  }
  return { ok: true, value: tubes };
}

/** What is to the twin what that bar is to its member: the other of a pair, or the same bar where it spans the car. */
const imageOf = (bar: TubeRef, byId: ReadonlyMap<TubeRef, LaidBar>): TubeRef =>
  byId.has(primed(bareId(bar))) ? primed(bar) : bar;

function cutUp(bar: LaidBar, cutters: readonly LaidBar[], built: BuiltTubes): readonly LaidTube[] | Fault {
  const { id, centreline } = bar;
  const cuts = cutPlaces(centreline.path, cutters);
  const ends = [0, ...cuts.map(({ place }) => place.at), centreline.developedLength];
  for (const [i, { by }] of cuts.entries()) {
    if (ends[i + 1]! - ends[i]! > ROUNDING && ends[i + 2]! - ends[i + 1]! > ROUNDING) continue;
    return fault(
      `members[${bar.order}].cutBy[${cutters.findIndex((cutter) => cutter.id === by)}]`,
      `${quoted(by)} comes nearest to ${quoted(id)} where that ends or is cut already: a piece would have no length`,
    );
  }
  const parts = partsOf(centreline, ends);
  return parts.map((part, i): LaidTube => ({
    ...bar,
    ...standingOr(part, bar.die, built.get(pieceId(id, i + 1))),
    id: pieceId(id, i + 1),
    bar,
    piece: { number: i + 1, count: parts.length, from: ends[i]! },
    cutAt: [cuts[i - 1] ?? null, cuts[i] ?? null],
  }));
}

/** From end A. */
const cutPlaces = (path: Path, cutters: readonly LaidBar[]): readonly CutPlace[] =>
  cutters
    .map(({ id, centreline }): CutPlace => ({ by: id, place: nearestOnce(path, centreline.path) }))
    .toSorted((a, b) => a.place.at - b.place.at);

/** The same answer, the same object, as long as both paths are the same: an edit elsewhere leaves a piece what it was. */
function nearestOnce(path: Path, cutter: Path): PathPlace {
  const ofPath = known.get(path) ?? new WeakMap<Path, PathPlace>();
  known.set(path, ofPath);
  const place = ofPath.get(cutter) ?? nearestToPath(path, cutter);
  ofPath.set(cutter, place);
  return place;
}

const known = new WeakMap<Path, WeakMap<Path, PathPlace>>();

function partsOf(centreline: Centreline, ends: readonly number[]): readonly Centreline[] {
  const before = cutInto.get(centreline.path);
  if (before !== undefined && before.ends.length === ends.length && before.ends.every((at, i) => at === ends[i])) {
    return before.parts;
  }
  const parts = ends.slice(1).map((to, i) => partOf(centreline, ends[i]!, to));
  cutInto.set(centreline.path, { ends, parts });
  return parts;
}

const cutInto = new WeakMap<Path, { readonly ends: readonly number[]; readonly parts: readonly Centreline[] }>();
