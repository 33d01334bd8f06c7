/**
 * A stick of the plan that was sawn: its tubes are cut and held from then on, its spares are there, the rack has one stick less, and one more where what is left is
 * worth keeping.
 */
import { nextId } from '../edit/ids.ts';
import { costOfLeft, type Sawn } from '../job/kinds/sawn.ts';
import type { Spare } from '../job/kinds/spare.ts';
import type { Stick } from '../job/kinds/stick.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { isKept } from '../stock/kept.ts';
import type { CutStick } from '../stock/types.ts';
import { setStage, stageOf } from './made-stage.ts';

/** The job, which the frame is derived from, with the stick of its plan sawn; `on` the day, as 2026-03-02. The same job where it has no such stick. */
export function sawStick(job: Job, frame: Frame, { stick: id, parts, left }: CutStick, on: string): Job {
  const stick = job.stickSorts.find((each) => each.id === id);
  if (stick === undefined || stick.count === 0) return job;
  const kept = isKept(job, left) ? nextId(job, 'stickSorts') : undefined;
  const { section, length, batch, cost, count } = stick;
  const sawn: Sawn = {
    id: nextId(job, 'sawn'),
    section,
    length,
    ...(batch !== undefined && { batch }),
    ...(cost !== undefined && { cost }),
    cuts: parts.map((part) => ({ ...(part.spare === null && { tube: part.id }), length: part.length })),
    left,
    ...(kept !== undefined && { kept }),
    ...(count === undefined && { bought: true as const }),
    on,
  };
  const rest = mapKeeping(job.stickSorts, (each) =>
    each === stick && count !== undefined ? { ...each, count: count - 1 } : each,
  );
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
          },
        ];
  const tubes = parts.flatMap((part) => (part.spare === null ? [part.id] : []));
  return tubes.reduce<Job>((next, tube) => (stageOf(next, tube) === null ? setStage(next, frame, tube, 'cut') : next), {
    ...job,
    stickSorts: [...rest, ...leftOver],
    spares: withoutCut(job.spares, parts),
    sawn: [...job.sawn, sawn],
  });
}

/** Of each record so many less as were cut; one of which nothing is left stays, with none, so that the others keep their places. */
const withoutCut = (spares: readonly Spare[], parts: CutStick['parts']): readonly Spare[] =>
  mapKeeping(spares, (spare, at) => {
    const cut = parts.filter((part) => part.spare === at).length;
    return cut === 0 ? spare : { ...spare, count: spare.count - cut };
  });

/** The stick was not sawn after all: it stands on the rack again, its left-over does not, and its tubes are drawn, but for those that are further on. The same job where nothing of this id was sawn. */
export function unsaw(job: Job, frame: Frame, id: string): Job {
  const sawn = job.sawn.find((each) => each.id === id);
  if (sawn === undefined) return job;
  const { section, length, batch, cost, kept, bought, cuts } = sawn;
  const isSame = (stick: Stick): boolean =>
    stick.count !== undefined && stick.section === section && stick.length === length && stick.batch === batch;
  const without = job.stickSorts.filter((stick) => stick.id !== kept);
  const there = without.find(isSame);
  const back: Stick = {
    id: nextId(job, 'stickSorts'),
    section,
    length,
    count: 1,
    ...(cost !== undefined && { cost }),
    ...(batch !== undefined && { batch }),
  };
  const sorts =
    bought === true
      ? without
      : there === undefined
        ? [...without, back]
        : without.map((stick) => (stick === there ? { ...stick, count: stick.count! + 1 } : stick));
  return cuts.reduce<Job>(
    (next, { tube }) =>
      tube !== undefined && stageOf(next, tube) === 'cut' ? setStage(next, frame, tube, null) : next,
    { ...job, stickSorts: sorts, spares: withSpares(job.spares, sawn), sawn: job.sawn.filter((each) => each !== sawn) },
  );
}

/** Its spares are wanted again: on the record of their length that there is, or on one of their own. */
function withSpares(spares: readonly Spare[], { section, cuts }: Sawn): readonly Spare[] {
  return cuts.reduce((next, { tube, length }) => {
    if (tube !== undefined) return next;
    const there = next.findIndex((spare) => spare.section === section && spare.length === length);
    return there === -1
      ? [...next, { section, length, count: 1 }]
      : next.map((spare, at) => (at === there ? { ...spare, count: spare.count + 1 } : spare));
  }, spares);
}
