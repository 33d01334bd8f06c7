/** What bars a tube from being bent, or costs it its place: bends, grip and clamp, sticks, the log of pulls. */
import { toDegrees } from '../geometry/angle.ts';
import { DEGREE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import { clampShort, gripShort } from '../solve/amount.ts';
import { SEARCHED_BENDS } from '../solve/bend-order.ts';
import { costOfIgnoringRadius } from '../solve/opened.ts';
import type { SolvedTube } from '../solve/types.ts';
import { isBorne, mendingPullOf, pullAdvices } from '../springback/pull-advice.ts';
import { mendInWords, pullFigure, whyInWords } from '../springback/pull-words.ts';
import { PRACTICE, UNSEEN, type Show } from './show.ts';
import type { Finding } from './types.ts';

const LEAST_RADIUS =
  'CLR at least 3 x OD: FIA Appendix J art. 253-8 (as quoted, 2009); Motorsport UK NCR 2026 ch. 7 app. 3 art. 20.3; Formula SAE 2026 F.5.2';
const ONE_PIECE =
  'hoops of one piece: Motorsport UK NCR 2026 ch. 7 app. 3 (rollbars, no joints); Formula SAE 2026 V1.0 (main hoop)';

const degrees = (angle: number) => `${toDegrees(angle).toFixed(1)}°`;

export function* bendTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
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
    if (toDegrees(bend.angle) > die.greatestAngle + DEGREE_ROUNDING) {
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
export function* holdTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
  const { bends, straights, die } = tube;
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
  const missing = clampShort(tube, front);
  if (missing > ROUNDING) {
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

export function* manyBends(tube: SolvedTube): Generator<Finding> {
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
export function* stickTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
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

/** Where the log of pulls does not bear what this tube would be pulled to: which bends, why, and what would mend it. */
export function* pullTrouble(tube: SolvedTube): Generator<Finding> {
  const { pullLaw, die, bends, section } = tube;
  if (pullLaw === null || pullLaw.from === 'estimate' || die === null) return;
  const advices = pullAdvices(tube);
  const first = advices.findIndex(({ kind }) => kind === 'first');
  const advice = advices[first];
  if (advice?.kind !== 'first' || advice.why === 'nothing-known') return;
  const such = advices.flatMap(({ kind }, i) => (kind === 'first' ? [i + 1] : []));
  const [pulled, net] = [pullFigure(advice), degrees(bends[first]!.angle)];
  const known =
    such.length === 1
      ? `For bend ${first + 1} only a first pull is known, ${pulled} for ${net}`
      : `For bends ${such.join(', ')} only a first pull is known, for bend ${first + 1} ${pulled} for ${net}`;
  const laid =
    die.radius === 'from-pulls' && advice.why !== 'coarse-scale'
      ? ' Its radius is laid out by that first pull too: its marks move once the pulls tell more.'
      : '';
  yield {
    id: PULL_FINDINGS[advice.why],
    severity: 'warning',
    tube: tube.id,
    bend: first + 1,
    at: bends[first]!.corner,
    message: `${tube.name}: ${whyInWords(advice.why, pullLaw)} (${die.name}, ${section.name}). ${known}: let go, read, then go on. ${mendInWords(advice.why, pullLaw, mendingPullOf(tube))}${laid}`,
    source: PULLS,
  };
}

const PULLS = 'pulls logged in this job';

const PULL_FINDINGS = {
  disagree: 'bend/pulls-disagree',
  'slack-or-spring': 'bend/slack-or-spring',
  'too-far': 'bend/beyond-pulls',
  'coarse-scale': 'bend/coarse-scale',
} as const;

/** That the log of pulls knows a larger radius than is laid out; silent where the log does not bear what it asks. */
export function* openingTrouble(tube: SolvedTube, show: Show): Generator<Finding> {
  const { pullLaw, die, bends } = tube;
  if (pullLaw === null || pullLaw.from === 'estimate' || die === null) return;
  if (!bends.every(({ angle }) => isBorne(pullLaw, angle))) return;
  const cost = costOfIgnoringRadius(tube);
  if (cost < UNSEEN) return;
  yield {
    tube: tube.id,
    id: 'bend/radius-opens',
    severity: 'warning',
    end: 'B',
    at: tube.corners.at(-1)!,
    message: `${tube.name}: by its pulls ${die.name} bends to a larger radius than it is laid out with; end B comes out ${show(cost)} from its place. Set the die to take its radius from the pulls.`,
    source: PULLS,
  };
}
