/** The least gap that is wanted to a measured point or a body line, mm; null where none is asked. */
import type { BodyLineId, PointId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { changeRecord } from './records.ts';

export const setPointGap = (job: Job, id: PointId, gap: number | null): Job =>
  changeRecord(job, 'points', id, (point) => withLeastGap(point, gap));

export const setLineGap = (job: Job, id: BodyLineId, gap: number | null): Job =>
  changeRecord(job, 'bodyLines', id, (line) => withLeastGap(line, gap));

function withLeastGap<R extends { readonly leastGap?: number }>(record: R, gap: number | null): R {
  if ((record.leastGap ?? null) === gap) return record;
  const { leastGap: _before, ...rest } = record;
  return (gap === null ? rest : { ...rest, leastGap: gap }) as R;
}
