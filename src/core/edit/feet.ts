/** Edits of feet, and of what an end stands on. */
import type { EndFit } from '../job/kinds/end.ts';
import type { Foot, Hole } from '../job/kinds/foot.ts';
import type { Kink } from '../job/kinds/kink.ts';
import type { FootId, MemberId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { LengthUnit } from '../units/length.ts';
import { nextId } from './ids.ts';
import { setEnd } from './members.ts';
import { appendRecord, changeRecord, updateRecord, type Edited, type Fields } from './records.ts';
import { removeUnused } from './references.ts';

/** Sides of a plate and of a box, thickness of either, height of a box's walls: in steel as it is bought (common practice). */
const USUAL: Readonly<Record<LengthUnit, { plate: number; box: number; thickness: number; height: number }>> = {
  mm: { plate: 150, box: 100, thickness: 3, height: 75 },
  in: { plate: 152.4, box: 101.6, thickness: 3.175, height: 76.2 },
};

const WORDS: Readonly<Record<Foot['kind'], string>> = { plate: 'Foot plate', box: 'Foot box' };

/** A new foot, the last in the list: a usual one, in the job's unit, called by its kind and a number. */
export const addFoot = (job: Job, kind: Foot['kind']): Job => appendRecord(job, 'feet', newFoot(job, kind));

/** The same, with that end of the member on it: as `onFoot`. One step. */
export function standOnNew(
  job: Job,
  member: MemberId,
  which: 0 | 1,
  kind: Foot['kind'],
  end: EndFit,
  footTrim: number,
): Job {
  const foot = newFoot(job, kind);
  return setEnd(appendRecord(job, 'feet', foot), member, which, onFoot(end, foot.id, footTrim));
}

/** The end on that foot: turned as it is now, level at first. What was left long there stays; where nothing was, it is the shop's foot trim, mm. */
export const onFoot = (end: EndFit, foot: FootId, footTrim: number): EndFit => ({
  fit: 'foot',
  foot,
  normal: 'normal' in end ? end.normal : [0, 0, 1],
  allowance: end.allowance === 0 ? footTrim : end.allowance,
});

function newFoot(job: Job, kind: Foot['kind']): Foot {
  const usual = USUAL[job.lengthUnit];
  const number = 1 + job.feet.filter((foot) => foot.kind === kind).length;
  const common = {
    id: nextId(job, 'feet'),
    name: `${WORDS[kind]} ${number}`,
    size: [usual[kind], usual[kind]] as const,
    thickness: usual.thickness,
  };
  return kind === 'plate' ? { ...common, kind } : { ...common, kind, height: usual.height };
}

export const updateFoot = (job: Job, id: FootId, fields: Fields<'feet'>): Job => updateRecord(job, 'feet', id, fields);

/** One of its two sizes: 0 along, 1 across. */
export const setFootSize = (job: Job, id: FootId, axis: 0 | 1, mm: number): Job =>
  changeRecord(job, 'feet', id, (foot) =>
    foot.size[axis] === mm ? foot : { ...foot, size: foot.size.with(axis, mm) as unknown as Foot['size'] },
  );

/** A plate gets walls of the usual height; a box loses its own. A kink is a plate's alone, and goes. */
export const setFootKind = (job: Job, id: FootId, kind: Foot['kind']): Job =>
  changeRecord(job, 'feet', id, (foot) => {
    if (foot.kind === kind) return foot;
    const { id: own, name, size, thickness, holes } = foot;
    const common = { id: own, name, size, thickness, ...(holes && { holes }) };
    return kind === 'plate' ? { ...common, kind } : { ...common, kind, height: USUAL[job.lengthUnit].height };
  });

/** How high a box's walls are; a plate has none. */
export const setFootHeight = (job: Job, id: FootId, height: number): Job =>
  changeRecord(job, 'feet', id, (foot) => (foot.kind === 'box' && foot.height !== height ? { ...foot, height } : foot));

/** How thick a box's walls are; null: as thick as its plate. */
export const setFootWall = (job: Job, id: FootId, wall: number | null): Job =>
  changeRecord(job, 'feet', id, (foot) => {
    if (foot.kind !== 'box' || (foot.wall ?? null) === wall) return foot;
    const { wall: _, ...rest } = foot;
    return wall === null ? rest : { ...rest, wall };
  });

/** The bend of a plate; null: flat. */
export const setKink = (job: Job, id: FootId, kink: Kink | null): Job =>
  changeRecord(job, 'feet', id, (foot) => {
    if (foot.kind !== 'plate' || (foot.kink ?? null) === kink) return foot;
    const { kink: _, ...rest } = foot;
    return kink === null ? rest : { ...rest, kink };
  });

/** All its holes. */
export const setHoles = (job: Job, id: FootId, holes: readonly Hole[]): Job =>
  changeRecord(job, 'feet', id, (foot) => {
    const { holes: _, ...rest } = foot;
    return holes.length === 0 ? rest : { ...rest, holes };
  });

/** Refused while ends stand on it. */
export const removeFoot = (job: Job, id: FootId): Edited => removeUnused(job, 'feet', id);
