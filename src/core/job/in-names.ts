/** Faults as a person reads them beside the job: a file's ids are for a file. */
import type { Fault } from './fault.ts';
import { quoted } from './fault.ts';
import { bareId, isPrimed } from './reference.ts';
import { shownName } from './shown.ts';
import type { Job } from './types.ts';

/** The faults with the names of members, nodes and points in the place of their ids, where these are quoted; of an id that nothing has, and a thing without a name, the id. */
export const inNames = (job: Job, faults: readonly Fault[]): readonly Fault[] =>
  faults.map(({ place, message }) => ({
    place,
    message: message.replace(/"([^"\\]+)"/gu, (whole, id: string) => {
      const record = [...job.members, ...job.nodes, ...job.points].find((each) => each.id === bareId(id));
      if (record === undefined || record.name === '') return whole;
      return `${quoted(shownName(record.name))}${isPrimed(id) ? ', mirrored' : ''}`;
    }),
  }));
