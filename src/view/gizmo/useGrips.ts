/**
 * Taking hold of the selected node, or of a whole bar by its middle: which grips there are, and a hold that begins a gesture with the first movement,
 * previews once a frame, and commits or cancels it.
 */
import { useMemo, useState } from 'react';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { sameData } from '../../core/job/equal.ts';
import type { Derived } from '../../core/derive.ts';
import { bareId, isPrimed, type NodeId } from '../../core/job/reference.ts';
import { setPlace } from '../../core/edit/nodes.ts';
import { barFreedom } from '../../core/shape/move-bar.ts';
import { shownName } from '../../core/job/shown.ts';
import { tubeName } from '../../core/solve/names.ts';
import type { Selection, Station } from '../../store/types.ts';
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
  /** Whose place that is. */
  readonly title: string;
  readonly grips: readonly Grip[];
  /** The one held or under the pointer. */
  readonly live: string | null;
  /** Null while nothing is dragged, unless a key asked for a place that the node cannot go to. */
  readonly news: DragNews | null;
  readonly point: (x: number, y: number, reach: number) => boolean;
  readonly takeHold: (x: number, y: number, reach: number) => Hold | null;
  readonly onKey: (key: string, fine: boolean) => boolean;
  /** Gives a node that others place, or that divides a line, its own figures where it is, so that it can be moved; null where there is nothing to free. */
  readonly free: (() => void) | null;
}

const NO_GRIPS: readonly Grip[] = [];

export function useGrips(viewpoint: Viewpoint): Grips {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const station = useEditor((state) => state.station);
  const [pointed, setPointed] = useState<string | null>(null);
  const [heldGrip, setHeld] = useState<string | null>(null);
  const [news, setNews] = useState<DragNews | null>(null);
  const [stopped, setStopped] = useState<{ readonly at: Freedom; readonly why: string } | null>(null);

  const held = useMemo(() => whatIsHeld(derived, station, selection), [derived, station, selection]);
  const freedom = held?.freedom ?? null;
  const grips = useMemo(() => (freedom === null ? NO_GRIPS : gripsOf(freedom)), [freedom]);
  const gripAt = (x: number, y: number, reach: number): Grip | null =>
    freedom === null ? null : pickGrip(grips, freedom.place, viewpoint.projection(), x, y, reach);
  const label = (): string => `Move ${held?.name ?? ''}`;

  const takeHold = (x: number, y: number, reach: number): Hold | null => {
    const grip = gripAt(x, y, reach);
    if (grip === null || held === null || freedom === null) return null;
    const neighbours = neighboursOf(derived, held.nodes);
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
    title: held?.title ?? '',
    grips,
    live: heldGrip ?? pointed,
    // A refusal is shown until the node, or the selection, is another one.
    news: news ?? (stopped !== null && stopped.at === freedom ? { inLineWith: [], refused: stopped.why } : null),
    point: (x, y, reach) => {
      const key = gripAt(x, y, reach)?.key ?? null;
      setPointed(key);
      return key !== null;
    },
    takeHold,
    free: selection?.kind === 'node' && freedom !== null && isHeld(freedom) ? () => free(bareId(selection.id)) : null,
    onKey: (key, fine) => {
      if (freedom === null || selection?.kind !== 'node') return false; // with a bar selected the arrow keys turn the view
      const change = nudge(freedom, key, derived.job.lengthUnit, fine);
      if (change === null) return false;
      const [fault] = jobDocument.getState().edit(label(), change);
      setStopped(fault === undefined ? null : { at: freedom, why: `Goes no further: ${fault.message}.` });
      return true;
    },
  };
}

/** Of a node on a tube it is no question: off the tube it would be no joint any more. */
const isHeld = (freedom: Freedom): boolean =>
  freedom.free === 'space' ? freedom.open.length < 3 : freedom.at.kind === 'between';

function free(id: NodeId): void {
  const { edit, derived } = jobDocument.getState();
  const position = derived.nodes.get(id);
  const name = derived.job.nodes.find((node) => node.id === id)?.name ?? id;
  if (position === undefined) return;
  edit(`Place ${name} at fixed figures`, (job) => setPlace(job, id, { kind: 'fixed', position }));
}

/** Something that can be moved. */
interface Held {
  readonly name: string;
  /** Whose place is said. */
  readonly title: string;
  readonly freedom: Freedom;
  /** What goes with it: no place for it to come in line with. */
  readonly nodes: ReadonlySet<NodeId>;
}

/** The selected node; in the Frame the bar of the selected tube, unless none of its coordinates is its own. */
function whatIsHeld(derived: Derived, station: Station, selection: Selection | null): Held | null {
  if (selection?.kind === 'node') {
    const freedom = freedomOf(derived, selection.id);
    const node = derived.job.nodes.find(({ id }) => id === bareId(selection.id));
    if (freedom === null || node === undefined) return null;
    const title = `${shownName(node.name || node.id)}${isPrimed(selection.id) ? ', mirror image' : ''}`;
    return { name: node.name || node.id, title, freedom, nodes: new Set([node.id]) };
  }
  const tube = selection?.kind === 'tube' && station === 'frame' ? derived.byId.get(selection.id) : undefined;
  const freedom = tube === undefined ? null : barFreedom(derived, tube.bar);
  if (tube === undefined || freedom === null || freedom.open.length === 0) return null;
  const name = tubeName(derived, tube.bar);
  return { name, title: `${name}, its middle`, freedom, nodes: new Set(tube.member.path.map(bareId)) };
}
