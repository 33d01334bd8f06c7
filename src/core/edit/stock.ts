/** Edits of what there is to cut from, how it is sawn, and what is cut beside the tubes. */
import { batchKey, isSameBatch } from '../job/batch.ts';
import { sortsSawn, type Sawn } from '../job/kinds/sawn.ts';
import type { Member } from '../job/kinds/member.ts';
import type { Spare } from '../job/kinds/spare.ts';
import type { Stick } from '../job/kinds/stick.ts';
import { FIRST_KERF, FIRST_KEPT, type Sawing } from '../job/kinds/stock.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { MemberId, SectionId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, takeOut } from './records.ts';

/** mm. What tube is sold in where nobody has said: 20 ft (common practice in inches). */
const FIRST_STICK = 6096;

/** mm. Two feet: enough to clamp, to bend and to read (common practice). */
const TEST_PIECE = 609.6;

/** Sticks of a section to be bought, as many as are wanted, as long as its sticks are. */
export const addStick = (job: Job, section: SectionId): Job =>
  appendRecord(job, 'stickSorts', {
    id: nextId(job, 'stickSorts', sortsSawn(job)),
    section,
    length: job.sections.find(({ id }) => id === section)?.stick ?? FIRST_STICK,
  });

/** A field that is null, or a batch that is empty, is taken out: as many as are wanted, no price, any batch. One that is another stick by now is none of the shop's rack. */
export const updateStick = (
  job: Job,
  id: string,
  fields: { readonly [K in keyof Omit<Stick, 'id' | 'rack'>]?: Stick[K] | null },
): Job =>
  changeRecord(job, 'stickSorts', id, (stick) => {
    const next = withFields(stick, fields);
    if (next === stick || !OF_RACK.some((key) => next[key] !== stick[key])) return next;
    return withFields<Stick>(next, { rack: null });
  });

/** What the shop knows a stick on its rack by; to be bought is on no rack. */
const OF_RACK = ['section', 'length', 'batch'] as const;

export const removeStick = (job: Job, id: string): Job => takeOut(job, 'stickSorts', new Set([id]));

export const addSpare = (job: Job, spare: Spare): Job => ({ ...job, spares: [...job.spares, spare] });

/** `index`: which one in the job's list. A batch that is empty is taken out. */
export function updateSpare(job: Job, index: number, fields: { readonly [K in keyof Spare]?: Spare[K] | null }): Job {
  const spares = mapKeeping(job.spares, (spare, at) => (at === index ? withFields(spare, fields) : spare));
  return spares === job.spares ? job : { ...job, spares };
}

export const removeSpare = (job: Job, index: number): Job =>
  index in job.spares ? { ...job, spares: job.spares.toSpliced(index, 1) } : job;

/** A piece to test bend of each batch that a member which bends is to be of, where none is listed; the same job where all have one. */
export function addTestPieces(job: Job): Job {
  const wanted = job.members.flatMap(({ section, batch, die }) =>
    batchKey(batch) === null || die === undefined ? [] : [{ section, batch: batch! }],
  );
  const missing = wanted.filter(
    (one, at) =>
      wanted.findIndex((other) => isSame(one, other)) === at && !job.spares.some((spare) => isSame(one, spare)),
  );
  return missing.reduce((next, one) => addSpare(next, { ...one, length: TEST_PIECE, count: 1 }), job);
}

/** The members and spares, these by their places in the job's list, of any batch from then on; the same job where all are. */
export function dropBatch(
  job: Job,
  { members, spares }: { readonly members: readonly MemberId[]; readonly spares: readonly number[] },
): Job {
  const [named, listed] = [new Set(members), new Set(spares)];
  const next = {
    members: mapKeeping(job.members, (each) => (named.has(each.id) ? withFields<Member>(each, { batch: null }) : each)),
    spares: mapKeeping(job.spares, (each, at) => (listed.has(at) ? withFields<Spare>(each, { batch: null }) : each)),
  };
  return next.members === job.members && next.spares === job.spares ? job : { ...job, ...next };
}

const isSame = (
  one: { readonly section: SectionId; readonly batch?: string },
  other: { readonly section: SectionId; readonly batch?: string },
): boolean => one.section === other.section && isSameBatch(one.batch, other.batch);

/** mm, each of them. */
export function setSawing(job: Job, fields: Sawing): Job {
  const { kerf = FIRST_KERF, squareOff = 0, keepFrom = FIRST_KEPT } = job.stock ?? {};
  const before: Required<Sawing> = { kerf, squareOff, keepFrom };
  const keys = Object.keys(fields) as (keyof Sawing)[];
  return keys.every((key) => before[key] === fields[key]) ? job : { ...job, stock: { ...job.stock, ...fields } };
}

/** The record with these; nothing in the place of a field takes it out. */
function withFields<T extends object>(record: T, fields: { readonly [K in keyof T]?: T[K] | null }): T {
  const keys = Object.keys(fields) as (keyof T)[];
  const isThere = (key: keyof T): boolean => fields[key] !== null && fields[key] !== '';
  if (keys.every((key) => (isThere(key) ? record[key] === fields[key] : !(key in record)))) return record;
  const next: Partial<T> = { ...record };
  for (const key of keys) {
    if (isThere(key)) next[key] = fields[key] as T[keyof T];
    else delete next[key];
  }
  return next as T;
}

/** The heat of a stick that was sawn, as it stands on the steel; '' takes it out. Its left-over, while that is on the list, is of it too. */
export function setSawnBatch(job: Job, id: string, batch: string): Job {
  const sawn = job.sawn.find((each) => each.id === id);
  if (sawn === undefined || (sawn.batch ?? '') === batch) return job;
  const changed = changeRecord(job, 'sawn', id, (each) => withFields<Sawn>(each, { batch }));
  return sawn.kept === undefined
    ? changed
    : changeRecord(changed, 'stickSorts', sawn.kept, (stick) => withFields(stick, { batch }));
}
