/** What keeps the cage from being fitted in the car: a joint under the roof that no torch reaches, a tube that the door does not let in. */
import { doorOf } from '../fitting/door.ts';
import { lowering } from '../fitting/lowering.ts';
import { slitsOf } from '../fitting/through-door.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Frame } from '../solve/types.ts';
import type { NoAir, WiderThanDoor } from './car-types.ts';

/** Warnings: at most one of the joints, at most one of each bent tube. */
export const fitTrouble = (frame: Frame): readonly (NoAir | WiderThanDoor)[] => [
  ...airTrouble(frame),
  ...doorTrouble(frame),
];

function airTrouble(frame: Frame): readonly NoAir[] {
  const { lowered, room, boxes } = lowering(frame);
  if (lowered.decides === null || (boxes !== null && boxes >= lowered.by - ROUNDING)) return [];
  const { joint, roof } = lowered.decides;
  const { tube, end, node, at } = joint;
  return [
    {
      id: 'fit/no-air',
      severity: 'warning',
      source: 'torch-room',
      tube,
      end,
      ...(node !== null && { node }),
      at,
      trim: roof.trim,
      air: roof.air,
      room,
      lowerBy: lowered.by,
      boxes,
    },
  ];
}

function doorTrouble(frame: Frame): readonly WiderThanDoor[] {
  const door = doorOf(frame.job);
  if (door === null) return [];
  return slitsOf(frame).flatMap(({ tube, width, thickness }): readonly WiderThanDoor[] => {
    if (width === null || width <= door.way + ROUNDING) return [];
    const at = frame.byId.get(tube)!.corners[1]!;
    const base = { severity: 'warning', source: 'door', tube, at } as const;
    return [{ ...base, id: 'fit/wider-than-door', width, thickness, way: door.way }];
  });
}
