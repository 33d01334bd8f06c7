/**
 * The tubes with their ends cut: copes, lengths, names and numbers, from what each meets. One whose shape, ends and cutters are
 * the same objects or values as before is handed on as it is, so that an edit costs what depends on it.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { sameData } from '../job/equal.ts';
import type { EndFit } from '../job/kinds/end.ts';
import { bareId, isPrimed, type TubeRef } from '../job/reference.ts';
import { withLater } from '../remembered.ts';
import type { Job } from '../job/types.ts';
import { numbersOf } from '../job/numbers.ts';
import { blankLength, copedMass } from './amount.ts';
import { sameLaw } from './bending.ts';
import { samePlane } from './end-plane.ts';
import { solveEnds } from './ends.ts';
import { heldEnds, type AskedEnd } from './held.ts';
import type { LaidBar, Layout } from './lay-out.ts';
import type { EndSetting, Meetings } from './meet-tubes.ts';
import type { Neighbour, Neighbours } from './meetings.ts';
import type { LaidTube } from './pieces.ts';
import type { Bar, Frame, Piece, SolvedTube, TubeEnd } from './types.ts';

/** The solved frame, of the tubes as they are laid out and of what they meet. Equal in value whether there is a `previous` or not. */
export function cutTubes(
  job: Job,
  drawn: Layout,
  layout: Layout,
  { neighbours, met }: Meetings,
  previous: Frame | undefined,
): Frame {
  const numbers = numbersOf(job);
  const tubes = layout.tubes.map((tube, index) => {
    const each = met[index]!;
    if (each.same !== null) return each.same;
    const [number, before] = [numbers.get(tube.id)!, previous?.byId.get(tube.id)];
    const cut = (laid: LaidTube, settings: Settings, was: SolvedTube | undefined, asDrawn: SolvedTube | null) =>
      cutTube(laid, number, settings, asDrawn, { neighbours, previous, before: was });
    const asDrawn =
      each.asDrawn === null
        ? null
        : cut({ ...tube, centreline: tube.asDrawn!, held: null }, each.asDrawn, before?.asDrawn ?? undefined, null);
    return cut(tube, each.settings, before, asDrawn);
  });
  return {
    job,
    drawn,
    layout,
    nodes: layout.nodes,
    tubes,
    byId: new Map(tubes.map((tube) => [tube.id, tube])),
    bars: barsOf(layout.bars, tubes, previous),
  };
}

type Settings = readonly [EndSetting, EndSetting];

interface Around {
  readonly neighbours: Neighbours;
  readonly previous: Frame | undefined;
  /** The same tube in that. */
  readonly before: SolvedTube | undefined;
}

function cutTube(
  tube: LaidTube,
  number: number,
  settings: Settings,
  asDrawn: SolvedTube | null,
  { neighbours, previous, before }: Around,
): SolvedTube {
  const { id, bar, piece, centreline, section, member, die, pullLaw, held } = tube;
  const twinOf = isPrimed(id) ? bareId(id) : null;
  const name = tubeName(tube);
  const sameEnds =
    before !== undefined &&
    before.held === (held?.made ?? null) &&
    (held === null
      ? endsUnchanged(before, tube, settings, neighbours, previous!)
      : heldUnchanged(before, tube, settings));
  if (
    sameEnds &&
    before.member === member &&
    before.die === die &&
    before.name === name &&
    before.number === number &&
    before.asDrawn === asDrawn &&
    samePiece(before.piece, piece) &&
    sameLaw(before.pullLaw, pullLaw)
  )
    return before;
  const ends = sameEnds
    ? renamedEnds(before.ends, settings)
    : held === null
      ? solveEnds(centreline, section, settings, twinOf !== null)
      : heldEnds(held, section, twinOf !== null, [askedOf(settings[0]), askedOf(settings[1])]);
  const { route, corners, path, bends, straights, developedLength, sharpCornerLength } = centreline;
  return withMass({
    id,
    name,
    number,
    bar: bar.id,
    piece,
    member,
    twinOf,
    asDrawn,
    held: held?.made ?? null,
    section,
    die,
    pullLaw,
    route,
    corners,
    path,
    bends,
    straights,
    developedLength,
    sharpCornerLength,
    blankLength: blankLength(developedLength, ends),
    ends,
  });
}

const askedOf = ({ node, spec, plane: { foot } }: EndSetting): AskedEnd => ({ node, spec, foot });

/** Asked for by lists and files alone. */
const withMass = withLater<Omit<SolvedTube, 'mass'>, Pick<SolvedTube, 'mass'>>({
  mass: ({ developedLength, section, ends }) => copedMass(developedLength, section, ends),
});

const samePiece = (a: Piece | null, b: Piece | null): boolean =>
  a === b || (a !== null && b !== null && a.number === b.number && a.count === b.count && a.from === b.from);

/** What is drawn: a bar that is made whole is its tube; one in pieces has the ends of its first and of its last. */
function barsOf(
  laid: readonly LaidBar[],
  tubes: readonly SolvedTube[],
  previous: Frame | undefined,
): ReadonlyMap<TubeRef, Bar> {
  const bars = new Map<TubeRef, Bar>();
  let next = 0;
  for (const bar of laid) {
    const first = tubes[next]!;
    next += first.piece?.count ?? 1;
    if (first.piece === null) {
      bars.set(bar.id, first);
      continue;
    }
    const { id, member, section, die, pullLaw, centreline } = bar;
    const name = barName(bar);
    const ends = [first.ends[0], tubes[next - 1]!.ends[1]] as const;
    const before = previous?.bars.get(id);
    const same =
      before?.member === member &&
      before.name === name &&
      before.section === section &&
      before.die === die &&
      sameLaw(before.pullLaw, pullLaw) &&
      before.path === centreline.path &&
      before.ends.every((end, which) => end === ends[which]);
    bars.set(id, same ? before : { id, name, member, section, die, pullLaw, ...centreline, ends });
  }
  return bars;
}

/** Both of a mirrored pair are named by the side they are on; where they have none, the twin is called so. */
const tubeName = ({ bar, piece }: LaidTube): string =>
  barName(bar, piece === null ? '' : `, piece ${piece.number} of ${piece.count}`);

function barName({ id, member, centreline: { route } }: LaidBar, piece = ''): string {
  const name = `${member.name}${piece}`;
  if (!member.mirror) return name;
  const side = route.reduce((sum, place) => sum + place[1], 0) / route.length;
  if (Math.abs(side) <= ROUNDING) return `${name} (${isPrimed(id) ? 'across, twin' : 'across'})`;
  return `${name} (${side > 0 ? 'left' : 'right'})`;
}

/** True when the tube's shape, its end specs and every cutter are as they were when `before` was solved. */
function endsUnchanged(
  before: SolvedTube,
  tube: LaidTube,
  settings: Settings,
  neighbours: Neighbours,
  previous: Frame,
): boolean {
  if (before.path !== tube.centreline.path || before.section !== tube.section) return false;
  return settings.every((setting, which) => {
    const end = before.ends[which]!;
    return (
      sameSpec(end.spec, setting.spec) &&
      samePlane(setting.plane, end) &&
      end.cuts.length === setting.meeting.cutters.length &&
      end.butted.length === setting.meeting.butted.length &&
      end.butted.every((id, i) => id === setting.meeting.butted[i]!.id) &&
      end.cuts.every(
        (cut, i) =>
          cut.against === setting.meeting.cutters[i]!.id &&
          sameRunTube(previous.bars.get(cut.against), neighbours.byId.get(cut.against)!),
      )
    );
  });
}

/** The same of a tube that is held as it was cut: what it would be cut by now is no matter. */
const heldUnchanged = (before: SolvedTube, { centreline, section }: LaidTube, settings: Settings): boolean =>
  before.path === centreline.path &&
  before.section === section &&
  settings.every(({ spec, plane: { foot } }, which) => {
    const end = before.ends[which]!;
    return sameSpec(end.spec, { ...spec, allowance: end.allowance }) && (end.fit !== 'foot' || end.foot === foot);
  });

const sameRunTube = (before: Bar | undefined, now: Neighbour): boolean =>
  before?.path === now.path && before.section === now.section && before.member.mirror === now.mirrored;

const sameSpec = (a: EndFit, b: EndFit): boolean => a === b || sameData(a, b);

/** An end that took another node at the same place: only the name on it changes. */
const renamedEnds = ([a, b]: SolvedTube['ends'], [settingA, settingB]: Settings): readonly [TubeEnd, TubeEnd] =>
  a.node === settingA.node && b.node === settingB.node
    ? [a, b]
    : [
        { ...a, node: settingA.node },
        { ...b, node: settingB.node },
      ];
