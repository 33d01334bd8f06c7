/** Errors that were found on a tube, as the shop must hear them before it cuts. */
import { remembered } from '../remembered.ts';
import type { Finding, Severity } from './types.ts';
import type { TubeRef } from '../job/reference.ts';

/** The errors found on a tube, in the order found. */
export const errorsOf = (findings: readonly Finding[], tube: TubeRef): readonly Finding[] =>
  errorsByTube(findings).get(tube) ?? NONE;

const NONE: readonly Finding[] = [];

/** Every row of a list asks for its own. */
const errorsByTube = remembered((findings: readonly Finding[]): ReadonlyMap<TubeRef, readonly Finding[]> => {
  const errors = findings.filter(({ severity }) => severity === 'error');
  const byTube = new Map<TubeRef, Finding[]>();
  for (const error of errors) {
    const others = byTube.get(error.tube);
    if (others === undefined) byTube.set(error.tube, [error]);
    else others.push(error);
  }
  return byTube;
});

/** What stands over a tube's errors; a tube too near the driver, or cut twice, can be made, but should not be yet. */
export function faultInWords(errors: readonly Finding[]): string {
  const made = errors.every(({ id }) => id.startsWith('clearance/') || id.startsWith('member/'));
  return made ? 'Do not cut it yet' : 'Cannot be made like this';
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** Errors, then warnings, then notes; within each in the order of the checks. */
export const bySeverity = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity]);
