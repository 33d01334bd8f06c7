/** A job with nothing in it, as a person begins one from the bare floor. */
import type { LengthUnit } from '../units/length.ts';
import type { Job } from './types.ts';

export const emptyJob = (lengthUnit: LengthUnit): Job => ({
  format: 'cagewright/job',
  version: 1,
  name: 'New job',
  lengthUnit,
  points: [],
  holds: [],
  measurements: [],
  bodyLines: [],
  sections: [],
  dies: [],
  nodes: [],
  members: [],
  feet: [],
  gussets: [],
  envelopes: [],
  rules: [],
  stickSorts: [],
  spares: [],
  sawn: [],
  pulls: [],
  bent: [],
  made: [],
  feeds: [],
  seen: [],
  printed: [],
  scans: [],
  certificates: [],
  photos: [],
});
