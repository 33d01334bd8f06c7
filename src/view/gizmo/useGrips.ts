/**
 * Taking hold of the selected node: which grips there are, and a hold that begins a gesture with the first movement,
 * previews once a frame, and commits or cancels it.
 */
import { useMemo, useState } from 'react';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { sameData } from '../../core/job/equal.ts';
import { bareId } from '../../core/job/reference.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Hold } from '../canvas/hands.ts';
import { freedomOf, type Freedom } from '../../core/shape/free-directions.ts';
import { gripsOf, pickGrip, type Grip } from './grips.ts';
import { dragMove, neighboursOf, nudge, type Drag } from './moves.ts';

/** What the last preview, or the last key, came to. */
export interface DragNews {
  readonly inLineWith: readonly string[];
  /** Why the node cannot go there, and stays where it last could; else null. */
  readonly refused: string | null;
}

const NOT_THERE = 'The frame cannot be made with it there.';

export interface Grips {
  readonly freedom: Freedom | null;
  readonly grips: readonly Grip[];
  /** The one held or under the pointer. */
  readonly live: string | null;
  /** Null while nothing is dragged, unless a key asked for a place that the node cannot go to. */
  readonly news: DragNews | null;
  readonly point: (x: number, y: number, reach: number) => boolean;
  readonly takeHold: (x: number, y: number, reach: number) => Hold | null;
  readonly onKey: (key: string, fine: boolean) => boolean;
}

const NO_GRIPS: readonly Grip[] = [];

export function useGrips(viewpoint: Viewpoint): Grips {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const [pointed, setPointed] = useState<string | null>(null);
  const [held, setHeld] = useState<string | null>(null);
  const [news, setNews] = useState<DragNews | null>(null);
  const [stopped, setStopped] = useState<{ readonly at: Freedom; readonly why: string } | null>(null);

  const reference = selection?.kind === 'node' ? selection.id : null;
  const freedom = useMemo(() => (reference === null ? null : freedomOf(derived, reference)), [derived, reference]);
  const grips = useMemo(() => (freedom === null ? NO_GRIPS : gripsOf(freedom)), [freedom]);
  const gripAt = (x: number, y: number, reach: number): Grip | null =>
    freedom === null ? null : pickGrip(grips, freedom.place, viewpoint.projection(), x, y, reach);
  const label = (): string => {
    const node = derived.job.nodes.find(({ id }) => id === bareId(reference ?? ''));
    return `Move ${node?.name || node?.id || 'node'}`;
  };

  const takeHold = (x: number, y: number, reach: number): Hold | null => {
    const grip = gripAt(x, y, reach);
    if (grip === null || freedom === null || reference === null) return null;
    const neighbours = neighboursOf(derived, bareId(reference));
    const unit = derived.job.lengthUnit;
    let latest: Drag | null = null;
    let frame = 0;
    let begun = false;
    setHeld(grip.key);

    const show = (): void => {
      frame = 0;
      const { begin, preview, gesture } = jobDocument.getState();
      if (latest === null) return;
      if (!begun) begin(label());
      // Cancelled from elsewhere: the hold is empty.
      else if (gesture.state === 'idle') return;
      begun = true;
      const { change, inLineWith } = dragMove(freedom, grip, viewpoint.projection(), latest, unit, neighbours);
      const refused = preview(change) ? null : NOT_THERE;
      setNews((before) =>
        before !== null && before.refused === refused && sameData(before.inLineWith, inLineWith)
          ? before
          : { inLineWith, refused },
      );
    };
    const letGo = (): void => {
      if (frame !== 0) cancelAnimationFrame(frame);
      frame = 0;
      setHeld(null);
      setNews(null);
    };
    return {
      move: (toX, toY, fine) => {
        latest = { dx: toX - x, dy: toY - y, fine };
        if (frame === 0) frame = requestAnimationFrame(show);
      },
      drop: () => {
        if (frame !== 0) show();
        letGo();
        if (begun && jobDocument.getState().gesture.state !== 'idle') jobDocument.getState().commit();
      },
      cancel: () => {
        letGo();
        if (begun && jobDocument.getState().gesture.state !== 'idle') jobDocument.getState().cancel();
      },
    };
  };

  return {
    freedom,
    grips,
    live: held ?? pointed,
    // A refusal is shown until the node, or the selection, is another one.
    news: news ?? (stopped !== null && stopped.at === freedom ? { inLineWith: [], refused: stopped.why } : null),
    point: (x, y, reach) => {
      const key = gripAt(x, y, reach)?.key ?? null;
      setPointed(key);
      return key !== null;
    },
    takeHold,
    onKey: (key, fine) => {
      if (freedom === null) return false;
      const change = nudge(freedom, key, derived.job.lengthUnit, fine);
      if (change === null) return false;
      const [fault] = jobDocument.getState().edit(label(), change);
      setStopped(fault === undefined ? null : { at: freedom, why: `Goes no further: ${fault.message}.` });
      return true;
    },
  };
}
