/** The survey's figures for those who want them, in plain words. */
import { toDegrees } from '../geometry/angle.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Adjusted, AdjustedPoint } from '../survey/adjust.ts';
import { decimalLength, type LengthUnit } from '../units/length.ts';
import { AXIS_WORDS } from './survey.ts';

/** A half axis of the ellipsoid that a point's place lies in. */
export interface HalfAxis {
  /** mm, one standard deviation along it. */
  readonly length: number;
  /** "in height", "to the side, 12° off". */
  readonly way: string;
}

/** Of the coordinates that are asked for, the longest first; what is held has none. */
export const halfAxes = ({ covariance }: Pick<AdjustedPoint, 'covariance'>): readonly HalfAxis[] =>
  symmetricEigen<Vec3>(covariance).flatMap(({ value, vector }) =>
    value > HELD ? [{ length: Math.sqrt(value), way: wayInWords(vector) }] : [],
  );

/** mm2. Less is rounding: of what is held. */
const HELD = 1e-12;

/** Degrees. Nearer to an axis of the car than this it is that axis. */
const ALONG_IT = 5;

function wayInWords(vector: Vec3): string {
  const sizes = vector.map(Math.abs);
  const k = sizes.indexOf(Math.max(...sizes));
  const off = toDegrees(Math.acos(Math.min(1, sizes[k]!)));
  const axis = AXIS_WORDS[(['x', 'y', 'z'] as const)[k]!];
  return off < ALONG_IT ? axis : `${axis}, ${off.toFixed(0)}° off`;
}

/** Two decimals of a millimetre, or three of an inch. */
export const fineInWords = (mm: number, unit: LengthUnit): string => decimalLength(mm, unit, unit === 'in' ? 3 : 2);

/** What the two figures of the whole are, and what they mean. */
export function wholeInWords({ s0, redundancy }: Adjusted): readonly string[] {
  const more = `${redundancy} ${redundancy === 1 ? 'reading' : 'readings'} more than the places need (redundancy).`;
  if (redundancy === 0) return [`${more} Nothing can disagree, and nothing is checked.`];
  const scatter = `s0 = ${s0.toFixed(2)}: what is left over, against what the instruments claim.`;
  return [more, `${scatter} ${s0 > COARSE ? COARSER : s0 < FINE ? FINER : AS_CLAIMED}`];
}

const COARSE = 1.5;
const FINE = 0.5;
const AS_CLAIMED = 'Near 1, the readings are as good as they claim.';
const COARSER = 'Well above 1: a slip is among them, or the instruments claim too much.';
const FINER = 'Well below 1: the instruments claim too little, or copied figures agree too well.';
