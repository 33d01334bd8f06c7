/** The keys that turn, move and zoom the eye. */
import type { Vec3 } from '../../core/geometry/vector.ts';
import { orbit, pan, zoom } from './rig.ts';
import type { Viewpoint } from './viewpoint.ts';

const KEY_TURN = Math.PI / 24;
const CLOSER = 0.85;

const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export const isArrow = (key: string): boolean => Object.hasOwn(ARROWS, key);

/** Arrows turn, about the place if one is named, with Shift they move; plus and minus zoom. False when the key means nothing to the eye. */
export function moveByKey(viewpoint: Viewpoint, key: string, shift: boolean, about?: Vec3): boolean {
  const rig = viewpoint.rig();
  const arrow = ARROWS[key];
  if (arrow !== undefined) {
    const [right, up] = arrow;
    const step = rig.span / 12;
    viewpoint.set(shift ? pan(rig, right * step, up * step) : orbit(rig, right * KEY_TURN, up * KEY_TURN, about));
    return true;
  }
  if (key !== '+' && key !== '=' && key !== '-') return false;
  viewpoint.set(zoom(rig, key === '-' ? 1 / CLOSER : CLOSER));
  return true;
}
