/** What else one finding stands for, in words. */
import type { Group } from '../checks/grouped.ts';
import { tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { listed } from './lists.ts';

/** "The same at Front leg (right), end A"; null where it stands for itself alone. */
export function alsoInWords({ more }: Group, frame: Frame): string | null {
  if (more.length === 0) return null;
  const where = more.map(({ tube, end }) => `${tubeName(frame, tube)}${end === undefined ? '' : `, end ${end}`}`);
  return `The same at ${listed(where)}.`;
}
