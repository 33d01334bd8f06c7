/** Findings as paper says them: a sign that black and white can tell apart, what is wrong, and where the rule comes from. */
import type { Finding, Severity } from '../../core/checks/types.ts';
import type { TubeRef } from '../../core/job/types.ts';

const SIGNS: Readonly<Record<Severity, string>> = { error: '× Error.', warning: '! Warning.', note: 'i Note.' };

export const findingsOf = (findings: readonly Finding[], tube: TubeRef): readonly Finding[] =>
  findings.filter((finding) => finding.tube === tube);

export const findingWords = ({ severity, message, source }: Finding): string =>
  `${SIGNS[severity]} ${message} (${source})`;
