/**
 * Mouse, pen, touch and wheel over the bay. One finger or the left button turns the view, two fingers, the right button
 * or Shift move it, pinch or wheel zooms about where it happens; a press that does not move is a pick; a press on a
 * handle takes hold of it.
 */
import { useEffect, useRef, type RefObject } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { orbit, pan, zoom } from '../camera/rig.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';

/** Something taken hold of: follows the pointer until it is let go. */
export interface Hold {
  /** Pixels of the bay; `fine` while Shift is held. */
  move(x: number, y: number, fine: boolean): void;
  drop(): void;
  cancel(): void;
}

export interface HandsProps {
  readonly viewpoint: Viewpoint;
  /** `reach`: how far a pointer of this kind may miss, in pixels. */
  readonly onPick: (x: number, y: number, reach: number) => void;
  readonly onPoint: (x: number, y: number, reach: number) => void;
  readonly onLeave: () => void;
  readonly takeHold: (x: number, y: number, reach: number) => Hold | null;
  /** The place that a turn of the view begun there leaves where it is on the screen. */
  readonly turnsAbout: (x: number, y: number, reach: number) => Vec3;
}

const REACH = { mouse: 4, touch: 16 } as const;
const STILL = 5;
const TURN_PER_PIXEL = 0.007;

interface Finger {
  x: number;
  y: number;
}

/** Attaches to the element; answers a function that cancels what is held, if anything, and says whether it did. */
export function useHands(stage: RefObject<HTMLElement | null>, props: HandsProps): RefObject<() => boolean> {
  const latest = useRef(props);
  useEffect(() => {
    latest.current = props;
  });
  const letGo = useRef<() => boolean>(() => false);

  useEffect(() => {
    const element = stage.current!;
    const fingers = new Map<number, Finger>();
    let hold: Hold | null = null;
    let pressed: { x: number; y: number; moved: boolean; about: Vec3 } | null = null;

    const at = (event: MouseEvent): Finger => {
      const box = element.getBoundingClientRect();
      return { x: event.clientX - box.left, y: event.clientY - box.top };
    };
    const reachOf = (event: PointerEvent): number => (event.pointerType === 'mouse' ? REACH.mouse : REACH.touch);
    const fromMiddle = ({ x, y }: Finger): [number, number] => {
      const view = latest.current.viewpoint.projection();
      return [(x - view.width / 2) / view.pixelsPerMm, (view.height / 2 - y) / view.pixelsPerMm];
    };
    const shift = (dx: number, dy: number): void => {
      const { viewpoint } = latest.current;
      const { pixelsPerMm } = viewpoint.projection();
      viewpoint.set(pan(viewpoint.rig(), dx / pixelsPerMm, -dy / pixelsPerMm));
    };
    letGo.current = () => {
      if (hold === null) return false;
      hold.cancel();
      hold = null;
      pressed = null;
      return true;
    };

    const down = (event: PointerEvent): void => {
      element.focus({ preventScroll: true });
      element.setPointerCapture(event.pointerId);
      const finger = at(event);
      fingers.set(event.pointerId, finger);
      if (fingers.size === 1) {
        const about = latest.current.turnsAbout(finger.x, finger.y, reachOf(event));
        pressed = { ...finger, moved: event.button !== 0, about };
        if (event.button === 0 && !event.shiftKey) hold = latest.current.takeHold(finger.x, finger.y, reachOf(event));
      } else {
        letGo.current();
        pressed = null;
      }
    };

    const pinch = (id: number, finger: Finger): void => {
      const before = [...fingers.values()];
      const [a0, b0] = before as [Finger, Finger];
      fingers.set(id, finger);
      const [a1, b1] = [...fingers.values()] as [Finger, Finger];
      shift((a1.x + b1.x - a0.x - b0.x) / 2, (a1.y + b1.y - a0.y - b0.y) / 2);
      const { viewpoint } = latest.current;
      const factor = Math.hypot(a0.x - b0.x, a0.y - b0.y) / Math.max(1, Math.hypot(a1.x - b1.x, a1.y - b1.y));
      viewpoint.set(zoom(viewpoint.rig(), factor, ...fromMiddle({ x: (a1.x + b1.x) / 2, y: (a1.y + b1.y) / 2 })));
    };

    const move = (event: PointerEvent): void => {
      const finger = at(event);
      const before = fingers.get(event.pointerId);
      if (before === undefined) {
        if (event.pointerType === 'mouse') latest.current.onPoint(finger.x, finger.y, REACH.mouse);
        return;
      }
      if (fingers.size === 2) return pinch(event.pointerId, finger);
      if (pressed === null || fingers.size > 2) return;
      pressed.moved ||= Math.hypot(finger.x - pressed.x, finger.y - pressed.y) > STILL;
      if (hold !== null) {
        if (pressed.moved) hold.move(finger.x, finger.y, event.shiftKey);
      } else if (pressed.moved) {
        const [dx, dy] = [finger.x - before.x, finger.y - before.y];
        const { viewpoint } = latest.current;
        if (event.buttons > 1 || event.shiftKey) shift(dx, dy);
        else viewpoint.set(orbit(viewpoint.rig(), -dx * TURN_PER_PIXEL, dy * TURN_PER_PIXEL, pressed.about));
      } else return;
      fingers.set(event.pointerId, finger);
    };

    const up = (event: PointerEvent): void => {
      const finger = at(event);
      fingers.delete(event.pointerId);
      if (hold !== null) {
        hold.drop();
        hold = null;
      } else if (pressed !== null && !pressed.moved) {
        latest.current.onPick(finger.x, finger.y, reachOf(event));
      }
      if (fingers.size === 0) pressed = null;
    };

    const lost = (event: PointerEvent): void => {
      fingers.delete(event.pointerId);
      letGo.current();
      pressed = null;
    };

    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const { viewpoint } = latest.current;
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 20 : 1;
      // A pinch on a touch pad comes as a wheel with Ctrl, in finer steps.
      const factor = Math.exp(event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0014));
      viewpoint.set(zoom(viewpoint.rig(), factor, ...fromMiddle(at(event))));
    };

    const leave = (): void => latest.current.onLeave();
    const noMenu = (event: Event): void => event.preventDefault();

    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', lost);
    element.addEventListener('pointerleave', leave);
    element.addEventListener('wheel', wheel, { passive: false });
    element.addEventListener('contextmenu', noMenu);
    return () => {
      letGo.current();
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', lost);
      element.removeEventListener('pointerleave', leave);
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('contextmenu', noMenu);
    };
  }, [stage]);
  return letGo;
}
