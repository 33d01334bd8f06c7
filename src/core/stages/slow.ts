/** The slow stages, which workers/runner.ts goes through on the page, and what they find among the other findings. */
import { bySeverity } from '../checks/findings.ts';
import type { Finding } from '../checks/types.ts';
import type { Frame } from '../solve/types.ts';
import { fitting } from './fitting.ts';
import { gussets } from './gussets.ts';
import { rehearsals } from './rehearsals.ts';
import type { SlowStage } from './slow-stage.ts';
import { stock } from './stock.ts';

/** Those that find something, in the order in which they are gone through. */
export const SLOW: readonly SlowStage<object, unknown>[] = [rehearsals, fitting, gussets, stock];

/** The same result with more findings, in their place by severity; itself where there are none. */
export function withFindings<D extends Frame & { readonly findings: readonly Finding[] }>(
  derived: D,
  more: readonly Finding[],
): D {
  if (more.length === 0) return derived;
  return { ...derived, findings: [...derived.findings, ...more].toSorted(bySeverity) };
}
