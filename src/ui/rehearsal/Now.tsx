/** What stands at the machine now, large, over the bay. Its words are set by refs: they change with every frame. */
import { useEffect, useRef, type ReactNode } from 'react';
import type { Player } from '../../view/rehearsal/player.ts';
import type { Stage } from '../../view/rehearsal/rehearsed.ts';
import { momentAt, type Timeline } from '../../view/rehearsal/timeline.ts';
import { momentInShort, troubleAt } from './moment-words.ts';

interface Props {
  readonly stages: readonly Stage[];
  readonly timeline: Timeline;
  readonly player: Player;
}

/** Not spoken: the step is named where it is announced, the angle at the scrubber. */
export function Now({ stages, timeline, player }: Props): ReactNode {
  const box = useRef<HTMLDivElement>(null);
  const name = useRef<HTMLDivElement>(null);
  const figure = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const steps = stages.map(({ step }) => step);
    const show = (): void => {
      const moment = momentAt(timeline, steps, player.place());
      const trouble = troubleAt(stages, moment);
      const number = `Step ${moment.step + 1} of ${stages.length} · bend ${steps[moment.step]!.bend}`;
      name.current!.textContent = trouble === null ? number : `× ${trouble}`;
      figure.current!.textContent = momentInShort(stages, moment);
      box.current!.dataset['trouble'] = String(trouble !== null);
    };
    show();
    return player.listen(show);
  }, [stages, timeline, player]);
  return (
    <div className="rehearsal-now" ref={box} aria-hidden="true">
      <div className="small" ref={name} />
      <div className="figure rehearsal-figure" ref={figure} />
    </div>
  );
}
