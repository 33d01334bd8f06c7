/** Sections to choose from: apart from other lists, since the table of members, which is there first, has this one alone. */
import { sectionInWords } from '../../core/job/sizes.ts';
import type { Job } from '../../core/job/types.ts';
import type { Choice } from '../fields/Fields.tsx';

/** By name, and by size where the name does not say it. */
export const sectionChoices = ({ sections, lengthUnit }: Pick<Job, 'sections' | 'lengthUnit'>): Choice[] =>
  sections.map((section) => ({ value: section.id, label: sectionInWords(section, lengthUnit) }));
