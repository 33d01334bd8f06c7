/**
 * The bay's one moving eye. Kept outside React: it changes with every move of a finger. Whoever draws asks for the rig
 * of the moment; whoever moves it says how, at once or by a short glide.
 */
import { blendRigs, type Rig } from './rig.ts';
import { projectionOf, type Projection } from './projection.ts';

const GLIDE_SECONDS = 0.28;

export interface Viewpoint {
  /** The rig to draw now. */
  readonly rig: () => Rig;
  /** Where a glide under way will end; else the rig itself. New moves start from here. */
  readonly goal: () => Rig;
  readonly projection: () => Projection;
  /** Moves at once. */
  readonly set: (rig: Rig) => void;
  /** Moves over a quarter of a second, or at once for people who asked for less motion. */
  readonly glide: (rig: Rig) => void;
  /** The bay's size in CSS pixels. */
  readonly resize: (width: number, height: number) => void;
  readonly size: () => { readonly width: number; readonly height: number };
  /** Advances a glide; true while it goes on. */
  readonly advance: (seconds: number) => boolean;
  /** Has `draw` called after every change; answers how to stop that. One listener: the bay. */
  readonly listen: (draw: () => void) => () => void;
  /** Asks for a frame. */
  readonly redraw: () => void;
}

const ease = (t: number): number => t * t * (3 - 2 * t);

export function createViewpoint(first: Rig): Viewpoint {
  let rig = first;
  let size = { width: 1, height: 1 };
  let gliding: { readonly from: Rig; readonly to: Rig; elapsed: number } | null = null;
  let projected: Projection | null = null;
  let draw: () => void = () => {};

  const show = (next: Rig): void => {
    rig = next;
    projected = null;
  };

  const viewpoint: Viewpoint = {
    rig: () => rig,
    goal: () => gliding?.to ?? rig,
    projection: () => (projected ??= projectionOf(rig, size.width, size.height)),
    set: (next) => {
      gliding = null;
      show(next);
      draw();
    },
    glide: (next) => {
      if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return viewpoint.set(next);
      gliding = { from: rig, to: next, elapsed: 0 };
      draw();
    },
    resize: (width, height) => {
      size = { width: Math.max(1, width), height: Math.max(1, height) };
      projected = null;
      draw();
    },
    size: () => size,
    advance: (seconds) => {
      if (gliding === null) return false;
      // A first frame after a pause must not swallow the whole glide.
      gliding.elapsed += Math.min(seconds, 0.05);
      const t = Math.min(1, gliding.elapsed / GLIDE_SECONDS);
      // The very rig at the end: whoever fitted it sees that nobody has moved it since.
      show(t === 1 ? gliding.to : blendRigs(gliding.from, gliding.to, ease(t)));
      if (t === 1) gliding = null;
      return gliding !== null;
    },
    listen: (listener) => {
      draw = listener;
      return () => {
        draw = () => {};
      };
    },
    redraw: () => draw(),
  };
  return viewpoint;
}
