import { describe, expect, it } from 'vitest';
import { cross, dot, length, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { projectionOf } from '../../../src/view/camera/projection.ts';
import {
  blendRigs,
  fitPoints,
  lookFrom,
  orbit,
  pan,
  screenAxes,
  zoom,
  type Rig,
} from '../../../src/view/camera/rig.ts';
import { standardView } from '../../../src/view/camera/standard-views.ts';

const rig: Rig = { target: [100, -50, 400], yaw: 0.7, pitch: 0.4, span: 2000 };
const bay = { width: 1200, height: 800 };
const view = (of: Rig) => projectionOf(of, bay.width, bay.height);

/** Where a step from the target leads on the screen: right and up are positive. */
function seen(of: Rig, step: Vec3): { right: number; up: number } {
  const at = view(of).toScreen([of.target[0] + step[0], of.target[1] + step[1], of.target[2] + step[2]]);
  return { right: at.x - bay.width / 2, up: bay.height / 2 - at.y };
}

describe('the eye', () => {
  it('has square unit axes, right-handed, at any turn and at both poles', () => {
    for (const pitch of [-Math.PI / 2, -0.3, 0, 1, Math.PI / 2]) {
      const { right, up, toEye } = screenAxes({ ...rig, pitch });
      for (const axis of [right, up, toEye]) expect(length(axis)).toBeCloseTo(1, 12);
      expect(dot(right, up)).toBeCloseTo(0, 12);
      expect(length(subtract(cross(right, up), toEye))).toBeLessThan(1e-12);
      // A level right-hand axis: plumb lines stand upright on the screen.
      expect(right[2]).toBeCloseTo(0, 12);
    }
  });

  it('puts the car’s sides where a drawing has them', () => {
    // ISO 8855: x forward, y left, z up.
    const front = standardView('front', rig, bay);
    expect(seen(front, [0, 100, 0]).right).toBeCloseTo(40, 9);
    expect(seen(front, [0, 0, 100]).up).toBeCloseTo(40, 9);
    expect(seen(standardView('rear', rig, bay), [0, 100, 0]).right).toBeCloseTo(-40, 9);
    expect(seen(standardView('left', rig, bay), [100, 0, 0]).right).toBeCloseTo(-40, 9);
    expect(seen(standardView('right', rig, bay), [100, 0, 0]).right).toBeCloseTo(40, 9);
    const wide = standardView('top', rig, bay);
    expect(seen(wide, [100, 0, 0]).right).toBeCloseTo(-40, 9);
    expect(seen(wide, [0, 100, 0]).up).toBeCloseTo(-40, 9);
    const tall = standardView('top', rig, { width: 400, height: 800 });
    expect(seen(tall, [100, 0, 0]).up).toBeCloseTo(40, 9);
    expect(seen(tall, [0, 100, 0]).right).toBeCloseTo(-40, 9);
  });

  it('looks along any direction it is given', () => {
    const toEye: Vec3 = [-0.48, 0.6, 0.64];
    expect(length(subtract(screenAxes(lookFrom(rig, toEye)).toEye, toEye))).toBeLessThan(1e-12);
    expect(lookFrom(rig, [0, 0, 1]).yaw).toBe(rig.yaw);
  });

  it('stops at the poles', () => {
    expect(orbit(rig, 0, 10).pitch).toBe(Math.PI / 2);
    expect(orbit(rig, 0, -10).pitch).toBe(-Math.PI / 2);
  });

  it('leaves the place that it turns about where it is on the screen, at the poles too', () => {
    const place: Vec3 = [700, 300, -200];
    const before = view(rig).toScreen(place);
    for (const [yaw, pitch] of [
      [0.3, 0],
      [-2, 0.5],
      [1, 9],
      [0, -9],
    ] as const) {
      const turned = orbit(rig, yaw, pitch, place);
      const after = view(turned).toScreen(place);
      for (const axis of ['x', 'y', 'depth'] as const) expect(after[axis]).toBeCloseTo(before[axis], 9);
      expect(turned.yaw).toBe(rig.yaw + yaw);
      expect(turned.span).toBe(rig.span);
    }
    expect(orbit(rig, 1, 0.2)).toMatchObject({ target: rig.target.map((mm) => expect.closeTo(mm, 9)) });
  });

  it('pans what is seen with the finger', () => {
    const place: Vec3 = [300, 200, 100];
    const before = view(rig).toScreen(place);
    const after = view(pan(rig, 50, -20)).toScreen(place);
    expect(after.x - before.x).toBeCloseTo(50 * 0.4, 9);
    expect(after.y - before.y).toBeCloseTo(20 * 0.4, 9);
  });

  it('keeps the place under the pointer while zooming, also at the limit', () => {
    const place = view(rig).toPlace(900, 200);
    for (const factor of [0.5, 1.7, 1e-6, 1e6]) {
      const { x, y } = view(zoom(rig, factor, 300 / 0.4, 200 / 0.4)).toScreen(place);
      expect(x).toBeCloseTo(900, 6);
      expect(y).toBeCloseTo(200, 6);
    }
    expect(zoom(rig, 1e-9).span).toBeGreaterThan(1);
  });

  it('fits every point into the free part of the bay, and fills it', () => {
    const points: Vec3[] = [];
    for (const x of [-900, 1400]) for (const y of [-700, 650]) for (const z of [0, 1200]) points.push([x, y, z]);
    for (const { width, height, above } of [
      { ...bay, above: 0 },
      { width: 390, height: 700, above: 0 },
      { ...bay, above: 140 },
    ]) {
      const fitted = fitPoints(rig, points, { width, height, below: 60, above });
      const onScreen = points.map(projectionOf(fitted, width, height).toScreen);
      const xs = onScreen.map(({ x }) => x);
      const ys = onScreen.map(({ y }) => y);
      expect(Math.min(...xs)).toBeGreaterThan(0);
      expect(Math.max(...xs)).toBeLessThan(width);
      expect(Math.min(...ys)).toBeGreaterThan(above);
      expect(Math.max(...ys)).toBeLessThan(height - 60);
      const fill = Math.max(
        (Math.max(...xs) - Math.min(...xs)) / width,
        (Math.max(...ys) - Math.min(...ys)) / (height - above - 60),
      );
      expect(fill).toBeGreaterThan(0.85);
    }
    expect(fitPoints(rig, [], { ...bay, below: 0 })).toBe(rig);
  });

  it('turns the shorter way round between two rigs', () => {
    const from = { ...rig, yaw: 3 };
    const to = { ...rig, yaw: -3, span: 500 };
    const middle = blendRigs(from, to, 0.5);
    expect(Math.abs(middle.yaw)).toBeCloseTo(Math.PI, 6);
    expect(middle.span).toBeCloseTo(1000, 9);
    expect(blendRigs(from, to, 0)).toEqual(from);
  });
});
