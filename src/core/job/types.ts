/**
 * The job: the one document that a person edits and keeps. Lengths mm, angles degrees, masses kg; axes ISO 8855
 * (x forward, y left, z up) with the centre plane at y = 0. Records are flat and immutable; the order of `members`
 * is the build order. All that is known of a kind of record stands in its file in kinds/; docs/file-formats.md says what
 * each field means to a person.
 */
import type { LengthUnit } from '../units/length.ts';
import type { Accuracy } from './kinds/accuracy.ts';
import type { BentTube } from './kinds/bent.ts';
import type { BodyLine } from './kinds/body-line.ts';
import type { Certificate } from './kinds/certificate.ts';
import type { Die } from './kinds/die.ts';
import type { Envelope } from './kinds/envelope.ts';
import type { TubeFeed } from './kinds/feed.ts';
import type { Foot } from './kinds/foot.ts';
import type { Gusset } from './kinds/gusset.ts';
import type { Hold } from './kinds/hold.ts';
import type { MadeTube } from './kinds/made.ts';
import type { Marking } from './kinds/marking.ts';
import type { Measurement } from './kinds/measurement.ts';
import type { Member } from './kinds/member.ts';
import type { FrameNode } from './kinds/node.ts';
import type { TubeNumbers } from './kinds/numbers.ts';
import type { Photo } from './kinds/photo.ts';
import type { Point } from './kinds/point.ts';
import type { Printed } from './kinds/printed.ts';
import type { Pull } from './kinds/pull.ts';
import type { Scan } from './kinds/scan.ts';
import type { Seen } from './kinds/seen.ts';
import type { Quote } from './kinds/quote.ts';
import type { RuleSheet } from './kinds/rule-sheet.ts';
import type { Section } from './kinds/section.ts';
import type { Sawn } from './kinds/sawn.ts';
import type { Spare } from './kinds/spare.ts';
import type { Stick } from './kinds/stick.ts';
import type { Variant } from './kinds/variant.ts';
import type { StockBlock } from './kinds/stock.ts';
import type { SurveyBlock } from './kinds/survey.ts';
import type { Tools } from './kinds/tools.ts';

export interface Job {
  readonly format: 'cagewright/job';
  readonly version: 1;
  readonly name: string;
  /** How a person wants lengths shown and typed; nothing is stored in it. */
  readonly lengthUnit: LengthUnit;
  /** What ids of new records end in while the job stands on several devices, one for each: so no two of them make the same. */
  readonly idMark?: string;
  /** Absent: FIRST_MARKING. */
  readonly marking?: Marking;
  /** What tubes are called by in the shop, given once; absent: by build order. See numbers.ts. */
  readonly numbers?: TubeNumbers;
  /** The greatest number that was ever given, be its tube still there or not. */
  readonly lastNumber?: number;
  /** kg, as the rule book wants the car weighed. Absent: nobody has said. */
  readonly carMass?: number;
  /** mm that a torch wants between two tubes that are not joined. Absent: FIRST_TORCH_GAP. */
  readonly torchGap?: number;
  /** mm that a torch wants above a joint under the roof. Absent: FIRST_TORCH_ROOM. */
  readonly torchRoom?: number;
  /** mm aside of a joint, seen from above, within which what was measured is over it. Absent: FIRST_ROOF_REACH. */
  readonly roofReach?: number;
  /** mm: the longest straight way across the door's opening, typed. Absent: as its points were measured. */
  readonly doorOpening?: number;
  /** What the forecast of fit is reckoned with. Absent: FIRST_ACCURACY. */
  readonly accuracy?: Accuracy;
  /** What ends are cut with. Absent: nobody has said, and recipes are general. */
  readonly tools?: Tools;
  /** Of the block that a file holds `hold` and `measurements` in, what is no list. */
  readonly survey?: SurveyBlock;
  /** How sticks are sawn: of the block that a file holds `sticks` and `spares` in, what is no list. */
  readonly stock?: StockBlock;
  /** What the job is quoted with. Absent: nobody has said anything. */
  readonly quote?: Quote;
  readonly points: readonly Point[];
  /** In a file `survey.hold`, beside its measurements. */
  readonly holds: readonly Hold[];
  /** In a file `survey.measurements`. */
  readonly measurements: readonly Measurement[];
  readonly bodyLines: readonly BodyLine[];
  readonly sections: readonly Section[];
  readonly dies: readonly Die[];
  readonly nodes: readonly FrameNode[];
  readonly members: readonly Member[];
  readonly feet: readonly Foot[];
  readonly gussets: readonly Gusset[];
  readonly envelopes: readonly Envelope[];
  readonly rules: readonly RuleSheet[];
  /** In a file `stock.sticks`. */
  readonly stickSorts: readonly Stick[];
  /** In a file `stock.spares`. */
  readonly spares: readonly Spare[];
  /** In a file `stock.sawn`. */
  readonly sawn: readonly Sawn[];
  readonly pulls: readonly Pull[];
  readonly bent: readonly BentTube[];
  readonly made: readonly MadeTube[];
  readonly feeds: readonly TubeFeed[];
  readonly seen: readonly Seen[];
  readonly printed: readonly Printed[];
  readonly scans: readonly Scan[];
  readonly certificates: readonly Certificate[];
  readonly photos: readonly Photo[];
  readonly variants: readonly Variant[];
}

/** The names of the lists of records, of whatever kind. */
export type List = { [K in keyof Job]-?: Job[K] extends readonly object[] ? K : never }[keyof Job];

export type AnyRecord = Job[List][number];

/** The lists of records that carry an id. */
export type Collection = { [L in List]: Job[L] extends readonly { readonly id: string }[] ? L : never }[List];

/** Of these the lists of records that carry a name, too. */
export type NamedList = {
  [L in Collection]: Job[L] extends readonly { readonly name: string }[] ? L : never;
}[Collection];
