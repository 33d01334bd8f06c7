/** What a bead bridges: apart from the forecast itself, since words that come with the first load go by it. */
import { MM_PER_INCH } from '../units/length.ts';

/** mm: a sixteenth of an inch. A joint that gapes no more needs no cure: a bead bridges it (common practice). */
export const BRIDGED = MM_PER_INCH / 16;
