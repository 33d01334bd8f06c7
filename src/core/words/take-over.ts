/** What differs between two states of a job, in the words of the shop. */
import { figure } from '../job/fault.ts';
import type { Certificate } from '../job/kinds/certificate.ts';
import type { Hold } from '../job/kinds/hold.ts';
import type { MadeStage } from '../job/kinds/made.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Took } from '../job/kinds/quote.ts';
import type { Spare } from '../job/kinds/spare.ts';
import { kindOf } from '../job/kinds.ts';
import { memberOfTube } from '../job/member-of-tube.ts';
import { bareId, isPrimed, pieceNamed } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job, NamedList } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import type { Difference, Trade } from '../take-over/differences.ts';
import { lengthOnTape } from './lengths.ts';
import { capital, listed } from './lists.ts';
import { COORDINATE_WORDS, measurementInWords, readInWords } from './survey.ts';
import { valueInWords } from './field-differs.ts';

/** What each part of the list is headed with. */
export const TRADE_WORDS: Readonly<Record<Trade, string>> = {
  measured: 'Measured',
  drawn: 'Drawn',
  stock: 'Tube, dies and stock',
  rules: 'Rules',
  shop: 'Shop and papers',
};

/**
 * What the record is, begun with a capital: "Point Tower, left"; "The tape from A to B: 36 in".
 *
 * @param here the open job, whose unit counts
 * @param there the other, by its ids
 */
export function recordInWords(one: Difference, here: Job, there: Job): string {
  const { on, key, kind } = one;
  const job = kind === 'only-there' ? there : here;
  const record: unknown = kind === 'only-there' ? one.there : one.here;
  const unit = here.lengthUnit;
  const ofTube = (made: unknown): string => tubeInWords((made as { readonly tube: string }).tube, job);
  switch (on) {
    case 'head':
      return headInWords(one, here, there);
    case 'measurements': {
      const reading = record as Measurement;
      const name = capital(measurementInWords(job, reading));
      return kind === 'differs' ? name : `${name}: ${readInWords(reading, reading.value, unit)}`;
    }
    case 'holds': {
      const { point, axis } = record as Hold;
      return `Laid down: the ${COORDINATE_WORDS[axis]} of ${pointName(job, point)}`;
    }
    case 'samples':
      return `Sample bend ${shownName((record as { name: string }).name)}`;
    case 'pulls': {
      const { pulled, net, die, on: day } = record as Pull;
      const when = day === '' ? '' : `, ${day}`;
      return `Pull to ${figure(pulled)}° that gave ${figure(net)}° on ${named('dies', die, job)}${when}`;
    }
    case 'bent':
      return `Bend run of ${ofTube(record)}`;
    case 'made': {
      const made = record as { readonly tube: string; readonly stage: MadeStage };
      return kind === 'differs' ? `How far ${ofTube(made)} is made` : `${ofTube(made)} is ${made.stage}`;
    }
    case 'feeds':
      return `How ${ofTube(record)} is fed`;
    case 'seen':
      return `Seen in the checks, of ${ofTube(record)}`;
    case 'printed':
      return `Paper printed of ${ofTube(record)}`;
    case 'certificates': {
      const { batch, certificate } = record as Certificate;
      return `Of batch ${shownName(batch)}: ${shownName(certificate) || 'a certificate'}`;
    }
    case 'spares': {
      const { section, length, count } = record as Spare;
      return `Spares of ${named('sections', section, job)}, ${count} of ${lengthOnTape(length, unit)}`;
    }
    case 'stickSorts':
    case 'sawn': {
      const { section, length } = record as { readonly section: string; readonly length: number };
      const what = on === 'sawn' ? 'Stick that was sawn' : 'Sticks';
      return `${what}, ${named('sections', section, job)}, ${lengthOnTape(length, unit)}`;
    }
    case 'rules':
      return `Rule sheet ${shownName(key)}`;
    case 'took': {
      const { line, hours, paid } = record as Took;
      const what = [hours !== undefined && `${figure(hours)} hours`, paid !== undefined && `${figure(paid)} paid`];
      return `What ${shownName(line)} took: ${listed(what.filter((each) => each !== false)) || 'noted'}`;
    }
    default:
      return `${capital(kindOf(on).word ?? '')} ${shownName((record as { name: string }).name)}`;
  }
}

const named = (list: NamedList, id: string, job: Job): string =>
  shownName(job[list].find((each) => each.id === id)?.name ?? id);

function tubeInWords(tube: string, { members }: Job): string {
  const member = memberOfTube(members, tube);
  const piece = member === undefined || member.id === bareId(tube) ? null : pieceNamed(tube);
  const name = shownName(member?.name ?? bareId(tube));
  return `${name}${piece === null ? '' : `, piece ${piece.piece}`}${isPrimed(tube) ? ', mirrored' : ''}`;
}

const HEAD_WORDS: Readonly<Record<string, string>> = {
  name: 'Name of the job',
  lengthUnit: 'Unit',
  marking: 'How tubes are marked',
  carMass: 'Car mass',
  torchGap: 'Room for the torch between tubes',
  torchRoom: 'Room for the torch under the roof',
  roofReach: 'How far the roof counts over a joint',
  doorOpening: 'Opening of the door',
  accuracy: 'How far work comes out off',
  tools: 'Notchers and saws',
  'survey.askew': 'Car stands askew to the lines',
  'stock.kerf': 'What the saw takes',
  'stock.squareOff': 'Squaring cut of a stick',
  'stock.keepFrom': 'Left-overs are kept from',
  'stock.begun': 'Cutting plan under the saw',
  'quote.rates': 'Rates and prices',
  'quote.heading': 'Heading of the quote',
  'quote.customer': 'Customer',
  'quote.terms': 'Terms of the quote',
  'quote.extras': 'What else is charged',
};

/** The value beside it where it is on one side alone. */
function headInWords(one: Difference, here: Job, there: Job): string {
  const name = HEAD_WORDS[one.key] ?? `"${shownName(one.key)}" of the file`;
  if (one.kind === 'differs') return name;
  const isThere = one.kind === 'only-there';
  const value = valueInWords(lastOf(one.key), isThere ? one.there : one.here, isThere ? there : here, here);
  return `${name}: ${value}`;
}

const lastOf = (key: string): string => key.split('.').at(-1)!;
