/**
 * Goes through the slow stages of what is derived, one item at a time, and keeps what came of each as long as the item is the same
 * record: an edit costs only the items that it touches, and a redo nothing. Each question has a revision; an answer that comes when
 * something else is asked, or nothing any more, is dropped.
 */
import type { Derived } from '../core/derive.ts';
import type { Finding } from '../core/checks/types.ts';
import type { Frame } from '../core/solve/types.ts';
import type { SlowStage } from '../core/stages/slow-stage.ts';
import { withFindings } from '../core/stages/slow.ts';
import type { AnyStage, Came, DoItem } from './doing.ts';

/** How far the slow stages are with a frame. */
export interface Progress {
  readonly done: number;
  readonly of: number;
  /** Of those done, the items that nothing came of. */
  readonly failed: readonly Failed[];
}

export interface Failed {
  readonly stage: string;
  readonly id: string;
  readonly why: string;
}

export interface Runner {
  /**
   * Sees to it that an item of `derived` that is not known is worked on, the one of the name `first` before all others. What is
   * worked on already goes on where it is still one of them.
   */
  want(derived: Derived, first: string | null): void;
  /** Stops. */
  rest(): void;
  /** The results of a stage for the items of the frame, as far as they are known, by the item's name. */
  known<Item extends object, Result>(stage: SlowStage<Item, Result>, frame: Frame): ReadonlyMap<string, Result>;
  /** `derived` with what its known results add to the findings; itself where that is nothing, else the same as long as no more is known. */
  addedTo(derived: Derived): Derived;
  progress(derived: Derived): Progress;
}

interface Piece {
  readonly stage: AnyStage;
  readonly item: object;
}

/** Of the stages that are gone through at the time. `learnt` is called after each item; what is to be done next is then asked for with `want`. */
export function createRunner(stages: () => readonly AnyStage[], doItem: DoItem, learnt: () => void): Runner {
  const came = new Map<string, WeakMap<object, Came<unknown>>>();
  const answered = new WeakMap<Derived, { readonly done: number; readonly answer: Derived }>();
  let revision = 0;
  let underWay: (Piece & { readonly stop: () => void }) | null = null;

  const pieces = (derived: Derived): readonly Piece[] =>
    stages().flatMap((stage) => stage.items(derived).map((item) => ({ stage, item })));
  const cameOf = ({ stage, item }: Piece) => came.get(stage.name)?.get(item);
  function keep({ name }: AnyStage, item: object, answer: Came<unknown>): void {
    const ofStage = came.get(name) ?? new WeakMap<object, Came<unknown>>();
    came.set(name, ofStage.set(item, answer));
  }

  function rest(): void {
    revision += 1;
    underWay?.stop();
    underWay = null;
  }

  function want(derived: Derived, first: string | null): void {
    const left = pieces(derived).filter((piece) => cameOf(piece) === undefined);
    const chosen = left.find(({ stage, item }) => stage.idOf(item) === first);
    const goesOn = left.find(({ stage, item }) => stage === underWay?.stage && item === underWay.item);
    const next = chosen ?? left[0];
    const makesWay = goesOn?.stage.patience !== undefined && next !== goesOn;
    if (goesOn !== undefined && !makesWay && (chosen === undefined || chosen === goesOn)) return;
    rest();
    if (next !== undefined) begin(derived, next);
  }

  function begin(derived: Derived, { stage, item }: Piece): void {
    const asked = revision;
    const stop = doItem(derived, stage, item, (answer) => {
      if (asked !== revision) return;
      revision += 1;
      underWay = null;
      keep(stage, item, answer);
      learnt();
    });
    underWay = { stage, item, stop };
  }

  function known<Item extends object, Result>(
    stage: SlowStage<Item, Result>,
    frame: Frame,
  ): ReadonlyMap<string, Result> {
    const results = new Map<string, Result>();
    for (const item of stage.items(frame)) {
      const each = came.get(stage.name)?.get(item);
      if (each?.ok) results.set(stage.idOf(item), each.value as Result);
    }
    return results;
  }

  function progress(derived: Derived): Progress {
    const all = pieces(derived);
    const done = all.filter((piece) => cameOf(piece) !== undefined);
    const failed = done.flatMap(({ stage, item }) => {
      const each = cameOf({ stage, item })!;
      return each.ok ? [] : [{ stage: stage.name, id: stage.idOf(item), why: each.why }];
    });
    return { done: done.length, of: all.length, failed };
  }

  function addedTo(derived: Derived): Derived {
    const { done } = progress(derived);
    const before = answered.get(derived);
    if (before?.done === done) return before.answer;
    const more = pieces(derived).flatMap((piece): readonly Finding[] => {
      const each = cameOf(piece);
      return each?.ok ? piece.stage.findings(derived, piece.item, each.value) : [];
    });
    const answer = withFindings(derived, more);
    answered.set(derived, { done, answer });
    return answer;
  }

  return { want, rest, known, addedTo, progress };
}
