/** A real job of few tubes with some of them made: one bent by hand, one in its run with a bend made, and of the straight ones none cut. */
import { derive, type Derived } from '../../src/core/derive.ts';
import { beginRun, logReading } from '../../src/core/edit/bent.ts';
import { toDegrees } from '../../src/core/geometry/angle.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { drawnTube } from '../../src/core/run/drawn.ts';
import { setStage, tickRun } from '../../src/core/shape/made-stage.ts';
import { feedOf } from '../../src/core/solve/feed.ts';
import { secondRoundText } from '../command-line.ts';

export interface PartMade {
  readonly text: string;
  readonly names: { readonly begun: string; readonly open: readonly string[]; readonly done: readonly string[] };
  /** A straight tube that is not cut. */
  readonly cut: string;
}

function derived(job: Job): Derived {
  const made = derive(job);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

export function partMade(): PartMade {
  const parsed = parseJob(secondRoundText());
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const frame = derived(parsed.job);
  const [first, second] = frame.tubes.filter(({ bends }) => bends.length > 1);
  const straight = frame.tubes.find(({ bends }) => bends.length === 0)!;
  const bent = setStage(parsed.job, frame, first!.id, 'bent');
  const { order } = feedOf(bent, second!);
  const begun = beginRun(bent, second!.id, order, drawnTube(second!));
  const ticked = ['cut', 'mark'].reduce((job, step) => tickRun(job, derived(job), second!.id, step), begun);
  const { bend } = order[0]!;
  const net = toDegrees(second!.bends[bend - 1]!.angle);
  const read = logReading(ticked, second!.id, bend, { pulled: net + 3, net, on: '2026-03-02' });
  const others = frame.tubes.filter((tube) => tube !== first && tube !== second);
  return {
    text: serialiseJob(read),
    names: { begun: second!.name, open: others.map(({ name }) => name), done: [first!.name] },
    cut: straight.name,
  };
}
