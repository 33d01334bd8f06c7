/** Car axes to pixels of the bay and back, for everything that is placed or hit on the screen. */
import { addScaled, dot, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import { screenAxes, type Rig, type ScreenAxes } from './rig.ts';

/** Pixels from the bay's upper left corner; depth in mm towards the eye from the target's plane. */
export interface OnScreen {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
}

export interface Projection extends ScreenAxes {
  readonly width: number;
  readonly height: number;
  readonly pixelsPerMm: number;
  readonly toScreen: (place: Vec3) => OnScreen;
  /** The place under a pixel in the plane through the target that faces the eye. */
  readonly toPlace: (x: number, y: number) => Vec3;
}

export function projectionOf(rig: Rig, width: number, height: number): Projection {
  const axes = screenAxes(rig);
  const pixelsPerMm = height / rig.span;
  return {
    ...axes,
    width,
    height,
    pixelsPerMm,
    toScreen: (place) => {
      const from = subtract(place, rig.target);
      return {
        x: width / 2 + dot(from, axes.right) * pixelsPerMm,
        y: height / 2 - dot(from, axes.up) * pixelsPerMm,
        depth: dot(from, axes.toEye),
      };
    },
    toPlace: (x, y) =>
      addScaled(
        addScaled(rig.target, axes.right, (x - width / 2) / pixelsPerMm),
        axes.up,
        (height / 2 - y) / pixelsPerMm,
      ),
  };
}
