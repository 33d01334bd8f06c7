/** How many things the checks found of each severity: each once, however many tubes it is named at, and none that was seen and left. */
import { useMemo } from 'react';
import { grouped } from '../../core/checks/grouped.ts';
import { unseen } from '../../core/checks/seen.ts';
import type { Severity } from '../../core/checks/types.ts';
import { useDocument, useResults } from '../../store/page.ts';

export function useOpenCount(): (severity: Severity) => number {
  const findings = useResults((state) => state.findings);
  const derived = useDocument((state) => state.derived);
  const marks = useDocument((state) => state.job.seen);
  const open = useMemo(() => grouped(unseen(findings, marks), derived), [findings, marks, derived]);
  return (severity) => open.filter(({ first }) => first.severity === severity).length;
}
