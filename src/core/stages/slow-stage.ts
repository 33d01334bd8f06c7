/**
 * A stage that takes longer than an edit may: it is worked through piece by piece, beside the page, and its findings come after those
 * of derive(). What an item's result is hangs on the item alone, so it is good as long as the item is the same record.
 */
import type { Finding } from '../checks/types.ts';
import type { Frame } from '../solve/types.ts';

export interface SlowStage<Item extends object, Result> {
  readonly name: string;
  /** The pieces of its work in a solved frame, in the order in which they are done. */
  items(frame: Frame): readonly Item[];
  /** Names an item within its frame. One that belongs to a tube has the tube's id: the chosen tube's is done first. */
  idOf(item: Item): string;
  /** What the result adds to the findings. */
  findings(frame: Frame, item: Item, result: Result): readonly Finding[];
  /** ms that one item may take, where that is longer than usual. Such an item makes way for all others. */
  readonly patience?: number;
}

/** With its work, which the page itself does only where no worker can be had, and fetches only then. */
export interface SlowWork<Item extends object, Result> extends SlowStage<Item, Result> {
  /** Pure; plain data, which may be sent from one thread to another. */
  run(item: Item): Result;
}

/** The same, where what it works with has to be loaded first. */
export interface LoadingWork<Item extends object, Result> extends SlowStage<Item, Result> {
  run(item: Item): Promise<Result>;
}
