/**
 * A whole cage from a handful of tape figures: points, nodes, members and feet like any others, in the order in which they are fitted. Nodes
 * go by the points, so the cage follows the car when that is measured again.
 */
import { appendRecord } from '../../edit/records.ts';
import { nextId } from '../../edit/ids.ts';
import type { Foot } from '../../job/kinds/foot.ts';
import { FIRST_FOOT_TRIM } from '../../job/kinds/foot-trim.ts';
import type { Job } from '../../job/types.ts';
import type { Asked } from './asked.ts';
import type { LayoutName } from '../../survey/spots.ts';
import { withDash, withPillarBraces, withRoofBars, withSills } from './between.ts';
import { withCar } from './car.ts';
import { withDoors } from './doors.ts';
import { hoopAndLegs, roofRing, sideHoops, twoHoops } from './front.ts';
import { hoopAlone } from './hoop.ts';
import { diameterOf, type Plan } from './plan.ts';
import { withDiagonal, withHarnessBar, withRearBars, withStays } from './rear.ts';
import type { Layout } from './skeleton.ts';

const BASES: Readonly<Record<LayoutName, Layout>> = {
  'roll-bar': hoopAlone,
  'six-point': hoopAndLegs,
  'two-hoops': twoHoops,
  'roof-ring': roofRing,
  'side-hoops': sideHoops,
};

/**
 * Feet in steel as it is bought, along the car and across: on the floor 150 by 100 by 3, or 6 in by 4 in by 1/8 in, along the sill; boxes of the
 * same sheet; longer on the towers, where stays come down at a slant (common practice).
 */
const FEET = {
  mm: { floor: [150, 100], tower: [200, 120], box: [120, 100], sheet: 3, height: 75 },
  in: { floor: [152.4, 101.6], tower: [203.2, 127], box: [127, 101.6], sheet: 3.175, height: 76.2 },
} as const;

/** Whether door bars were asked for and the pillars leave no room for them; the job is the one that startCage gave. */
export const lacksDoors = ({ bars, layout }: Asked, job: Job): boolean =>
  layout !== 'roll-bar' && bars.doors !== 'none' && !job.members.some(({ role }) => role === 'door-bar');

/** Whether pillar braces were asked for and the pillars bend too little for them; the job is the one that startCage gave. */
export const lacksBraces = ({ bars, layout }: Asked, job: Job): boolean =>
  layout !== 'roll-bar' && bars.pillarBraces && !job.members.some(({ role }) => role === 'pillar-brace');

/**
 * The job with the cage that is asked for. It has no node and no member yet; its points, tubes, dies and all else stay. `footTrim`, mm,
 * is what the shop leaves long at a foot.
 */
export function startCage(job: Job, asked: Asked, footTrim = FIRST_FOOT_TRIM[job.lengthUnit]): Job {
  const usual = FEET[job.lengthUnit];
  const { floor, tower, box, sheet: thickness, height } = usual;
  const onTower = withFoot(job, { kind: 'plate', name: 'Plate on the tower', size: tower, thickness });
  const withFeet = withFoot(
    onTower,
    asked.feet === 'boxes'
      ? { kind: 'box', name: 'Box on the floor', size: box, thickness, height }
      : { kind: 'plate', name: 'Plate on the floor', size: floor, thickness },
  );
  const { job: onCar, car } = withCar(withFeet, asked);
  const thick = diameterOf(job, asked.main);
  const plan: Plan = {
    asked,
    car,
    thick,
    thin: diameterOf(job, asked.light),
    off: asked.figures.gap.value + thick / 2,
    floorFoot: withFeet.feet.at(-1)!,
    towerFoot: onTower.feet.at(-1)!,
    footTrim,
  };
  const { job: base, skeleton } = BASES[asked.layout](onCar, plan);
  const rear = [withStays, withDiagonal, withHarnessBar, withRearBars].reduce(
    (grown, part) => part(grown, plan, skeleton),
    base,
  );
  const { front } = skeleton;
  if (front === null) return rear;
  return [withDash, withPillarBraces, withDoors, withSills, withRoofBars].reduce(
    (grown, part) => part(grown, plan, { ...skeleton, front }),
    rear,
  );
}

type NewFoot = Foot extends infer One ? (One extends Foot ? Omit<One, 'id'> : never) : never;

const withFoot = (job: Job, foot: NewFoot): Job => appendRecord(job, 'feet', { ...foot, id: nextId(job, 'feet') });
