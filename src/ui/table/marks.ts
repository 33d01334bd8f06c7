/** Rows of a table that are marked, to be edited together. What the job has no more is not marked any more. */
import { useMemo, useState } from 'react';

export interface Marks {
  /** Each row has a box to mark it by. */
  readonly on: boolean;
  /** Ids of rows, in the order of the table. */
  readonly marked: ReadonlySet<string>;
  toggle(id: string): void;
  add(ids: readonly string[]): void;
  clear(): void;
  turn(on: boolean): void;
}

/** `ids`: of all rows that there are. Marking one turns it on. */
export function useMarks(ids: readonly string[]): Marks {
  const [on, setOn] = useState(false);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(NONE);
  const marked = useMemo(() => (chosen.size === 0 ? NONE : new Set(ids.filter((id) => chosen.has(id)))), [ids, chosen]);
  return useMemo(() => {
    const mark = (next: ReadonlySet<string>): void => {
      setOn(true);
      setChosen(next);
    };
    return {
      on,
      marked,
      toggle: (id) => mark(new Set(marked.has(id) ? [...marked].filter((other) => other !== id) : [...marked, id])),
      add: (more) => mark(new Set([...marked, ...more])),
      clear: () => setChosen(NONE),
      turn(next) {
        setOn(next);
        if (!next) setChosen(NONE);
      },
    };
  }, [on, marked]);
}

const NONE: ReadonlySet<string> = new Set();
