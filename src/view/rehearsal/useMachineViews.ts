/** The eye's moves round the bender by name, and its keys. */
import { useEffect, useRef } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { moveByKey } from '../camera/move-by-key.ts';
import { fitPoints, type Rig } from '../camera/rig.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { ViewButton } from '../canvas/Toolbar.tsx';
import type { Size } from '../canvas/useSize.ts';
import { TOOLBAR } from '../canvas/useViews.ts';

const QUARTER = Math.PI / 2;

type Look = Pick<Rig, 'yaw' | 'pitch'>;

/** The feed runs to the right, but for the view from its end and the one along it. */
const LOOKS = {
  threeQuarter: { yaw: (-58 * Math.PI) / 180, pitch: (30 * Math.PI) / 180 },
  top: { yaw: -QUARTER, pitch: QUARTER },
  side: { yaw: -QUARTER, pitch: 0 },
  front: { yaw: 0, pitch: 0 },
  along: { yaw: Math.PI, pitch: 0 },
} as const satisfies Record<string, Look>;

export const FIRST_RIG: Rig = { target: [0, 0, 900], ...LOOKS.threeQuarter, span: 3000 };

export interface MachineViews {
  readonly groups: readonly (readonly ViewButton[])[];
  /** Acts on a key; false when it means nothing to the views. */
  readonly onKey: (key: string, shift: boolean) => boolean;
}

export function useMachineViews(viewpoint: Viewpoint, size: Size, places: readonly Vec3[]): MachineViews {
  /** The last rig that was fitted: while nobody has moved it, it follows the bay's size and what is shown. */
  const fitted = useRef<Rig | null>(null);
  const fit = (rig: Rig, show: (rig: Rig) => void): void => {
    fitted.current = fitPoints(rig, places, { ...viewpoint.size(), below: TOOLBAR });
    show(fitted.current);
  };
  const look = (from: Look) => (): void => fit({ ...viewpoint.goal(), ...from }, viewpoint.glide);

  const groups: ViewButton[][] = [
    [{ name: 'Fit', says: 'Fit machine and tube', key: 'F', act: () => fit(viewpoint.goal(), viewpoint.glide) }],
    [
      { name: '3/4', says: 'Three-quarter view of the machine', key: '1', act: look(LOOKS.threeQuarter) },
      { name: 'Top', says: 'Machine from above', key: '2', act: look(LOOKS.top) },
      { name: 'Side', says: 'Machine from the side', key: '3', act: look(LOOKS.side) },
      { name: 'Front', says: 'Machine from its front, against the feed', key: '4', act: look(LOOKS.front) },
      { name: 'Along', says: 'Along the feed, as rotations are seen', key: '5', act: look(LOOKS.along) },
    ],
  ];

  const latest = useRef(fit);
  useEffect(() => {
    latest.current = fit;
  });
  useEffect(() => {
    const untouched = fitted.current === null || fitted.current === viewpoint.goal();
    viewpoint.resize(size.width, size.height);
    if (untouched && size.width > 0) latest.current(viewpoint.goal(), viewpoint.set);
  }, [viewpoint, size, places]);

  const onKey = (key: string, shift: boolean): boolean => {
    const button = groups.flat().find((candidate) => candidate.key === key.toUpperCase());
    if (button === undefined) return moveByKey(viewpoint, key, shift);
    button.act();
    return true;
  };
  return { groups, onKey };
}
