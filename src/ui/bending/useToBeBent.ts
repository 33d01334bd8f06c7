/** The tube as it is marked and bent, also where it stands in the frame as it came out. */
import { findRun } from '../../core/edit/bent.ts';
import { toBeBent } from '../../core/run/laid-out.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';

export const useToBeBent = (tube: SolvedTube): SolvedTube =>
  useDocument((state) => toBeBent(tube, findRun(state.job, tube.id)));
