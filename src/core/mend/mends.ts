/**
 * What would mend a finding, where one edit can: facts that words are made of (core/words/mends.ts), and the edit. Whether it does mend is seen
 * by trying: the job with the edit is derived, and refused where it still has the finding or an error that it had not.
 */
import type {
  Finding,
  JointNearBend,
  JointOffRunEnd,
  NoRoomForTorch,
  OutOfLine,
  RunsThrough,
} from '../checks/types.ts';
import { derive, type Derived } from '../derive.ts';
import { updateDie } from '../edit/dies.ts';
import { setTubeOrder } from '../edit/feeds.ts';
import { updateFoot } from '../edit/feet.ts';
import { moveMember, setEnd, updateMember } from '../edit/members.ts';
import { asOneBar, cutWhere, swapThrough, type EndOfMember } from '../edit/pieces.ts';
import type { Edited } from '../edit/records.ts';
import { addScaled, distance, dot, scale, Z_AXIS } from '../geometry/vector.ts';
import { nearestOnPath, placeAt } from '../geometry/path.ts';
import { fault } from '../job/fault.ts';
import type { Foot } from '../job/kinds/foot.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import {
  bareId,
  isPrimed,
  primed,
  type DieId,
  type FootId,
  type MemberId,
  type NodeRef,
  type SectionId,
  type TubeRef,
} from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { barFreedom } from '../shape/move-bar.ts';
import { freedomOf } from '../shape/free-directions.ts';
import { splitOnto } from '../shape/split-onto.ts';
import type { Bar, Frame, SolvedTube } from '../solve/types.ts';

/** Why a harness bar is put just there: the sheet advises it, it is the middle of what the sheet allows, or level, or the least move that meets the sheet. */
export type LiftWhy = 'advised' | 'middle' | 'level' | 'least';

export type Mend =
  /** The node along the bar that it stands on; `by` counts towards the bar's end B, mm. */
  | { readonly kind: 'move-along'; readonly node: NodeRef; readonly bar: TubeRef; readonly by: number }
  | { readonly kind: 'build-after'; readonly member: MemberId; readonly after: MemberId }
  | { readonly kind: 'mitre'; readonly member: MemberId; readonly which: 0 | 1; readonly mate: TubeRef }
  /** The member cut in pieces where that bar runs through it. */
  | { readonly kind: 'cut'; readonly member: MemberId; readonly by: TubeRef }
  | { readonly kind: 'no-mirror'; readonly member: MemberId }
  /** That end, to what it is coped to now and to this as well, as the member sees them. */
  | { readonly kind: 'cope-to'; readonly member: MemberId; readonly which: 0 | 1; readonly against: readonly TubeRef[] }
  /** Two members instead of pieces, which both end on the axis of that bar. */
  | { readonly kind: 'split-onto'; readonly member: MemberId; readonly by: TubeRef }
  | { readonly kind: 'run-through'; readonly member: MemberId; readonly by: TubeRef }
  /** The later of two halves drawn as one bar with the earlier, cut where that bar runs through. */
  | { readonly kind: 'one-bar'; readonly keep: EndOfMember; readonly drop: EndOfMember; readonly through: TubeRef }
  | { readonly kind: 'turn-foot'; readonly member: MemberId; readonly which: 0 | 1 }
  | { readonly kind: 'keep-order'; readonly tube: TubeRef; readonly order: readonly BendStep[] }
  | { readonly kind: 'radius-from-pulls'; readonly die: DieId }
  | { readonly kind: 'other-section'; readonly members: readonly MemberId[]; readonly section: SectionId }
  | { readonly kind: 'other-die'; readonly members: readonly MemberId[]; readonly die: DieId }
  | { readonly kind: 'foot-size'; readonly foot: FootId; readonly size: Foot['size'] }
  /** The whole bar up, or down where `by` is below 0, mm; the figure that the article then has lies about `to`. */
  | {
      readonly kind: 'lift-bar';
      readonly bar: TubeRef;
      readonly by: number;
      readonly to: number;
      readonly quantity: 'angle' | 'length';
      readonly why: LiftWhy;
    }
  | { readonly kind: 'foot-thickness'; readonly foot: FootId; readonly thickness: number };

/** What would mend it, the most usual first; empty where no one edit is known to. */
export function mendsOf(finding: Finding, frame: Frame): readonly Mend[] {
  const tube = frame.byId.get(finding.tube)!;
  const { id: member } = tube.member;
  const which = finding.end === 'B' ? 1 : 0;
  switch (finding.id) {
    case 'joint/near-bend':
      return clearOfBends(finding, tube, frame);
    case 'joint/off-run-end':
      return backFromEnd(finding, frame);
    case 'end/meets-nothing': {
      const { sees } = finding;
      if (sees === null) return [];
      if (sees === 'own-twin') return [{ kind: 'mitre', member, which, mate: primed(member) }];
      return [{ kind: 'build-after', member, after: frame.byId.get(sees.later)!.member.id }];
    }
    case 'mitre/one-sided': {
      const mate = frame.byId.get(finding.mate)!;
      const end = mate.ends.findIndex(({ node }) => node !== null && node === finding.node);
      if (end === -1) return [];
      const seen = isPrimed(mate.bar) && tube.member.mirror ? primed(tube.bar) : tube.bar;
      return [{ kind: 'mitre', member: mate.member.id, which: end as 0 | 1, mate: seen }];
    }
    case 'joint/out-of-line':
      return oneBar(finding, frame);
    case 'member/twin-in-same-place':
      return [{ kind: 'no-mirror', member }];
    case 'piece/hoop':
      return (tube.member.cutBy ?? []).map((by): Mend => ({ kind: 'run-through', member, by }));
    case 'piece/strip-holds':
      return [{ kind: 'split-onto', member, by: seenFrom(tube, frame.bars.get(finding.runTube)!) }];
    case 'gap/runs-through': {
      const cope = copeTo(finding, tube, frame);
      return cope.length > 0 ? cope : cuts(tube, frame.byId.get(finding.other)!, frame);
    }
    case 'gap/no-room-for-torch':
      return copeTo(finding, tube, frame);
    case 'foot/upside-down':
      return [{ kind: 'turn-foot', member, which }];
    case 'bend/order-matters':
      return [{ kind: 'keep-order', tube: tube.id, order: finding.order }];
    case 'bend/radius-opens':
      return tube.die === null ? [] : [{ kind: 'radius-from-pulls', die: tube.die.id }];
    default:
      return [];
  }
}

/** mm. What is just clear of a limit is this much beyond it, so that nobody asks whether it is. */
const BEYOND = 0.1;

/** To the nearer side of the bend, if that is clear of the others too. */
function clearOfBends({ node, reach }: JointNearBend, tube: SolvedTube, frame: Frame): readonly Mend[] {
  const cut = tube.ends.flatMap(({ node: at, cuts }) => (at === node ? cuts : [])).find(({ onBend }) => !onBend);
  const bar = cut === undefined ? undefined : frame.bars.get(cut.against);
  if (cut === undefined || bar === undefined || node === undefined) return [];
  const clear = (at: number) =>
    at > 0 && at < bar.developedLength && bar.bends.every(({ start, end }) => at < start - reach || at > end + reach);
  const by = bar.bends
    .flatMap(({ start, end }) => [start - reach - BEYOND, end + reach + BEYOND])
    .filter(clear)
    .map((at) => at - cut.landingAt)
    .toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
  return by === undefined ? [] : slideAlong(node, bar, by, frame);
}

function backFromEnd({ node, tube, runTube, runTubeEnd, over }: JointOffRunEnd, frame: Frame): readonly Mend[] {
  const run = frame.byId.get(runTube)!;
  const bar = frame.bars.get(run.bar)!;
  if (node === undefined || tube === runTube) return [];
  return slideAlong(node, bar, (over + BEYOND) * (runTubeEnd === 'A' ? 1 : -1), frame);
}

/** Where one of the tube's ends is at the place; bars that cross away from both cannot be coped there. */
function copeTo({ other, at }: RunsThrough | NoRoomForTorch, tube: SolvedTube, frame: Frame): readonly Mend[] {
  const run = frame.byId.get(other)!;
  const reach = tube.section.outerDiameter + run.section.outerDiameter;
  const [toA, toB] = tube.ends.map(({ position, tip, direction }) =>
    distance(addScaled(position, direction, tip ?? 0), at),
  ) as [number, number];
  const which = toA <= toB ? 0 : 1;
  const { node, spec, cuts } = tube.ends[which];
  if (Math.min(toA, toB) > reach || node === null || (spec.fit !== 'auto' && spec.fit !== 'cope')) return [];
  const own = (bar: TubeRef): TubeRef => (isPrimed(tube.bar) && frame.bars.get(bar)!.member.mirror ? primed(bar) : bar);
  const against = [...cuts.map((cut) => cut.against), run.bar].map(own);
  return [{ kind: 'cope-to', member: tube.member.id, which, against }];
}

/** Two that cross: either cut where the other runs through. */
function cuts(tube: SolvedTube, other: SolvedTube, frame: Frame): readonly Mend[] {
  if (tube.bar === other.bar) return [];
  return [
    [tube, other],
    [other, tube],
  ].flatMap(([cut, through]): readonly Mend[] => {
    const by = seenFrom(cut!, frame.bars.get(through!.bar)!);
    return cut!.piece === null ? [{ kind: 'cut', member: cut!.member.id, by }] : [];
  });
}

/** What the member of a tube calls that bar. */
const seenFrom = (tube: SolvedTube, { id, member }: Bar): TubeRef =>
  isPrimed(tube.bar) && member.mirror ? primed(id) : id;

/** Of halves on one side of the car, or that both span it. */
function oneBar({ tube, end, mate, mateEnd, through }: OutOfLine, { byId }: Frame): readonly Mend[] {
  const [later, earlier] = [byId.get(tube)!, byId.get(mate)!];
  if (through === null || later.member === earlier.member || isPrimed(tube) !== isPrimed(mate)) return [];
  const keep = { member: earlier.member.id, which: mateEnd === 'A' ? 0 : 1 } as const;
  const drop = { member: later.member.id, which: end === 'A' ? 0 : 1 } as const;
  return [{ kind: 'one-bar', keep, drop, through: isPrimed(tube) && later.member.mirror ? primed(through) : through }];
}

/** Only of a node that is placed by how far it is along this bar. */
export function slideAlong(node: NodeRef, bar: Bar, by: number, frame: Frame): readonly Mend[] {
  const freedom = freedomOf(frame, node);
  const slides = freedom?.free === 'line' && freedom.host !== null && freedom.at.kind === 'on';
  return slides && bareId(freedom.at.member) === bareId(bar.id) ? [{ kind: 'move-along', node, bar: bar.id, by }] : [];
}

/** The job with the mend; or why it does not do there. `derived` is what was derived of the job, in which it was found. */
export function mended(job: Job, mend: Mend, finding: Finding, derived: Derived): Edited {
  const edited = withMend(job, mend, derived);
  if (Array.isArray(edited)) return edited;
  const after = derive(edited as Job, derived);
  if (!after.ok) return after.faults;
  const still = after.value.findings.some(
    (each) =>
      each.id === finding.id &&
      each.tube === finding.tube &&
      each.end === finding.end &&
      each.bend === finding.bend &&
      otherOf(each) === otherOf(finding),
  );
  if (still) return [fault('', 'tried, and it does not mend it: something else stands in the way there')];
  return unlessWorse(edited as Job, after.value, derived);
}

/** The edit, unless more errors are found with it than before. */
export function unlessWorse(edited: Job, after: Derived, before: Derived): Edited {
  const errors = ({ findings }: Derived): number => findings.filter(({ severity }) => severity === 'error').length;
  return errors(after) > errors(before) ? [fault('', 'tried, and it brings an error that was not there')] : edited;
}

const otherOf = (finding: Finding): TubeRef | null => ('other' in finding ? finding.other : null);

/** The job with it, whatever comes of that. */
export function withMend(job: Job, mend: Mend, frame: Frame): Edited {
  switch (mend.kind) {
    case 'move-along': {
      const freedom = freedomOf(frame, mend.node);
      if (freedom?.free !== 'line' || freedom.host === null) return job;
      const { path } = frame.bars.get(mend.bar)!;
      // The image of a node on a hoop stands on the hoop's other half, where the node's own distance grows the other way.
      const towardsB = placeAt(path, nearestOnPath(path, freedom.place).at).tangent;
      return freedom.moved(job, freedom.value + mend.by * (dot(freedom.direction, towardsB) < 0 ? -1 : 1));
    }
    case 'build-after':
      return moveMember(
        job,
        mend.member,
        job.members.findIndex(({ id }) => id === mend.after),
      );
    case 'mitre':
      return setEnd(job, mend.member, mend.which, { fit: 'mitre', with: mend.mate, allowance: 0 });
    case 'cope-to': {
      const end = job.members.find(({ id }) => id === mend.member)?.ends[mend.which];
      const allowance = end?.allowance ?? 0;
      return setEnd(job, mend.member, mend.which, { fit: 'cope', against: [...mend.against], allowance });
    }
    case 'cut':
      return cutWhere(job, mend.member, mend.by);
    case 'no-mirror':
      return updateMember(job, mend.member, { mirror: false });
    case 'split-onto':
      return splitOnto(job, frame, mend.member, mend.by);
    case 'run-through':
      return swapThrough(job, mend.member, mend.by);
    case 'one-bar':
      return asOneBar(job, mend.keep, mend.drop, mend.through);
    case 'turn-foot': {
      const end = job.members.find(({ id }) => id === mend.member)?.ends[mend.which];
      return end?.fit === 'foot'
        ? setEnd(job, mend.member, mend.which, { ...end, normal: scale(end.normal, -1) })
        : job;
    }
    case 'keep-order':
      return setTubeOrder(job, mend.tube, mend.order);
    case 'radius-from-pulls':
      return updateDie(job, mend.die, { radius: 'from-pulls' });
    case 'other-section':
      return mend.members.reduce((all, id) => updateMember(all, id, { section: mend.section }), job);
    case 'other-die':
      return mend.members.reduce((all, id) => updateMember(all, id, { die: mend.die }), job);
    case 'lift-bar': {
      const freedom = barFreedom(frame, mend.bar);
      return freedom === null ? job : freedom.moved(job, addScaled(freedom.place, Z_AXIS, mend.by));
    }
    case 'foot-size':
      return updateFoot(job, mend.foot, { size: mend.size });
    case 'foot-thickness':
      return updateFoot(job, mend.foot, { thickness: mend.thickness });
  }
}
