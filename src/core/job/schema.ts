/**
 * The shape of a job file, version 1, and the defaults of what may be left out, put together from the kinds of record.
 * Keys it does not know are kept, so that a file from a later build of the same version comes back whole. What no shape can
 * check (that references lead somewhere, that a wall is thinner than its tube) is for validate.ts.
 *
 * docs/job.schema.json is made from this schema.
 */
import * as v from 'valibot';
import { accuracyPart } from './kinds/accuracy.ts';
import { markingPart } from './kinds/marking.ts';
import { idMark, mass } from './kinds/fields.ts';
import { tubeNumber, tubeNumbers } from './kinds/numbers.ts';
import { doorOpening, roofReach, torchRoom } from './kinds/fitting.ts';
import { toolsPart } from './kinds/tools.ts';
import { torchGap } from './kinds/torch-gap.ts';
import { quotePart } from './kinds/quote.ts';
import { stockPart } from './kinds/stock.ts';
import { surveyPart } from './kinds/survey.ts';
import { AT_TOP, outOfBlocks } from './in-blocks.ts';
import { kindOf, NAMED } from './kinds.ts';
import type { Job } from './types.ts';

/** The shape of the whole file. */
export const jobSchema = v.looseObject({
  format: v.literal('cagewright/job'),
  version: v.literal(1),
  name: v.optional(v.string(), 'Untitled job'),
  lengthUnit: v.optional(v.picklist(['in', 'mm']), 'mm'),
  idMark: v.exactOptional(idMark),
  marking: v.exactOptional(markingPart.shape),
  numbers: v.exactOptional(tubeNumbers),
  lastNumber: v.exactOptional(tubeNumber),
  carMass: v.exactOptional(mass),
  torchGap: v.exactOptional(torchGap),
  torchRoom: v.exactOptional(torchRoom),
  roofReach: v.exactOptional(roofReach),
  doorOpening: v.exactOptional(doorOpening),
  accuracy: v.exactOptional(accuracyPart.shape),
  tools: v.exactOptional(toolsPart.shape),
  ...Object.fromEntries(AT_TOP.map((list) => [list, v.optional(v.array(kindOf(list).shape), [])])),
  survey: v.exactOptional(surveyPart.shape),
  stock: v.exactOptional(stockPart.shape),
  quote: v.exactOptional(quotePart.shape),
});

/** A job as the schema leaves it, with its lists out of their blocks, and names filled in from ids: the one default that another field gives. */
export function finishedJob(shaped: v.InferOutput<typeof jobSchema>): Job {
  const job = outOfBlocks(shaped) as Job;
  const fill = (records: readonly { readonly id: string; readonly name?: string }[]) =>
    records.map((record) => ({ ...record, name: record.name ?? record.id }));
  return { ...job, ...Object.fromEntries(NAMED.map((list) => [list, fill(job[list])])) };
}
