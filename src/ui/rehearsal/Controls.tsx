/** Play, step and scrub. The slider is the browser's own, so that keys and screen reader know it. */
import { useEffect, useRef, useSyncExternalStore, type ReactNode } from 'react';
import type { Player } from '../../view/rehearsal/player.ts';
import type { Stage } from '../../view/rehearsal/rehearsed.ts';
import { momentAt, type Timeline } from '../../view/rehearsal/timeline.ts';
import { momentInShort, troubleAt } from './moment-words.ts';

interface Props {
  readonly stages: readonly Stage[];
  readonly timeline: Timeline;
  readonly player: Player;
}

export function Controls({ stages, timeline, player }: Props): ReactNode {
  const playing = useSyncExternalStore(player.listen, player.isPlaying);
  const atStart = useSyncExternalStore(player.listen, () => player.place() <= 0);
  const atEnd = useSyncExternalStore(player.listen, () => player.place() >= timeline.length);
  // Whoever asked for less motion goes from stop to stop.
  const still = useSyncExternalStore(listenToMotion, () => lessMotion.matches);
  return (
    <div className="rehearsal-controls" role="group" aria-label="Run the rehearsal">
      {!still && (
        <button
          type="button"
          className="press press-live rehearsal-key rehearsal-key-play"
          aria-label={playing ? 'Pause' : 'Play'}
          onClick={playing ? player.pause : player.play}
        >
          {playing ? pauseIcon : playIcon}
          <span>{playing ? 'Pause' : 'Play'}</span>
        </button>
      )}
      <button
        type="button"
        className="press rehearsal-key"
        aria-label="Step back"
        disabled={atStart}
        onClick={player.back}
      >
        {backIcon}
      </button>
      <button
        type="button"
        className={still ? 'press press-live rehearsal-key' : 'press rehearsal-key'}
        aria-label="Step forward"
        disabled={atEnd}
        onClick={player.forward}
      >
        {forwardIcon}
      </button>
      <Scrubber stages={stages} timeline={timeline} player={player} />
    </div>
  );
}

function Scrubber({ stages, timeline, player }: Props): ReactNode {
  const slider = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const steps = stages.map(({ step }) => step);
    const show = (): void => {
      const input = slider.current!;
      const moment = momentAt(timeline, steps, player.place());
      input.value = String(player.place());
      input.style.setProperty('--done', `${(100 * player.place()) / timeline.length}%`);
      const trouble = troubleAt(stages, moment);
      const now = `bend ${steps[moment.step]!.bend}, ${momentInShort(stages, moment)}`;
      input.setAttribute('aria-valuetext', trouble === null ? now : `${now}, ${trouble}`);
    };
    show();
    return player.listen(show);
  }, [stages, timeline, player]);
  const part = (place: number): string => `${(100 * place) / timeline.length}%`;
  return (
    <div className="scrub">
      <input
        ref={slider}
        type="range"
        className="scrub-slider"
        aria-label="Place in the rehearsal"
        min={0}
        max={timeline.length}
        defaultValue={0}
        onInput={(event) => player.set(event.currentTarget.valueAsNumber)}
      />
      <div className="scrub-ticks" aria-hidden="true">
        {timeline.spans.map(({ bend, release }, i) => (
          <span
            key={i}
            className="scrub-bend"
            style={{ left: part(bend), width: part(release - bend) }}
          >{`${stages[i]!.step.bend}`}</span>
        ))}
        {timeline.hits.map((hit) => (
          <span key={hit} className="scrub-hit" style={{ left: part(hit) }}>
            ×
          </span>
        ))}
      </div>
    </div>
  );
}

const lessMotion = window.matchMedia('(prefers-reduced-motion: reduce)');

function listenToMotion(changed: () => void): () => void {
  lessMotion.addEventListener('change', changed);
  return () => lessMotion.removeEventListener('change', changed);
}

const icon = (path: string): ReactNode => (
  <svg className="icon" viewBox="0 0 20 20" width="20" height="20" fill="currentColor" aria-hidden="true">
    <path d={path} />
  </svg>
);
const playIcon = icon('M5 3l12 7-12 7z');
const pauseIcon = icon('M4 3h4v14H4zM12 3h4v14h-4z');
const forwardIcon = icon('M4 3l9 7-9 7zM14 3h3v14h-3z');
const backIcon = icon('M16 3l-9 7 9 7zM3 3h3v14H3z');
