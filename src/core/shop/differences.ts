/**
 * Where shop and job differ, as facts: core/words/shop.ts makes sentences of them. Names are no difference, and neither is what
 * the shop alone has, but for pulls that a job's bends would go by. What the job alone has is one where it uses it: a die or a
 * section that a tube is made with, and pulls of such a die and section.
 */
import type { Bender } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Rates } from '../job/kinds/rates.ts';
import type { Section } from '../job/kinds/section.ts';
import type { Tools } from '../job/kinds/tools.ts';
import { sameData } from '../job/equal.ts';
import type { DieId, SectionId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { counterparts, isSameLength, type Counterparts } from './counterparts.ts';
import { allLogged, unlogged } from './log.ts';
import { toolsOf } from './tools.ts';
import type { Shop } from './types.ts';

export type SectionField = 'wall' | 'material' | 'stick';
export type DieField = 'centrelineRadius' | 'clampOffset' | 'leastStraight' | 'leastGrip' | 'greatestAngle' | 'radius';
export type BenderField = keyof Bender;

/** What stands in a field on either side: lengths mm, angles degrees; undefined where nothing is said. */
export interface FieldDifference<F> {
  readonly field: F;
  readonly inShop: unknown;
  readonly inJob: unknown;
}

/** Ids and names are the job's. */
export type Difference =
  | {
      readonly kind: 'section/otherwise';
      readonly id: SectionId;
      readonly name: string;
      readonly fields: readonly FieldDifference<SectionField>[];
    }
  | {
      readonly kind: 'die/otherwise';
      readonly id: DieId;
      readonly name: string;
      readonly fields: readonly FieldDifference<DieField>[];
    }
  | { readonly kind: 'section/not-in-shop'; readonly id: SectionId; readonly name: string }
  | { readonly kind: 'die/not-in-shop'; readonly id: DieId; readonly name: string }
  /** Of the dies that the job uses the machine with; one for each machine that the job has. */
  | {
      readonly kind: 'bender/otherwise';
      readonly dies: readonly DieId[];
      readonly fields: readonly FieldDifference<BenderField>[];
    }
  | { readonly kind: 'bender/not-in-shop' | 'bender/not-in-job'; readonly dies: readonly DieId[] }
  /** What ends are cut with. */
  | { readonly kind: 'tools/otherwise' | 'tools/not-in-shop' | 'tools/not-in-job' }
  /** What it is quoted with. */
  | { readonly kind: 'rates/otherwise' | 'rates/not-in-shop' | 'rates/not-in-job' }
  | {
      readonly kind: 'pulls/not-in-shop' | 'pulls/not-in-job';
      readonly die: DieId;
      readonly section: SectionId;
      /** The names of both. */
      readonly names: readonly [string, string];
      readonly count: number;
    };

/**
 * What a person is to be asked about when the job is opened. A shop that has set down no die has nothing to say of dies, and so
 * with sections and the bender.
 */
export const differences = (shop: Shop, job: Job): readonly Difference[] =>
  allDifferences(shop, job, usedBy(job)).filter(
    ({ kind }) =>
      !(kind === 'section/not-in-shop' && shop.sections.length === 0) &&
      !(kind === 'die/not-in-shop' && shop.dies.length === 0) &&
      kind !== 'bender/not-in-shop' &&
      kind !== 'tools/not-in-shop' &&
      kind !== 'rates/not-in-shop' &&
      !(kind === 'pulls/not-in-shop' && shop.sections.length + shop.dies.length === 0),
  );

/** All that the job has and the shop has not, or has otherwise, used or not. */
export const allThatDiffers = (shop: Shop, job: Job): readonly Difference[] =>
  allDifferences(shop, job, {
    sections: job.sections,
    dies: job.dies,
    pairs: distinct([...usedBy(job).pairs, ...job.pulls.map(pairOf)]),
  });

/** What of the job counts. */
interface Used {
  readonly sections: readonly Section[];
  readonly dies: readonly Die[];
  readonly pairs: readonly Pair[];
}

type Pair = Pick<Pull, 'die' | 'section'>;

function usedBy(job: Job): Used {
  const pairs = job.members.flatMap(({ die, section }) => (die === undefined ? [] : [{ die, section }]));
  const sections = new Set(job.members.map(({ section }) => section));
  const dies = new Set(pairs.map(({ die }) => die));
  return {
    sections: job.sections.filter(({ id }) => sections.has(id)),
    dies: job.dies.filter(({ id }) => dies.has(id)),
    pairs: distinct(pairs),
  };
}

const pairOf = ({ die, section }: Pull): Pair => ({ die, section });

const distinct = (pairs: readonly Pair[]): readonly Pair[] =>
  pairs.filter((pair, at) => pairs.findIndex((other) => sameData(pair, other)) === at);

function allDifferences(shop: Shop, job: Job, used: Used): readonly Difference[] {
  const found = counterparts(job, shop);
  return [
    ...job.sections.flatMap((section) => ofSection(section, found, used)),
    ...job.dies.flatMap((die) => ofDie(die, found, used)),
    ...ofBenders(shop.bender, job, found, used),
    ...ofTools(toolsOf(shop), job),
    ...ofRates(shop.rates, job),
    ...used.pairs.flatMap((pair) => ofPulls(pair, shop, job, found)),
  ];
}

function ofSection(section: Section, { sections }: Counterparts, used: Used): readonly Difference[] {
  const { id, name } = section;
  const there = sections.get(id);
  if (there === undefined) return used.sections.includes(section) ? [{ kind: 'section/not-in-shop', id, name }] : [];
  const fields = fieldDifferences<SectionField>(['wall', 'material', 'stick'], there, section);
  return fields.length === 0 ? [] : [{ kind: 'section/otherwise', id, name, fields }];
}

const DIE_FIELDS: readonly DieField[] = [
  'centrelineRadius',
  'clampOffset',
  'leastStraight',
  'leastGrip',
  'greatestAngle',
  'radius',
];

function ofDie(die: Die, { dies }: Counterparts, used: Used): readonly Difference[] {
  const { id, name } = die;
  const there = dies.get(id);
  if (there === undefined) return used.dies.includes(die) ? [{ kind: 'die/not-in-shop', id, name }] : [];
  const fields = fieldDifferences(DIE_FIELDS, there, die);
  return fields.length === 0 ? [] : [{ kind: 'die/otherwise', id, name, fields }];
}

const BENDER_FIELDS: readonly BenderField[] = [
  'turns',
  'bendLies',
  'planeHeight',
  'rotationBy',
  'levelStep',
  'wheelStep',
  'pullStep',
  'room',
];

/** Of a die that the shop has not, the machine is another's. */
function ofBenders(bender: Bender | undefined, job: Job, found: Counterparts, used: Used): readonly Difference[] {
  const known = job.dies.filter((die) => found.dies.has(die.id) || (bender === undefined && used.dies.includes(die)));
  const machines = known.flatMap((die) => die.bender ?? []);
  const different = machines.filter((one, at) => machines.findIndex((other) => sameData(one, other)) === at);
  const bare = known.filter((die) => die.bender === undefined).map(({ id }) => id);
  const ofMachine = (machine: Bender): readonly Difference[] => {
    const dies = known.filter((die) => sameData(die.bender, machine)).map(({ id }) => id);
    if (bender === undefined) return [{ kind: 'bender/not-in-shop', dies }];
    const fields = fieldDifferences(BENDER_FIELDS, bender, machine);
    return fields.length === 0 ? [] : [{ kind: 'bender/otherwise', dies, fields }];
  };
  const lacking: readonly Difference[] =
    bender === undefined || bare.length === 0 ? [] : [{ kind: 'bender/not-in-job', dies: bare }];
  return [...different.flatMap(ofMachine), ...lacking];
}

/** A job with no tube in it has no end to cut. */
function ofTools(inShop: Tools | undefined, { tools, members }: Job): readonly Difference[] {
  const inJob = tools && toolsOf(tools);
  if (sameData(inShop, inJob)) return [];
  if (inShop === undefined) return [{ kind: 'tools/not-in-shop' }];
  if (members.length === 0) return [];
  return [{ kind: inJob === undefined ? 'tools/not-in-job' : 'tools/otherwise' }];
}

/** Of a job with no tube in it there is nothing to quote. */
function ofRates(inShop: Rates | undefined, { quote, members }: Job): readonly Difference[] {
  const inJob = quote?.rates;
  if (sameData(inShop, inJob)) return [];
  if (inShop === undefined) return [{ kind: 'rates/not-in-shop' }];
  if (members.length === 0) return [];
  return [{ kind: inJob === undefined ? 'rates/not-in-job' : 'rates/otherwise' }];
}

function ofPulls({ die, section }: Pair, shop: Shop, job: Job, found: Counterparts): readonly Difference[] {
  const isOfPair = (pull: Pull): boolean => pull.die === die && pull.section === section;
  const [theirDie, theirSection] = [found.dies.get(die), found.sections.get(section)];
  const ours = job.pulls.filter(isOfPair);
  const isKnown = theirDie !== undefined && theirSection !== undefined;
  const theirs = isKnown
    ? shop.pulls.filter((pull) => pull.die === theirDie.id && pull.section === theirSection.id)
    : [];
  const logged = allLogged(ours, found);
  const [notInShop, notInJob] = isKnown
    ? [unlogged(logged, theirs).length, unlogged(theirs, logged).length]
    : [ours.length, 0];
  const named = (list: readonly { id: string; name: string }[], id: string): string =>
    list.find((record) => record.id === id)?.name ?? id;
  const names = [named(job.dies, die), named(job.sections, section)] as const;
  return [
    ...(notInShop === 0 ? [] : [{ kind: 'pulls/not-in-shop', die, section, names, count: notInShop } as const]),
    ...(notInJob === 0 ? [] : [{ kind: 'pulls/not-in-job', die, section, names, count: notInJob } as const]),
  ];
}

function fieldDifferences<F extends string>(
  fields: readonly F[],
  there: { readonly [K in F]?: unknown },
  here: { readonly [K in F]?: unknown },
): readonly FieldDifference<F>[] {
  return fields.flatMap((field) => {
    const [inShop, inJob] = [there[field], here[field]];
    const isSame =
      typeof inShop === 'number' && typeof inJob === 'number' ? isSameLength(inShop, inJob) : sameData(inShop, inJob);
    return isSame ? [] : [{ field, inShop, inJob }];
  });
}
