/** How tubes are fed: what every length to cut, every mark and every drawing of the blank goes by. */
import type { BendStep, BentTube } from '../../core/job/kinds/bent.ts';
import { readTapeView } from '../../core/shop/mark-words.ts';
import { remembered } from '../../core/remembered.ts';
import { bendingOrder } from '../../core/shop/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { useKept } from '../kept.ts';

/**
 * The order in which a tube is bent, with the end in front: that of its bend run, else the usual one for the end that the person
 * hooks the tape over, end A where that cannot be.
 */
export function useFeed(): (tube: SolvedTube) => readonly BendStep[] {
  const runs = useWorkspace((state) => state.job.bent);
  const [{ from }] = useKept('tape', readTapeView);
  return (tube) => runOrder(tube, runs) ?? bendingOrder(tube, { from }) ?? bendingOrder(tube, { from: 'A' }) ?? [];
}

/** The order of the tube's bend run; null without a run, and where it no longer holds every bend once. */
export function runOrder(tube: SolvedTube, runs: readonly BentTube[]): readonly BendStep[] | null {
  const run = byTube(runs).get(tube.id);
  return run === undefined ? null : bendingOrder(tube, { from: 'A', order: run.order });
}

/** Every row of the list of tubes asks for its own. */
const byTube = remembered((runs: readonly BentTube[]) => new Map(runs.map((run) => [run.tube, run])));
