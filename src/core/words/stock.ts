/** The cutting plan in the words of the shop. Lengths as `show` gives them. */
import type { NoStick } from '../checks/types.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { MOST_STICK_SORTS } from '../job/limits.ts';
import { shownName } from '../job/shown.ts';
import { batchOf, type Stick } from '../job/kinds/stick.ts';
import type { Job } from '../job/types.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { isKept } from '../stock/kept.ts';
import { isProven, type CutPlan, type Part, type Sawing } from '../stock/types.ts';
import type { LastCut } from '../stock/last-cut.ts';
import type { ToCut } from '../stock/to-cut.ts';
import { isUnknownBatch } from '../stock/unknown-batch.ts';
import type { Wanting } from '../stock/wanting.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { stepAbove } from '../units/step.ts';
import { comparedLength, lengthOnTape } from './lengths.ts';
import { listed } from './lists.ts';
import { stickLengthInWords } from './rack.ts';

/** What its cut wants, and what to get. */
export function noStickInWords(
  { why, length, get }: NoStick,
  {
    tube,
    frame,
    show,
  }: { readonly tube: SolvedTube; readonly frame: Pick<Frame, 'job'>; readonly show: (mm: number) => string },
): string {
  const cut = `${tube.name}: ${show(length)} to cut,`;
  const section = tube.section.name;
  const together =
    get.parts > 1 ? ` for it and ${get.parts === 2 ? '1 other part' : `${get.parts - 1} other parts`}` : '';
  const sticks = `${get.count} more ${get.count === 1 ? 'stick' : 'sticks'} of ${show(get.length)}`;
  const ofBatch = get.batch === null ? '' : ` of batch ${shownName(get.batch)}`;
  switch (why) {
    case 'none-listed':
      return `${cut} and no stick of ${section} is listed in this job. List what there is, or in what length it is bought.`;
    case 'too-long':
      return `${cut} and no stick of ${section} in this job is that long. Get one of ${atLeast(get.length, frame.job.lengthUnit)} or more.`;
    case 'batch':
      return `${cut} and too little of ${section} is there${ofBatch}. Get ${sticks} of that batch${together}, or name another batch for the tube.`;
    case 'not-found':
      return `${cut} and no way was found to place it on the sticks of ${section}${ofBatch} that there are. With ${sticks}${together} there is one.`;
    case 'too-few':
      return `${cut} and too little of ${section} is there. Get ${sticks}${together}.`;
  }
}

/** No shorter than what is asked for, as it is shown. */
const atLeast = (mm: number, unit: LengthUnit): string => lengthOnTape(stepAbove(mm, unit), unit);

/** "20 ft, batch H-204, from the rack". */
export function stickInWords(stick: Omit<Stick, 'id' | 'section'>, unit: LengthUnit): string {
  const from = stick.count === undefined ? 'to buy' : 'from the rack';
  const batch = batchOf(stick);
  const heat = batch === null ? '' : `, batch ${shownName(batch)}`;
  return `${stickLengthInWords(stick.length, unit)}${heat}, ${from}`;
}

/**
 * How good the plan is: what is proven of it. `sticks`: all that are listed of its section; where none has a price it is their length that is least, and where only some
 * have one, money is held against length, which proves nothing.
 */
export function leastInWords(
  plan: Pick<CutPlan, 'cost' | 'leastCost'>,
  sticks: readonly Pick<Stick, 'cost'>[],
): string {
  const priced = sticks.filter(({ cost }) => cost !== undefined).length;
  if (priced > 0 && priced < sticks.length)
    return 'Perhaps not the cheapest: some sticks have no price, and each of those counts as its length in mm. Give them one.';
  const [least, over] = priced > 0 ? ['costs less', 'cost'] : ['uses less stick', 'use'];
  if (isProven(plan)) return `Proven: no plan ${least}.`;
  const share = ((plan.cost - plan.leastCost) / plan.cost) * 100;
  return `Perhaps not the best: it is ${share < SHOWN ? 'less than 0.1' : share.toFixed(1)} % over what any plan is sure to ${over}.`;
}

/** Percent: what is shown as one tenth. */
const SHOWN = 0.1;

/** What becomes of what is left of a stick, mm. */
export function leftInWords(left: number, isKept: boolean, unit: LengthUnit): string {
  const shown = formatLength(left, unit).text;
  return /^0(?:\.0*)?$/u.test(shown)
    ? 'Nothing left'
    : `${shown} ${unit} left, ${isKept ? 'back on the rack' : 'scrap'}`;
}

/** Why there is no plan of a section: a fault of the program. What it failed at is tried again once that is another. */
export const unplannedInWords = (why: string): string =>
  `The cutting plan could not be worked out, which is a fault of the program: ${why}. It is tried again when a part or a stick changes.`;

/** What was just done at the saw: `names` what was cut, `left` mm, `job` as it is since. */
export function sawnInWords(number: number, names: readonly string[], left: number, job: Job): string {
  const off = offListInWords(left, job);
  const rest = off ?? `${leftInWords(left, job.sawn.at(-1)?.kept !== undefined, job.lengthUnit)}.`;
  return `Stick ${number} is sawn: ${listed(names)}. ${rest}`;
}

/** That what is left of the stick sawn last, mm, is worth keeping and no longer on the list, which was full; null where it is not so. */
export const offListInWords = (left: number, job: Job): string | null =>
  isKept(job, left) && job.sawn.at(-1)?.kept === undefined
    ? `What is left, ${lengthOnTape(left, job.lengthUnit)}, is not on the list of sticks: that is full with ${MOST_STICK_SORTS} kinds. Take out some that are gone, and add it by hand.`
    : null;

/** What is to be known of the end of the last part; null where the saw makes it. */
export function lastCutInWords(cut: LastCut, unit: LengthUnit): string | null {
  switch (cut.kind) {
    case 'sawn':
      return null;
    case 'none':
      return 'No cut behind the last part: its end is the stick’s own, see that it is square.';
    case 'ground':
      return `Behind the last part ${comparedLength(cut.over, unit)} of the stick is left, less than the blade eats: it cannot be sawn off, grind it to length.`;
  }
}

/** What is cut, by name. */
export const partInWords = ({ id, spare }: Part, byId: ReadonlyMap<string, { readonly name: string }>): string =>
  spare === null ? (byId.get(id)?.name ?? id) : 'Spare';

/** How the saw is set up, once for all sticks. */
export function sawingInWords({ kerf, squareOff }: Sawing, unit: LengthUnit): string {
  return `${squareInWords({ kerf, squareOff }, unit)}Cut in this order. Lengths are of the blank, as on each tube’s sheet; at each cut the blade is reckoned to eat ${comparedLength(kerf, unit)}. “S” is a spare.`;
}

/** A cut of less than the blade's width runs out of the stick's end. */
function squareInWords({ kerf, squareOff }: Sawing, unit: LengthUnit): string {
  if (squareOff <= 0) return '';
  if (squareOff < kerf - ROUNDING)
    return `First grind one end of each stick square: ${comparedLength(squareOff, unit)}, less than the blade eats, cannot be sawn off. `;
  return `First square one end of each stick: ${formatLength(squareOff, unit).text} ${unit}, the blade’s own cut included. `;
}

/** What has no stick, and what to get, of a section of that name. `numberOf` a tube. */
export function wantingInWords(
  wanting: Wanting,
  section: Pick<ToCut, 'sticks'> & { readonly name: string },
  numberOf: (id: string) => number | null,
  unit: LengthUnit,
): string {
  const { why, parts, count, length, batch } = wanting;
  const tubes = parts.flatMap(({ id, spare }) => (spare === null ? [`${numberOf(id) ?? id}`] : []));
  const spares = parts.length - tubes.length;
  const names = listed([...tubes, ...(spares === 0 ? [] : [spares === 1 ? 'a spare' : `${spares} spares`])]);
  const ofBatch = batch === null ? '' : `, of batch ${shownName(batch)}`;
  const sticks = `${count} more of ${stickLengthInWords(length, unit)}${ofBatch}`;
  const unknown = isUnknownBatch(section, wanting)
    ? ` No stick of ${section.name} is of batch ${shownName(batch!)}: get such a stick, or ask for no batch.`
    : '';
  switch (why) {
    case 'none-listed':
      return `No stick of this section is listed: nothing is planned for ${names}.`;
    case 'too-long':
      return `No stick for ${names}: get ${count === 1 ? 'one' : count} of ${atLeast(length, unit)} or more${ofBatch}.${unknown}`;
    case 'not-found':
      return `No way was found to place ${names} on the sticks that there are: with ${sticks}, there is one.`;
    case 'batch':
    case 'too-few':
      return `No stick for ${names}: get ${sticks}.${unknown}`;
  }
}

/** Under the count of sticks. */
export const TO_BUY = 'Of these to buy';
