/**
 * How much flat steel a press brake's bend takes: the arc of the fibre that keeps its length, which lies k/2 of the thickness out from the
 * inside. DIN 6935 (as quoted: a look at the standard itself is wanting): k = 0.65 + 0.5 log10(r / t), and 1 from r = 5 t on; never below 0.
 * A shop that has bent its own test strip knows better.
 */
import { toRadians } from '../geometry/angle.ts';
import { kinkAxis, kinkSetBack, type Kink } from '../job/kinds/kink.ts';
import type { Foot } from '../job/kinds/foot.ts';

/** From this radius on, in thicknesses, the fibre lies in the middle. */
const WIDE = 5;

/** The K-factor: how far out from the inside the fibre lies, as a share of the thickness; 0 to 0.5. `radius` is that of the inside, mm. */
export function kFactor(radius: number, thickness: number): number {
  const ratio = radius / thickness;
  return ratio >= WIDE ? 0.5 : Math.max(0, 0.65 + 0.5 * Math.log10(ratio)) / 2;
}

/** Length of that fibre in the bend, mm: angle x (radius + K x thickness), the angle in radians. */
export const bendAllowance = ({ angle, radius }: Kink, thickness: number): number =>
  toRadians(Math.abs(angle)) * (radius + kFactor(radius, thickness) * thickness);

/** A plate's kink unfolded: places on the flat steel, counted like those on the plate, from its middle. */
export interface Unfolded {
  readonly kink: Kink;
  /** 0 where the places count along the plate, 1 where across. */
  readonly axis: 0 | 1;
  /** Where the bend begins, its middle and where it ends, going outwards; mm. */
  readonly lines: readonly [number, number, number];
  /** What is added to a place beyond the kink, mm. */
  readonly shift: number;
}

/** Null of a foot without a kink. The flat part beyond is moved by the allowance less two set-backs. */
export function unfolded(foot: Foot): Unfolded | null {
  if (foot.kind !== 'plate' || foot.kink === undefined) return null;
  const { kink, thickness } = foot;
  const [setBack, allowance] = [kinkSetBack(foot, kink), bendAllowance(kink, thickness)];
  const side = Math.sign(kink.at);
  const begins = Math.abs(kink.at) - setBack;
  return {
    kink,
    axis: kinkAxis(kink),
    lines: [side * begins, side * (begins + allowance / 2), side * (begins + allowance)],
    shift: side * (allowance - 2 * setBack),
  };
}
