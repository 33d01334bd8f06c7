/**
 * A rehearsal laid out as one strip for the scrubber. Within a bend a place on the strip is a degree at the machine, the
 * last of them what remains; before each bend but the first lies the way from one bend to the next, and after each the
 * letting go, when the bend springs back from what was pulled to what stands.
 */
import { toDegrees, toRadians, type Radians } from '../../core/geometry/angle.ts';
import { DEGREE_ROUNDING } from '../../core/geometry/tolerance.ts';
import type { RehearsedStep } from '../../core/rehearse/types.ts';

export type Phase = 'set' | 'bend' | 'release';

/** Where a step lies on the strip. */
interface Span {
  readonly set: number;
  readonly bend: number;
  readonly release: number;
  readonly end: number;
}

export interface Timeline {
  readonly spans: readonly Span[];
  readonly length: number;
  /** Where a hand stops that goes from one thing to the next: ready to pull, touched, pulled; the end. Ascending. */
  readonly stops: readonly number[];
  /** Where a step meets its trouble: where something is touched first, or where it would begin but cannot be held. */
  readonly hits: readonly number[];
}

export interface Moment {
  /** 0 = the first. */
  readonly step: number;
  readonly phase: Phase;
  /** How far the machine stands turned, or while the bend is let go, how far the bend is still open. */
  readonly angle: Radians;
  /** How much of the way from the last bend to this one is made, 0..1; 1 from then on. */
  readonly way: number;
}

/** Places for the way from one bend to the next, and for letting go. */
const WAY = 40;
const LET_GO = 8;

export function layTimeline(steps: readonly RehearsedStep[]): Timeline {
  let at = 0;
  const spans = steps.map((step, i): Span => {
    const set = at;
    const bend = set + (i === 0 ? 0 : WAY);
    // 60 degrees come out of radians a hair over, and are no reason for a 61st place.
    const release = bend + Math.ceil(toDegrees(step.pulled) - DEGREE_ROUNDING);
    at = release + LET_GO;
    return { set, bend, release, end: at };
  });
  const hits = steps.flatMap(({ hit, cannotHold }, i) => {
    if (cannotHold !== null) return [spans[i]!.bend];
    return hit === null ? [] : [spans[i]!.bend + toDegrees(hit.angle)];
  });
  const stops = new Set([...spans.flatMap(({ bend, release }) => [bend, release]), ...hits, at]);
  return { spans, length: at, stops: [...stops].toSorted((a, b) => a - b), hits };
}

/** What stands at a place on the strip; places beyond its ends count as its ends. Asks for one step at least. */
export function momentAt({ spans, length }: Timeline, steps: readonly RehearsedStep[], place: number): Moment {
  const at = Math.min(Math.max(place, 0), length);
  const index = spans.findIndex((span) => at < span.end);
  const step = index === -1 ? spans.length - 1 : index;
  const { set, bend, release, end } = spans[step]!;
  const { pulled, net } = steps[step]!;
  if (at < bend) return { step, phase: 'set', angle: 0, way: (at - set) / (bend - set) };
  if (at <= release) return { step, phase: 'bend', angle: Math.min(pulled, toRadians(at - bend)), way: 1 };
  const open = Math.min(1, (at - release) / (end - release));
  return { step, phase: 'release', angle: pulled + (net - pulled) * open, way: 1 };
}

/** The next stop after a place, and the one before it; null at the ends. */
export const stopAfter = ({ stops }: Timeline, place: number): number | null =>
  stops.find((stop) => stop > place + DEGREE_ROUNDING) ?? null;
export const stopBefore = ({ stops }: Timeline, place: number): number | null =>
  stops.findLast((stop) => stop < place - DEGREE_ROUNDING) ?? null;
