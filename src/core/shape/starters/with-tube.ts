/** The tube that a cage begins with: the job's, which are the shop's in a new job, or the commonest where it has none that a die fits. */
import { addDie } from '../../edit/dies.ts';
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
  const grown: Job = {
    ...job,
    sections: [...job.sections, { ...section!, id: free(job.sections, 'main') }],
    dies: [...job.dies, { ...die!, id: free(job.dies, 'die') }],
  };
  return { job: grown, tube: firstTube(grown)! };
}

function free(records: readonly { readonly id: string }[], wanted: string): string {
  const taken = new Set(records.map(({ id }) => id));
  let [id, number] = [wanted, 1];
  while (taken.has(id)) id = `${wanted}-${(number += 1)}`;
  return id;
}
