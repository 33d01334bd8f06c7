/**
 * What stands behind the last part of a stick, before any cut. Where that is nothing, no cut is made there and the part's end is the stick's own; where it is less than a blade's
 * width, the saw runs out of the steel and the plan counts it as used up with the kerf (docs/maths/stock.md): it is ground off.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Part, Sawing } from './types.ts';

export type LastCut =
  | { readonly kind: 'sawn' | 'none' }
  /** `over`: mm to take off, less than the kerf. */
  | { readonly kind: 'ground'; readonly over: number };

/** `length` of the whole stick and of each part, mm. */
export function lastCut(length: number, parts: readonly Pick<Part, 'length'>[], { kerf, squareOff }: Sawing): LastCut {
  const used = parts.reduce((sum, part) => sum + part.length, squareOff + kerf * (parts.length - 1));
  const over = length - used;
  if (over <= ROUNDING) return { kind: 'none' };
  return over < kerf - ROUNDING ? { kind: 'ground', over } : { kind: 'sawn' };
}
