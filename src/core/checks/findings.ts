/**
 * What is wrong with the frame, and where. A finding never stops the derivation. Its sentence, with what would mend it, stands
 * in core/words/findings.ts.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { TubeGap } from '../gaps/measure-gaps.ts';
import type { TrimGaps } from '../gaps/measure-trim.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { Adjusted } from '../survey/adjust.ts';
import { answersTheSame, noting, questionsTo, type Asked, type Questions } from './questions.ts';
import {
  bendTrouble,
  holdTrouble,
  isHoop,
  keptAngleTrouble,
  manyBends,
  openingTrouble,
  orderTrouble,
  pullTrouble,
  stickTrouble,
} from './bend-findings.ts';
import { lineTrouble } from './line-findings.ts';
import { endTrouble } from './end-findings.ts';
import { gapTrouble } from './gap-findings.ts';
import { guessTrouble, standInTrouble } from './guess-findings.ts';
import { madeTrouble } from './made-findings.ts';
import { readingTrouble } from './reading-findings.ts';
import { trimTrouble } from './trim-findings.ts';
import { surveyTrouble } from './survey-findings.ts';
import type { Clearance } from './clearances.ts';
import type { Finding, Severity } from './types.ts';

const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Errors first, then warnings, then notes. */
export const bySeverity = (a: Finding, b: Finding): number => RANK[a.severity] - RANK[b.severity];

/** Errors first, then warnings, then notes; within each in build order. */
export function findTrouble(
  frame: Frame,
  clearances: readonly Clearance[],
  gaps: readonly TubeGap[],
  trimGaps: readonly TrimGaps[],
  survey: Adjusted | null,
): readonly Finding[] {
  const ask = questionsTo(frame);
  const found: Record<Severity, Finding[]> = { error: [], warning: [], note: [] };
  const gather = (each: Iterable<Finding>) => {
    for (const finding of each) found[finding.severity].push(finding);
  };
  for (const tube of frame.tubes) gather(troubleOf(tube, ask));
  gather(lineTrouble(frame.tubes));
  for (const each of clearances) if (!each.ok) gather([tooClose(each)]);
  gather(gapTrouble(frame, gaps));
  gather(trimTrouble(frame, trimGaps));
  gather(guessTrouble(frame));
  gather(standInTrouble(frame));
  gather(surveyTrouble(frame, survey));
  gather(madeTrouble(frame));
  gather(readingTrouble(frame));
  return [...found.error, ...found.warning, ...found.note];
}

/** What was found of a tube, and what it was found by. */
interface Known {
  readonly asked: readonly Asked[];
  readonly findings: readonly Finding[];
}

const known = new WeakMap<SolvedTube, Known>();

/** Of a tube that an edit left alone what was found before holds, as long as all that was asked about is what it was. */
function troubleOf(tube: SolvedTube, ask: Questions): readonly Finding[] {
  const before = known.get(tube);
  if (before?.asked.every((each) => answersTheSame(ask, each))) return before.findings;
  const asked: Asked[] = [];
  const findings = [...troubles(tube, noting(ask, asked))];
  known.set(tube, { asked, findings });
  return findings;
}

function* troubles(tube: SolvedTube, ask: Questions): Generator<Finding> {
  yield* twinTrouble(tube, ask);
  yield* pullTrouble(tube);
  const feed = ask.feed(tube);
  yield* openingTrouble(tube, feed);
  yield* bendTrouble(tube);
  // Of the drawing: one that stands as it was made turns as it came out.
  yield* keptAngleTrouble(tube.asDrawn ?? tube);
  yield* orderTrouble(tube, feed);
  yield* holdTrouble(tube, feed);
  yield* manyBends(tube);
  yield* stickTrouble(tube, feed);
  yield* endTrouble(tube, ask);
  yield* hoopInPieces(tube);
}

/** Said once, of the first piece. */
function* hoopInPieces(tube: SolvedTube): Generator<Finding> {
  if (tube.piece?.number !== 1 || !isHoop(tube)) return;
  const { position: at, cuts } = tube.ends[1];
  yield { id: 'piece/hoop', severity: 'warning', tube: tube.id, at, runTube: cuts[0]!.against, source: 'one-piece' };
}

/** A member that is its own mirror image, and mirrored all the same, is two tubes in one place. */
function* twinTrouble(tube: SolvedTube, ask: Questions): Generator<Finding> {
  if (tube.twinOf === null) return;
  const own = ask.tube(tube.twinOf).corners;
  const sameAs = (corners: readonly Vec3[]) => corners.every((corner, i) => distance(corner, own[i]!) <= ROUNDING);
  if (!sameAs(tube.corners) && !sameAs(tube.corners.toReversed())) return;
  yield {
    id: 'member/twin-in-same-place',
    severity: 'error',
    tube: tube.id,
    at: tube.corners[0]!,
    source: 'practice',
  };
}

const tooClose = ({ tube, envelope, distance, gap, at }: Clearance): Finding => ({
  id: 'clearance/too-close',
  severity: 'error',
  tube,
  envelope,
  at,
  distance,
  gap,
  source: 'envelope-gap',
});
