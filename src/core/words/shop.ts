/** Where shop and job differ, in sentences; lengths in the job's unit. Names come from files: they are shown as they are, shortened. */
import { figure } from '../job/fault.ts';
import { shownName } from '../job/shown.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { BenderField, DieField, Difference, FieldDifference, SectionField } from '../shop/differences.ts';
import { steelInWords } from '../springback/steels.ts';
import type { LengthUnit } from '../units/length.ts';
import { exactText } from '../units/step.ts';
import { capital, listed } from './lists.ts';

/** The difference as a sentence; `nameOf` gives a die's name in the job. */
export function differenceInWords(one: Difference, unit: LengthUnit, nameOf: (die: string) => string): string {
  switch (one.kind) {
    case 'section/otherwise':
      return `Section ${shownName(one.name)}. ${fieldsInWords(one.fields, SECTION_WORDS, unit)}.`;
    case 'die/otherwise':
      return `Die ${shownName(one.name)}. ${fieldsInWords(one.fields, DIE_WORDS, unit)}.`;
    case 'section/not-in-shop':
      return `Section ${shownName(one.name)} is not in the shop record.`;
    case 'die/not-in-shop':
      return `Die ${shownName(one.name)} is not in the shop record.`;
    case 'bender/otherwise':
      return `The bender of ${diesInWords(one.dies, nameOf)}. ${fieldsInWords(one.fields, BENDER_WORDS, unit)}.`;
    case 'bender/not-in-shop':
      return `The bender of ${diesInWords(one.dies, nameOf)} is not in the shop record.`;
    case 'bender/not-in-job':
      return `The shop’s bender is not set up in this job for ${diesInWords(one.dies, nameOf)}.`;
    case 'tools/otherwise':
      return 'The shop’s notchers and saws are not those of this job: its recipes go by its own.';
    case 'tools/not-in-shop':
      return 'This job’s notchers and saws are not in the shop record.';
    case 'tools/not-in-job':
      return 'The shop’s notchers and saws are not in this job: its recipes are general.';
    case 'rates/otherwise':
      return 'The shop’s rates and prices are not those of this job: its quote goes by its own.';
    case 'rates/not-in-shop':
      return 'This job’s rates and prices are not in the shop record.';
    case 'rates/not-in-job':
      return 'The shop’s rates and prices are not in this job: its quote has none.';
    case 'pulls/not-in-shop':
      return `This job has ${pullsInWords(one)} that the shop’s log has not.`;
    case 'pulls/not-in-job':
      return `The shop’s log has ${pullsInWords(one)} that this job has not.`;
  }
}

const diesInWords = (dies: readonly string[], nameOf: (die: string) => string): string =>
  listed(dies.map((die) => shownName(nameOf(die))));

function pullsInWords({ count, names }: Extract<Difference, { readonly count: number }>): string {
  const [die, section] = names.map(shownName);
  return `${count} ${count === 1 ? 'pull' : 'pulls'} of ${section} on ${die}`;
}

type Show = (value: unknown, unit: LengthUnit) => string;

/** What the field is called in the middle of a sentence, and how its value is shown. */
interface FieldWords {
  readonly label: string;
  readonly show: Show;
}

const length: Show = (value, unit) =>
  typeof value === 'number' ? `${exactText(value, unit)} ${unit}`.replaceAll(' ', '\u00a0') : 'not given';
const angle: Show = (value) => (typeof value === 'number' ? `${figure(value)}°` : 'not given');
const steel: Show = (value) => steelInWords({ material: String(value) }) || 'not given';
const oneOf =
  (words: Readonly<Record<string, string>>): Show =>
  (value) =>
    words[String(value)] ?? 'not given';

const SECTION_WORDS: Readonly<Record<SectionField, FieldWords>> = {
  wall: { label: 'wall', show: length },
  material: { label: 'material', show: steel },
  stick: { label: 'length of its sticks', show: length },
};

/** Which radius bends are laid out with. */
export const RADIUS_BY: Readonly<Record<Die['radius'], string>> = {
  nominal: 'as the die says',
  'from-pulls': 'as the pulls say',
};

const DIE_WORDS: Readonly<Record<DieField, FieldWords>> = {
  centrelineRadius: { label: 'centreline radius', show: length },
  clampOffset: { label: 'clamp before start of bend', show: length },
  leastStraight: { label: 'shortest straight between bends', show: length },
  leastGrip: { label: 'shortest tail it can grip', show: length },
  greatestAngle: { label: 'greatest angle', show: angle },
  radius: {
    label: 'radius that bends are laid out with',
    show: oneOf(RADIUS_BY),
  },
};

const BENDER_WORDS: Readonly<Record<BenderField, FieldWords>> = {
  turns: { label: 'side to which it bends', show: oneOf({ left: 'left', right: 'right' }) },
  bendLies: {
    label: 'bends lie',
    show: oneOf({ beyond: 'beyond their marks', before: 'before their marks' }),
  },
  planeHeight: { label: 'height of the tube over the floor', show: length },
  rotationBy: { label: 'rotation read by', show: oneOf({ level: 'a level', wheel: 'a wheel' }) },
  levelStep: { label: 'level reads to', show: angle },
  wheelStep: { label: 'wheel reads to', show: angle },
  pullStep: { label: 'its own scale reads to', show: angle },
  room: {
    label: 'room round it',
    show: (value) =>
      Array.isArray(value) ? `${value.length} ${value.length === 1 ? 'thing' : 'things'}` : 'not given',
  },
};

/** What is known of the machine, field by field. */
export const benderInWords = (bender: Bender, unit: LengthUnit): readonly (readonly [label: string, value: string])[] =>
  (Object.keys(BENDER_WORDS) as BenderField[]).map((field) => {
    const { label, show } = BENDER_WORDS[field];
    return [label, show(bender[field], unit)];
  });

function fieldsInWords<F extends string>(
  fields: readonly FieldDifference<F>[],
  words: Readonly<Record<F, FieldWords>>,
  unit: LengthUnit,
): string {
  const sentence = fields
    .map(({ field, inShop, inJob }) => {
      const { label, show } = words[field];
      const [there, here] = [show(inShop, unit), show(inJob, unit)];
      // Things that were moved, or a hair's breadth, may read alike.
      return there === here ? `${label} not the same` : `${label}: shop ${there}, this job ${here}`;
    })
    .join('; ');
  return capital(sentence);
}
