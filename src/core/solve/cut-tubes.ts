/**
 * The tubes with their ends cut: copes, lengths, names and numbers, from what each meets. One whose shape, ends and cutters are
 * the same objects or values as before is handed on as it is, so that an edit costs what depends on it.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { equal } from '../geometry/vector.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Member } from '../job/kinds/member.ts';
import { isPrimed } from '../job/reference.ts';
import { withLater } from '../remembered.ts';
import type { Job } from '../job/types.ts';
import { blankLength, copedMass } from './amount.ts';
import { sameLaw } from './bending.ts';
import type { Centreline } from './centreline.ts';
import { solveEnds } from './ends.ts';
import type { LaidTube, Layout } from './lay-out.ts';
import type { EndSetting, Meetings } from './meet-tubes.ts';
import type { Neighbour, Neighbours } from './meetings.ts';
import type { Frame, SolvedTube, TubeEnd } from './types.ts';

/** The solved frame, of the tubes as they are laid out and of what they meet. Equal in value whether there is a `previous` or not. */
export function cutTubes(
  job: Job,
  { nodes, tubes: laid }: Layout,
  { neighbours, met }: Meetings,
  previous: Frame | undefined,
): Frame {
  const tubes = laid.map((tube, index) => {
    const each = met[index]!;
    return each.same ?? cutTube(tube, index + 1, each.settings, neighbours, previous);
  });
  return { job, nodes, tubes, byId: new Map(tubes.map((tube) => [tube.id, tube])) };
}

function cutTube(
  tube: LaidTube,
  number: number,
  settings: readonly [EndSetting, EndSetting],
  neighbours: Neighbours,
  previous: Frame | undefined,
): SolvedTube {
  const { id, centreline, section, member, die, pullLaw } = tube;
  const twinOf = isPrimed(id) ? member.id : null;
  const name = tubeName(member, twinOf !== null, centreline);
  const before = previous?.byId.get(id);
  const sameEnds = before !== undefined && endsUnchanged(before, tube, settings, neighbours, previous!);
  if (
    sameEnds &&
    before.member === member &&
    before.die === die &&
    before.name === name &&
    before.number === number &&
    sameLaw(before.pullLaw, pullLaw)
  )
    return before;
  const ends = sameEnds
    ? renamedEnds(before.ends, settings)
    : solveEnds(centreline, section, settings, twinOf !== null);
  const { route, corners, path, bends, straights, developedLength, sharpCornerLength } = centreline;
  return withMass({
    id,
    name,
    number,
    member,
    twinOf,
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

/** Asked for by lists and files alone. */
const withMass = withLater<Omit<SolvedTube, 'mass'>, Pick<SolvedTube, 'mass'>>({
  mass: ({ developedLength, section, ends }) => copedMass(developedLength, section, ends),
});

/** Both of a mirrored pair are named by the side they are on; where they have none, the twin is called so. */
function tubeName(member: Member, isTwin: boolean, { route }: Centreline): string {
  if (!member.mirror) return member.name;
  const side = route.reduce((sum, place) => sum + place[1], 0) / route.length;
  if (Math.abs(side) <= ROUNDING) return `${member.name} (${isTwin ? 'across, twin' : 'across'})`;
  return `${member.name} (${side > 0 ? 'left' : 'right'})`;
}

/** True when the tube's shape, its end specs and every cutter are as they were when `before` was solved. */
function endsUnchanged(
  before: SolvedTube,
  tube: LaidTube,
  settings: readonly [EndSetting, EndSetting],
  neighbours: Neighbours,
  previous: Frame,
): boolean {
  if (before.path !== tube.centreline.path || before.section !== tube.section) return false;
  return settings.every((setting, which) => {
    const end = before.ends[which]!;
    const spec = before.member.ends[which]!;
    return (
      sameSpec(spec, setting.spec) &&
      end.cuts.length === setting.meeting.cutters.length &&
      end.butted.length === setting.meeting.butted.length &&
      end.butted.every((id, i) => id === setting.meeting.butted[i]!.id) &&
      end.cuts.every(
        (cut, i) =>
          cut.against === setting.meeting.cutters[i]!.id &&
          sameRunTube(previous.byId.get(cut.against), neighbours.byId.get(cut.against)!),
      )
    );
  });
}

const sameRunTube = (before: SolvedTube | undefined, now: Neighbour): boolean =>
  before?.path === now.path && before.section === now.section && before.member.mirror === now.mirrored;

const sameSpec = (a: EndFit, b: EndFit): boolean =>
  a === b ||
  (a.fit === b.fit &&
    a.allowance === b.allowance &&
    (a.fit !== 'plate' || (b.fit === 'plate' && equal(a.normal, b.normal))));

/** An end that took another node at the same place: only the name on it changes. */
const renamedEnds = (
  [a, b]: SolvedTube['ends'],
  [settingA, settingB]: readonly [EndSetting, EndSetting],
): readonly [TubeEnd, TubeEnd] =>
  a.node === settingA.node && b.node === settingB.node
    ? [a, b]
    : [
        { ...a, node: settingA.node },
        { ...b, node: settingB.node },
      ];
