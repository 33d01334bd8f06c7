/**
 * How far the machine is pulled for a net angle: pulled = net + a + b net.
 *
 * a is take-up (slack of dies, pins and frame), b the steel's own springback. Both come from the log of pulls of that
 * die and section, and of the member's batch where that has pulls of its own. Two pulls at different angles are the least
 * that separate a from b. With pulls at one angle only, all is laid to b (a = 0). Without any, b is the elastic recovery of the steel
 * and a is not known: an estimate, which reads low. Angles here are radians.
 */
import { batchKey, isSameBatch } from '../job/batch.ts';
import { toRadians, type Degrees, type Radians } from '../geometry/angle.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Section } from '../job/kinds/section.ts';
import {
  fitLine,
  parameterSpreads,
  pooledHalfWidth,
  predictionHalfWidth,
  type KnownDeviation,
  type LineFit,
} from '../numerics/line-fit.ts';
import { elasticRecovery } from './elastic.ts';
import { steelOf } from './steels.ts';

export interface PullLaw {
  readonly a: Radians;
  readonly b: number;
  /** 'pulls': both told apart. 'one-angle': a is taken as 0. 'estimate': elastic recovery alone. */
  readonly from: 'pulls' | 'one-angle' | 'estimate';
  /** The pulls it rests on. */
  readonly pulls: readonly Pull[];
  /** The member's batch, when its own pulls were used. */
  readonly batch: string | null;
  readonly fit: LineFit | null;
  /** Some of the pulls must have been misread, or belong to other tube. */
  readonly doubted: boolean;
}

/**
 * What a pull is read to, before any is logged: half a degree of the machine's scale and a digital level's tenth make 0.2 degrees
 * (common practice). Trusted as ten readings would be.
 */
export const READING: KnownDeviation = { deviation: toRadians(0.2), freedom: 10 };

/** Half-width, 95 %, of one reading about the line of some pulls: what they scatter by themselves, and READING, pooled. */
export const scatterOf = ({ count, scatter }: LineFit): Radians =>
  pooledHalfWidth((scatter ?? 0) ** 2 * (count - 2), count - 2, READING);

/** Pulls of the same net angle that differ by more than this, or one that bent past its pull, contradict each other. */
const CONTRADICTION: Degrees = 2;

/** Null only where there are no pulls and the steel is not known either. */
export function pullLaw(pulls: readonly Pull[], die: Die, section: Section, batch: string | undefined): PullLaw | null {
  const same = pulls.filter((pull) => pull.die === die.id && pull.section === section.id);
  const own = batchKey(batch) === null ? [] : same.filter((pull) => isSameBatch(pull.batch, batch));
  const used = own.length > 0 ? own : same;
  const base = { pulls: used, batch: own.length > 0 ? batch! : null };
  if (used.length === 0) {
    const steel = steelOf(section.material);
    if (steel === undefined) return null;
    return {
      ...base,
      a: 0,
      b: elasticRecovery(section, die.centrelineRadius, steel),
      from: 'estimate',
      fit: null,
      doubted: false,
    };
  }
  const doubted = disagree(used) || used.some(({ pulled, net }) => isMisread(pulled, net));
  const fit = fitLine(used.map(({ pulled, net }) => ({ x: toRadians(net), y: toRadians(pulled - net) })));
  if (fit === null) {
    const share = used.reduce((sum, { pulled, net }) => sum + (pulled - net) / net, 0) / used.length;
    return { ...base, a: 0, b: share, from: 'one-angle', fit: null, doubted };
  }
  return { ...base, a: fit.intercept, b: fit.slope, from: 'pulls', fit, doubted: doubted || isLessThanNothing(fit) };
}

/** Whether slack or spring come out less than nothing by more than readings scatter: neither can be. */
function isLessThanNothing(fit: LineFit): boolean {
  const { intercept, slope } = parameterSpreads(fit);
  const one = scatterOf(fit);
  return fit.intercept + one * intercept < 0 || fit.slope + one * slope < 0;
}

/** What the law asks for a net angle, wherever it leads: what a person is given stands in pull-advice.ts. */
export const pulledFor = ({ a, b }: PullLaw, net: Radians): Radians => net + a + b * net;

/** Pulls whose net angles lie within this hardly tell slack from spring. */
export const CLOSE: Degrees = 10;

/** Whether the law rests on pulls far enough apart to be trusted at other angles than theirs. */
export function tellsSlackFromSpring({ from, pulls }: PullLaw): boolean {
  const nets = pulls.map(({ net }) => net);
  return from === 'pulls' && Math.max(...nets) - Math.min(...nets) >= CLOSE;
}

/** Half-width of the 95 % interval of one more pull at this net angle by these pulls alone; null with fewer than three. */
export const pulledHalfWidth = ({ fit }: PullLaw, net: Radians): Radians | null =>
  fit === null ? null : predictionHalfWidth(fit, net);

/** A bend opens, it never closes; and one that opens by half its angle was misread, or is another tube. */
const GREATEST_SHARE = 1.5;

/** Whether a bend can come out as `net` when it was pulled so far; both in the same unit. */
export function isBelievablePull(pulled: number, net: number): boolean {
  const share = pulled / net;
  return share >= 1 && share <= GREATEST_SHARE;
}

/** Dies, pins and frame have less slack than this (common practice: one to three degrees); of a small bend it is a large share. */
const GREATEST_SLACK: Degrees = 5;

/** Whether one of the two was misread: no bend comes out so. */
export const isMisread = (pulled: Degrees, net: Degrees): boolean =>
  net > pulled || (pulled - net > GREATEST_SLACK && !isBelievablePull(pulled, net));

/** Pairs of pulls, by index in `pulls`, that cannot both be right; and single pulls that ended past their own pull. */
export function* contradictions(pulls: readonly Pull[]): Generator<readonly number[]> {
  for (const [i, one] of pulls.entries()) {
    if (one.net > one.pulled) yield [i];
    for (let k = i + 1; k < pulls.length; k++) {
      const other = pulls[k]!;
      const comparable = one.die === other.die && one.section === other.section && isSameBatch(one.batch, other.batch);
      const apart = Math.abs(one.pulled - one.net - (other.pulled - other.net));
      if (comparable && Math.abs(one.net - other.net) <= CONTRADICTION && apart > CONTRADICTION) yield [i, k];
    }
  }
}

/** Whether there are any. */
export const disagree = (pulls: readonly Pull[]): boolean => contradictions(pulls).next().done !== true;
