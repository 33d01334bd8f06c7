/**
 * What would mend an article that is not met, where one edit can: another tube or die that the job has, a bar run through whole, a foot made larger, an end
 * moved along the tube that it stands on by the least that does it. Each is tried before it is offered: the article is judged again in the changed frame.
 */
import { derive, type Derived } from '../derive.ts';
import type { Edited } from '../edit/records.ts';
import { fault } from '../job/fault.ts';
import type { MemberId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { judge } from '../rules/judge.ts';
import type { Because, Verdict } from '../rules/types.ts';
import { lifts } from './lift-bar.ts';
import { sectionArea } from '../solve/amount.ts';
import type { SolvedTube } from '../solve/types.ts';
import { slideAlong, unlessWorse, withMend, type Mend } from './mends.ts';

/** What would mend it, the least first; empty where it is not past its limit, and where no one edit is known to. */
export function mendsOfVerdict(job: Job, verdict: Verdict, derived: Derived): readonly Mend[] {
  if (verdict.verdict !== 'not-met') return [];
  return candidates(job, verdict, derived).filter((mend) => !Array.isArray(mendedVerdict(job, mend, verdict, derived)));
}

/** The job with the mend; or why it does not do there. */
export function mendedVerdict(job: Job, mend: Mend, verdict: Verdict, derived: Derived): Edited {
  const edited = withMend(job, mend, derived);
  if (Array.isArray(edited)) return edited;
  const after = derive(edited as Job, derived);
  if (!after.ok) return after.faults;
  if (!isWithin(after.value, verdict)) return [fault('', 'tried, and the article is still not met')];
  return unlessWorse(edited as Job, after.value, derived);
}

/** What stands in the way of "met" though all that was measured is within: a figure from memory, a bar that has no role. */
const OPEN_ALL_THE_SAME: readonly Because['id'][] = ['from-memory', 'unnamed'];

/** Whether all that the article measures is within its figure in this frame. */
const isWithin = (derived: Derived, { sheet, index }: Verdict): boolean =>
  judge(derived).some(
    (each) =>
      each.sheet === sheet &&
      each.index === index &&
      (each.verdict === 'met' || (each.verdict === 'not-checked' && OPEN_ALL_THE_SAME.includes(each.because.id))),
  );

function candidates(job: Job, verdict: Verdict, derived: Derived): readonly Mend[] {
  const tubes = verdict.concerns.flatMap((id) => derived.byId.get(id) ?? []);
  const members = [...new Set(tubes.map(({ member }) => member.id))];
  switch (verdict.check.kind) {
    case 'section':
      return otherSections(job, members);
    case 'bend-radius':
      return job.dies.map((die): Mend => ({ kind: 'other-die', members, die: die.id }));
    case 'one-piece':
      return tubes
        .filter(({ piece }) => piece?.number === 1)
        .flatMap(({ member }) =>
          (member.cutBy ?? []).map((by): Mend => ({ kind: 'run-through', member: member.id, by })),
        );
    case 'plate':
      return largerFeet(job, verdict, tubes);
    case 'harness':
      return lifts(verdict, job, derived);
    case 'reach':
    case 'tilt':
    case 'gap-window':
      return tubes.slice(0, MOST_TRIED).flatMap((tube) => slides(job, verdict, tube, derived));
    default:
      return [];
  }
}

/** Tubes whose ends are tried to be moved: the other side of the car follows by its mirror. */
const MOST_TRIED = 2;

/** The lightest that does it. */
function otherSections(job: Job, members: readonly MemberId[]): readonly Mend[] {
  return job.sections
    .toSorted((one, other) => sectionArea(one) - sectionArea(other))
    .map((section): Mend => ({ kind: 'other-section', members, section: section.id }));
}

/** Sides and thickness in whole millimetres, up: a plate is sawn from sheet. */
function largerFeet(job: Job, { check, limit, value }: Verdict, tubes: readonly SolvedTube[]): readonly Mend[] {
  if (limit === null || value === null || value <= 0) return [];
  const feet = new Set(tubes.flatMap(({ ends }) => ends.flatMap(({ foot }) => foot?.id ?? [])));
  return job.feet
    .filter(({ id }) => feet.has(id))
    .flatMap((foot): readonly Mend[] => {
      if (check.of === 'thickness') return [{ kind: 'foot-thickness', foot: foot.id, thickness: Math.ceil(limit) }];
      if (check.of !== 'area') return [];
      const times = Math.sqrt(limit / value);
      const [long, wide] = foot.size.map((side) => Math.ceil(side * times)) as [number, number];
      return [{ kind: 'foot-size', foot: foot.id, size: [long, wide] }];
    });
}

/** mm: the first step, the farthest, and the division that a move is rounded to. */
const [FIRST_STEP, FARTHEST_MOVE, FINE] = [2, 600, 0.1];
/** A margin grows nearly evenly with the way that an end is moved: a few chords find where it is nothing. */
const MOST_CHORDS = 8;

/** Of each end that stands along another bar the least way along it that does it. */
function slides(job: Job, verdict: Verdict, tube: SolvedTube, derived: Derived): readonly Mend[] {
  const found = tube.ends.flatMap(({ node, cuts }) =>
    cuts.slice(0, 1).flatMap(({ against }): readonly Mend[] => {
      const bar = derived.bars.get(against);
      if (node === null || bar === undefined || slideAlong(node, bar, FIRST_STEP, derived).length === 0) return [];
      const by = leastMove((way) => slideAlong(node, bar, way, derived), job, verdict, derived);
      return by === null ? [] : slideAlong(node, bar, by, derived);
    }),
  );
  return found.toSorted((one, other) => Math.abs(byOf(one)) - Math.abs(byOf(other)));
}

const byOf = (mend: Mend): number => (mend.kind === 'move-along' ? mend.by : 0);

/** By chords of the margin over the move; null where it does not come to nothing within reach. On FINE, away from where it is: what is shown is what was tried. */
function leastMove(
  moved: (by: number) => readonly Mend[],
  job: Job,
  verdict: Verdict,
  derived: Derived,
): number | null {
  const marginAt = (by: number): number => moved(by).map((mend) => marginWith(job, mend, verdict, derived))[0] ?? NaN;
  let [by, margin] = [0, verdict.margin ?? NaN];
  let [next, nextMargin] = [FIRST_STEP, marginAt(FIRST_STEP)];
  for (let chord = 0; chord < MOST_CHORDS; chord++) {
    const slope = (nextMargin - margin) / (next - by);
    [by, margin] = [next, nextMargin];
    const step = Math.abs(margin / slope);
    // An even figure does not change with the move; a figure that is not there is none to follow.
    if (!Number.isFinite(step) || Math.abs(by - margin / slope) > FARTHEST_MOVE) return null;
    if (step < FINE) break;
    next = by - margin / slope;
    nextMargin = marginAt(next);
  }
  return Math.sign(by) * Math.ceil((Math.abs(by) + FINE / 2) / FINE) * FINE;
}

function marginWith(job: Job, mend: Mend, { sheet, index }: Verdict, derived: Derived): number {
  const edited = withMend(job, mend, derived);
  const after = Array.isArray(edited) ? null : derive(edited as Job, derived);
  if (after === null || !after.ok) return NaN;
  return judge(after.value).find((each) => each.sheet === sheet && each.index === index)?.margin ?? NaN;
}
