/**
 * The shop record: what stays in the shop from job to job. A new job begins with it; a job carries whole what it uses, so that
 * its file opens anywhere. Lengths mm, angles degrees. Records are flat and immutable, and those that a job has too are of the
 * job's own kinds; docs/file-formats.md says what each field means to a person.
 */
import type { Degrees } from '../geometry/angle.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { Marking } from '../job/kinds/marking.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Rates } from '../job/kinds/rates.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import type { Section } from '../job/kinds/section.ts';
import type { ShopDie } from './kinds/die.ts';
import type { Instrument } from './kinds/instrument.ts';
import type { Notcher } from '../job/kinds/notcher.ts';
import type { Saw } from '../job/kinds/saw.ts';
import type { Scatter } from '../job/kinds/scatter.ts';
import type { Sawing } from '../job/kinds/stock.ts';
import type { Stick } from './kinds/stick.ts';

export interface Shop {
  readonly format: 'cagewright/shop';
  readonly version: 1;
  /** The one machine, with its room: every die is used in it. Absent until somebody has set it up. */
  readonly bender?: Bender;
  /** How tubes were last marked here: absent, FIRST_MARKING. */
  readonly marking?: Marking;
  /** What a new job's torchGap is. Absent: FIRST_TORCH_GAP. */
  readonly torchGap?: number;
  /** The same of its torchRoom. Absent: FIRST_TORCH_ROOM. */
  readonly torchRoom?: number;
  /** mm left long at an end that is put on a foot. Absent: FIRST_FOOT_TRIM. */
  readonly footTrim?: number;
  /** Absent: FIRST_SCATTER. */
  readonly scatter?: Scatter;
  /** How far off square the bench saw can be set. Absent: nobody has said. */
  readonly benchSaw?: Degrees;
  /** What a new job is quoted with. Absent: nobody has said. */
  readonly rates?: Rates;
  /** How a new job's sticks are sawn. Absent: as nobody has said. */
  readonly sawing?: Sawing;
  readonly sections: readonly Section[];
  readonly dies: readonly ShopDie[];
  readonly pulls: readonly Pull[];
  readonly notchers: readonly Notcher[];
  readonly saws: readonly Saw[];
  readonly sticks: readonly Stick[];
  readonly instruments: readonly Instrument[];
  /** No job takes them by itself: it is offered them. */
  readonly rules: readonly RuleSheet[];
}

/** The names of the lists of records. */
export type ShopList = { [K in keyof Shop]-?: Shop[K] extends readonly object[] ? K : never }[keyof Shop];

/** A shop of which nothing is known yet. */
export const EMPTY_SHOP: Shop = {
  format: 'cagewright/shop',
  version: 1,
  sections: [],
  dies: [],
  pulls: [],
  notchers: [],
  saws: [],
  sticks: [],
  instruments: [],
  rules: [],
};
