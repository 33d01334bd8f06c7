/** The main hoop: one piece, upright, four bends in one plane; and the roll bar, which has no more than that to carry. */
import { heightOf } from '../../job/kinds/foot.ts';
import { findRecord } from '../../edit/records.ts';
import { toRadians } from '../../geometry/angle.ts';
import type { Job } from '../../job/types.ts';
import { follows, goingBy } from './car.ts';
import { pillarOf } from './pillar.ts';
import {
  beside,
  inBend,
  onFoot,
  spotted,
  withBar,
  withNode,
  withNodeBy,
  type Part,
  type Plan,
  type Upright,
} from './plan.ts';
import type { Layout, Skeleton } from './skeleton.ts';
import { BELOW, CLEAR, PAST_BEND, STAY_REACH } from './spacing.ts';

/** Nodes of the hoop's side, in its plane: corner, shoulder and foot; they go along the car with the corner. */
export const withPillar =
  (id: string, name: string): Part =>
  (job, plan) => {
    const { x, foot, shoulder, corner } = pillarOf(plan);
    const [floor, belt] = [spotted(plan, 'floor-b'), spotted(plan, 'belt-b')];
    const withTrimNode = withNodeBy(plan, 'gap');
    const withCorner = withTrimNode(
      job,
      `${id}-corner`,
      `${name}, roof corner`,
      goingBy(spotted(plan, 'roof-b'), [x, ...corner]),
    );
    const along = { node: `${id}-corner`, plus: 0 };
    const withShoulder = withTrimNode(withCorner, `${id}-shoulder`, `${name}, shoulder`, {
      kind: 'lined-up',
      x: along,
      y: follows(belt, 1, shoulder[0]),
      z: follows(belt, 2, shoulder[1]),
    });
    return withNode(withShoulder, `${id}-foot`, `${name}, foot`, {
      kind: 'lined-up',
      x: along,
      y: follows(floor, 1, foot[0]),
      z: follows(floor, 2, foot[1]),
    });
  };

function withHoop(job: Job, plan: Plan): Job {
  const { shoulderBend, cornerBend } = pillarOf(plan);
  const { main, die } = plan.asked;
  const end = onFoot(plan, plan.floorFoot);
  return withBar(withPillar('hoop', 'Main hoop')(job, plan), {
    id: 'hoop',
    name: 'Main hoop',
    role: 'main-hoop',
    path: ['hoop-foot', 'hoop-shoulder', 'hoop-corner', "hoop-corner'", "hoop-shoulder'", "hoop-foot'"],
    section: main,
    die,
    ends: [end, end],
    keptAngles: [
      { corner: 'hoop-shoulder', angle: shoulderBend },
      { corner: 'hoop-corner', angle: cornerBend },
    ],
  });
}

/**
 * The main hoop, and where its stays begin: a diameter below the middle of the roof's bend, which is for what runs forward; at one place their copes would
 * touch round the hoop. The diagonal ends clear below.
 */
export const hoopAlone: Layout = (job, plan) => {
  const rear: Upright = { member: 'hoop', low: 'start', corner: 1, foot: heightOf(plan.floorFoot) };
  const hoop = withHoop(job, plan);
  const stayTop = withNode(hoop, 'stay-top', 'Stay at the hoop', inBend('hoop', 2, -plan.thick));
  const noded = withNode(stayTop, 'diagonal-top', 'Diagonal at the hoop', belowStay(job, plan));
  const skeleton: Skeleton = {
    rear,
    front: null,
    stayTop: 'stay-top',
    diagonalTop: 'diagonal-top',
    roof: null,
  };
  return { job: noded, skeleton };
};

/** Below the bend, a diameter clear of it and clear of the stay, where that is still within reach of the stay; else in the bend, clear of the stay. */
function belowStay(job: Job, plan: Plan): ReturnType<typeof beside> {
  const { thick } = plan;
  const halfBend =
    (findRecord(job, 'dies', plan.asked.die)!.centrelineRadius * toRadians(pillarOf(plan).cornerBend)) / 2;
  // On a small die the stay stands at the bend's end itself.
  const clear = Math.max(PAST_BEND * thick, (1 + BELOW) * thick - halfBend);
  return halfBend + clear - thick <= STAY_REACH ? beside('hoop', 2, -clear) : inBend('hoop', 2, -(1 + BELOW) * thick);
}

/** On the hoop's top, past its bend: where a roof bar lands. */
export const withRoofRear: Part = (job, plan) =>
  withNode(job, 'roof-rear', 'Roof bar at the hoop', beside('hoop', 2, CLEAR * plan.thick));
