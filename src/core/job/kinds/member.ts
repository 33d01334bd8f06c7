/** Members: each a tube, and where it is mirrored its twin. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { remembered } from '../../remembered.ts';
import { fault, quoted, type Fault } from '../fault.ts';
import { MOST_CUTTERS } from '../limits.ts';
import {
  bareId,
  isPrimed,
  pieceId,
  primed,
  type DieId,
  type MemberId,
  type NodeRef,
  type SectionId,
  type TubeRef,
} from '../reference.ts';
import { AUTO, endPart, type EndFit } from './end.ts';
import { atMost } from './faults.ts';
import { bendAngle, named } from './fields.ts';
import { isReference, type Kind, type Reference } from './kind.ts';

export interface Member {
  readonly id: MemberId;
  readonly name: string;
  readonly role: string;
  readonly path: readonly NodeRef[];
  readonly section: SectionId;
  /** Needed as soon as the path bends. */
  readonly die?: DieId;
  /** Heat or batch that the tube is cut from; its pulls then count before the others. */
  readonly batch?: string;
  /** True: a twin, mirrored in y = 0, is derived beside it. */
  readonly mirror: boolean;
  readonly ends: readonly [EndFit, EndFit];
  /** Bars that run through where this one is cut: it is drawn as one and made in pieces. A twin is cut by their images. */
  readonly cutBy?: readonly TubeRef[];
  /** Bends that were given an angle, degrees, by the corner in the path: one that comes out otherwise is found. */
  readonly keptAngles?: readonly KeptAngle[];
  /** Its ends are cut on the car, to the tubes that stand there by then; else all of it is cut by the drawing. */
  readonly cutOnCar?: true;
}

export interface KeptAngle {
  readonly corner: NodeRef;
  readonly angle: Degrees;
}

export const memberKind: Kind<Member> = {
  word: 'member',
  letter: 'm',
  shape: v.looseObject({
    ...named,
    role: v.optional(v.string(), ''),
    path: v.pipe(v.array(v.string()), v.minLength(2, 'fewer than two nodes')),
    section: v.string(),
    die: v.exactOptional(v.string()),
    batch: v.exactOptional(v.string()),
    mirror: v.optional(v.boolean(), false),
    ends: v.optional(v.strictTuple([endPart.shape, endPart.shape]), () => [{ ...AUTO }, { ...AUTO }]),
    keptAngles: v.exactOptional(v.array(v.looseObject({ corner: v.string(), angle: bendAngle }))),
    cutOnCar: v.exactOptional(v.literal(true)),
    cutBy: v.exactOptional(v.pipe(v.array(v.string()), v.minLength(1, 'names no member'))),
  }),
  keys: ['id name role path section die batch mirror ends cutBy keptAngles cutOnCar', 'corner angle', ...endPart.keys],
  hasImage: ({ mirror }) => mirror,
  beyondShape: (member, at, _, members) =>
    [
      // An end is coped to what it meets: only the path says where the tube runs.
      ...member.path.map((to, i): Reference => ({ place: `${at}.path[${i}]`, list: 'nodes', to, carried: true })),
      { place: `${at}.section`, list: 'sections', to: member.section } as const,
      ...(member.die === undefined ? [] : [{ place: `${at}.die`, list: 'dies', to: member.die } as const]),
      ...member.ends.flatMap((end, i) => endPart.beyondShape(end, `${at}.ends[${i}]`)),
      ...(member.cutBy ?? []).map((to, i): Reference => ({ place: `${at}.cutBy[${i}]`, list: 'members', to })),
      ...keptFaults(member, at),
      ...piecesFaults(member, at, members),
    ].map((item) => notItself(item, member.id)),
};

const notItself = (item: Reference | Fault, id: MemberId): Reference | Fault =>
  isReference(item) && item.list === 'members' && item.to === id
    ? fault(item.place, `${quoted(id)} is the member itself`)
    : item;

/** An angle is kept at a corner of the path, once. */
const keptFaults = ({ path, keptAngles = [] }: Member, at: string): readonly Fault[] =>
  keptAngles.flatMap(({ corner }, i) => {
    const place = `${at}.keptAngles[${i}].corner`;
    if (!path.slice(1, -1).includes(corner)) return [fault(place, `${quoted(corner)} is no corner of the path`)];
    return keptAngles.findIndex((each) => each.corner === corner) < i
      ? [fault(place, `${quoted(corner)} is there already`)]
      : [];
  });

/** What is wrong with a member in pieces beside the other members: who cuts it, and what its pieces are called. */
function piecesFaults({ id, cutBy, mirror }: Member, at: string, members: readonly Member[]): readonly Fault[] {
  if (cutBy === undefined) return [];
  const faults: Fault[] = [...atMost(MOST_CUTTERS, cutBy, `${at}.cutBy`)];
  cutBy.forEach((cutter, i) => {
    const place = `${at}.cutBy[${i}]`;
    if (cutBy.indexOf(cutter) < i) faults.push(fault(place, `${quoted(cutter)} is there already`));
    if (cutter === primed(id)) faults.push(fault(place, `${quoted(id)} and its twin cannot both be cut by each other`));
    const other = recordOf(members).get(bareId(cutter));
    const inTurn = (back: TubeRef) =>
      bareId(back) === id && (isPrimed(back) === isPrimed(cutter) || !mirror || other?.mirror === false);
    if (other?.id !== id && other?.cutBy?.some(inTurn)) {
      faults.push(fault(place, `${quoted(cutter)} is itself cut by ${quoted(id)}: one of the two has to run through`));
    }
  });
  for (let piece = 1; piece <= cutBy.length + 1; piece++) {
    const name = pieceId(id, piece);
    if (recordOf(members).has(name as MemberId)) {
      faults.push(fault(`${at}.id`, `a piece of it is called ${quoted(name)}, and so is a member`));
    }
  }
  return faults;
}

const recordOf = remembered(
  (members: readonly Member[]): ReadonlyMap<MemberId, Member> => new Map(members.map((member) => [member.id, member])),
);
