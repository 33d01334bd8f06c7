/** The line in which the next reading is typed: what was measured, where, what was read. */
import type { Said } from '../../core/edit/measurements.ts';
import type { PointRef } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import { pointName } from '../../core/solve/names.ts';
import type { NextMeasurement } from '../../core/survey/next-measurement.ts';
import { isAtOne, WAY_ALONG, type Way } from '../../core/survey/ways.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { angleKind, lengthKind, tapeKind, type Entered, type ValueKind } from '../fields/kinds.ts';
import type { Offer } from './pointChoice.ts';
import { NOT_PICKED, type Picked } from './PointPick.tsx';

export interface Line {
  readonly way: Way;
  readonly from: Picked;
  readonly to: Picked;
  readonly value: string;
}

/** Where the typing goes on. */
export type Slot = 'way' | 'from' | 'to' | 'value';

export const FIRST_LINE: Line = { way: 'height', from: NOT_PICKED, to: NOT_PICKED, value: '' };

/** The fields that such a line has, in their order. */
export const slotsOf = (way: Way): readonly Slot[] =>
  isAtOne(way) ? ['from', 'value'] : way === 'plumb' ? ['from', 'to'] : ['from', 'to', 'value'];

/** The line for what would tell most about a point. */
export function lineFor(job: Job, next: NextMeasurement): Line {
  const picked = (ref: PointRef): Picked => ({ text: pointName(job, ref), offer: { ref, label: pointName(job, ref) } });
  const way: Way = next.kind === 'distance' ? 'distance' : WAY_ALONG[next.axis];
  return {
    way,
    from: picked(next.point),
    to: next.kind === 'distance' ? picked(next.to) : NOT_PICKED,
    value: '',
  };
}

const STEEPEST = 90;

/** What is read of such a measurement: a tape nothing below 0, a slope degrees to straight up. */
export function kindOfWay(way: Way, unit: LengthUnit): ValueKind<number> {
  if (way === 'slope') return { ...angleKind, read: readSlope };
  return way === 'distance' || way === 'width' ? tapeKind(unit) : lengthKind(unit);
}

function readSlope(text: string): Entered<number> {
  const entered = angleKind.read(text);
  return entered.ok && Math.abs(entered.value) > STEEPEST ? { ok: false, why: 'steeper than straight up' } : entered;
}

export const saidOf = ({ ref, label }: Offer): Said => (ref === null ? { name: label } : { ref });
