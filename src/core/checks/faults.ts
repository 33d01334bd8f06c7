/** Errors that were found on a tube, as the shop must hear them before it cuts. */
import type { Finding } from './types.ts';
import type { TubeRef } from '../job/types.ts';

export const errorsOf = (findings: readonly Finding[], tube: TubeRef): readonly Finding[] =>
  findings.filter((finding) => finding.severity === 'error' && finding.tube === tube);

/** What stands over a tube's errors; a tube too near the driver, or cut twice, can be made, but should not be yet. */
export function faultInWords(errors: readonly Finding[]): string {
  const made = errors.every(({ id }) => id.startsWith('clearance/') || id.startsWith('member/'));
  return made ? 'Do not cut it yet' : 'Cannot be made as drawn';
}
