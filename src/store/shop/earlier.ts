/**
 * What earlier builds kept of the shop as settings of the browser, each on its own: how marks were last taken, and how far bends
 * come out off. It goes into the shop record once. What was kept is taken as far as it can be used.
 */
import { FIRST_MARKING, type Marking } from '../../core/job/kinds/marking.ts';
import { FIRST_SCATTER, GREATEST_SCATTER, type Scatter } from '../../core/job/kinds/scatter.ts';
import type { Shop } from '../../core/shop/types.ts';

/** As it was kept, whatever it is; null where nothing was. */
export interface EarlierSettings {
  readonly tape: unknown;
  readonly tolerances: unknown;
}

/** The shop with what it does not say yet; the same shop where nothing of that was kept. */
export function withEarlier(shop: Shop, { tape, tolerances }: EarlierSettings): Shop {
  const marking = shop.marking === undefined ? readMarking(tape) : null;
  const scatter = shop.scatter === undefined ? readScatter(tolerances) : null;
  if (marking === null && scatter === null) return shop;
  return { ...shop, ...(marking && { marking }), ...(scatter && { scatter }) };
}

function readMarking(kept: unknown): Marking | null {
  const { from, mark, style, fine } = fieldsOf(kept);
  if (from === undefined) return null;
  return {
    from: (['A', 'B', 'middle'] as const).find((each) => each === from) ?? FIRST_MARKING.from,
    // Called style before it stood in the job.
    mark:
      (['start', 'clamp', 'middle', 'tangents'] as const).find((each) => each === (mark ?? style)) ??
      FIRST_MARKING.mark,
    fine: fine === true,
  };
}

function readScatter(kept: unknown): Scatter | null {
  const { angle, rotation, mark } = fieldsOf(kept);
  if (angle === undefined && rotation === undefined && mark === undefined) return null;
  const usable = (value: unknown, atFirst: number): number =>
    typeof value === 'number' && value >= 0 && value <= GREATEST_SCATTER ? value : atFirst;
  return {
    angle: usable(angle, FIRST_SCATTER.angle),
    rotation: usable(rotation, FIRST_SCATTER.rotation),
    mark: usable(mark, FIRST_SCATTER.mark),
  };
}

const fieldsOf = (kept: unknown): Record<string, unknown> =>
  typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
