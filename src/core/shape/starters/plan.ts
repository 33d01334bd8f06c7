/** What the parts of a cage share while it grows: the car, the tube's sizes, and where bars of the sides can land. */
import { appendRecord, findRecord } from '../../edit/records.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { AUTO, type EndFit } from '../../job/kinds/end.ts';
import type { Foot } from '../../job/kinds/foot.ts';
import type { Member } from '../../job/kinds/member.ts';
import type { Place } from '../../job/places.ts';
import type { MemberId, NodeId, NodeRef } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { layOut, type Layout } from '../../solve/lay-out.ts';
import { sequenceOf } from '../../solve/sequence.ts';
import type { Bend } from '../../solve/types.ts';
import type { Asked } from './asked.ts';
import type { Spot } from '../../survey/spots.ts';
import type { Car, Spotted } from './car.ts';
import { withMeasuredPoints } from '../../survey/measured-points.ts';

export interface Plan {
  readonly asked: Asked;
  readonly car: Car;
  /** Outer diameters, mm. */
  readonly thick: number;
  readonly thin: number;
  /** From trim to a main tube's axis: the gap and half of the tube. */
  readonly off: number;
  /** What hoops and legs stand on, and what stays stand on. */
  readonly floorFoot: Foot;
  readonly towerFoot: Foot;
  /** Left long at an end on a foot, mm. */
  readonly footTrim: number;
}

/** What a part adds to a job that has the parts before it. */
export type Part = (job: Job, plan: Plan) => Job;

/** A place that the layout goes by. */
export const spotted = ({ car }: Plan, spot: Spot): Spotted => car[spot]!;

/** The node last in the list. */
export const withNode = (job: Job, id: NodeId, name: string, at: Place): Job =>
  appendRecord(job, 'nodes', { id, name, at });

/** The same, where it stands by a figure of the cage's own: a guess, if nobody has said that. */
export const withNodeBy =
  ({ asked }: Plan, figure: 'gap' | 'harnessHeight') =>
  (job: Job, id: NodeId, name: string, at: Place): Job =>
    appendRecord(job, 'nodes', { id, name, at, ...(asked.figures[figure].guessed && { guessed: true }) });

type Needed = 'id' | 'name' | 'role' | 'path' | 'section';

/** The member last in the build order; what is not said is as usual. */
export const withBar = (job: Job, bar: Pick<Member, Needed> & Partial<Omit<Member, Needed>>): Job =>
  appendRecord(job, 'members', { mirror: false, ends: [AUTO, AUTO], ...bar });

/** Level: how a floor slopes is for somebody to measure. */
export const onFoot = ({ footTrim }: Plan, foot: Foot): EndFit => ({
  fit: 'foot',
  foot: foot.id,
  normal: [0, 0, 1],
  allowance: footTrim,
});

/** Where the node stands in the frame so far; null where there is none, or where that cannot be laid out. */
export const placeIn = (job: Job, node: NodeRef): Vec3 | null => laidOut(job)?.nodes.get(node) ?? null;

/** Bends of the bar in the frame so far, from end A; none where that cannot be laid out. */
export const bendsIn = (job: Job, bar: MemberId): readonly Bend[] =>
  laidOut(job)?.bars.find(({ id }) => id === bar)?.centreline.bends ?? [];

function laidOut(written: Job): Layout | null {
  const job = withMeasuredPoints(written);
  const sequence = sequenceOf(job);
  if (!sequence.ok) return null;
  const layout = layOut(job, sequence.value);
  return layout.ok ? layout.value : null;
}

/**
 * A tube at the side of the car on which bars land, and where along it: `low` is the end at the floor, `corner` the bend above it. The
 * other way along the tube everything is counted the other way.
 */
export interface Upright {
  readonly member: MemberId;
  readonly low: 'start' | 'end';
  readonly corner: number;
  /** How high its foot is, mm: bars are counted from the foot's upper face. */
  readonly foot: number;
}

type OnTube = Extract<Place, { readonly kind: 'on' }>;

const NONE: Vec3 = [0, 0, 0];

/** So far up the tube from the upper face of its foot, mm. */
export const upFrom = ({ member, low, foot }: Upright, distance: number): OnTube => ({
  kind: 'on',
  member,
  from: low,
  distance: foot + distance,
  offset: NONE,
});

/** So far below the corner's bend, mm. */
export const belowCorner = ({ member, low, corner }: Upright, distance: number): OnTube =>
  beside(member, corner, low === 'start' ? -distance : distance);

/** So far above the corner's bend, mm. */
export const aboveCorner = ({ member, low, corner }: Upright, distance: number): OnTube =>
  beside(member, corner, low === 'start' ? distance : -distance);

/** Before the bend where the distance is below zero, from end A; past it where it is above. */
export const beside = (member: MemberId, bend: number, distance: number): OnTube =>
  atBend(member, bend, distance < 0 ? 'start' : 'end', distance);

/** In the bend, so far from its middle towards end B, mm. */
export const inBend = (member: MemberId, bend: number, distance = 0): OnTube =>
  atBend(member, bend, 'middle', distance);

/** So far along from that place of the bend towards end B, mm. */
export const atBend = (
  member: MemberId,
  bend: number,
  where: 'start' | 'middle' | 'end',
  distance: number,
): OnTube => ({
  kind: 'on',
  member,
  bend,
  where,
  distance,
  offset: NONE,
});

/** Outer, mm. */
export const diameterOf = (job: Job, section: string): number => findRecord(job, 'sections', section)!.outerDiameter;
