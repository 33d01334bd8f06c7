/** What ends are cut with, as a job carries it: together. The shop has it in its lists. */
import type { Tools } from '../job/kinds/tools.ts';

/** Of a shop, or of what a job carries, these alone; undefined where none is set down. */
export function toolsOf({ notchers, saws, benchSaw }: Tools): Tools | undefined {
  if (notchers.length === 0 && saws.length === 0 && benchSaw === undefined) return undefined;
  return { ...(benchSaw !== undefined && { benchSaw }), notchers, saws };
}
