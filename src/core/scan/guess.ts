/** In what unit a scan is, and which way up: guessed from its size, for a person to say yes or no to. */
import type { ScanUnit, ScanUp } from '../job/kinds/scan.ts';
import { reachOf } from './place.ts';
import type { ScanData } from './types.ts';

/** Scanners write metres, millimetres or inches; what else there is has to be said. What a scan of a car, or of its inside, comes to at most in metres, and in inches; more can only be millimetres. */
const MOST_METRES = 20;
const MOST_INCHES = 500;

/** A GLB is in metres with y up by its own specification; of others nothing says so. A car is lower than it is long or wide. */
export function guessed(fileName: string, data: ScanData): { readonly unit: ScanUnit; readonly up: ScanUp } {
  const { low, high } = reachOf(data);
  const [x, y, z] = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
  const longest = Math.max(x, y, z);
  const unit = longest <= MOST_METRES ? 'm' : longest <= MOST_INCHES ? 'in' : 'mm';
  return { unit, up: fileName.toLowerCase().endsWith('.glb') || y < z ? 'y' : 'z' };
}
