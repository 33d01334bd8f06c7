/** Job -> the text of its file. */
import { joinedOrder } from './joined-order.ts';
import { accuracyPart } from './kinds/accuracy.ts';
import { markingPart } from './kinds/marking.ts';
import { quotePart } from './kinds/quote.ts';
import { stockPart } from './kinds/stock.ts';
import { surveyPart } from './kinds/survey.ts';
import { toolsPart } from './kinds/tools.ts';
import { AT_TOP, intoBlocks } from './in-blocks.ts';
import { kindOf, LISTS } from './kinds.ts';
import { textWriter } from './text.ts';
import type { Job } from './types.ts';

/** The keys of the job itself. */
const HEAD = [
  'format',
  'version',
  'name',
  'lengthUnit',
  'idMark',
  'marking',
  'carMass',
  'torchGap',
  'torchRoom',
  'roofReach',
  'doorOpening',
  'accuracy',
  'tools',
  'numbers',
  'lastNumber',
  ...AT_TOP.flatMap((list) =>
    list === 'points' ? [list, 'survey'] : list === 'rules' ? [list, 'stock', 'quote'] : [list],
  ),
];
const OF_RECORDS = [
  ...LISTS.flatMap((list) => kindOf(list).keys),
  ...markingPart.keys,
  ...accuracyPart.keys,
  ...toolsPart.keys,
  ...surveyPart.keys,
  ...stockPart.keys,
  ...quotePart.keys,
].map((line) => line.split(' '));
/** Every key that the schema knows. */
export const KEY_ORDER = joinedOrder([HEAD, ...OF_RECORDS]);

/** The file's text. parseJob gives an equal job back. */
export const serialiseJob = (job: Job): string => writeText(intoBlocks(job));

const writeText = textWriter(KEY_ORDER);
