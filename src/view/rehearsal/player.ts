/**
 * Where the rehearsal stands, and how it runs. Kept outside React: it changes with every frame that is drawn while it
 * plays, and with every step of the scrubber. Whoever draws or speaks asks for the place of the moment.
 */
import { DEGREE_ROUNDING } from '../../core/geometry/tolerance.ts';
import { stopAfter, stopBefore, type Timeline } from './timeline.ts';

/** Places of the strip in a second: degrees at the machine. */
const SPEED = 36;

export interface Player {
  readonly place: () => number;
  readonly isPlaying: () => boolean;
  /** Goes there at once, and stops playing. */
  readonly set: (place: number) => void;
  /** To the next stop or the one before; stays at the ends. */
  readonly forward: () => void;
  readonly back: () => void;
  /** Plays on from here to the end, or to the next trouble; from the end, anew. */
  readonly play: () => void;
  readonly pause: () => void;
  /** Moves on by so much time; true while it goes on. */
  readonly advance: (seconds: number) => boolean;
  /** Calls after every change; answers how to stop that. */
  readonly listen: (moved: () => void) => () => void;
}

export function createPlayer(timeline: Timeline): Player {
  const listeners = new Set<() => void>();
  let place = 0;
  let until: number | null = null;

  const show = (next: number, end: number | null): void => {
    place = Math.min(Math.max(next, 0), timeline.length);
    until = end;
    for (const moved of listeners) moved();
  };

  return {
    place: () => place,
    isPlaying: () => until !== null,
    set: (next) => show(next, null),
    forward: () => show(stopAfter(timeline, place) ?? timeline.length, null),
    back: () => show(stopBefore(timeline, place) ?? 0, null),
    play: () => {
      const from = place >= timeline.length ? 0 : place;
      show(from, timeline.hits.find((hit) => hit > from + DEGREE_ROUNDING) ?? timeline.length);
    },
    pause: () => show(place, null),
    advance: (seconds) => {
      if (until === null) return false;
      // A first frame after a pause must not swallow a whole bend.
      const next = place + Math.min(seconds, 0.1) * SPEED;
      show(Math.min(next, until), next < until ? until : null);
      return until !== null;
    },
    listen: (moved) => {
      listeners.add(moved);
      return () => listeners.delete(moved);
    },
  };
}
