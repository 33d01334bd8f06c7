/** The tube that a cage begins with: the job's, which are the shop's in a new job, or the commonest where it has none that a die fits. */
import { addDie } from '../../edit/dies.ts';
import { nextId } from '../../edit/ids.ts';
import { appendRecord } from '../../edit/records.ts';
import { addSection } from '../../edit/sections.ts';
import { dieSize, sectionSize } from '../../job/sizes.ts';
import type { Job } from '../../job/types.ts';
import { firstTube, type Tube } from './asked.ts';

/** The job with such tube and die in it, the same one where it has them, and which these are. */
export function withTube(job: Job): { readonly job: Job; readonly tube: Tube } {
  const there = firstTube(job);
  if (there !== null) return { job, tube: there };
  const unit = job.lengthUnit;
  const bare: Job = { ...job, sections: [], dies: [] };
  const [section] = addSection(bare, (size) => sectionSize(size, unit)).sections;
  const [die] = addDie(bare, (size) => dieSize(size, unit)).dies;
  const withSection = appendRecord(job, 'sections', { ...section!, id: nextId(job, 'sections') });
  const grown = appendRecord(withSection, 'dies', { ...die!, id: nextId(job, 'dies') });
  return { job: grown, tube: firstTube(grown)! };
}
