/** The shop's cutting tools as a job carries them: together. */
import type { Tools } from '../job/kinds/tools.ts';
import type { Shop } from './types.ts';

/** Undefined where the shop has set down none. */
export function toolsOf({ notchers, saws, benchSaw }: Shop): Tools | undefined {
  if (notchers.length === 0 && saws.length === 0 && benchSaw === undefined) return undefined;
  return { ...(benchSaw !== undefined && { benchSaw }), notchers, saws };
}
