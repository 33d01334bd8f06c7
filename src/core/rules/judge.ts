/**
 * Every article of every sheet of the job, held against the frame: met with its margin, not met, or not checked with the reason. Nothing is guessed into
 * "met": a bar without a role may be the one that is meant, a figure from memory may be wrong, a measure that was not taken may have come out otherwise.
 */
import { DEGREE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import { quantityOf, type CheckOf, type Quantity, type RuleCheck, type RuleKind } from '../job/kinds/rule-check.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import { bendCount, bendRadius } from './kinds/bends.ts';
import { gapWindow } from './kinds/gap-window.ts';
import { harness } from './kinds/harness.ts';
import { headRoom } from './kinds/head-room.ts';
import { insideWidth } from './kinds/inside-width.ts';
import { onePiece } from './kinds/one-piece.ts';
import { plate } from './kinds/plate.ts';
import { present } from './kinds/present.ts';
import { reach } from './kinds/reach.ts';
import { section } from './kinds/section.ts';
import { straight } from './kinds/straight.ts';
import { support } from './kinds/support.ts';
import { tilt } from './kinds/tilt.ts';
import { meantBy } from './implied.ts';
import { answersTheSame, questionsTo, type Asked, type Judged, type Questions } from './questions.ts';
import type { Judge, Measured, Outcome, UnknownBecause, Verdict } from './types.ts';

/** What came of an article the last time, and what it was asked for. */
interface Known {
  readonly asked: readonly Asked[];
  readonly carMass: number | undefined;
  readonly verdict: Verdict;
}

/** By the article's own record: an edit of it makes another one. */
const known = new WeakMap<RuleCheck, Known>();

/** In the order of the sheets and their articles. An article that asks what it asked before, and is answered the same, is not judged again. */
export const judge = (frame: Judged): readonly Verdict[] =>
  frame.job.rules.flatMap((sheet) => sheet.checks.map((check, index) => verdictOf(frame, sheet, check, index)));

function verdictOf(frame: Judged, { sheet }: RuleSheet, check: RuleCheck, index: number): Verdict {
  const before = known.get(check);
  const { carMass } = frame.job;
  if (before?.carMass === carMass && before?.asked.every((each) => answersTheSame(frame, each))) {
    const { verdict } = before;
    return verdict.sheet === sheet && verdict.index === index ? verdict : { ...verdict, sheet, index };
  }
  const asked: Asked[] = [];
  const found = settled(check, carMass, questionsTo(frame, asked));
  const verdict: Verdict = { ...NOTHING, ...found, sheet, index, check, quantity: found.quantity ?? quantityOf(check) };
  known.set(check, { asked, carMass, verdict });
  return verdict;
}

/** What an article's verdict is by, before it is known which article it was. */
type Found = Pick<Verdict, 'verdict' | 'because'> & Partial<Omit<Verdict, 'sheet' | 'index' | 'check'>>;

const NOTHING = {
  value: null,
  limit: null,
  bound: null,
  margin: null,
  count: 0,
  concerns: [],
  envelope: null,
  bend: null,
  at: null,
  to: null,
} as const;

function settled(check: RuleCheck, carMass: number | undefined, ask: Questions): Found {
  const { kind, massFrom, massUpTo } = check;
  if (massFrom !== undefined || massUpTo !== undefined) {
    if (carMass === undefined) return unknown({ id: 'no-mass' });
    if (carMass <= (massFrom ?? -Infinity) || carMass > (massUpTo ?? Infinity))
      return unknown({ id: 'other-mass', mass: carMass });
  }
  if (kind === 'ask') return answered(check);
  if (!hasFigure(check)) return unknown({ id: 'no-figure' });
  return worst(outcomes(check, ask), check);
}

const unknown = (because: UnknownBecause): Found => ({ verdict: 'not-checked', because });

const answered = ({ answer }: RuleCheck): Found =>
  answer === undefined
    ? unknown({ id: 'not-answered' })
    : { verdict: answer.says, because: { id: 'answered', answer } };

/** A tube is in one piece or it is not, and straight or not; all else wants a figure. */
const hasFigure = (check: RuleCheck): boolean => {
  if (check.kind === 'one-piece' || (check.kind === 'straight' && check.of === 'bends')) return true;
  const own =
    check.kind === 'section'
      ? [check.sizes?.[0], check.area, check.secondMoment, check.outerDiameter, check.wall]
      : [check.least, check.most];
  return own.some((figure) => figure !== undefined) || (check.kind === 'tilt' && check.runs !== undefined);
};

const JUDGES: { readonly [K in Exclude<RuleKind, 'ask'>]: Judge<K> } = {
  section,
  'one-piece': onePiece,
  'bend-radius': bendRadius,
  'bend-count': bendCount,
  straight,
  tilt,
  reach,
  present,
  plate,
  support,
  harness,
  'inside-width': insideWidth,
  'head-room': headRoom,
  'gap-window': gapWindow,
};

/** What was measured; and what of the roles themselves stands in the way of saying "met". */
function outcomes(check: Exclude<RuleCheck, { readonly kind: 'ask' }>, ask: Questions): readonly Outcome[] {
  const meant = meantBy(check);
  const roles = [...meant.roles, ...meant.onto];
  const found: Outcome[] = [...(JUDGES[check.kind] as Judge<RuleKind>)(check as CheckOf<RuleKind>, ask)];
  for (const bar of ask.misnamed(roles)) {
    const misfit = ask.misfit(bar);
    if (misfit !== null)
      found.push({ unknown: { id: 'misnamed', misfit }, concerns: idsOf(ask, bar), at: bar.ends[0].position });
  }
  // Whoever looks at every tube does not miss one that has no role; nor does a count that is enough already, though one more may be too many.
  const isEnough = check.kind === 'present' && check.most === undefined;
  const unnamed = roles.length === 0 || isEnough ? [] : ask.unnamed();
  if (unnamed.length > 0)
    found.push({ unknown: { id: 'unnamed' }, concerns: unnamed.flatMap((bar) => idsOf(ask, bar)), at: null });
  return found;
}

const idsOf = (ask: Questions, bar: Parameters<Questions['misfit']>[0]) => ask.tubes([bar]).map(({ id }) => id);

/** One past its limit decides; then one of which nothing is known; then the one nearest to its limit. */
function worst(found: readonly Outcome[], check: RuleCheck): Found {
  const measured = found.flatMap((each) => ('value' in each ? [held(each, check)] : []));
  const past = measured.filter(({ is }) => is.verdict === 'not-met').toSorted(byMargin);
  const fails = found.filter((each) => 'fails' in each);
  if (past.length > 0) return { ...past[0]!.is, concerns: distinct([...past.map(({ is }) => is), ...fails]) };
  if (fails.length > 0)
    return { verdict: 'not-met', because: fails[0]!.fails, concerns: distinct(fails), at: fails[0]!.at };
  const open = found.filter((each) => 'unknown' in each);
  if (open.length > 0) {
    const [{ unknown: because, at }] = open as [(typeof open)[0]];
    const alike = open.filter((each) => each.unknown.id === because.id);
    return { verdict: 'not-checked', because, concerns: distinct(alike), at };
  }
  const nearest = measured.toSorted(byMargin)[0];
  if (nearest === undefined) return unknown({ id: 'nobody', roles: check.roles });
  const all = { ...nearest.is, count: measured.length, concerns: distinct(measured.map(({ is }) => is)) };
  return check.mark === 'memory' ? { ...all, verdict: 'not-checked', because: { id: 'from-memory' } } : all;
}

const distinct = (of: readonly Pick<Measured, 'concerns'>[]) => [...new Set(of.flatMap(({ concerns }) => concerns))];

interface Held {
  readonly is: Found & Pick<Verdict, 'concerns'>;
  /** Its margin as a share of its limit, so that a wall and an area can be held against each other. */
  readonly share: number;
}

const byMargin = (one: Held, other: Held): number => one.share - other.share;

/** A figure beside its limit: the one of the two that it is nearer to, or past. */
function held({ concerns, value, at, to, envelope, bend, ...own }: Measured, check: RuleCheck): Held {
  const quantity = own.quantity ?? quantityOf(check);
  const least = own.least ?? check.least;
  const most = own.most ?? check.most;
  const [below, above] = [value - (least ?? -Infinity), (most ?? Infinity) - value];
  const bound = below <= above ? 'least' : 'most';
  const limit = (bound === 'least' ? least : most)!;
  const margin = Math.min(below, above);
  const is: Held['is'] = {
    verdict: isWithin(margin, check.strictly === true, roundingOf(quantity, limit)) ? 'met' : 'not-met',
    because: { id: 'measured' },
    value,
    limit,
    bound,
    margin,
    quantity,
    concerns,
    envelope: envelope ?? null,
    bend: bend ?? null,
    at,
    to: to ?? null,
  };
  return { is, share: limit === 0 ? margin : margin / Math.abs(limit) };
}

/** A limit that does not count itself has to be kept clear of by more than rounding. */
const isWithin = (margin: number, strictly: boolean, rounding: number): boolean =>
  strictly ? margin > rounding : margin >= -rounding;

/** Share of the limit: what rounding leaves of an area or a second moment of it. */
const OF_PRODUCTS = 1e-9;

/** Areas and second moments are products of lengths: what rounding leaves of them grows with them. */
const roundingOf = (quantity: Quantity, limit: number): number => {
  if (quantity === 'length') return ROUNDING;
  return quantity === 'angle' ? DEGREE_ROUNDING : OF_PRODUCTS * Math.max(1, Math.abs(limit));
};
