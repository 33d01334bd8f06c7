/**
 * The bends of a tube that is bent already, from what a tape reads on it: the angles, rotations and marks that come nearest to the figures, and
 * not farther than need be from what was planned or read by hand. How sure each is; which of them the figures do not tell, and stay as
 * they were; which figure does not agree with the others. Blank, radii and allowances are as laid out. docs/maths/as-built.md.
 */
import { toDegrees } from '../geometry/angle.ts';
import type { BentBend, BentTube } from '../job/kinds/bent.ts';
import { readByHand } from '../job/read-by-hand.ts';
import { GREATEST_ANGLE, LEAST_ANGLE } from '../job/limits.ts';
import { leastSquares, type LeastSquares } from '../numerics/least-squares.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { beyondNode } from '../solve/amount.ts';
import { asBuilt, laidDown, type BuiltTube, type OnBlank } from '../solve/as-built.ts';
import { rolledCentreline } from '../solve/rolled-centreline.ts';
import type { SolvedTube } from '../solve/types.ts';
import { READING } from '../springback/pull-law.ts';
import { tapedAs, type CheckDimension } from './check-dimensions.ts';
import { sawn, type SawnTube } from './sawn-tube.ts';

/** A figure of the tape, mm, with the dimension that it was read for and how the tube lay. */
export interface TapeFigure extends Pick<CheckDimension, 'id' | 'lies' | 'kind'> {
  readonly measured: number;
}

/** Standard deviation of a tape's figure, mm, over the outsides of a tube that is held down by hand (common practice). */
export const TAPE = 1;

/** Standard deviations of what was not read: a bend by a bender's scale, its plane by a level on the tube, a mark under the clamp (common practice). */
const PLANNED = { angle: 1.5, rotation: 2, mark: 3 } as const;

/** Of what was read by hand: as a pull is, its plane by a level, a straight by the tape (common practice). */
const READ = { angle: toDegrees(READING.deviation), rotation: 0.5, mark: TAPE } as const;

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

/** What one bend is made of: degrees, or mm along the tube from end A's node of its tangent nearer the end in front. */
export interface Fitted {
  readonly what: 'angle' | 'rotation' | 'mark';
  readonly bend: number;
  /** As expected where it is not told. */
  readonly value: number;
  /** As planned, or as read by hand. */
  readonly expected: number;
  readonly isRead: boolean;
  /** Standard deviation of `value`. */
  readonly deviation: number;
  readonly told: boolean;
}

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
  /** Bend by bend from end A: angle, rotation but of the first, mark. */
  readonly parts: readonly Fitted[];
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
  const figures = given.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  const expected = expectedOf(tube, run, blank);
  const builtSo = (values: readonly number[]): BuiltTube => {
    const bends = fittedBends(
      expected.map((part, i) => ({ ...part, value: values[i]! })),
      run.bends,
    );
    return asBuilt(tube, laidDown(tube.die), { order: run.order, bends }, blank);
  };
  const made = (values: readonly number[]): SawnTube => sawnSo(tube, builtSo(values));
  const length = made(expected.map(({ value }) => value)).pieces.reduce((sum, piece) => sum + piece.length, 0);
  const sideOpen = figures.some((figure) => isSideOpen(figure) && figure.measured > 2 * tape);
  const impossible = figures.flatMap((figure) => impossibleFor(figure, length, tube.section.outerDiameter, tape))[0];

  const searched = (used: readonly TapeFigure[], start: readonly number[], softs: readonly number[]): LeastSquares => {
    const counted = used.flatMap((figure) => readAs(figure, tape));
    const missesBy = (soft: number) => (unknowns: readonly number[]) => {
      const form = made(valuesOf(expected, { unknowns }));
      return counted.map(({ figure, measured, deviation }) => (measured - tapedAs(form, figure, soft)) / deviation);
    };
    const near = softs.reduce((from, soft) => leastSquares(missesBy(soft), from, ROUGHLY).unknowns, start);
    return leastSquares(missesBy(0), near);
  };
  const plan = expected.map(() => 0);
  const solved = (used: readonly TapeFigure[]): LeastSquares =>
    oneOfTwins(searched(used, plan, SOFT), (start) => searched(used, start, SOFT.slice(2)));

  const usable = impossible === undefined ? figures.filter((figure) => readAs(figure, tape).length > 0) : [];
  const whole = solved(usable);
  const odd = agrees(whole) ? null : oddOnes(usable, whole, (used) => searched(used, plan, SOFT));
  const left = odd?.length === 1 ? odd[0]! : null;
  const fit = left === null ? whole : solved(usable.filter((figure) => figure !== left));
  const parts = expected.map((part, i): Fitted => {
    const share = Math.sqrt(fit.covariance[i]![i]!);
    const told = share <= TOLD;
    const value = told ? part.value + part.deviation * fit.unknowns[i]! : part.value;
    return { ...part, value, deviation: part.deviation * (told ? share : 1), told };
  });
  const built = builtSo(parts.map(({ value }) => value));
  const form = sawnSo(tube, built);
  const no: NoFit | null =
    impossible ??
    (odd === null || left !== null
      ? !parts.some(({ told }) => told)
        ? { why: 'nothing-told' }
        : isPossible(built)
          ? null
          : { why: 'another-tube' }
      : odd.length === 0
        ? { why: 'another-tube' }
        : { why: 'disagree', ids: odd.map(({ id }) => id) });
  return {
    parts,
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

/** With what its ends have beyond their nodes; where it lies makes no difference. */
function sawnSo({ ends, section }: SolvedTube, built: BuiltTube): SawnTube {
  const { path } = rolledCentreline({ position: [0, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] }, built);
  return { pieces: sawn(path.pieces, ends.map(beyondNode)), outerDiameter: section.outerDiameter };
}

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

type Expected = Omit<Fitted, 'told'>;

function expectedOf(tube: SolvedTube, { order, bends }: Run, blank: OnBlank): readonly Expected[] {
  const read = bends.flatMap((bend) => readByHand(bend) ?? []);
  const built = asBuilt(tube, laidDown(tube.die), { order, bends: read }, blank);
  let behind = 0;
  return built.bends.flatMap(({ angle, rotation, straight, radius }, i) => {
    const bend = i + 1;
    const reading = read.find((each) => each.bend === bend);
    const [start, end] = [behind + straight, behind + straight + radius * angle];
    behind = end;
    const part = (what: Fitted['what'], expected: number, isRead: boolean): Expected => ({
      what,
      bend,
      value: expected,
      expected,
      isRead,
      deviation: (isRead ? READ : PLANNED)[what],
    });
    return [
      part('angle', toDegrees(angle), reading !== undefined),
      ...(i === 0 ? [] : [part('rotation', toDegrees(rotation), reading?.rotation !== undefined)]),
      part('mark', isFedFromB(order, bend) ? end : start, reading?.straight !== undefined),
    ];
  });
}

const isFedFromB = (order: Run['order'], bend: number): boolean =>
  order.some((step) => step.bend === bend && step.front === 'B');

/** The same as the job keeps it, of a run that holds these bends: to a thousandth of a degree and of a millimetre. */
export const takenOver = ({ parts }: TapeFit, made: BentTube['bends']): readonly BentBend[] =>
  fittedBends(
    parts.map((part) => ({ ...part, value: Math.round(part.value * 1000) / 1000 })),
    made,
  );

/** As a run holds them, of every bend of the tube from end A. What was read of one by hand stays beside that. */
export function fittedBends(
  parts: readonly Pick<Fitted, 'what' | 'bend' | 'value'>[],
  made: BentTube['bends'],
): readonly BentBend[] {
  const of = (what: Fitted['what'], bend: number): number | undefined =>
    parts.find((part) => part.what === what && part.bend === bend)?.value;
  return parts
    .filter(({ what }) => what === 'angle')
    .map(({ bend, value: net }): BentBend => {
      const rotation = of('rotation', bend);
      const start = of('mark', bend)!;
      const fitted = { bend, pulled: net, net, ...(rotation !== undefined && { rotation }), start, fitted: true };
      const before = made.find((each) => each.bend === bend);
      const hand = before && readByHand(before);
      if (hand == null) return fitted;
      const { bend: _, pulled, kept: _kept, ...read } = hand;
      return { ...fitted, pulled, read };
    });
}
