/** What the variants of a job come to: a second each, and no findings, so they are gone through only while somebody looks at them. Its work stands in work.ts. */
import type { SlowStage } from '../stages/slow-stage.ts';
import type { Fault } from '../job/fault.ts';
import type { Variant } from '../job/kinds/variant.ts';
import type { Figures } from './figures.ts';

/** Its figures, or why it cannot be derived any more. */
export type VariantFigures =
  | { readonly ok: true; readonly figures: Figures }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export const variants: SlowStage<Variant, VariantFigures> = {
  name: 'variants',
  items: ({ job }) => job.variants,
  idOf: ({ id }) => id,
  findings: () => [],
};
