/** The work of all slow stages, also of what holds whole jobs against each other. */
import { derive } from '../derive.ts';
import type { Variant } from '../job/kinds/variant.ts';
import { parseJob } from '../job/parse.ts';
import type { SlowWork } from '../stages/slow-stage.ts';
import { WORK, withSlowFindings } from '../stages/work.ts';
import { planSection } from '../stock/of-job.ts';
import { toCut } from '../stock/to-cut.ts';
import { figuresOf } from './figures.ts';
import { variants, type VariantFigures } from './variants.ts';

/** What can be asked for, item by item. */
export const ALL_WORK: readonly SlowWork<object, unknown>[] = [...WORK, { ...variants, run: figuresOfVariant }];

/** Through the door for files, like any job. */
export function figuresOfVariant({ text }: Pick<Variant, 'text'>): VariantFigures {
  const parsed = parseJob(text);
  if (!parsed.ok) return parsed;
  const derivation = derive(parsed.job);
  if (!derivation.ok) return derivation;
  const derived = withSlowFindings(derivation.value);
  const plans = toCut(derived).map((section) => ({ ...section, ...planSection(section) }));
  return { ok: true, figures: figuresOf(derived, plans, derived.findings) };
}
