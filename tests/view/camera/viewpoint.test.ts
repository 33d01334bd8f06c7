/** A glide: on the way it is neither of the two, and it ends at the very rig that was asked for. */
import { afterEach, expect, it, vi } from 'vitest';
import type { Rig } from '../../../src/view/camera/rig.ts';
import { createViewpoint } from '../../../src/view/camera/viewpoint.ts';

afterEach(() => vi.unstubAllGlobals());

it('ends a glide at the very rig, so that a fit is known for one afterwards', () => {
  vi.stubGlobal('window', { matchMedia: () => ({ matches: false }) });
  const from: Rig = { target: [0, 0, 0], yaw: 0.1, pitch: 0.2, span: 1000 };
  const to: Rig = { target: [100, 0, 0], yaw: 1, pitch: 0.4, span: 2000 };
  const viewpoint = createViewpoint(from);
  viewpoint.glide(to);
  expect(viewpoint.advance(0.02)).toBe(true);
  expect([viewpoint.goal() === to, viewpoint.rig() === to]).toEqual([true, false]);
  for (let frames = 0; viewpoint.advance(0.05); frames += 1) expect(frames).toBeLessThan(100);
  expect(viewpoint.rig()).toBe(to);
});
