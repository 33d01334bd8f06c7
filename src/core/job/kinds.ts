/**
 * The kinds of record, a row for each list of the job, in the order in which a file holds them. The compiler wants a row for
 * each list; the schema, the check of a job, its text, diffs, ids, refused deletions and the sequence of solving go by the table.
 */
import { bentKind } from './kinds/bent.ts';
import { bodyLineKind } from './kinds/body-line.ts';
import { certificateKind } from './kinds/certificate.ts';
import { dieKind } from './kinds/die.ts';
import { envelopeKind } from './kinds/envelope.ts';
import { feedKind } from './kinds/feed.ts';
import { footKind } from './kinds/foot.ts';
import { gussetKind } from './kinds/gusset.ts';
import type { Kind, Listed, Named, Nameless } from './kinds/kind.ts';
import { holdKind } from './kinds/hold.ts';
import { madeKind } from './kinds/made.ts';
import { measurementKind } from './kinds/measurement.ts';
import { memberKind } from './kinds/member.ts';
import { nodeKind } from './kinds/node.ts';
import { photoKind } from './kinds/photo.ts';
import { pointKind } from './kinds/point.ts';
import { printedKind } from './kinds/printed.ts';
import { ruleSheetKind } from './kinds/rule-sheet.ts';
import { pullKind } from './kinds/pull.ts';
import { scanKind } from './kinds/scan.ts';
import { sawnKind } from './kinds/sawn.ts';
import { seenKind } from './kinds/seen.ts';
import { spareKind } from './kinds/spare.ts';
import { stickKind } from './kinds/stick.ts';
import { variantKind } from './kinds/variant.ts';
import { sectionKind } from './kinds/section.ts';
import type { AnyRecord, Collection, Job, List, NamedList } from './types.ts';

const KINDS: { readonly [L in List]: Kind<Job[L][number]> } = {
  points: pointKind,
  holds: holdKind,
  measurements: measurementKind,
  bodyLines: bodyLineKind,
  sections: sectionKind,
  dies: dieKind,
  nodes: nodeKind,
  members: memberKind,
  feet: footKind,
  gussets: gussetKind,
  envelopes: envelopeKind,
  rules: ruleSheetKind,
  stickSorts: stickKind,
  spares: spareKind,
  sawn: sawnKind,
  pulls: pullKind,
  bent: bentKind,
  made: madeKind,
  feeds: feedKind,
  seen: seenKind,
  printed: printedKind,
  scans: scanKind,
  certificates: certificateKind,
  photos: photoKind,
  variants: variantKind,
};

/** The names of the lists, in the order in which a file holds them. */
export const LISTS = Object.keys(KINDS) as readonly List[];

/** A row, for what treats all kinds alike. */
export const kindOf = (list: List): Listed<AnyRecord> & Partial<Named<AnyRecord> & Nameless> => KINDS[list];

/** The lists of records that carry an id. */
export const COLLECTIONS = LISTS.filter((list): list is Collection => kindOf(list).letter !== undefined);

/** Of these the lists of records that carry a name, too. */
export const NAMED = COLLECTIONS.filter((list): list is NamedList => kindOf(list).inWords === undefined);
