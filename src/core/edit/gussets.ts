/** Edits of gussets. Nothing refers to one, so one can always be deleted. */
import { isAcrossBend, type Gusset, type GussetLeg } from '../job/kinds/gusset.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { GussetId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, takeOut, withRecords } from './records.ts';

/** A flat one, the last in the list, called by its number. */
export const addGusset = (job: Job, parts: Pick<Gusset, 'node' | 'between' | 'thickness'>): Job =>
  appendRecord(job, 'gussets', {
    id: nextId(job, 'gussets'),
    name: `Gusset ${job.gussets.length + 1}`,
    kind: 'flat',
    ...parts,
    relief: 0,
    mirror: true,
  });

export const updateGusset = (
  job: Job,
  id: GussetId,
  fields: Partial<Pick<Gusset, 'name' | 'thickness' | 'relief' | 'mirror'>>,
): Job => changeRecord(job, 'gussets', id, (gusset) => ({ ...gusset, ...fields }));

/** One of its two legs, 0 or 1, mm. */
export const setGussetLeg = (job: Job, id: GussetId, which: 0 | 1, leg: number): Job =>
  changeRecord(job, 'gussets', id, (gusset) => ({
    ...gusset,
    between: gusset.between.with(which, { ...gusset.between[which], leg }) as unknown as Gusset['between'],
  }));

/** The job with every leg told anew. Across a bend there is no weld, and no relief for it. */
export const withLegs = (job: Job, told: (leg: GussetLeg, gusset: Gusset) => GussetLeg): Job =>
  withRecords(
    job,
    'gussets',
    mapKeeping(job.gussets, (gusset) => {
      const [a, b] = gusset.between;
      const between = [told(a, gusset), told(b, gusset)] as const;
      return { ...gusset, between, ...(isAcrossBend({ between }) && { relief: 0 }) };
    }),
  );

/** Folded, so wide over both faces, round an inside radius of its thickness (common practice). */
export const foldGusset = (job: Job, id: GussetId, width: number): Job =>
  changeRecord(job, 'gussets', id, (gusset) =>
    gusset.kind === 'bent' ? gusset : { ...gusset, kind: 'bent', width, radius: gusset.thickness },
  );

/** One flat sheet again. */
export const flattenGusset = (job: Job, id: GussetId): Job =>
  changeRecord(job, 'gussets', id, (gusset) => {
    if (gusset.kind === 'flat') return gusset;
    const { width: _, radius: __, kFactor: ___, ...rest } = gusset;
    return { ...rest, kind: 'flat' };
  });

/** Of a bent one: its width over both faces or the inside radius of its fold, mm; or where the fibre lies that keeps its length. */
export const setFold = (
  job: Job,
  id: GussetId,
  fields: { readonly width: number } | { readonly radius: number } | { readonly kFactor: number },
): Job => changeRecord(job, 'gussets', id, (gusset) => (gusset.kind === 'flat' ? gusset : { ...gusset, ...fields }));

export const removeGusset = (job: Job, id: GussetId): Job => takeOut(job, 'gussets', new Set([id]));
