/** The grips of what is selected, and what they do. What they are made with is fetched with the first selection, or before it in spare time. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { useDocument, useEditor } from '../../store/page.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Hold } from '../canvas/hands.ts';
import type { Freedom } from '../../core/shape/free-directions.ts';
import type { DragNews, Held } from './held.ts';
import { fetchHeld } from './later.ts';

export interface Grips {
  readonly held: Held | null;
  /** The one held or under the pointer. */
  readonly live: string | null;
  /** Null while nothing is dragged, unless a key asked for a place that the node cannot go to. */
  readonly news: DragNews | null;
  readonly point: (x: number, y: number, reach: number) => boolean;
  readonly takeHold: (x: number, y: number, reach: number) => Hold | null;
  readonly onKey: (key: string, fine: boolean) => boolean;
}

export function useGrips(viewpoint: Viewpoint): Grips {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const station = useEditor((state) => state.station);
  const [pointed, setPointed] = useState<string | null>(null);
  const [heldGrip, setHeldGrip] = useState<string | null>(null);
  const [news, setNews] = useState<DragNews | null>(null);
  const [stopped, setStopped] = useState<{ readonly at: Freedom; readonly why: string } | null>(null);

  const fetched = useFetched(selection !== null);
  const held = useMemo(
    () => fetched?.whatIsHeld(derived, station, selection) ?? null,
    [fetched, derived, station, selection],
  );
  const freedom = held?.freedom ?? null;

  const nudge = (key: string, fine: boolean): boolean => {
    const why = held?.nudge(key, fine);
    if (held === null || why === undefined) return false;
    setStopped(why === null ? null : { at: held.freedom, why });
    return true;
  };

  // Keys that were pressed while what they move was on its way, one after another: each acts on where the one before has put it.
  const early = useRef<(readonly [key: string, fine: boolean])[]>([]);
  useEffect(() => {
    early.current = [];
  }, [selection]);
  useEffect(() => {
    const [next] = held === null ? [] : early.current.splice(0, 1);
    if (next !== undefined) nudge(...next);
  });

  return {
    held,
    live: heldGrip ?? pointed,
    // A refusal is shown until the node, or the selection, is another one.
    news: news ?? (stopped !== null && stopped.at === freedom ? { inLineWith: [], refused: stopped.why } : null),
    point: (x, y, reach) => {
      const key = held?.gripAt(viewpoint.projection(), x, y, reach)?.key ?? null;
      setPointed(key);
      return key !== null;
    },
    takeHold: (x, y, reach) => {
      const grip = held?.gripAt(viewpoint.projection(), x, y, reach) ?? null;
      if (held === null || grip === null) return null;
      setHeldGrip(grip.key);
      const hold = held.take(grip, viewpoint.projection, x, y, setNews);
      const then = (end: () => void) => () => {
        setHeldGrip(null);
        end();
      };
      return { move: hold.move, drop: then(hold.drop), cancel: then(hold.cancel) };
    },
    onKey: (key, fine) => {
      if (fetched !== null || selection?.kind !== 'node' || !MOVES.test(key)) return nudge(key, fine);
      early.current.push([key, fine]);
      return true;
    },
  };
}

/** What may move a node. */
const MOVES = /^(?:Arrow|Page)/u;

type Fetched = Awaited<ReturnType<typeof fetchHeld>>;

/** Null until it is there. What does not come is said by whoever stands round the bay. */
function useFetched(isWanted: boolean): Fetched | null {
  const [{ fetched, failure }, set] = useState<Asked>(NOTHING);
  const isMissing = isWanted && fetched === null;
  useEffect(() => {
    if (!isMissing) return;
    fetchHeld().then(
      (made) => set({ fetched: made, failure: null }),
      (failed: Error) => set({ fetched: null, failure: failed }),
    );
  }, [isMissing]);
  if (failure !== null) throw failure;
  return fetched;
}

interface Asked {
  readonly fetched: Fetched | null;
  readonly failure: Error | null;
}

const NOTHING: Asked = { fetched: null, failure: null };
