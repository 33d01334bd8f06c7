/**
 * How an end is notched with what the shop has: for each cut whether a saw does it, in how many passes, what is set, and why not where none
 * does. Facts; core/words/notching.ts says them.
 */
import { toDegrees, toRadians, type Degrees, type Radians } from '../geometry/angle.ts';
import { DEGREE_ROUNDING, DIVISION_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import { FIRST_REACH, type Saw } from '../job/kinds/saw.ts';
import type { Notcher } from '../job/kinds/notcher.ts';
import { NO_TOOLS, type Tools } from '../job/kinds/tools.ts';
import { remembered } from '../remembered.ts';
import type { Cut, TubeEnd } from '../solve/types.ts';
import { SQUARE } from './end-mark.ts';
import { fitGap } from './fit-gap.ts';
import { sawPlace, sawSleeve, sawTravel, touchOn } from './saw-pass.ts';
import type { Sleeve } from '../geometry/met-sleeve.ts';

/**
 * nothing: the run tube is missed. wrap: no saw, marked from the template. one-pass. flip: half from each side. cut-off-first: in one pass
 * once what was left on is sawn off. either: nobody has said how deep the saw cuts, so the depth is for the person to compare.
 */
export type Way = 'nothing' | 'wrap' | 'one-pass' | 'flip' | 'cut-off-first' | 'either';

/**
 * Why only the wrap will do: against a bend; 30 degrees or less between the tubes; beyond the swing; axes that pass; no such saw; too deep; what
 * can be set would leave too wide a gap.
 */
export type WhyWrap = 'bend' | 'thin' | 'swing' | 'offset' | 'saw' | 'reach' | 'gap';

export interface Notch {
  readonly cut: Cut;
  readonly way: Way;
  readonly why: WhyWrap | null;
  /** How a saw does it; null where none does. */
  readonly sawn: Sawn | null;
  /** Of one that is too deep: mm that it goes, and that the saw cuts. */
  readonly tooDeep?: { readonly depth: number; readonly reach: number };
}

export interface Sawn {
  /** mm across: of the saw that is taken; the run tube's own where nobody has listed saws. */
  readonly saw: number;
  /** mm that it cuts deep; null where nobody has listed saws. */
  readonly reach: number | null;
  /** Whether the shop has measured that; else it is what most cut. */
  readonly isMeasured: boolean;
  /** Off square, as the machine's scale has it; the cut's own where its scale is not known, or shows any angle. */
  readonly set: Radians;
  /** mm from the sawn end (sawnEndOf) to where the saw's axis crosses the tube's: positive into the tube. */
  readonly centre: number;
  /** mm that the saw travels from touch to through. */
  readonly depth: number;
  /** mm from the sawn end along the mark's line to where a drill that leans over the tube first touches; null where the axes pass each other. */
  readonly touch: number | null;
}

export interface Notching {
  /** The machine that the end is notched on; null where the job has none. */
  readonly notcher: Notcher | null;
  /** How many machines it was chosen from. */
  readonly among: number;
  readonly notches: readonly Notch[];
  /** Where the drill leans at every cut of this end; 'unsaid': either way, and the mark then goes by it. */
  readonly leans: 'over-tube' | 'past-end' | 'unsaid';
  /**
   * mm, up to MOST_GAP: the gap that the settings and saws leave, each cut by its wrap taken as exact. 0 where all are as asked.
   */
  readonly gap: number;
  /** Different diameters, in the order of the cuts. */
  readonly saws: readonly number[];
}

/** Degrees between the tubes from which on down no saw is used (common practice). */
export const THIN: Degrees = 30;
/** mm. A joint that stands off by no more can be welded as it is (common practice); a saw that would leave more is another size. */
export const MOST_GAP = 1;
/** mm. Axes that pass each other by less meet, in a shop. */
const MEETS = 0.05;

/** Null at an end that is coped to nothing. Kept as long as the end and the tools. */
export const notchingOf = (end: TubeEnd, tools: Tools = NO_TOOLS): Notching | null => withTools(tools)(end);

const withTools = remembered(({ notchers, saws }: Tools) =>
  remembered((end: TubeEnd): Notching | null => {
    if (end.fit !== 'cope' || end.cuts.length === 0) return null;
    const machines: readonly (Notcher | null)[] = notchers.length === 0 ? [null] : notchers;
    return machines
      .map((notcher) => notchingOn(end, notcher, saws, notchers.length))
      .reduce((best, each) => (trouble(each) < trouble(best) ? each : best));
  }),
);

function notchingOn(end: TubeEnd, notcher: Notcher | null, saws: readonly Saw[], among: number): Notching {
  const asSet = end.cuts.map((cut) => notchOf(end, cut, notcher, saws));
  const leaves = gapOf(end, asSet);
  const isGood = leaves !== null && leaves <= MOST_GAP;
  const notches = isGood
    ? asSet
    : asSet.map((notch): Notch => (isExact(notch) ? notch : { ...notch, way: 'wrap', why: 'gap', sawn: null }));
  const sawn = notches.flatMap((notch) => notch.sawn ?? []);
  return {
    notcher,
    among,
    notches,
    leans: sawn.every(({ set }) => toDegrees(set) < SQUARE) ? 'over-tube' : leansOf(notcher),
    gap: isGood ? leaves : 0,
    saws: [...new Set(sawn.map(({ saw }) => saw))],
  };
}

const isExact = ({ cut, sawn }: Notch): boolean =>
  sawn === null || (Math.abs(sawn.saw - cut.sawDiameter) < ROUNDING && sawn.set === cut.offSquare);

const gapOf = (end: TubeEnd, notches: readonly Notch[]): number | null =>
  notches.every(isExact) ? 0 : fitGap(end, sleevesMade(end, notches));

const leansOf = (notcher: Notcher | null): Notching['leans'] =>
  notcher?.leans === undefined ? 'unsaid' : notcher.leans === 'either' ? 'over-tube' : notcher.leans;

/** What the end is cut by when these are done as they are set; a cut by its wrap is the run tube's own. */
export const sleevesMade = (end: TubeEnd, notches: readonly Notch[]): readonly Sleeve[] =>
  notches.map(({ cut, sawn }, i) =>
    sawn === null ? end.cutter.sleeves[i]! : sawSleeve(end, cut, { diameter: sawn.saw, offSquare: sawn.set }),
  );

/** What one machine makes of an end is better than what another does with less of it: wraps, then flips, then the gap. */
function trouble({ notches, gap }: Notching): number {
  const count = (...ways: readonly Way[]): number => notches.filter(({ way }) => ways.includes(way)).length;
  return count('wrap') * 1000 + count('flip', 'cut-off-first') * 100 + gap;
}

function notchOf(end: TubeEnd, cut: Cut, notcher: Notcher | null, saws: readonly Saw[]): Notch {
  const without = (way: Way, why: WhyWrap | null = null): Notch => ({ cut, way, why, sawn: null });
  if (!cut.reaches) return without('nothing');
  if (cut.onBend) return without('wrap', 'bend');
  if (toDegrees(cut.includedAngle) <= THIN + DEGREE_ROUNDING) return without('wrap', 'thin');
  if (notcher !== null) {
    if (toDegrees(cut.offSquare) > notcher.greatestOffSquare + SQUARE) return without('wrap', 'swing');
    if (!notcher.takesOffset && Math.abs(cut.axisOffset) > MEETS) return without('wrap', 'offset');
  }
  const saw = sawFor(end, cut, saws);
  if (saw === undefined && saws.length > 0) return without('wrap', 'saw');

  const setting = { diameter: saw?.diameter ?? cut.sawDiameter, offSquare: settingOf(cut.offSquare, notcher) };
  const blankEnd = (end.tip ?? 0) - end.allowance;
  const reach = saw === undefined ? null : (saw.reach ?? FIRST_REACH);
  /** On a blank sawn off there. */
  const by = (way: Way, sawnAt: number, depth: number): Notch => ({
    cut,
    way,
    why: null,
    sawn: {
      saw: setting.diameter,
      reach,
      isMeasured: saw?.reach !== undefined,
      set: setting.offSquare,
      centre: sawPlace(end, cut).centre - sawnAt,
      depth,
      touch: Math.abs(cut.axisOffset) > MEETS ? null : touchOn(end, cut, setting) - sawnAt,
    },
  });
  const depth = sawTravel(end, cut, setting, blankEnd);
  if (depth === null) return without('nothing');
  if (reach === null) return by('either', blankEnd, depth);
  if (depth <= reach) return by('one-pass', blankEnd, depth);
  const atTip = end.tip ?? 0;
  const trimmed = end.allowance > 0 ? sawTravel(end, cut, setting, atTip) : null;
  if (trimmed !== null && trimmed <= reach) return by('cut-off-first', atTip, trimmed);
  // Where nobody has said which way the head leans, it may lean both.
  const turnsOver = toDegrees(setting.offSquare) < SQUARE || notcher?.leans === undefined || notcher.leans === 'either';
  return turnsOver && depth <= 2 * reach
    ? by('flip', blankEnd, depth)
    : { ...without('wrap', 'reach'), tooDeep: { depth, reach } };
}

/** Where the blank ends when the cut is made, mm from the node: what is left long is off by then where it has to be. */
export const sawnEndOf = (end: TubeEnd, { way }: Notch): number =>
  (end.tip ?? 0) - (way === 'cut-off-first' ? 0 : end.allowance);

/** The nearest in size whose joint can be welded, undefined where none is; of two as near the greater, which does not bind. */
function sawFor(end: TubeEnd, cut: Cut, saws: readonly Saw[]): Saw | undefined {
  const off = ({ diameter }: Saw): number => Math.abs(diameter - cut.sawDiameter);
  const [nearest] = saws.toSorted((one, other) => off(one) - off(other) || other.diameter - one.diameter);
  if (nearest === undefined || off(nearest) < ROUNDING) return nearest;
  if (cut.onBend || cut.sawDepth === null || off(nearest) > 2 * MOST_GAP) return undefined;
  const made = end.cuts.map((each, i) =>
    each === cut
      ? sawSleeve(end, cut, { diameter: nearest.diameter, offSquare: cut.offSquare })
      : end.cutter.sleeves[i]!,
  );
  const gap = fitGap(end, made);
  return gap !== null && gap <= MOST_GAP ? nearest : undefined;
}

/** The division of the machine's scale that is nearest, no farther than it swings. */
function settingOf(offSquare: Radians, notcher: Notcher | null): Radians {
  if (notcher?.step === undefined) return offSquare;
  const { step, greatestOffSquare } = notcher;
  const most = Math.floor(greatestOffSquare / step + DIVISION_ROUNDING);
  const divisions = Math.min(Math.round(toDegrees(offSquare) / step), most);
  const set = toRadians(divisions * step);
  return Math.abs(set - offSquare) < toRadians(DEGREE_ROUNDING) ? offSquare : set;
}
