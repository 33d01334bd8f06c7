/** How much room a torch wants between two tubes that are not joined. */
import { upTo } from './fields.ts';

/** mm. Before anybody has said: a cup of 20 and a little (common practice). */
export const FIRST_TORCH_GAP = 25;

/** mm. A hand with the torch in it. */
export const GREATEST_TORCH_GAP = 200;

/** 0 where nobody asks for any. */
export const torchGap = upTo(GREATEST_TORCH_GAP);
