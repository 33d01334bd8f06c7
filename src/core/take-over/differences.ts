/** What differs between two states of a job, record by record, as facts: core/words/take-over.ts makes sentences of them. */
import { sameData } from '../job/equal.ts';
import { STAGES, type MadeTube } from '../job/kinds/made.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import { headFields, keyed, SHELVES, type ShelfName } from './shelves.ts';

/** Under which it is listed. */
export type Trade = 'measured' | 'drawn' | 'stock' | 'rules' | 'shop';

/** In the order in which they are listed. */
export const TRADES: readonly Trade[] = ['measured', 'drawn', 'stock', 'rules', 'shop'];

export interface FieldDiffers {
  readonly field: string;
  /** undefined where it is not there. */
  readonly here: unknown;
  readonly there: unknown;
}

export interface Difference {
  /** No two of a list have the same. */
  readonly id: string;
  readonly trade: Trade;
  /** Where it stands; 'head': what of the job is no record, by its name. */
  readonly on: ShelfName | 'head';
  readonly key: string;
  readonly kind: 'only-here' | 'only-there' | 'differs';
  /** The record, or what stands in the field; undefined where it is not. */
  readonly here?: unknown;
  readonly there?: unknown;
  /** Of one that is in both. */
  readonly fields: readonly FieldDiffers[];
  /** It is offered as chosen: it was measured or done there and is not here, or goes on from what is here. */
  readonly offered: boolean;
}

/**
 * All that differs, trade by trade, in the order of the lists, and of what is only there in the order there. `other` by the ids of
 * `job` (aligned.ts). Neither the order of lists nor the numbers of tubes count.
 */
export function differencesOf(job: Job, other: Job): readonly Difference[] {
  const found = [
    ...SHELVES.flatMap((shelf) =>
      job[shelf.name as keyof Job] !== undefined && job[shelf.name as keyof Job] === other[shelf.name as keyof Job]
        ? []
        : between(shelf.name, keyed(shelf, job), keyed(shelf, other)),
    ),
    ...between('head', headFields(job), headFields(other)),
  ];
  return TRADES.flatMap((trade) => found.filter((one) => one.trade === trade));
}

function between(
  on: Difference['on'],
  here: ReadonlyMap<string, unknown>,
  there: ReadonlyMap<string, unknown>,
): readonly Difference[] {
  const keys = new Set([...here.keys(), ...there.keys()]);
  return [...keys].flatMap((key): readonly Difference[] => {
    const [ours, theirs] = [here.get(key), there.get(key)];
    if (sameData(ours, theirs)) return [];
    const trade = on === 'head' ? (TRADE_OF_FIELD[key] ?? 'shop') : TRADE_OF[on];
    const common = { id: `${on}/${key}`, trade, on, key };
    if (theirs === undefined) return [{ ...common, kind: 'only-here', here: ours, fields: [], offered: false }];
    if (ours === undefined) {
      return [{ ...common, kind: 'only-there', there: theirs, fields: [], offered: DONE.has(on) }];
    }
    const fields =
      on === 'head' ? [{ field: key.split('.').at(-1)!, here: ours, there: theirs }] : fieldsBetween(ours, theirs);
    return [{ ...common, kind: 'differs', here: ours, there: theirs, fields, offered: goesOn(on, ours, theirs) }];
  });
}

function fieldsBetween(ours: unknown, theirs: unknown): readonly FieldDiffers[] {
  const [a, b] = [ours, theirs] as readonly Readonly<Record<string, unknown>>[];
  return [...new Set([...Object.keys(a!), ...Object.keys(b!)])].flatMap((field) =>
    sameData(a![field], b![field]) ? [] : [{ field, here: a![field], there: b![field] }],
  );
}

const TRADE_OF: Readonly<Record<ShelfName, Trade>> = {
  points: 'measured',
  holds: 'measured',
  measurements: 'measured',
  samples: 'measured',
  bodyLines: 'measured',
  scans: 'measured',
  pulls: 'measured',
  bent: 'measured',
  nodes: 'drawn',
  members: 'drawn',
  feet: 'drawn',
  gussets: 'drawn',
  envelopes: 'drawn',
  sections: 'stock',
  dies: 'stock',
  stickSorts: 'stock',
  spares: 'stock',
  sawn: 'stock',
  rules: 'rules',
  made: 'shop',
  feeds: 'shop',
  seen: 'shop',
  printed: 'shop',
  certificates: 'shop',
  photos: 'shop',
  variants: 'shop',
  took: 'shop',
};

/** The others are the shop's. */
const TRADE_OF_FIELD: Readonly<Record<string, Trade>> = {
  'survey.askew': 'measured',
  doorOpening: 'measured',
  torchGap: 'drawn',
  torchRoom: 'drawn',
  roofReach: 'drawn',
  carMass: 'rules',
  'stock.kerf': 'stock',
  'stock.squareOff': 'stock',
  'stock.keepFrom': 'stock',
  'stock.begun': 'stock',
};

/** What was read or done, and would be lost if nobody thought of it. What was drawn or chosen is for a person to ask for. */
const DONE: ReadonlySet<string> = new Set<ShelfName>([
  'points',
  'measurements',
  'samples',
  'pulls',
  'bent',
  'made',
  'sawn',
  'certificates',
  'took',
]);

/** Whether there the work on the tube was gone on with from where it stands here: all that was read and done is there too. */
function goesOn(on: Difference['on'], ours: unknown, theirs: unknown): boolean {
  if (on === 'made') {
    const [here, there] = [ours, theirs] as readonly MadeTube[];
    return sameData(here!.held, there!.held) && STAGES.indexOf(there!.stage) > STAGES.indexOf(here!.stage);
  }
  if (on !== 'bent') return false;
  const [here, there] = [ours, theirs] as readonly BentTube[];
  const { done: d, bends: b, checks: c, ...rest } = here!;
  const { done, bends, checks, ...restThere } = there!;
  const holds = (all: readonly unknown[], some: readonly unknown[]): boolean =>
    some.every((one) => all.some((each) => sameData(each, one)));
  return sameData(rest, restThere) && holds(done, d) && holds(bends, b) && holds(checks, c);
}
