/** The views a fabricator asks for by name. Each turns the rig only; fitting it to the frame is another step. */
import { dot, scale, type Vec3 } from '../../core/geometry/vector.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { lookFrom, screenAxes, type Rig } from './rig.ts';

export type StandardView = 'three-quarter' | 'top' | 'left' | 'right' | 'front' | 'rear';

const QUARTER = Math.PI / 2;

/** From above, the car's front points left in a wide bay, as in the left view below it, and up in a tall one. */
export function standardView(
  view: StandardView,
  rig: Rig,
  bay: { readonly width: number; readonly height: number },
): Rig {
  switch (view) {
    case 'three-quarter':
      return { ...rig, yaw: (38 * Math.PI) / 180, pitch: (24 * Math.PI) / 180 };
    case 'top':
      return { ...rig, yaw: bay.width >= bay.height ? QUARTER : 2 * QUARTER, pitch: QUARTER };
    case 'left':
      return { ...rig, yaw: QUARTER, pitch: 0 };
    case 'right':
      return { ...rig, yaw: -QUARTER, pitch: 0 };
    case 'front':
      return { ...rig, yaw: 0, pitch: 0 };
    case 'rear':
      return { ...rig, yaw: 2 * QUARTER, pitch: 0 };
  }
}

/** The tube whose plane the hoop view shows: the one selected if it bends, else the main hoop, else the first that bends. */
export function hoopOf(tubes: readonly SolvedTube[], selected: SolvedTube | undefined): SolvedTube | undefined {
  if (selected !== undefined && selected.bends.length > 0) return selected;
  const bent = tubes.filter((tube) => tube.bends.length > 0);
  return bent.find((tube) => tube.member.role === 'main-hoop') ?? bent[0];
}

/** Square to the plane of the tube's first bend, from the side that is nearer to where the eye is now. */
export function hoopView(tube: SolvedTube, rig: Rig): Rig {
  const normal: Vec3 | undefined = tube.bends[0]?.normal;
  if (normal === undefined) return rig;
  const side = dot(normal, screenAxes(rig).toEye) < 0 ? -1 : 1;
  return lookFrom(rig, scale(normal, side));
}
