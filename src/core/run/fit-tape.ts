/**
 * The bends of a tube that is bent already, from what a tape reads on it: the angles, rotations and marks that come nearest to the figures, and
 * not farther than need be from what was planned or read by hand. How sure each is; which of them the figures do not tell, and stay as
 * they were; which figure does not agree with the others. Blank, radii and allowances are as laid out. docs/maths/as-built.md.
 */
import { toDegrees } from '../geometry/angle.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import { GREATEST_ANGLE, LEAST_ANGLE } from '../job/limits.ts';
import { leastSquares, type LeastSquares } from '../numerics/least-squares.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import type { BuiltTube, OnBlank } from '../solve/as-built.ts';
import type { SolvedTube } from '../solve/types.ts';
import { tapedAs, type CheckDimension } from './check-dimensions.ts';
import type { Fitted, FittedMark } from './fitted-bends.ts';
import type { SawnTube } from './sawn-tube.ts';
import {
  beforehand,
  builtWith,
  comparePlans,
  dimensionFromOtherEnd,
  fromOtherEnd,
  sawnWith,
  TAPE,
  tapePlan,
  type Expected,
  type TapePlan,
} from './tape-plan.ts';

/** A figure of the tape, mm, with the dimension that it was read for and how the tube lay. */
export interface TapeFigure extends Pick<CheckDimension, 'id' | 'lies' | 'kind'> {
  readonly measured: number;
}

/** What is left of a deviation where the figures tell something: more than this, and they do not. A fifth of what was not known has gone. */
export const TOLD = 0.9;

/** In deviations, of what the others say: once in two thousand figures by chance. */
const DISAGREES = 3.5;

/** Of the figures that disagree, those farthest off: one that is misread is among them. */
const SUSPECTS = 3;

/** In deviations, of what was planned: no bend is made so far from it. */
const ANOTHER_TUBE = 5;

/** Of a vector of unit length: what has no greater part in it is not named. */
const PART = 0.4;

/**
 * mm, as in reachOf. Which place lies outermost changes with the bends, and legs drawn parallel begin just there, where slopes mislead: at first
 * the outermost places are blended, then ever less.
 */
const SOFT = [8, 2, 0.5, 0.1, 0.02] as const;

/** Of the sum of squares: a step on the way there that gains less is the last one. */
const ROUGHLY = 1e-3;

/** In deviations: what lies nearer is one and the same place, reached twice. */
const APART = 1e-3;

/** No more directions than these are tried the other way. */
const TWINS = 3;

export interface FittedFigure extends TapeFigure {
  /** mm, on the tube as fitted. */
  readonly reckoned: number;
  /** What the others say of a figure that does not agree with them, mm: it is left out. Else null. */
  readonly others: number | null;
}

/** Why nothing is taken over. */
export type NoFit =
  /** No tube of this length and diameter reads so: 'short' of its diameter, or 'long' beyond its own length. */
  | { readonly why: 'impossible'; readonly id: CheckDimension['id']; readonly beyond: 'short' | 'long' }
  /** Any one of these may be the one that is wrong. */
  | { readonly why: 'disagree'; readonly ids: readonly CheckDimension['id'][] }
  | { readonly why: 'another-tube' }
  | { readonly why: 'nothing-told' };

export interface TapeFit {
  /** Bend by bend from end A: angle, rotation but of the first, middle. */
  readonly parts: readonly Fitted[];
  /** Of every bend, by its angle and middle. */
  readonly marks: readonly FittedMark[];
  /** Named by their place in `parts`: told only together, though each by itself is told. */
  readonly together: readonly (readonly number[])[];
  readonly figures: readonly FittedFigure[];
  /** A figure for how far a tube drawn flat stands off, that does not say to which side: nothing is reckoned from it. */
  readonly sideOpen: boolean;
  /** Null where the fit may be taken over. */
  readonly no: NoFit | null;
}

type Run = Pick<BentTube, 'order' | 'bends'>;

/**
 * `tape` as TAPE. Null without figures, and for a straight tube. The order of the figures makes no difference. `blank`: how the tube lies on the one that was cut.
 */
export function fitTape(
  tube: SolvedTube,
  run: Run,
  blank: OnBlank,
  given: readonly TapeFigure[],
  tape: number = TAPE,
): TapeFit | null {
  if (given.length === 0 || tube.bends.length === 0) return null;
  const plan = tapePlan(tube, run, blank);
  const told = fromOtherEnd(plan);
  const figures = given.toSorted(byId);
  const other = given.map((figure) => ({ ...figure, id: dimensionFromOtherEnd(figure.id) })).toSorted(byId);
  const fromEither = given.every(({ lies }) => lies.along === 'ends');
  const before = comparePlans(plan, told.plan) || compareFigures(figures, other);
  if (!fromEither || before < 0) return withMarks(fitPlan(plan, figures, tape, null), plan);
  if (before === 0) return withMarks(fitPlan(plan, figures, tape, told.places), plan);
  return withMarks(toldBack(fitPlan(told.plan, other, tape, null), plan, told.places, figures), plan);
}

const byId = (a: TapeFigure, b: TapeFigure): number => (a.id < b.id ? -1 : 1);

function compareFigures(a: readonly TapeFigure[], b: readonly TapeFigure[]): number {
  const first = a.findIndex(({ id, measured }, i) => id !== b[i]!.id || measured !== b[i]!.measured);
  if (first === -1) return 0;
  const [one, other] = [a[first]!, b[first]!];
  return one.id === other.id ? one.measured - other.measured : byId(one, other);
}

interface PlanFit extends Omit<TapeFit, 'marks'> {
  readonly covariance: LeastSquares['covariance'];
}

/** What is not told is as it was expected, to the last digit. */
function withMarks({ covariance, ...fit }: PlanFit, { length }: TapePlan): TapeFit {
  const parts = fit.parts.map((part) => {
    if (!part.told) return { ...part, value: part.expected };
    return part.what === 'middle' ? { ...part, value: length / 2 + part.value } : part;
  });
  return { ...fit, parts, marks: marksOf(parts, covariance) };
}

/** A fit that was reckoned from the other end, told of the plan itself; `places` as in Turned. */
function toldBack(fit: PlanFit, plan: TapePlan, places: readonly number[], figures: readonly TapeFigure[]): PlanFit {
  const from = plan.parts.map((_, i) => places.indexOf(i));
  const sign = (i: number): number => (plan.parts[i]!.what === 'middle' ? -1 : 1);
  const parts = plan.parts.map((part, i): Fitted => {
    const { value, deviation, told } = fit.parts[from[i]!]!;
    return { ...part, value: part.what === 'middle' ? -value : value, deviation, told };
  });
  const { no } = fit;
  return {
    ...fit,
    parts,
    covariance: from.map((a, i) => from.map((b, k) => sign(i) * sign(k) * fit.covariance[a]![b]!)),
    together: fit.together.map((group) => group.map((i) => places[i]!).toSorted((a, b) => a - b)),
    figures: figures.map((figure) => {
      const { reckoned, others } = fit.figures.find(({ id }) => id === dimensionFromOtherEnd(figure.id))!;
      return { ...figure, reckoned, others };
    }),
    no:
      no?.why === 'impossible'
        ? { ...no, id: dimensionFromOtherEnd(no.id) }
        : no?.why === 'disagree'
          ? { ...no, ids: no.ids.map(dimensionFromOtherEnd) }
          : no,
  };
}

/** `alike`: of a tube that reads the same from both ends, with figures that do, which part is which from there (as in Turned). */
function fitPlan(
  plan: TapePlan,
  figures: readonly TapeFigure[],
  tape: number,
  alike: readonly number[] | null,
): PlanFit {
  const expected = plan.parts;
  const made = (values: readonly number[]): SawnTube => sawnWith(plan, values);
  const length = made(expected.map(({ value }) => value)).pieces.reduce((sum, piece) => sum + piece.length, 0);
  const sideOpen = figures.some((figure) => isSideOpen(figure) && figure.measured > 2 * tape);
  const impossible = figures.flatMap((figure) => impossibleFor(figure, length, plan.outerDiameter, tape))[0];

  const missesBy =
    (used: readonly TapeFigure[], soft: number) =>
    (unknowns: readonly number[]): readonly number[] => {
      const form = made(valuesOf(expected, { unknowns }));
      return used
        .flatMap((figure) => readAs(figure, tape))
        .map(({ figure, measured, deviation }) => (measured - tapedAs(form, figure, soft)) / deviation);
    };
  const searched = (used: readonly TapeFigure[], start: readonly number[], softs: readonly number[]): LeastSquares => {
    const near = softs.reduce((from, soft) => leastSquares(missesBy(used, soft), from, ROUGHLY).unknowns, start);
    return leastSquares(missesBy(used, 0), near);
  };
  const begun = expected.map(() => 0);
  const solved = (used: readonly TapeFigure[]): LeastSquares => {
    const found = oneOfTwins(searched(used, begun, SOFT), (start) => searched(used, start, SOFT.slice(2)));
    return alike === null || used.length < figures.length ? found : halfway(found, expected, alike, missesBy(used, 0));
  };

  const usable = impossible === undefined ? figures.filter((figure) => readAs(figure, tape).length > 0) : [];
  const whole = solved(usable);
  const odd = agrees(whole) ? null : oddOnes(usable, whole, (used) => searched(used, begun, SOFT));
  const left = odd?.length === 1 ? odd[0]! : null;
  const fit = left === null ? whole : solved(usable.filter((figure) => figure !== left));
  const parts = expected.map((part, i): Fitted => {
    const share = Math.sqrt(fit.covariance[i]![i]!);
    const told = share <= TOLD;
    const value = told ? part.value + part.deviation * fit.unknowns[i]! : part.value;
    return { ...part, value, deviation: part.deviation * (told ? share : 1), told };
  });
  const values = parts.map(({ value }) => value);
  const form = made(values);
  const no: NoFit | null =
    impossible ??
    (odd === null || left !== null
      ? !parts.some(({ told }) => told)
        ? { why: 'nothing-told' }
        : isPossible(builtWith(plan, values))
          ? null
          : { why: 'another-tube' }
      : odd.length === 0
        ? { why: 'another-tube' }
        : { why: 'disagree', ids: odd.map(({ id }) => id) });
  return {
    parts,
    covariance: fit.covariance,
    together: toldTogether(parts, fit),
    figures: figures.map((figure) => ({
      ...figure,
      reckoned: tapedAs(form, figure),
      others: figure === left ? tapedAs(made(valuesOf(expected, fit)), figure) : null,
    })),
    sideOpen,
    no,
  };
}

/** Where legs that are drawn parallel keep the steps from coming to rest, one side stops before the other: between that and its image from the other end. */
function halfway(
  found: LeastSquares,
  expected: readonly Expected[],
  places: readonly number[],
  missesAt: (unknowns: readonly number[]) => readonly number[],
): LeastSquares {
  const sign = (i: number): number => (expected[i]!.what === 'middle' ? -1 : 1);
  const mean = (a: number, b: number): number => (a + b) / 2;
  const unknowns = found.unknowns.map((each, i) => mean(each, sign(i) * found.unknowns[places[i]!]!));
  const misses = missesAt(unknowns);
  const squared = (of: readonly number[]): number => dot(of, of);
  return {
    ...found,
    unknowns,
    misses,
    squares: squared(unknowns) + squared(misses),
    covariance: found.covariance.map((row, i) =>
      row.map((each, k) => mean(each, sign(i) * sign(k) * found.covariance[places[i]!]![places[k]!]!)),
    ),
  };
}

/**
 * A hoop and its mirror image read almost alike, but for a diagonal: what leans to the one side may as well lean to the other. So every direction
 * that is told least is tried the other way, too. The likeliest is taken; how far the others lie from it, by how likely they are, is as much not known.
 */
function oneOfTwins(first: LeastSquares, settled: (start: readonly number[]) => LeastSquares): LeastSquares {
  const aside = symmetricEigen(first.covariance)
    .map(({ value, vector }) => ({ value, vector, at: dot(first.unknowns, vector) }))
    .filter(({ value, at }) => Math.abs(at) > Math.sqrt(value))
    .slice(0, TWINS);
  const others = aside.map(({ vector, at }) => settled(first.unknowns.map((each, i) => each - 2 * at * vector[i]!)));
  const found: LeastSquares[] = [];
  for (const each of [first, ...others].toSorted((a, b) => a.squares - b.squares))
    if (!found.some((before) => isSame(before, each))) found.push(each);

  const best = found[0]!;
  const likely = found.map((each) => Math.exp((best.squares - each.squares) / 2));
  const total = likely.reduce((sum, each) => sum + each, 0);
  const away = (each: LeastSquares, i: number): number => each.unknowns[i]! - best.unknowns[i]!;
  const covariance = best.covariance.map((row, i) =>
    row.map((_, k) =>
      found.reduce(
        (sum, each, m) => sum + (likely[m]! / total) * (each.covariance[i]![k]! + away(each, i) * away(each, k)),
        0,
      ),
    ),
  );
  return { ...best, covariance };
}

const isSame = (a: LeastSquares, b: LeastSquares): boolean =>
  a.unknowns.every((each, i) => Math.abs(each - b.unknowns[i]!) < APART);

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, each, i) => sum + each * b[i]!, 0);

const valuesOf = (expected: readonly Expected[], { unknowns }: Pick<LeastSquares, 'unknowns'>): readonly number[] =>
  expected.map(({ value, deviation }, i) => value + deviation * unknowns[i]!);

/** By how many of its deviations a figure lies from what the others say, and what was planned. */
const apart = ({ misses, freedom }: LeastSquares, k: number): number => Math.abs(misses[k]!) / Math.sqrt(freedom[k]!);

const agrees = (fit: LeastSquares): boolean =>
  fit.misses.every((_, k) => apart(fit, k) <= DISAGREES) &&
  fit.unknowns.every((unknown) => Math.abs(unknown) <= ANOTHER_TUBE);

/** Those that disagree, each so that the others agree once it is left out. None of many that are off together. */
const oddOnes = (
  usable: readonly TapeFigure[],
  whole: LeastSquares,
  searched: (used: readonly TapeFigure[]) => LeastSquares,
): readonly TapeFigure[] =>
  usable
    .map((figure, k) => ({ figure, off: apart(whole, k) }))
    .filter(({ off }) => off > DISAGREES)
    .toSorted((a, b) => b.off - a.off)
    .slice(0, SUSPECTS)
    .map(({ figure }) => figure)
    .filter((figure) => agrees(searched(usable.filter((each) => each !== figure))));

/** A mark is as far off as its middle and half of what its bend took more of arc, as these are told together. */
function marksOf(parts: readonly Fitted[], covariance: LeastSquares['covariance']): readonly FittedMark[] {
  return parts.flatMap((middle, m): readonly FittedMark[] => {
    if (middle.what !== 'middle') return [];
    const a = parts.findIndex(({ what, bend }) => what === 'angle' && bend === middle.bend);
    const angle = parts[a]!;
    const { bend, toMark } = middle;
    const both = middle.told && angle.told ? covariance[m]![a]! * beforehand(middle) * beforehand(angle) : 0;
    const square = middle.deviation ** 2 + (toMark * angle.deviation) ** 2 + 2 * toMark * both;
    return [
      {
        bend,
        value: middle.value + toMark * angle.value,
        expected: middle.expected + toMark * angle.expected,
        deviation: Math.sqrt(Math.max(square, 0)),
      },
    ];
  });
}

/** Directions in which no less is open than before, though more than one part of them is told. */
function toldTogether(parts: readonly Fitted[], { covariance }: LeastSquares): TapeFit['together'] {
  const told = parts.flatMap((part, i) => (part.told ? [i] : []));
  const open = symmetricEigen(told.map((i) => told.map((k) => covariance[i]![k]!))).filter(
    ({ value }) => Math.sqrt(value) > TOLD,
  );
  return open
    .map(({ vector }) => told.filter((_, k) => Math.abs(vector[k]!) > PART))
    .filter((together) => together.length > 1);
}

/** Outsides reach over the tube's diameter at the least, and nothing is longer than the tube. */
function impossibleFor(
  { id, kind, measured }: TapeFigure,
  length: number,
  outerDiameter: number,
  tape: number,
): readonly NoFit[] {
  const across = kind === 'outside' ? outerDiameter : 0;
  const [least, most] = [kind === 'flat' ? 0 : Math.max(across - DISAGREES * tape, tape), length + across];
  if (!(measured >= least)) return [{ why: 'impossible', id, beyond: 'short' }];
  return measured > most + DISAGREES * tape ? [{ why: 'impossible', id, beyond: 'long' }] : [];
}

/** As a job can hold it, no bend in the next. */
const isPossible = ({ bends, tail }: BuiltTube): boolean =>
  tail >= 0 &&
  bends.every(({ angle, straight }) => {
    const net = toDegrees(angle);
    return straight >= 0 && net >= LEAST_ANGLE && net <= GREATEST_ANGLE;
  });

/** The same figure, read with bend 1 turning to that side, seen from end A, and the place that stands off up. */
export const onSide = (figure: TapeFigure, turns: 'left' | 'right'): TapeFigure => ({
  ...figure,
  lies: { ...figure.lies, along: 'ends-on-first-bend', highest: 'between', turns },
});

/** Whether the figure is how far a tube that was to be flat stands off, without its side. */
export const isSideOpen = ({ id, lies }: TapeFigure): boolean => id === 'stands-off' && lies.along === 'ends';

interface Counted {
  readonly figure: TapeFigure;
  readonly measured: number;
  readonly deviation: number;
}

/** What is reckoned with. Off flat by no more than the tape tells counts as flat, at end B; by more, without its side, as nothing. */
function readAs(figure: TapeFigure, tape: number): readonly Counted[] {
  const { measured } = figure;
  if (!isSideOpen(figure)) return [{ figure, measured, deviation: tape }];
  if (measured > 2 * tape) return [];
  const { lies } = onSide(figure, 'left');
  return [
    { figure: { ...figure, lies: { ...lies, highest: 'end-b' } }, measured: 0, deviation: Math.max(tape, measured) },
  ];
}
