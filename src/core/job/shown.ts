/**
 * Names as they are shown and written. A file may hold longer ones, made before there was a limit: they stay in the job
 * as they are, and are shortened wherever a person or another program meets them.
 */
import { remembered } from '../remembered.ts';
import { NAMED } from './kinds.ts';
import { LONGEST_NAME } from './limits.ts';
import { mapKeeping } from './map-keeping.ts';
import type { Die } from './kinds/die.ts';
import type { Quote } from './kinds/quote.ts';
import type { SurveyBlock } from './kinds/survey.ts';
import type { Tools } from './kinds/tools.ts';
import type { Job, NamedList } from './types.ts';

/** The name itself; of one longer than 200 characters the first 199 and three dots. No character is cut in two. */
export function shownName(name: string): string {
  if (name.length <= LONGEST_NAME) return name;
  // A character is one or two units of a string: these hold all that can be shown, and one more.
  const characters = Array.from(name.slice(0, 2 * LONGEST_NAME + 2));
  if (characters.length <= LONGEST_NAME) return name;
  return `${characters.slice(0, LONGEST_NAME - 1).join('')}…`;
}

/**
 * The job with every name as it is shown; the same job, and the same records, where none is too long. What is derived
 * is derived from this one, so that no table, drawing or finding has to think of it.
 */
export function withShownNames(job: Job): Job {
  const shown = NAMED.reduce<Job>(withShownIn, job);
  const [name, tools, survey, quote] = [
    shownName(job.name),
    job.tools && withShownNotchers(job.tools),
    job.survey && withShownSamples(job.survey),
    job.quote && withShownTax(job.quote),
  ];
  if (name === job.name && tools === job.tools && survey === job.survey && quote === job.quote) return shown;
  return { ...shown, name, ...(tools && { tools }), ...(survey && { survey }), ...(quote && { quote }) };
}

function withShownSamples(survey: SurveyBlock): SurveyBlock {
  const samples = survey.samples && mapKeeping(survey.samples, named);
  return samples === undefined || samples === survey.samples ? survey : { ...survey, samples };
}

const withShownTax = remembered((quote: Quote): Quote => {
  const { tax } = quote.rates ?? {};
  return tax === undefined || named(tax) === tax ? quote : { ...quote, rates: { ...quote.rates, tax: named(tax) } };
});

function withShownNotchers(tools: Tools): Tools {
  const notchers = mapKeeping(tools.notchers, named);
  return notchers === tools.notchers ? tools : { ...tools, notchers };
}

function withShownIn(job: Job, collection: NamedList): Job {
  const records: readonly Named[] = job[collection];
  const shown = mapKeeping(records, (record) => named(collection === 'dies' ? withShownRoom(record as Die) : record));
  return shown === records ? job : { ...job, [collection]: shown };
}

interface Named {
  readonly name: string;
}

/** Records that were shortened: the same record is shortened to the same one, since identity says what is unchanged. */
const withShortName = remembered((record: Named): Named => ({ ...record, name: shownName(record.name) }));
const withShortRoom = remembered((die: Die): Die => {
  const { bender } = die;
  return bender === undefined ? die : { ...die, bender: { ...bender, room: mapKeeping(bender.room, named) } };
});

const named = <R extends Named>(record: R): R =>
  shownName(record.name) === record.name ? record : (withShortName(record) as R);

/** A thing in the room with too long a name makes the die another; else it stays the same one. */
const withShownRoom = (die: Die): Die =>
  die.bender?.room.some(({ name }) => shownName(name) !== name) ? withShortRoom(die) : die;
