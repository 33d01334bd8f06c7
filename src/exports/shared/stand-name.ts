/** What a foot, a piece of one, or a gusset is called in a file of solids or meshes: it has no number of its own. */
import { isPrimed } from '../../core/job/reference.ts';
import type { SetGusset } from '../../core/gusset/gussets.ts';
import type { Blank } from '../../core/feet/blanks.ts';
import type { Stand } from '../../core/feet/stand.ts';
import { PART_NAMES } from '../../core/words/feet.ts';
import { endMark } from './wrap-words.ts';

/** "2 B Tower box: box, long wall 3": the end on it, the foot, and which of its pieces, counted from 0, where it has several. */
export const standName = (stand: Stand, part: Blank['part'], index: number): string =>
  part === 'plate' ? footName(stand) : `${footName(stand)}: ${PART_NAMES[part]}${index === 0 ? '' : ` ${index}`}`;

/** "1 B Sill plate". */
export const footName = (stand: Stand): string => `${endMark(stand)} ${stand.foot.name}`;

/** "Roof gusset, mirror image". */
export const gussetName = ({ id, gusset }: Pick<SetGusset, 'id' | 'gusset'>): string =>
  isPrimed(id) ? `${gusset.name}, mirror image` : gusset.name;
