/** Begins a cage as the draft of a gesture, and asks for another in its place: built it is one step, given up it never was. */
import type { Asked } from '../../core/shape/starters/asked.ts';
import { startCage } from '../../core/shape/starters/start-cage.ts';
import { startTroubles } from '../../core/shape/starters/trouble.ts';
import { withTube } from '../../core/shape/starters/with-tube.ts';
import { LAYOUT_WORDS } from '../../core/words/starters.ts';
import { footTrimOf } from './foot-trim.ts';
import { editor, jobDocument } from '../../store/page.ts';

/** What the form and the undo step are called. */
export const startName = ({ layout }: Pick<Asked, 'layout'>): string =>
  `New ${LAYOUT_WORDS[layout].name.toLowerCase()}`;

/** The gesture goes on while another station is looked at; whoever ends it, ends the form. */
export function beginCage(asked: Asked): void {
  jobDocument.getState().begin(startName(asked), () => editor.getState().start(null));
  askCage(asked);
}

/** Shows the cage where one can be made; else the last one that could be stays. */
export function askCage(asked: Asked): void {
  const { gesture, preview } = jobDocument.getState();
  if (gesture.state === 'idle') return;
  const troubles = startTroubles(gesture.startJob, asked);
  const isShown = troubles.length > 0 || preview((job) => startCage(withTube(job).job, asked, footTrimOf(job)));
  editor.getState().start({ asked, troubles: isShown ? troubles : ['not-made'] });
}
