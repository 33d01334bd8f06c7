/**
 * The stages of derive(), which run at every edit, in their order. Each is a pure function of what stages before it have made, by the
 * names in `needs`, and of what was derived before, of which it hands on what comes out the same.
 *
 * Places and centrelines are one stage: a node that stands on a hoop needs the hoop's centreline, and the next hoop may need that
 * node. Cuts and lengths are one, too: what a tube's ends are cut to is all that its lengths still want.
 */
import { measureClearances, type Clearance } from '../checks/clearances.ts';
import { findTrouble } from '../checks/findings.ts';
import type { Finding } from '../checks/types.ts';
import { measureGaps, type TubeGap } from '../gaps/measure-gaps.ts';
import { measureTrim, type TrimGaps } from '../gaps/measure-trim.ts';
import { isGapWanted, trimPlaces } from '../gaps/trim-places.ts';
import type { Outcome } from '../job/fault.ts';
import { withShownNames } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { cutTubes } from '../solve/cut-tubes.ts';
import { layOut, layOutAsBuilt, type Layout } from '../solve/lay-out.ts';
import { meetTubes, type Meetings } from '../solve/meet-tubes.ts';
import { sequenceOf, type Step } from '../solve/sequence.ts';
import type { Frame } from '../solve/types.ts';
import { adjust, type Adjusted } from '../survey/adjust.ts';
import { withMeasuredPoints } from '../survey/measured-points.ts';

/** What there is to begin with, the job, and what each stage makes, under its name. */
export interface Made {
  readonly job: Job;
  /** Null where nothing was measured. */
  readonly survey: Adjusted | null;
  /** Names as they are shown, and points where they were measured. */
  readonly names: Job;
  readonly sequence: readonly Step[];
  /** As it is drawn. */
  readonly drawn: Layout;
  /** With the tubes that stand as built in their places; the same where none does. */
  readonly layout: Layout;
  readonly meetings: Meetings;
  readonly frame: Frame;
  readonly clearances: readonly Clearance[];
  /** In build order. */
  readonly gaps: readonly TubeGap[];
  /** Of the measured points and body lines for which somebody asks a gap; of all of them when they are shown. */
  readonly trimGaps: readonly TrimGaps[];
  /** Errors first, then warnings, then notes; within each in build order. */
  readonly findings: readonly Finding[];
}

/** What was derived before: no more than a store of records that may be handed on. */
export type Before = Frame & Pick<Made, 'clearances' | 'gaps' | 'trimGaps'>;

export interface FastStage<Name extends keyof Made = keyof Made, Needs extends keyof Made = keyof Made> {
  readonly name: Name;
  readonly needs: readonly Needs[];
  readonly run: (made: Pick<Made, Needs>, before: Before | undefined) => Outcome<Made[Name]>;
}

/** A row of the list: a stage sees what it names and nothing else. */
const stage = <Name extends keyof Made, Needs extends keyof Made>(
  name: Name,
  needs: readonly Needs[],
  run: FastStage<Name, Needs>['run'],
): FastStage<Name, Needs> => ({ name, needs, run });

const done = <Value>(value: Value): Outcome<Value> => ({ ok: true, value });

/** Measured points; names as they are shown; sequence of solving; places and centrelines, as drawn and as built; who meets whom; cut ends and lengths; clearances; gaps between tubes; gaps to the trim; findings. */
export const FAST: readonly FastStage[] = [
  stage('survey', ['job'], ({ job }) => done(adjust(job))),
  stage('names', ['job'], ({ job }) => done(withShownNames(withMeasuredPoints(job)))),
  stage('sequence', ['names'], ({ names }) => sequenceOf(names)),
  stage('drawn', ['names', 'sequence'], ({ names, sequence }, before) => layOut(names, sequence, before?.drawn)),
  stage('layout', ['names', 'sequence', 'drawn'], ({ names, sequence, drawn }, before) =>
    layOutAsBuilt(names, sequence, drawn, before?.layout),
  ),
  stage('meetings', ['names', 'drawn', 'layout'], ({ names, drawn, layout }, before) =>
    meetTubes(names, drawn, layout, before),
  ),
  stage('frame', ['names', 'drawn', 'layout', 'meetings'], ({ names, drawn, layout, meetings }, before) =>
    done(cutTubes(names, drawn, layout, meetings, before)),
  ),
  stage('clearances', ['frame'], ({ frame }, before) => done(measureClearances(frame, before))),
  stage('gaps', ['frame'], ({ frame }, before) => done(measureGaps(frame, before))),
  stage('trimGaps', ['frame'], ({ frame }, before) => done(measureTrim(frame, trimPlaces(frame, isGapWanted), before))),
  stage(
    'findings',
    ['survey', 'frame', 'clearances', 'gaps', 'trimGaps'],
    ({ survey, frame, clearances, gaps, trimGaps }) => done(findTrouble(frame, clearances, gaps, trimGaps, survey)),
  ),
];
