/** The job of few tubes with some of them made: the first bent by hand, the second in its run with one bend made, of the others one cut. */
import { derive, type Derived } from '../../src/core/derive.ts';
import { beginRun, logReading } from '../../src/core/edit/bent.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { drawnTube } from '../../src/core/run/drawn.ts';
import { feedOf } from '../../src/core/solve/feed.ts';
import { toDegrees } from '../../src/core/geometry/angle.ts';
import { setStage, tickRun } from '../../src/core/shape/made-stage.ts';
import { fewTubes } from '../few-tubes.ts';

function derived(job: Job): Derived {
  const made = derive(job);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

/** Its file's text, and what its tubes are called, in build order. */
export function partMade(): { readonly text: string; readonly names: readonly string[] } {
  const parsed = parseJob(fewTubes());
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const frame = derived(parsed.job);
  const [first, second, third] = frame.tubes;
  const bent = setStage(parsed.job, frame, first!.id, 'bent');
  const { order } = feedOf(bent, second!);
  const begun = beginRun(bent, second!.id, order, drawnTube(second!));
  const ticked = ['cut', 'mark'].reduce((job, step) => tickRun(job, derived(job), second!.id, step), begun);
  const { bend } = order[0]!;
  const net = toDegrees(second!.bends[bend - 1]!.angle);
  const read = logReading(ticked, second!.id, bend, { pulled: net + 3, net, on: '2026-03-02' });
  const cut = setStage(read, derived(read), third!.id, 'cut');
  return { text: serialiseJob(cut), names: frame.tubes.map(({ name }) => name) };
}
