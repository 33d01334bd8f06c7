/** Edits of tube sections. */
import type { Section } from '../job/kinds/section.ts';
import type { SectionId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, updateRecord, type Edited, type Fields } from './records.ts';
import { removeUnused } from './references.ts';

/** 1 3/4 in by .120 wall: what most cages are built of (common practice). */
const FIRST: Omit<Section, 'id' | 'name'> = { outerDiameter: 44.45, wall: 3.048, material: '' };

/** A new section like the last one, or the commonest where there is none, called what `nameOf` makes of its size. */
export function addSection(job: Job, nameOf: (size: Pick<Section, 'outerDiameter' | 'wall'>) => string): Job {
  const { outerDiameter, wall, material } = job.sections.at(-1) ?? FIRST;
  const name = nameOf({ outerDiameter, wall });
  return appendRecord(job, 'sections', { id: nextId(job, 'sections'), name, outerDiameter, wall, material });
}

export const updateSection = (job: Job, id: SectionId, fields: Fields<'sections'>): Job =>
  updateRecord(job, 'sections', id, fields);

/** How long the sticks are that it is bought in, mm; null: not said. */
export function setStick(job: Job, id: SectionId, stick: number | null): Job {
  if (stick !== null) return updateSection(job, id, { stick });
  return changeRecord(job, 'sections', id, (section) => {
    if (section.stick === undefined) return section;
    const { stick: _, ...rest } = section;
    return rest;
  });
}

/** Refused while members are made of it. */
export const removeSection = (job: Job, id: SectionId): Edited => removeUnused(job, 'sections', id);
