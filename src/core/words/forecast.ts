/** The forecast of fit in the words of the shop: a joint, what feeds its gap, what would cure it, and what is left out. */
import { formatLength, type LengthUnit } from '../units/length.ts';
import type { Cure, Feeder, JointForecast } from '../forecast/types.ts';
import type { Axis } from '../geometry/vector.ts';
import { bareId, primed, type TubeRef } from '../job/reference.ts';
import { pointName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { comparedLength } from './lengths.ts';
import { SHUT } from './gaping.ts';
import { capital, listed } from './lists.ts';

export const FORECAST = 'Forecast of fit';

/** What the figures mean. */
export const FORECAST_MEANS =
  'Of 100 cages cut and bent by this drawing, 95 gape less than this at the joint: square to the tube or plate that its edge is to lie on, at its widest, with the tube held as well as can be and what is in the way filed off.';

export const FORECAST_LEAVES_OUT =
  'Left out: what the weld pulls, what a tube sags, what a jig holds. Dry-fit every joint before you weld it.';

/** "Rear stay (left), end A at Main hoop"; of an end on the car what it stands on. */
export function jointInWords(frame: Frame, { tube, end, fit, to }: JointForecast): string {
  const on = fit === 'foot' ? 'on its foot' : fit === 'plate' ? 'on its plate' : `at ${names(frame, to)}`;
  return `${tubeName(frame, tube)}, end ${end} ${on}`;
}

const names = (frame: Frame, bars: readonly TubeRef[]): string => listed(bars.map((bar) => tubeName(frame, bar)));

const ALONG: Readonly<Record<Axis, string>> = {
  x: 'the place fore and aft',
  y: 'the place to the side',
  z: 'the height',
};

/** "the height of Rear spring tower, left"; `own`: the tube whose joint it is. */
export function feederInWords(frame: Frame, of: Feeder, own: TubeRef): string {
  if (of.kind === 'bend') return `bend ${of.bend} of ${tubeName(frame, of.bar)}`;
  if (of.kind === 'cut') {
    return of.tube === own ? `its cut at end ${of.end}` : `the cut of ${tubeName(frame, of.tube)} at end ${of.end}`;
  }
  return `${ALONG[of.axis]} of ${pointName(frame.job, of.point)}`;
}

/** "Most from bend 2 of Main hoop (41 %), then the height of Rear spring tower, left (16 %)."; null where nothing feeds it. */
export function feedsInWords(frame: Frame, { tube, feeds }: JointForecast): string | null {
  if (feeds.length === 0) return null;
  const all = feeds.map(({ of, share }) => `${feederInWords(frame, of, tube)} (${Math.round(100 * share)}\u00a0%)`);
  return `Most from ${all.join(', then ')}.`;
}

/** Beside a figure: of how many cages it holds. */
export const shareInWords = (gap: number): string => (gap < SHUT ? 'in 95 of 100' : '95 of 100 gape less');

/** "Measure Rear spring tower, left again: 95 of 100 then stay under 1.4 mm." */
export const cureInWords = (frame: Frame, { tube, end }: JointForecast, cure: Cure, unit: LengthUnit): string =>
  `${capital(doneInWords(frame, tube, end, cure, unit))}: 95 of 100 then ${cure.gap < SHUT ? 'shut' : `stay under ${comparedLength(cure.gap, unit)}`}.`;

/** The one that leaves least first; of those that are said with the same figure the least work first, as they come. */
export function curesInOrder(
  cures: readonly Cure[],
  unit: LengthUnit,
): { readonly cures: readonly Cure[]; readonly alike: string | null } {
  const said = (cure: Cure): string => (cure.gap < SHUT ? '' : comparedLength(cure.gap, unit));
  const ordered = cures.toSorted((a, b) => (said(a) === said(b) ? 0 : a.gap - b.gap));
  const best = ordered.filter((cure) => said(cure) === said(ordered[0]!)).length;
  const alike = best < 2 ? null : `The first ${best} come to the same: the least work stands first.`;
  return { cures: ordered, alike };
}

/** Of a cure that no key does: what to do, and where. */
export function byHandInWords(frame: Frame, cure: Cure): string | null {
  switch (cure.kind) {
    case 'measure':
      return 'Measure it a second time in the car, and enter the mean in Survey.';
    case 'as-built':
      return `Bend it first. Then read it in its bend run, or by a tape under Bending in the Shop, and let it lead there.`;
    case 'on-car':
      return cure.first.length === 0
        ? null
        : `Move ${names(frame, cure.first)} before it in the build order, in Frame.`;
    case 'long':
      return null;
  }
}

/** What was done about a joint, and what that gave; `now` is null while it is worked out. */
export const takenInWords = (done: string, was: number, now: number | null, unit: LengthUnit): string =>
  `Done: ${done}. It was ${gapFigure(was, unit)}; ${now === null ? 'what it is now is being worked out' : `now it ${now < SHUT ? 'shuts' : `is ${gapFigure(now, unit)}`}`}.`;

const gapFigure = (gap: number, unit: LengthUnit): string => (gap < SHUT ? 'shut' : comparedLength(gap, unit));

/** "Front leg (left) and Front leg (right)": what a change of its member changes. */
function membersTubes(frame: Frame, tube: TubeRef): string {
  const { bar, member } = frame.byId.get(tube)!;
  return names(frame, member.mirror ? [bareId(bar), primed(bareId(bar))] : [bar]);
}

/** Of a joint whose tube is cut on the car, and the key that takes that back: what changes, one tube or both sides. */
export const onCarInWords = (both: boolean): { readonly is: string; readonly back: string } =>
  both
    ? { is: 'Both sides are cut on the car, once what they meet stands there.', back: 'Cut both by the drawing' }
    : { is: 'It is cut on the car, once what it meets stands there.', back: 'Cut it by the drawing' };

/** What is left long is said in quarters of an inch, or in whole mm. */
const WHOLE: Readonly<Record<LengthUnit, number>> = { in: 1 / 4, mm: 1 };

/** "cut Post on the car, to what stands there". */
export function doneInWords(frame: Frame, tube: TubeRef, end: 'A' | 'B', cure: Cure, unit: LengthUnit): string {
  const both = frame.byId.get(tube)!.member.mirror;
  switch (cure.kind) {
    case 'measure':
      return `measure ${pointName(frame.job, cure.point)} again`;
    case 'long':
      return `leave end ${end} ${formatLength(cure.by, unit, WHOLE[unit]).text} ${unit} long${both ? ' on both sides' : ''}, and trim it on the car`;
    case 'on-car':
      return `${cure.first.length === 0 ? '' : `fit ${names(frame, cure.first)} before it, and `}cut ${membersTubes(frame, tube)} on the car, to what stands there`;
    case 'as-built':
      return `let ${tubeName(frame, cure.bar)} lead once it is bent, and cut the rest to it`;
  }
}
