/** What was read at the machine or by the tape, and fits no bend of the tube or cannot be true: nothing of it is passed over without a word. */
import { toDegrees, type Degrees } from '../geometry/angle.ts';
import { DOUBLES_BACK } from '../geometry/tolerance.ts';
import type { BentBend, BentTube } from '../job/kinds/bent.ts';
import { readByHand } from '../job/read-by-hand.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { isMisread } from '../springback/pull-law.ts';
import type { ReadingImpossible, ReadingsUnused, WhyImpossible } from './made-types.ts';

/** From what was planned. No pull goes so far by mistake; a figure that was typed at another bend does. Common practice. */
const FAR_OFF: Degrees = 30;

/** In the order of the runs. */
export function* readingTrouble({ job, byId }: Frame): Generator<ReadingsUnused | ReadingImpossible> {
  for (const run of job.bent) {
    const tube = byId.get(run.tube);
    if (tube === undefined) continue;
    const used = usedBy(tube, run);
    yield* unused(tube, run, used);
    for (const reading of used) yield* impossible(tube, run, reading);
  }
}

const bendsOf = ({ drawn, order }: BentTube): number => drawn?.angles.length ?? order.length;

/** Of a run that is of another number of bends, none. */
const usedBy = (tube: SolvedTube, run: BentTube): BentTube['bends'] =>
  bendsOf(run) === tube.bends.length ? run.bends.filter(({ bend }) => bend <= tube.bends.length) : [];

function* unused(tube: SolvedTube, run: BentTube, used: BentTube['bends']): Generator<ReadingsUnused> {
  const readings = run.bends.filter((reading) => !used.includes(reading));
  if (readings.length === 0) return;
  const base = { severity: 'warning', source: 'practice', tube: tube.id, at: tube.corners[0]! } as const;
  yield { ...base, id: 'made/readings-unused', readings, was: bendsOf(run), now: tube.bends.length };
}

function* impossible(tube: SolvedTube, run: BentTube, reading: BentBend): Generator<ReadingImpossible> {
  const { bend } = reading;
  const planned = run.drawn?.angles[bend - 1] ?? toDegrees(tube.bends[bend - 1]!.angle);
  const why = whyNot(reading, planned, tube.developedLength);
  if (why === null) return;
  const at = tube.bends[bend - 1]!.corner;
  const base = { severity: 'warning', source: 'practice', tube: tube.id, bend, at } as const;
  yield { ...base, id: 'made/reading-impossible', why, reading, planned };
}

function whyNot(reading: BentBend, planned: Degrees, longest: number): WhyImpossible | null {
  const { net, straight } = reading;
  if (net > toDegrees(DOUBLES_BACK)) return 'doubles-back';
  const hand = readByHand(reading);
  if (hand !== null && isMisread(hand.pulled, hand.net))
    return hand.net > hand.pulled ? 'opened-to-more' : 'opened-by-too-much';
  if (Math.abs(net - planned) > FAR_OFF) return 'far-off';
  return straight !== undefined && (straight < 0 || straight > longest) ? 'straight-off-tube' : null;
}
