/**
 * What can be taken hold of: the selected node, or a whole bar by its middle. Which grips it has, and a hold that begins a gesture with the first
 * movement, previews once a frame, and commits or cancels it. Not there at first: useGrips.ts fetches it.
 */
import { jobDocument } from '../../store/page.ts';
import { sameData } from '../../core/job/equal.ts';
import type { Derived } from '../../core/derive.ts';
import { bareId, isPrimed, type NodeId } from '../../core/job/reference.ts';
import { setPlace } from '../../core/edit/nodes.ts';
import { barFreedom } from '../../core/shape/move-bar.ts';
import { shownName } from '../../core/job/shown.ts';
import { tubeName } from '../../core/solve/names.ts';
import type { Selection, Station } from '../../store/types.ts';
import type { Projection } from '../camera/projection.ts';
import type { Hold } from '../canvas/hands.ts';
import type { Label } from '../labels/label.ts';
import { freedomOf, type Freedom } from '../../core/shape/free-directions.ts';
import { gripLabels } from './grip-labels.ts';
import { gripsOf, pickGrip, type Grip } from './grips.ts';
import { dragMove, neighboursOf, nudge, type Drag } from './moves.ts';

/** What the last preview, or the last key, came to. */
export interface DragNews {
  readonly inLineWith: readonly string[];
  /** Why the node cannot go there, and stays where it last could; else null. */
  readonly refused: string | null;
}

export interface Held {
  /** Whose place is said. */
  readonly title: string;
  readonly freedom: Freedom;
  readonly grips: readonly Grip[];
  readonly labels: readonly Label[];
  readonly gripAt: (view: Projection, x: number, y: number, reach: number) => Grip | null;
  /** Takes the grip; what its previews come to is told, null once it is let go. */
  readonly take: (grip: Grip, view: () => Projection, x: number, y: number, tell: Tell) => Hold;
  /** Moves it by a step of that key: why it could not, null where it did; undefined for a key that moves nothing. */
  readonly nudge: (key: string, fine: boolean) => string | null | undefined;
  /** Gives a node that others place, or that divides a line, its own figures where it is, so that it can be moved; null where there is nothing to free. */
  readonly free: (() => void) | null;
}

type Tell = (news: (before: DragNews | null) => DragNews | null) => void;

const NOT_THERE = 'The frame cannot be made with it there.';

/** The selected node; in the Frame the bar of the selected tube, unless none of its coordinates is its own. */
export function whatIsHeld(derived: Derived, station: Station, selection: Selection | null): Held | null {
  if (selection?.kind === 'node') {
    const freedom = freedomOf(derived, selection.id);
    const node = derived.job.nodes.find(({ id }) => id === bareId(selection.id));
    if (freedom === null || node === undefined) return null;
    const name = node.name || node.id;
    return {
      title: `${shownName(name)}${isPrimed(selection.id) ? ', mirror image' : ''}`,
      ...handlesOf(derived, freedom, name, new Set([node.id])),
      nudge: (key, fine) => {
        const change = nudge(freedom, key, derived.job.lengthUnit, fine);
        if (change === null) return undefined;
        const [fault] = jobDocument.getState().edit(`Move ${name}`, change);
        return fault === undefined ? null : `Goes no further: ${fault.message}.`;
      },
      free: isHeld(freedom) ? () => free(node.id) : null,
    };
  }
  const tube = selection?.kind === 'tube' && station === 'frame' ? derived.byId.get(selection.id) : undefined;
  const freedom = tube === undefined ? null : barFreedom(derived, tube.bar);
  if (tube === undefined || freedom === null || freedom.open.length === 0) return null;
  const name = tubeName(derived, tube.bar);
  return {
    title: `${name}, its middle`,
    ...handlesOf(derived, freedom, name, new Set(tube.member.path.map(bareId))),
    nudge: () => undefined, // with a bar selected the arrow keys turn the view
    free: null,
  };
}

/** `nodes`: what goes with it, no place for it to come in line with. */
function handlesOf(derived: Derived, freedom: Freedom, name: string, nodes: ReadonlySet<NodeId>) {
  const grips = gripsOf(freedom);
  return {
    freedom,
    grips,
    labels: gripLabels(freedom.place, grips),
    gripAt: (view, x, y, reach) => pickGrip(grips, freedom.place, view, x, y, reach),
    take: (grip, view, x, y, tell) => {
      const neighbours = neighboursOf(derived, nodes);
      const unit = derived.job.lengthUnit;
      let latest: Drag | null = null;
      let frame = 0;
      let begun = false;

      const show = (): void => {
        frame = 0;
        const { begin, preview, gesture } = jobDocument.getState();
        if (latest === null) return;
        if (!begun) begin(`Move ${name}`);
        // Cancelled from elsewhere: the hold is empty.
        else if (gesture.state === 'idle') return;
        begun = true;
        const { change, inLineWith } = dragMove(freedom, grip, view(), latest, unit, neighbours);
        const refused = preview(change) ? null : NOT_THERE;
        tell((before) =>
          before !== null && before.refused === refused && sameData(before.inLineWith, inLineWith)
            ? before
            : { inLineWith, refused },
        );
      };
      const letGo = (): void => {
        if (frame !== 0) cancelAnimationFrame(frame);
        frame = 0;
        tell(() => null);
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
    },
  } satisfies Partial<Held>;
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
