/** Words that several stores share. */
import type { Vec3 } from '../core/geometry/vector.ts';
import type { EnvelopeId, NodeRef, PointRef, SectionId, TubeRef } from '../core/job/reference.ts';
import type { Job } from '../core/job/types.ts';
import type { Ground } from '../core/shape/draw/ground.ts';
import type { Asked } from '../core/shape/starters/asked.ts';
import type { StartTrouble } from '../core/shape/starters/trouble.ts';

export type Station = 'survey' | 'frame' | 'checks' | 'shop' | 'stock';

export type Selection =
  | { readonly kind: 'tube'; readonly id: TubeRef }
  | { readonly kind: 'node'; readonly id: NodeRef }
  | { readonly kind: 'point'; readonly id: PointRef }
  | { readonly kind: 'envelope'; readonly id: EnvelopeId };

/** What a list points out beside what is selected: in the bay tubes that stand out with it, and a dimension between two places. */
export interface PointedOut {
  /** Which line of the list. */
  readonly key: string;
  readonly tubes: readonly TubeRef[];
  readonly line: readonly [Vec3, Vec3] | null;
  /** On the dimension. */
  readonly text: string;
  readonly isAmiss: boolean;
}

/** Whether all that is in memory is written. */
export type Saved = 'saved' | 'saving' | 'failed';

/** Why the browser's storage cannot be reached, or does not take what is to be saved. */
export type Trouble =
  /** No room on the disk, or in the browser's share of it. */
  | 'full'
  /** It takes long, nobody says why. */
  | 'slow'
  /** Another tab holds an older layout of the database open. */
  | 'blocked'
  /** The database was laid out by a newer program, and is not this page's to touch. */
  | 'newer'
  /** Switched off, or broken. */
  | 'off';

/** Something that a person must read once. */
export interface Notice {
  readonly message: string;
  /** What could not be read, for download. */
  readonly damaged: readonly Version[];
}

/** A file that is evidently another state of the open job: what is to be done with it waits for an answer. */
export interface OtherState {
  readonly fileName: string;
  readonly job: Job;
}

/** A dated copy of a job, kept beside the work. */
export interface Version {
  /** Milliseconds since 1970 UTC. */
  readonly savedAt: number;
  readonly name: string;
  readonly text: string;
  /** Of one that could not be read and was set aside: what is wrong with it. */
  readonly why?: string;
  /** It is a version of another document than the open one, or it is not known of which. */
  readonly isOther?: true;
}

export interface Starting {
  readonly asked: Asked;
  /** Why what is asked is not what is shown; empty where it is. */
  readonly troubles: readonly StartTrouble[];
}

/** A tube that is being drawn, from place to place. */
export interface Drawing {
  readonly places: readonly DrawnPlace[];
  /** Null: as the tube before. */
  readonly section: SectionId | null;
  /** Null: as its places lie. */
  readonly bothSides: boolean | null;
  /** So many of its places went with what they stood on, by the last edit. */
  readonly lost: number;
}

export interface DrawnPlace {
  readonly ground: Ground;
  /** How many steps the job could be taken back when it was put: undo goes by which came last. */
  readonly steps: number;
}
