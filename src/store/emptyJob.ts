/** A job with nothing in it, as a person begins one from the bare floor. */
import type { Job } from '../core/job/types.ts';
import type { Marking } from '../core/job/kinds/marking.ts';
import type { LengthUnit } from '../core/units/length.ts';

export const emptyJob = (lengthUnit: LengthUnit, marking?: Marking): Job => ({
  format: 'cagewright/job',
  version: 1,
  name: 'New job',
  lengthUnit,
  points: [],
  bodyLines: [],
  sections: [],
  dies: [],
  nodes: [],
  members: [],
  envelopes: [],
  pulls: [],
  bent: [],
  ...(marking && { marking }),
  feeds: [],
});
