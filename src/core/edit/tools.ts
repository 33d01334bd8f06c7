/** What the job's tube ends are cut with. */
import { sameData } from '../job/equal.ts';
import type { Tools } from '../job/kinds/tools.ts';
import type { Job } from '../job/types.ts';

export const setTools = (job: Job, tools: Tools): Job => (sameData(job.tools, tools) ? job : { ...job, tools });
