/** How many things the checks found of each severity, and at how many places: none that was seen and left. */
import { useMemo } from 'react';
import { counted, type Counted } from '../../core/checks/counted.ts';
import type { Severity } from '../../core/checks/types.ts';
import { useDocument, useResults } from '../../store/page.ts';

export function useOpenCount(): (severity: Severity) => Counted {
  const findings = useResults((state) => state.findings);
  const derived = useDocument((state) => state.derived);
  const marks = useDocument((state) => state.job.seen);
  return useMemo(() => counted(findings, marks, derived), [findings, marks, derived]);
}
