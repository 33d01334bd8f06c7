/** The slow stages, and all of them at once: for the command line and for files. On the page, workers/runner.ts goes through them. */
import { bySeverity } from '../checks/findings.ts';
import type { Finding } from '../checks/types.ts';
import type { Frame } from '../solve/types.ts';
import { rehearsals } from './rehearsals.ts';
import type { SlowStage } from './slow-stage.ts';

/** In the order in which they are gone through. */
export const SLOW: readonly SlowStage<object, unknown>[] = [rehearsals];

type Found = Frame & { readonly findings: readonly Finding[] };

/** The same result with what all the slow stages find, in its place by severity; itself where that is nothing. */
export const withSlowFindings = <D extends Found>(derived: D): D =>
  withFindings(
    derived,
    SLOW.flatMap((stage) => stage.items(derived).flatMap((item) => stage.findings(derived, item, stage.run(item)))),
  );

/** The same result with more findings, in their place by severity; itself where there are none. */
export function withFindings<D extends Found>(derived: D, more: readonly Finding[]): D {
  if (more.length === 0) return derived;
  return { ...derived, findings: [...derived.findings, ...more].toSorted(bySeverity) };
}
