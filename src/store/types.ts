/**
 * What the views and stations may see and do. The job is the only truth; `derived` is what was derived from the job
 * that is shown (the committed one, or the draft of a gesture under way).
 */
import type { Derived } from '../core/derive.ts';
import type { EnvelopeId, Fault, Job, NodeRef, PointRef, TubeRef } from '../core/job/types.ts';

export type Station = 'survey' | 'frame' | 'checks' | 'shop';

export type Selection =
  | { readonly kind: 'tube'; readonly id: TubeRef }
  | { readonly kind: 'node'; readonly id: NodeRef }
  | { readonly kind: 'point'; readonly id: PointRef }
  | { readonly kind: 'envelope'; readonly id: EnvelopeId };

/** The committed and the previewed document. */
export interface DocumentState {
  /** The job shown: the draft while a gesture is under way, else the committed one. */
  readonly job: Job;
  readonly derived: Derived;
  /** Counts up with each shown job. */
  readonly revision: number;
  readonly fileName: string;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  readonly saved: 'saved' | 'saving' | 'failed';
  /** Why the last file was not opened; the open job stays untouched. */
  readonly refused: { readonly fileName: string; readonly faults: readonly Fault[] } | null;
}

/** Never saved, never undone. */
export interface EditorState {
  readonly station: Station;
  readonly selection: Selection | null;
  /** Asks the bay to bring a place into view; the counter makes a second click on the same finding count. */
  readonly lookAt: { readonly at: readonly [number, number, number]; readonly asked: number } | null;
}

export interface WorkspaceActions {
  /** One undo step. Answers the faults and leaves everything as it was if the job cannot be derived. */
  edit(label: string, change: (job: Job) => Job): readonly Fault[];
  /** A gesture: begin keeps the start job, preview shows a draft made from it, commit makes one undo step, cancel drops it. */
  begin(label: string): void;
  /** Answers false, and shows nothing new, if the draft cannot be derived. */
  preview(change: (startJob: Job) => Job): boolean;
  commit(): void;
  cancel(): void;
  undo(): void;
  redo(): void;
  /** Opens a job file's text. On faults the open job stays and `refused` says why. */
  open(fileName: string, text: string): void;
  dismissRefusal(): void;
  setStation(station: Station): void;
  select(selection: Selection | null): void;
  goTo(at: readonly [number, number, number], selection?: Selection): void;
}

export type Workspace = DocumentState & EditorState & WorkspaceActions;
