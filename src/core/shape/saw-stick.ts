/**
 * A stick of the plan that was sawn: its tubes are cut and held from then on, its spares are there, the rack has one stick less, and one more where what is left is
 * worth keeping and the list has room for it.
 */
import { nextId } from '../edit/ids.ts';
import type { Edited } from '../edit/records.ts';
import { isSameBatch } from '../job/batch.ts';
import { fault } from '../job/fault.ts';
import { MOST_STICK_SORTS } from '../job/limits.ts';
import { costOfLeft, sortsSawn, type Sawn, type SawnPart } from '../job/kinds/sawn.ts';
import type { Spare } from '../job/kinds/spare.ts';
import type { Stick } from '../job/kinds/stick.ts';
import type { BegunPart, BegunStick } from '../job/kinds/begun.ts';
import type { SectionId } from '../job/reference.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { isKept } from '../stock/kept.ts';
import type { CutStick } from '../stock/types.ts';
import { setStage, stageOf } from './made-stage.ts';

/** Sticks of the same plan, in their order, each with its number; `proven` is the plan they are of. */
export interface StillToSaw {
  readonly sticks: readonly (Pick<CutStick, 'stick' | 'parts'> & { readonly number: number })[];
  readonly proven: boolean;
}

/**
 * The job, which the frame is derived from, with the stick of its plan sawn; `on` the day, as 2026-03-02, and `rest` what of the plan of its section is still to come. The same job where it has no
 * such stick.
 */
export function sawStick(
  job: Job,
  frame: Frame,
  { stick: id, parts, left }: Pick<CutStick, 'stick' | 'parts' | 'left'>,
  { on, rest }: { readonly on: string; readonly rest: StillToSaw },
): Job {
  const stick = job.stickSorts.find((each) => each.id === id);
  if (stick === undefined || stick.count === 0) return job;
  const sorts = oneLess(job.stickSorts, stick);
  // The stick is sawn all the same where the list holds no more.
  const isRoom = sorts.length < MOST_STICK_SORTS;
  const kept = isRoom && isKept(job, left) ? nextId(job, 'stickSorts', sortsSawn(job)) : undefined;
  const { section, length, batch, cost, count, rack } = stick;
  const sawn: Sawn = {
    id: nextId(job, 'sawn'),
    section,
    length,
    ...(batch !== undefined && { batch }),
    ...(cost !== undefined && { cost }),
    cuts: parts.map((part): SawnPart => {
      if (part.spare === null) return { tube: part.id, length: part.length };
      return { ...(part.batch !== null && { batch: part.batch }), length: part.length };
    }),
    left,
    from: id,
    ...(kept !== undefined && { kept }),
    ...(count === undefined && { bought: true as const }),
    ...(rack && { rack }),
    on,
  };
  const worth = costOfLeft(sawn);
  const leftOver: readonly Stick[] =
    kept === undefined
      ? []
      : [
          {
            id: kept,
            section,
            length: left,
            count: 1,
            ...(worth !== undefined && { cost: worth }),
            ...(batch !== undefined && { batch }),
            rack: true,
          },
        ];
  const tubes = parts.flatMap((part) => (part.spare === null ? [part.id] : []));
  return tubes.reduce<Job>((next, tube) => (stageOf(next, tube) === null ? setStage(next, frame, tube, 'cut') : next), {
    ...withBegun(job, section, begunOf(rest)),
    stickSorts: [...sorts, ...leftOver],
    spares: withoutCut(job.spares, parts),
    sawn: [...job.sawn, sawn],
  });
}

const begunOf = ({ sticks, proven }: StillToSaw): readonly BegunStick[] =>
  sticks.map(({ stick, number, parts }) => ({
    stick,
    number,
    cuts: parts.map(({ id, spare }): BegunPart => (spare === null ? { tube: id } : { spare })),
    ...(proven && { proven: true as const }),
  }));

/** What of other sections is being sawn stays. */
function withBegun(job: Job, section: SectionId, begun: readonly BegunStick[]): Job {
  const ofSection = new Set(job.stickSorts.flatMap((sort) => (sort.section === section ? [sort.id] : [])));
  const others = (job.stock?.begun ?? []).filter(({ stick }) => !ofSection.has(stick));
  const { begun: _, ...stock } = job.stock ?? {};
  const all = [...others, ...begun];
  return all.length > 0 || job.stock !== undefined
    ? { ...job, stock: { ...stock, ...(all.length > 0 && { begun: all }) } }
    : job;
}

/** Of the last one the sort goes; what is to be bought stays. */
const oneLess = (sorts: readonly Stick[], stick: Stick): readonly Stick[] =>
  sorts.flatMap((each) => {
    if (each !== stick || stick.count === undefined) return [each];
    return stick.count > 1 ? [{ ...each, count: stick.count - 1 }] : [];
  });

/** Of each record so many less as were cut; one of which nothing is left stays, with none, so that the others keep their places. */
const withoutCut = (spares: readonly Spare[], parts: CutStick['parts']): readonly Spare[] =>
  mapKeeping(spares, (spare, at) => {
    const cut = parts.filter((part) => part.spare === at).length;
    return cut === 0 ? spare : { ...spare, count: spare.count - cut };
  });

/**
 * The stick was not sawn after all: it stands on the rack again, its left-over does not, and its tubes are drawn, but for those that are further on or were cut from another stick
 * since. The same job where nothing of this id was sawn; refused while its left-over is not whole.
 */
export function unsaw(job: Job, frame: Frame, id: string): Edited {
  const at = job.sawn.findIndex((each) => each.id === id);
  const sawn = job.sawn[at];
  if (sawn === undefined) return job;
  const later = job.sawn.slice(at + 1);
  const leftOver = job.stickSorts.find((stick) => stick.id === sawn.kept);
  if (sawn.kept !== undefined && (leftOver === undefined || leftOver.count !== 1 || leftOver.length !== sawn.left))
    return [fault('', LEFT_IS_GONE)];
  const again = new Set(later.flatMap(({ cuts }) => cuts.map(({ tube }) => tube)));
  return sawn.cuts.reduce<Job>(
    (next, { tube }) =>
      tube !== undefined && !again.has(tube) && stageOf(next, tube) === 'cut'
        ? setStage(next, frame, tube, null)
        : next,
    {
      ...job,
      stickSorts: putBack(
        job,
        sawn,
        job.stickSorts.filter((stick) => stick !== leftOver),
      ),
      spares: withSpares(job.spares, sawn),
      sawn: job.sawn.filter((each) => each !== sawn),
    },
  );
}

const LEFT_IS_GONE =
  'its left-over is not whole on the list any more. If that was sawn, say of it first that it was not';

/** As one more of the sort that it was of, or of one that is alike; else as a sort of its own. What was bought comes back by itself. */
function putBack(job: Job, { section, length, batch, cost, from, bought, rack }: Sawn, sorts: readonly Stick[]) {
  if (bought === true) return sorts;
  const isSame = (stick: Stick): boolean =>
    stick.count !== undefined &&
    stick.section === section &&
    stick.length === length &&
    isSameBatch(stick.batch, batch);
  const there = sorts.find((stick) => stick.id === from && isSame(stick)) ?? sorts.find(isSame);
  if (there !== undefined)
    return sorts.map((stick) => (stick === there ? { ...stick, count: stick.count! + 1 } : stick));
  const isFree = from !== undefined && !sorts.some((stick) => stick.id === from);
  const back: Stick = {
    id: isFree ? from : nextId(job, 'stickSorts', sortsSawn(job)),
    section,
    length,
    count: 1,
    ...(cost !== undefined && { cost }),
    ...(batch !== undefined && { batch }),
    ...(rack && { rack }),
  };
  return [...sorts, back];
}

/** Its spares are wanted again: on the record of their length and batch that there is, or on one of their own. */
function withSpares(spares: readonly Spare[], { section, cuts }: Sawn): readonly Spare[] {
  return cuts.reduce((next, { tube, length, batch }) => {
    if (tube !== undefined) return next;
    const there = next.findIndex(
      (spare) => spare.section === section && spare.length === length && isSameBatch(spare.batch, batch),
    );
    return there === -1
      ? [...next, { section, length, count: 1, ...(batch !== undefined && { batch }) }]
      : next.map((spare, at) => (at === there ? { ...spare, count: spare.count + 1 } : spare));
  }, spares);
}
