/** The tube as it is marked and bent, also where it stands in the frame as it came out, and with the marks that its run has drawn. */
import { useMemo } from 'react';
import { atBender } from '../../core/run/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';

export function useToBeBent(tube: SolvedTube): SolvedTube {
  const bent = useDocument((state) => state.job.bent);
  return useMemo(() => atBender({ bent }, tube), [bent, tube]);
}
