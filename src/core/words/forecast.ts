/** The forecast of fit in the words of the shop: a joint, what feeds its gap, what would cure it, and what is left out. */
import { formatLength, type LengthUnit } from '../units/length.ts';
import type { Cure, Feeder, JointForecast } from '../forecast/types.ts';
import type { Axis } from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
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

/** "Measure Rear spring tower, left again: 1.4 mm." */
export const cureInWords = (frame: Frame, { tube, end }: JointForecast, cure: Cure, unit: LengthUnit): string =>
  `${capital(doneInWords(frame, tube, end, cure, unit))}: ${cure.gap < SHUT ? 'it shuts' : comparedLength(cure.gap, unit)}.`;

/** What is left long is said in quarters of an inch, or in whole mm. */
const WHOLE: Readonly<Record<LengthUnit, number>> = { in: 1 / 4, mm: 1 };

function doneInWords(frame: Frame, tube: TubeRef, end: 'A' | 'B', cure: Cure, unit: LengthUnit): string {
  switch (cure.kind) {
    case 'measure':
      return `measure ${pointName(frame.job, cure.point)} again`;
    case 'long':
      return `leave end ${end} ${formatLength(cure.by, unit, WHOLE[unit]).text} ${unit} long, and trim it on the car`;
    case 'on-car':
      return `${cure.first.length === 0 ? '' : `fit ${names(frame, cure.first)} before it, and `}cut ${tubeName(frame, frame.byId.get(tube)!.bar)} on the car, to what stands there`;
    case 'as-built':
      return `let ${tubeName(frame, cure.bar)} lead once it is bent, and cut the rest to it`;
  }
}
