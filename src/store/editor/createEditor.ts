/**
 * What the screen remembers: the station, what is selected and looked at, the tube on the bender, and what a person must read.
 * Never saved with the job, never undone. It follows the document: what the job has no more is not selected any more. Of all that
 * follow the document it is the first to hear of a change, so that nobody sees a selection that is not there.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Fault } from '../../core/job/fault.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import { ownSteps } from '../../core/session/history.ts';
import type { Asked } from '../../core/shape/starters/asked.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { Drawing, Notice, OtherState, PointedOut, Selection, Starting, Station } from '../types.ts';
import { stillRehearsed, stillThere } from './selection.ts';

export interface EditorState {
  readonly station: Station;
  readonly selection: Selection | null;
  /** Until something else than a node is selected, or another place is looked at. */
  readonly pointedOut: PointedOut | null;
  /** Asks the bay to bring a place into view; the counter makes a second click on the same finding count. */
  readonly lookAt: { readonly at: readonly [number, number, number]; readonly asked: number } | null;
  /** Counts up with each time that the bay is asked to show the whole job. */
  readonly wholeAsked: number;
  /** The tube that stands on the bender in the bay's place; choosing anything else brings the frame back. */
  readonly rehearsing: TubeRef | null;
  /** Why the last file was not opened; the open job stays untouched. */
  readonly refused: { readonly fileName: string; readonly faults: readonly Fault[] } | null;
  readonly notice: Notice | null;
  /** A file that waits to be taken over from, or opened. */
  readonly otherState: OtherState | null;
  /** The tubes of a chosen node's joint are drawn apart. */
  readonly apart: boolean;
  /** A cage that is being begun; the document shows it as the draft of a gesture. */
  readonly starting: Starting | null;
  /** What was asked last in this document, also once that is built or given up: typed figures are not asked again. */
  readonly lastAsked: Asked | null;
  /** A tube that is half drawn: it waits while another station is looked at. */
  readonly drawing: Drawing | null;
}

export interface EditorActions {
  setStation(station: Station): void;
  select(selection: Selection | null): void;
  goTo(at: readonly [number, number, number], selection?: Selection): void;
  pointOut(pointedOut: PointedOut | null): void;
  /** Asks the bay to show the whole job: another than was seen there stands in it now. */
  lookAtAll(): void;
  /** Puts a tube on the bender in the bay's place, and chooses it; null, and a tube that has no bender, bring the frame back. */
  rehearse(tube: TubeRef | null): void;
  /** Escape: drops the gesture under way, else ends the rehearsal, else drops the selection. */
  escape(): void;
  /** Says of a file why it was not opened. */
  refuse(fileName: string, faults: readonly Fault[]): void;
  dismissRefusal(): void;
  /** Asks what is to be done with another state of the job; null: it is answered. */
  askOf(otherState: OtherState | null): void;
  say(notice: Notice): void;
  dismissNotice(): void;
  drawApart(apart: boolean): void;
  /** Begins a cage, or changes what is asked for it; null when it is built or given up. */
  start(starting: Starting | null): void;
  /** To the Frame, to begin a tube there, or to go on with one that is half drawn. */
  beginDrawing(): void;
  /** What is drawn of the tube; null when it is made or given up. */
  draw(drawing: Drawing | null): void;
  /** Whether undo means the last place of the tube that is drawn: nothing has been done in the job since it was put. */
  undoIsPlace(): boolean;
  /** Takes that back; false where undo means another thing. */
  undoPlace(): boolean;
}

export type EditorStore = StoreApi<EditorState & EditorActions>;

/** Nothing of another document is selected, looked at or refused. */
const CLEAR = {
  selection: null,
  pointedOut: null,
  lookAt: null,
  rehearsing: null,
  refused: null,
  otherState: null,
  starting: null,
  lastAsked: null,
  drawing: null,
} as const;

const UNDRAWN: Drawing = { places: [], section: null, bothSides: null, lost: 0 };

export function createEditor(document: DocumentStore): EditorStore {
  const store: EditorStore = createStore((set, get) => ({
    ...CLEAR,
    station: 'frame',
    wholeAsked: 0,
    notice: null,
    apart: false,
    setStation: (station) => set({ station, rehearsing: null, pointedOut: null }),
    select(selection) {
      const { rehearsing, pointedOut } = get();
      set({
        selection,
        // Who takes hold of a node wants to see what comes of it.
        pointedOut: selection?.kind === 'node' ? pointedOut : null,
        rehearsing: selection?.kind === 'tube' && selection.id === rehearsing ? rehearsing : null,
      });
    },
    goTo(at, selection) {
      const lookAt = { at, asked: (get().lookAt?.asked ?? 0) + 1 };
      set({ lookAt, rehearsing: null, pointedOut: null, ...(selection && { selection }) });
    },
    pointOut: (pointedOut) => set({ pointedOut }),
    lookAtAll: () => set({ wholeAsked: get().wholeAsked + 1 }),
    rehearse(tube) {
      const rehearsing = stillRehearsed(tube, document.getState().derived);
      set(rehearsing === null ? { rehearsing } : { rehearsing, selection: { kind: 'tube', id: rehearsing } });
    },
    escape() {
      const { gesture, cancel } = document.getState();
      if (gesture.state !== 'idle') cancel();
      else set(get().rehearsing === null ? { selection: null, pointedOut: null } : { rehearsing: null });
    },
    refuse: (fileName, faults) => set({ refused: { fileName, faults } }),
    dismissRefusal: () => set({ refused: null }),
    askOf: (otherState) => set({ otherState }),
    say: (notice) => set({ notice }),
    dismissNotice: () => set({ notice: null }),
    drawApart: (apart) => set({ apart }),
    start: (starting) => set(starting === null ? { starting } : { starting, lastAsked: starting.asked }),
    beginDrawing() {
      const { starting, drawing } = get();
      if (starting !== null || !document.getState().ready) return;
      set({ station: 'frame', rehearsing: null, selection: null, drawing: drawing ?? UNDRAWN });
    },
    draw: (drawing) => set({ drawing }),
    undoIsPlace() {
      const { station, drawing } = get();
      const last = drawing?.places.at(-1);
      return station === 'frame' && last !== undefined && ownSteps(document.getState().committed.history) <= last.steps;
    },
    undoPlace() {
      const { undoIsPlace, drawing } = get();
      if (drawing === null || !undoIsPlace()) return false;
      set({ drawing: { ...drawing, places: drawing.places.slice(0, -1), lost: 0 } });
      return true;
    },
  }));

  document.subscribe((next, last) => {
    if (next.opened !== last.opened) return store.setState(CLEAR);
    const before = store.getState();
    const selection = stillThere(before.selection, next.derived);
    const rehearsing = stillRehearsed(before.rehearsing, next.derived);
    if (selection !== before.selection || rehearsing !== before.rehearsing) store.setState({ selection, rehearsing });
  });

  return store;
}
