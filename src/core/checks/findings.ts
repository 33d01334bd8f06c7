/**
 * What is wrong with the frame, where, and what would mend it. A finding never stops the derivation.
 *
 * Sources: "common practice" is a fact of the trade without a published source; the rest name body, edition and article.
 */
import { toDegrees } from '../geometry/angle.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { LengthUnit } from '../job/types.ts';
import { beyondNode, gripShort } from '../solve/amount.ts';
import { SEARCHED_BENDS } from '../solve/bend-order.ts';
import { costOfIgnoringRadius } from '../solve/opened.ts';
import { disagree, isBelievable } from '../springback/pull-law.ts';
import type { Bend, Cut, Frame, SolvedTube, TubeEnd } from '../solve/types.ts';
import { decimalLength } from '../units/length.ts';
import type { Clearance, Finding, Severity } from './types.ts';

const PRACTICE = 'common practice';
const LEAST_RADIUS =
  'CLR at least 3 x OD: FIA Appendix J art. 253-8 (as quoted, 2009); Motorsport UK NCR 2026 ch. 7 app. 3 art. 20.3; Formula SAE 2026 F.5.2';
const ONE_PIECE =
  'hoops of one piece: Motorsport UK NCR 2026 ch. 7 app. 3 (rollbars, no joints); Formula SAE 2026 V1.0 (main hoop)';
const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Errors first, then warnings, then notes; within each in build order. */
export function findTrouble(frame: Frame, clearances: readonly Clearance[]): readonly Finding[] {
  const show = lengthWriter(frame.job.lengthUnit);
  const found: Finding[] = [];
  const gather = (each: Iterable<Finding>) => {
    for (const finding of each) found.push(finding);
  };
  for (const tube of frame.tubes) {
    gather(twinTrouble(tube, frame));
    gather(openingTrouble(tube, show));
    gather(bendTrouble(tube, show));
    gather(holdTrouble(tube, show));
    gather(manyBends(tube));
    gather(stickTrouble(tube, show));
    gather(endTrouble(tube, frame, show));
  }
  for (const each of clearances) if (!each.ok) gather(clearanceTrouble(each, frame, show));
  return found.toSorted((a, b) => RANK[a.severity] - RANK[b.severity]);
}

type Show = (mm: number) => string;

/** A decimal inch, not a fraction: a finding compares, and a rounded fraction may show two unlike lengths alike. */
const lengthWriter =
  (unit: LengthUnit): Show =>
  (mm) =>
    unit === 'in' ? `${decimalLength(mm, 'in', 3)} in` : `${decimalLength(mm, 'mm', 1)} mm`;

const degrees = (angle: number) => `${toDegrees(angle).toFixed(1)}°`;

// --- twins ---

/** A member that is its own mirror image, and mirrored all the same, is two tubes in one place. */
function* twinTrouble(tube: SolvedTube, frame: Frame): Generator<Finding> {
  if (tube.twinOf === null) return;
  const own = frame.byId.get(tube.twinOf)!.corners;
  const sameAs = (corners: readonly Vec3[]) => corners.every((corner, i) => distance(corner, own[i]!) <= ROUNDING);
  if (!sameAs(tube.corners) && !sameAs(tube.corners.toReversed())) return;
  yield {
    id: 'member/twin-in-same-place',
    severity: 'error',
    tube: tube.id,
    at: tube.corners[0]!,
    message: `${tube.member.name} is its own mirror image, so its twin lies in the same place and would be cut twice. Turn its mirror off.`,
    source: PRACTICE,
  };
}

// --- bends ----------------------------------------------------------------------------------------------------------

function* bendTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
  const { bends, straights, die, section } = tube;
  if (bends.length === 0 || die === null) return;
  const base = { tube: tube.id, source: PRACTICE };

  for (const [i, straight] of straights.entries()) {
    const at = (bends[i] ?? bends[i - 1])!.corner;
    const between = i > 0 && i < bends.length;
    const where = between ? `between bends ${i} and ${i + 1}` : i === 0 ? 'before bend 1' : `after bend ${i}`;
    if (straight < -ROUNDING) {
      yield {
        ...base,
        id: between ? 'bend/overlap' : 'bend/past-end',
        severity: 'error',
        bend: Math.max(i, 1),
        at,
        message: `${tube.name}: the straight ${where} comes out ${show(straight)}. Move the corners ${show(-straight)} or more apart, or take a die with a smaller radius.`,
      };
    } else if (between && straight < die.leastStraight - ROUNDING) {
      yield {
        ...base,
        id: 'bend/short-straight',
        severity: 'error',
        bend: i,
        at,
        message: `${tube.name}: ${show(straight)} of straight ${where}; ${die.name} needs ${show(die.leastStraight)} to clamp on. Move the corners ${show(die.leastStraight - straight)} further apart.`,
      };
    }
  }
  for (const [i, bend] of bends.entries()) {
    if (toDegrees(bend.angle) > die.greatestAngle + 1e-9) {
      yield {
        ...base,
        id: 'bend/beyond-die',
        severity: 'error',
        bend: i + 1,
        at: bend.corner,
        message: `${tube.name}: bend ${i + 1} turns ${degrees(bend.angle)}; ${die.name} goes to ${die.greatestAngle}°. Split the turn over two bends.`,
      };
    }
  }
  const first = bends[0]!;
  if (Math.abs(die.outerDiameter - section.outerDiameter) > 0.01) {
    yield {
      ...base,
      id: 'bend/wrong-die',
      severity: 'error',
      at: first.corner,
      message: `${tube.name}: ${section.name} is ${show(section.outerDiameter)} over the outside, ${die.name} takes ${show(die.outerDiameter)}. Choose a die for this tube.`,
    };
  }
  if (die.centrelineRadius < 3 * section.outerDiameter - ROUNDING) {
    yield {
      ...base,
      id: 'bend/tight-radius',
      severity: 'warning',
      at: first.corner,
      message: `${tube.name}: centreline radius ${show(die.centrelineRadius)} is under 3 x outer diameter (${show(3 * section.outerDiameter)}). Many rule books ask for that as the least.`,
      source: LEAST_RADIUS,
    };
  }
}

/**
 * What the machine holds the tube by, measured from end A: the clamp in front of the outermost bend there, the grip behind the
 * other. Which end is in front the bender says.
 */
function* holdTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
  const { bends, straights, die, ends, developedLength } = tube;
  if (bends.length === 0 || die === null) return;
  const base = { tube: tube.id, severity: 'warning', source: PRACTICE } as const;
  const [front, rear] = die.bender?.bendLies === 'before' ? ([1, 0] as const) : ([0, 1] as const);
  const letter = (end: 0 | 1) => (end === 0 ? 'A' : 'B');
  const outermost = (end: 0 | 1) => (end === 0 ? 1 : bends.length);
  const [clamped, last] = [outermost(front), outermost(rear)];

  const short = gripShort(tube, rear);
  if (straights.at(rear === 0 ? 0 : -1)! >= -ROUNDING && short > ROUNDING) {
    const better = gripShort(tube, front) <= ROUNDING ? `, or bend the tube from end ${letter(rear)}` : '';
    yield {
      ...base,
      id: 'bend/short-tail',
      bend: last,
      end: letter(rear),
      at: bends[last - 1]!.corner,
      message: `${tube.name}: ${show(die.leastGrip - short)} of tail behind bend ${last}; ${die.name} grips ${show(die.leastGrip)}. Leave ${show(short)} more on end ${letter(rear)} for the clamp and cut it off after bending${better}.`,
    };
  }
  const bend = bends[clamped - 1]!;
  const toEnd = (front === 0 ? bend.start : developedLength - bend.end) + beyondNode(ends[front]);
  const missing = die.clampOffset - toEnd;
  if (die.clampOffset > 0 && missing > ROUNDING) {
    yield {
      ...base,
      id: 'bend/clamp-off-tube',
      bend: clamped,
      end: letter(front),
      at: bend.corner,
      message: `${tube.name}: the clamp mark of bend ${clamped} lies ${show(missing)} ${front === 0 ? 'before' : 'beyond'} end ${letter(front)}. Leave that much more on end ${letter(front)} and cut it off after bending, or bend the tube from end ${letter(rear)}.`,
    };
  }
}

/** More than most hoops have. */
const HOOP_BENDS = 4;

const isHoop = ({ member }: SolvedTube): boolean => /hoop|roll-?bar/iu.test(member.role);

function* manyBends(tube: SolvedTube): Generator<Finding> {
  const count = tube.bends.length;
  const base = { id: 'bend/many-bends', severity: 'note', tube: tube.id, source: PRACTICE } as const;
  if (count <= HOOP_BENDS) return;
  const at = tube.bends[0]!.corner;
  if (count > SEARCHED_BENDS) {
    yield {
      ...base,
      at,
      message: `${tube.name} has ${count} bends. No order of bending is searched for more than ${SEARCHED_BENDS}: go through its swing by hand, or make it of two tubes.`,
    };
  } else if (isHoop(tube)) {
    yield {
      ...base,
      at,
      message: `${tube.name} has ${count} bends, more than most hoops. Each adds its own error to all that follow, and a rule book may set a greatest number: look yours up.`,
    };
  }
}

/** A blank that no stick holds. With the grip of the usual feed; another may need none. */
function* stickTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
  const { section, blankLength, die } = tube;
  if (section.stick === undefined) return;
  const rear = die?.bender?.bendLies === 'before' ? 0 : 1;
  const grip = gripShort(tube, rear);
  const over = blankLength + grip - section.stick;
  if (over <= ROUNDING) return;
  const otherwise = blankLength + gripShort(tube, rear === 0 ? 1 : 0) <= section.stick + ROUNDING;
  const hoop = isHoop(tube);
  const blank = `${tube.name}: the blank is ${show(blankLength + grip)} long${grip > ROUNDING ? `, ${show(grip)} of it for the grip` : ''}; sticks of ${section.name} are ${show(section.stick)}, ${show(over)} too short.`;
  const mend = otherwise
    ? `Bent from end ${rear === 0 ? 'A' : 'B'} it needs less grip and fits.`
    : hoop
      ? 'A hoop is made of one piece, without a joint: get a longer stick.'
      : 'Get a longer stick, or make it of two tubes with a joint that your rule book allows.';
  yield {
    id: 'stock/longer-than-stick',
    severity: hoop && !otherwise ? 'error' : 'warning',
    tube: tube.id,
    at: tube.corners[0]!,
    message: `${blank} ${mend}`,
    source: hoop && !otherwise ? ONE_PIECE : PRACTICE,
  };
}

/** Under this, mm, the tape does not show it. */
const UNSEEN = 0.5;

/** What the log of pulls says of this tube: that it cannot be right, or that it knows a larger radius than is laid out. */
function* openingTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
  const { pullLaw, die } = tube;
  if (pullLaw === null || pullLaw.from === 'estimate' || die === null || tube.bends.length === 0) return;
  const base = { tube: tube.id, source: 'pulls logged in this job' };
  if (disagree(pullLaw.pulls) || tube.bends.some(({ angle }) => !isBelievable(pullLaw, angle))) {
    yield {
      ...base,
      id: 'bend/pulls-disagree',
      severity: 'warning',
      at: tube.bends[0]!.corner,
      message: `${tube.name}: the pulls logged for ${die.name} and ${tube.section.name} cannot all be right, so neither can its machine angles. Look the log through, and take out what was misread.`,
    };
  }
  const cost = costOfIgnoringRadius(tube);
  if (cost < UNSEEN) return;
  yield {
    ...base,
    id: 'bend/radius-opens',
    severity: 'warning',
    end: 'B',
    at: tube.corners.at(-1)!,
    message: `${tube.name}: by its pulls ${die.name} bends to a larger radius than it is laid out with; end B comes out ${show(cost)} from its place. Set the die to take its radius from the pulls.`,
  };
}

// --- ends -----------------------------------------------------------------------------------------------------------

function* endTrouble(tube: SolvedTube, frame: Frame, show: Show): Generator<Finding> {
  for (const [which, end] of tube.ends.entries()) {
    const label = which === 0 ? 'A' : 'B';
    const base = { tube: tube.id, end: label, node: end.node, at: end.position, source: PRACTICE } as const;
    const name = `${tube.name}, end ${label}`;
    const spec = tube.member.ends[which]!;

    if (spec.fit === 'auto' && end.fit === 'square' && end.butted.length === 0) {
      yield {
        ...base,
        id: 'end/meets-nothing',
        severity: 'warning',
        message: `${name} meets no tube${meetsOwnTwin(tube, end, frame)}`,
      };
    }
    if (end.fit === 'plate' && end.tip === null) {
      yield {
        ...base,
        id: 'end/plate-along-tube',
        severity: 'error',
        message: `${name}: the plate lies along the tube and never cuts it. Give the plate's normal another direction.`,
      };
    }
    for (const cut of end.cuts) {
      if (!cut.reaches) {
        const run = frame.byId.get(cut.against)!;
        yield {
          ...base,
          id: 'end/cutter-misses',
          severity: 'error',
          message: `${name}: the cope against ${run.name} does not reach this tube. Move the node onto it, or take it out of the end's list.`,
        };
      } else {
        yield* landingTrouble(cut, base, name, frame, show);
        yield* overhangTrouble(cut, tube, base, name, frame, show);
      }
    }
    if (end.tip !== null && end.passedBy) {
      yield {
        ...base,
        id: 'end/wider-than-run',
        severity: 'warning',
        message: `${name}: part of this tube's wall passes by what it is coped to. Move the node nearer the run's axis, or cope the other tube to this one.`,
      };
    }
    if (end.throat !== null && end.throat > tube.developedLength + ROUNDING) {
      yield {
        ...base,
        id: 'end/cut-through',
        severity: 'error',
        message: `${name}: the cut is ${show(end.throat)} deep and the tube ${show(tube.developedLength)} long, so it runs out at the other end. Move the node, or give the end another fit.`,
      };
    }
    const straight = Math.max(tube.straights.at(which === 0 ? 0 : -1)!, 0);
    if (tube.bends.length > 0 && end.throat !== null && end.throat > straight + ROUNDING) {
      yield {
        ...base,
        id: 'end/cope-in-own-bend',
        severity: 'warning',
        message: `${name}: the cope is ${show(end.throat)} deep and the straight there ${show(straight)}, so the cut runs into this tube's own bend. Fit it by hand, or move the bend away.`,
      };
    }
  }
}

/** Why an end that a person sees meeting something is left square, and what would mend it. */
function meetsOwnTwin(tube: SolvedTube, end: TubeEnd, frame: Frame): string {
  const twin = tube.member.mirror && Math.abs(end.position[1]) <= ROUNDING;
  if (twin)
    return ' but its own twin, and is cut square. For a mitre on the centre plane give it a plate with normal 0, 1, 0.';
  const later = frame.tubes.find(
    (other) => other.number > tube.number && other.ends.some(({ node }) => node === end.node),
  );
  if (later !== undefined)
    return ` built before it, and is cut square; ${later.name} ends there but is built later. If this is a foot, give it a plate; else move this member down the build order, or name what it is coped to.`;
  return ' and is cut square. Put it on a tube, or give it a plate.';
}

function* landingTrouble(
  cut: Cut,
  base: Pick<Finding, 'tube' | 'end' | 'node' | 'at' | 'source'>,
  name: string,
  frame: Frame,
  show: Show,
): Generator<Finding> {
  const run = frame.byId.get(cut.against)!;
  const reach = run.section.outerDiameter;
  const away = (bend: Bend) => Math.max(bend.start - cut.landingAt, cut.landingAt - bend.end);
  let least = Infinity;
  let number = 0;
  for (const [i, each] of run.bends.entries()) {
    if (away(each) >= least) continue;
    least = away(each);
    number = i + 1;
  }
  if (least > reach + ROUNDING) return;
  const bend = `bend ${number} of ${run.name}`;
  const place = cut.onBend
    ? `lands in ${bend}`
    : `lands ${show(Math.max(least, 0))} from ${bend}, less than one diameter (${show(reach)})`;
  yield {
    ...base,
    id: cut.onBend ? 'joint/in-bend' : 'joint/near-bend',
    severity: 'warning',
    message: `${name} ${place}. The cope is cut for it; a saw set for straight tube does not fit there. Move the node along the tube if the rule book wants joints clear of bends.`,
  };
}

/** A saddle that runs past a free end of its run has nothing under it there; where that end is itself coped, the joint closes. */
function* overhangTrouble(
  cut: Cut,
  branch: SolvedTube,
  base: Pick<Finding, 'tube' | 'end' | 'node' | 'at' | 'source'>,
  name: string,
  frame: Frame,
  show: Show,
): Generator<Finding> {
  const run = frame.byId.get(cut.against)!;
  const half = branch.section.outerDiameter / 2 / Math.sin(cut.includedAngle);
  const toEnds = [cut.landingAt, run.developedLength - cut.landingAt];
  for (const [i, along] of toEnds.entries()) {
    const end = run.ends[i]!;
    const over = half - (along - (end.tip ?? 0));
    if (end.fit === 'cope' || end.butted.length > 0 || over <= UNSEEN) continue;
    yield {
      ...base,
      id: 'joint/off-run-end',
      severity: 'warning',
      message: `${name}: its saddle runs ${show(over)} past end ${i === 0 ? 'A' : 'B'} of ${run.name}, where there is nothing to weld to. Move the node along ${run.name} by that much or more.`,
    };
  }
}

// --- clearances -----------------------------------------------------------------------------------------------------

function* clearanceTrouble(clearance: Clearance, frame: Frame, show: Show): Generator<Finding> {
  const tube = frame.byId.get(clearance.tube)!;
  const envelope = frame.job.envelopes.find((each) => each.id === clearance.envelope)!;
  const how = clearance.distance < 0 ? `goes ${show(-clearance.distance)} into` : `is ${show(clearance.distance)} from`;
  yield {
    id: 'clearance/too-close',
    severity: 'error',
    tube: tube.id,
    envelope: envelope.id,
    at: clearance.at,
    message: `${tube.name} ${how} ${envelope.name}; ${show(clearance.gap)} is asked for. Move the tube ${show(clearance.gap - clearance.distance)} away, or the seat.`,
    source: `gap set for ${envelope.name} in this job`,
  };
}
