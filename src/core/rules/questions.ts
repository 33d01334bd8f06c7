/**
 * What the judging of an article may ask about the frame. Every answer is a list of records that go on being the same objects while nothing about them
 * changes: what was asked can be asked again of the next frame, and where every answer is the same, so is the verdict.
 */
import type { Clearance } from '../checks/clearances.ts';
import type { Envelope } from '../job/kinds/envelope.ts';
import type { Point } from '../job/kinds/point.ts';
import { gussetsOf, isMade, type SetGusset } from '../gusset/gussets.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import { tubesOfBar } from '../solve/bar-tubes.ts';
import type { Bar, Frame, SolvedTube } from '../solve/types.ts';
import { misfitOf } from './misfit.ts';
import { isRole } from '../job/role.ts';
import type { Misfit } from './types.ts';

/** A frame, as far as rules go by it. */
export type Judged = Frame & { readonly clearances: readonly Clearance[] };

export interface Questions {
  /** Of one of these roles, or all where there are none; each one whose place does not belie its role. In build order. */
  readonly bars: (roles: readonly string[], only?: 'straight' | 'bent') => readonly Bar[];
  /** Of one of these roles, and where they stand they cannot be that. */
  readonly misnamed: (roles: readonly string[]) => readonly Bar[];
  /** Why one cannot; null where nothing belies its role. */
  readonly misfit: (bar: Bar) => Misfit | null;
  /** Without any role. */
  readonly unnamed: () => readonly Bar[];
  /** The tubes of these bars, or of all. */
  readonly tubes: (bars?: readonly Bar[]) => readonly SolvedTube[];
  readonly envelopes: () => readonly Envelope[];
  readonly clearances: () => readonly Clearance[];
  /** As they were measured. */
  readonly points: () => readonly Point[];
  /** Those that can stand, mirror images with them. */
  readonly gussets: () => readonly SetGusset[];
  readonly bent: () => readonly BentTube[];
}

const MAKE = {
  bars: (frame: Judged, roles: readonly string[], only?: 'straight' | 'bent'): readonly Bar[] =>
    barsOf(frame, roles).filter(
      (bar) =>
        (only === undefined || bar.bends.length > 0 === (only === 'bent')) &&
        (roles.length === 0 || misfitOf(bar, frame) === null),
    ),
  misnamed: (frame: Judged, roles: readonly string[]): readonly Bar[] =>
    roles.length === 0 ? [] : barsOf(frame, roles).filter((bar) => misfitOf(bar, frame) !== null),
  unnamed: ({ bars }: Judged): readonly Bar[] => [...bars.values()].filter(({ member }) => member.role.trim() === ''),
  tubes: ({ tubes, byId }: Judged, bars?: readonly Bar[]): readonly SolvedTube[] =>
    bars === undefined ? tubes : bars.flatMap(({ id }) => tubesOfBar(byId, id)),
  envelopes: ({ job }: Judged): Job['envelopes'] => job.envelopes,
  clearances: ({ clearances }: Judged): readonly Clearance[] => clearances,
  points: ({ job }: Judged): Job['points'] => job.points,
  gussets: (frame: Judged): readonly SetGusset[] => gussetsOf(frame).filter(({ made }) => isMade(made)),
  bent: ({ job }: Judged): Job['bent'] => job.bent,
};

const barsOf = ({ bars }: Judged, roles: readonly string[]): readonly Bar[] =>
  [...bars.values()].filter(({ member }) => roles.length === 0 || roles.some((role) => isRole(member, role)));

/** A question that was asked, to be asked again of another frame. */
export interface Asked {
  readonly again: (frame: Judged) => readonly unknown[];
  readonly answer: readonly unknown[];
}

/** The questions to this frame; each with its answer is added to `asked`. */
export function questionsTo(frame: Judged, asked: Asked[]): Questions {
  const note = <T>(again: (frame: Judged) => readonly T[]): readonly T[] => {
    const answer = again(frame);
    asked.push({ again, answer });
    return answer;
  };
  return {
    bars: (roles, only) => note((of) => MAKE.bars(of, roles, only)),
    misnamed: (roles) => note((of) => MAKE.misnamed(of, roles)),
    misfit: (bar) => note((of) => [misfitOf(bar, of)])[0]!,
    unnamed: () => note(MAKE.unnamed),
    tubes: (bars) => note((of) => MAKE.tubes(of, bars)),
    envelopes: () => note(MAKE.envelopes),
    clearances: () => note(MAKE.clearances),
    points: () => note(MAKE.points),
    gussets: () => note(MAKE.gussets),
    bent: () => note(MAKE.bent),
  };
}

/** Whether that question has the same answer in this frame. */
export function answersTheSame(frame: Judged, { again, answer }: Asked): boolean {
  const now = again(frame);
  return now === answer || (now.length === answer.length && now.every((each, i) => each === answer[i]));
}
