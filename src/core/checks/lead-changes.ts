/**
 * What it comes to when a tube leads that was bent: which others change by more than a tape reads, a tube and its mirror image together, and what
 * could then not be made.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { bareId, type TubeRef } from '../job/reference.ts';
import type { Frame } from '../solve/types.ts';
import { changedTubes, type TubeChange } from './changed-tubes.ts';
import { UNSEEN } from './limits.ts';
import type { Finding } from './types.ts';

/** Less of an angle no protractor in a shop tells. Common practice. */
const UNSEEN_ANGLE: Radians = toRadians(0.2);

export interface LeadChanges {
  /** A tube, or it and its mirror image where both change; the greatest change first. */
  readonly pairs: readonly (readonly TubeChange[])[];
  /** How many more change by less than a tape reads. */
  readonly less: number;
}

/** Of a frame as it is `drawn` and as it stands `built`, the tube that leads left out. mm and radians as in TubeChange. */
export function leadChanges(drawn: Frame, built: Frame, tube: TubeRef): LeadChanges {
  const all = changedTubes(drawn, built).filter((change) => change.tube !== tube);
  const told = all.filter(tells).toSorted((a, b) => most(b) - most(a));
  const pairs = new Map<TubeRef, TubeChange[]>();
  for (const change of told) {
    const pair = pairs.get(bareId(change.tube));
    if (pair === undefined) pairs.set(bareId(change.tube), [change]);
    else pair.push(change);
  }
  return { pairs: [...pairs.values()], less: all.length - told.length };
}

const tells = ({ blank, ends, bends }: TubeChange): boolean =>
  Math.abs(blank) > UNSEEN || ends.some((by) => by > UNSEEN) || bends === null || isSeenAngle(bends);

/** Whether a protractor tells it. */
export const isSeenAngle = (angle: Radians): boolean => angle > UNSEEN_ANGLE;

/** mm by which a cut or the blank differs; of a cut that reaches other lines than before only the blank says how much. */
const most = ({ blank, ends }: TubeChange): number => Math.max(Math.abs(blank), ...ends.filter(Number.isFinite));

/** The errors that a frame has and the other has not, in the order in which they are found. */
export function errorsBrought(without: readonly Finding[], having: readonly Finding[]): readonly Finding[] {
  const known = new Set(without.filter(isError).map(placeOf));
  return having.filter((finding) => isError(finding) && !known.has(placeOf(finding)));
}

const isError = ({ severity }: Finding): boolean => severity === 'error';

const placeOf = (finding: Finding): string => {
  const { id, tube, end, bend, node, envelope } = finding;
  return JSON.stringify([id, tube, end, bend, node, envelope, 'other' in finding ? finding.other : null]);
};
