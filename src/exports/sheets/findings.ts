/** Findings as paper says them: a sign that black and white can tell apart, what is wrong, and where the rule comes from. */
import type { Finding, Severity } from '../../core/checks/types.ts';
import type { Derived } from '../../core/derive.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import { findingInWords, sourceInWords } from '../../core/words/findings.ts';

const SIGNS: Readonly<Record<Severity, string>> = { error: '× Error.', warning: '! Warning.', note: 'i Note.' };

export const findingsOf = (findings: readonly Finding[], tube: TubeRef): readonly Finding[] =>
  findings.filter((finding) => finding.tube === tube);

export const signedFinding = (finding: Finding, derived: Derived): string =>
  `${SIGNS[finding.severity]} ${sourcedFinding(finding, derived)}`;

export const sourcedFinding = (finding: Finding, derived: Derived): string =>
  `${findingInWords(finding, derived)} (${sourceInWords(finding, derived)})`;
