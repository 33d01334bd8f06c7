/**
 * What the views and stations may see and do. The job is the only truth; `derived` is what was derived from the job
 * that is shown (the committed one, or the draft of a gesture under way).
 */
import type { Derived } from '../core/derive.ts';
import type { Fault } from '../core/job/fault.ts';
import type { EnvelopeId, NodeRef, PointRef, TubeRef } from '../core/job/reference.ts';
import type { Job } from '../core/job/types.ts';
import type { Rehearsal } from '../core/rehearse/types.ts';

export type Station = 'survey' | 'frame' | 'checks' | 'shop';

export type Selection =
  | { readonly kind: 'tube'; readonly id: TubeRef }
  | { readonly kind: 'node'; readonly id: NodeRef }
  | { readonly kind: 'point'; readonly id: PointRef }
  | { readonly kind: 'envelope'; readonly id: EnvelopeId };

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

/** The committed and the previewed document. */
export interface DocumentState {
  /** The job shown: the draft while a gesture is under way, else the committed one. */
  readonly job: Job;
  /** What the rehearsals find is among its findings, tube by tube as it becomes known. */
  readonly derived: Derived;
  /** Of the tubes shown that can be put in a bender, as far as they were rehearsed yet. */
  readonly rehearsals: ReadonlyMap<TubeRef, Rehearsal>;
  /** Counts up with each shown job. */
  readonly revision: number;
  /** Counts up with each document that takes the place of another, and not with what is done in it. */
  readonly opened: number;
  readonly fileName: string;
  /** Which document this is among those that are kept: it stays under another name, and through a reload. '' until it is known. */
  readonly slot: string;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  readonly saved: Saved;
  /** What is wrong with the storage, also while there is nothing to save; null while it can be reached. */
  readonly trouble: Trouble | null;
  /** What could not be saved lies in the second copy. */
  readonly inSecond: boolean;
  /** Why the last file was not opened; the open job stays untouched. */
  readonly refused: { readonly fileName: string; readonly faults: readonly Fault[] } | null;
  /** The label of the gesture under way, else null. */
  readonly gesture: string | null;
  /** False until the kept work, or the demo, is shown: `job` is an empty one until then, and takes no edit. */
  readonly ready: boolean;
  /** Another tab has saved newer work on this job: what is done here is kept apart from it until a person chooses. */
  readonly behind: boolean;
  readonly notice: Notice | null;
}

/** Something that a person must read once. */
export interface Notice {
  readonly message: string;
  /** What could not be read, for download. */
  readonly damaged: readonly Version[];
}

/** A dated copy of a job, kept beside the work. */
export interface Version {
  /** Milliseconds since 1970 UTC. */
  readonly savedAt: number;
  readonly name: string;
  readonly text: string;
  /** Of one that could not be read and was set aside: what is wrong with it. */
  readonly why?: string;
}

/** Never saved, never undone. */
export interface EditorState {
  readonly station: Station;
  readonly selection: Selection | null;
  /** Asks the bay to bring a place into view; the counter makes a second click on the same finding count. */
  readonly lookAt: { readonly at: readonly [number, number, number]; readonly asked: number } | null;
  /** The tube that stands on the bender in the bay's place; choosing anything else brings the frame back. */
  readonly rehearsing: TubeRef | null;
}

export interface WorkspaceActions {
  /** One undo step. Answers the faults and leaves everything as it was if the job cannot be derived. */
  edit(label: string, change: (job: Job) => Job): readonly Fault[];
  /**
   * A gesture: begin keeps the start job, preview shows a draft made from it, commit makes one undo step, cancel drops
   * it. Whatever asks for the job itself (saving, undo, opening another) commits it first; `ended` is called once,
   * however it ended.
   */
  begin(label: string, ended?: () => void): void;
  /** Answers false, and shows nothing new, if no gesture is under way or the draft cannot be derived. */
  preview(change: (startJob: Job) => Job): boolean;
  commit(): void;
  cancel(): void;
  undo(): void;
  redo(): void;
  /** Opens a job file's text. On faults the open job stays and `refused` says why. */
  open(fileName: string, text: string): void;
  /** Writes at once what is not saved, without waiting for the next try. */
  saveNow(): void;
  /** Says of a file that was not read why not, as `open` does of one whose text is no job. */
  refuse(fileName: string, faults: readonly Fault[]): void;
  dismissRefusal(): void;
  dismissNotice(): void;
  /**
   * A job in which nothing is drawn yet: an empty one, or `begun` with what the shop has. Like `open`, it has a history and a place of
   * its own; the job before it stands in the earlier versions.
   */
  newJob(begun?: Job): void;
  openDemo(): Promise<void>;
  /** The job as the text of a job file, and the name to save it under; commits a gesture under way. */
  file(): { readonly fileName: string; readonly text: string };
  /**
   * The dated copies, what was last saved from other tabs, and what was set aside; newest first. null while the storage
   * cannot be reached.
   */
  earlierVersions(): Promise<readonly Version[] | null>;
  /** Brings a version back as one undo step. */
  restore(version: Version): void;
  /** The two ways out of `behind`. */
  takeOtherTab(): Promise<void>;
  keepAsCopy(): Promise<void>;
  /** Puts a tube on the bender in the bay's place, and chooses it; null, and a tube that has no bender, bring the frame back. */
  rehearse(tube: TubeRef | null): void;
  /** Escape: drops the gesture under way, else ends the rehearsal, else drops the selection. */
  escape(): void;
  setStation(station: Station): void;
  select(selection: Selection | null): void;
  goTo(at: readonly [number, number, number], selection?: Selection): void;
}

export type Workspace = DocumentState & EditorState & WorkspaceActions;
