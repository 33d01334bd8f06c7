/** Which heat of steel a tube is of: by it the tube is traced to its certificate. */
import { batchOf } from '../job/kinds/stick.ts';
import type { Job } from '../job/types.ts';
import type { TubeRef } from '../job/reference.ts';

/** Of the stick that it was sawn from, the last time; else what its member is to be of. As typed; undefined where nobody has said. */
export function heatOf(
  { sawn }: Pick<Job, 'sawn'>,
  { id, member }: { readonly id: TubeRef; readonly member: { readonly batch?: string } },
): string | undefined {
  const from = sawn.findLast(({ cuts }) => cuts.some(({ tube }) => tube === id));
  return batchOf(from ?? {}) ?? batchOf(member) ?? undefined;
}
