/** Where one is in the run: a key for each stop, and under it the three steps of the bend that is shown. */
import { useEffect, useRef, type CSSProperties, type ReactNode } from 'react';
import type { RunStep } from '../../core/run/run.ts';
import { STEP_NAMES, stopsOf, type Stop } from './stops.ts';

interface StripProps {
  readonly steps: readonly RunStep[];
  /** Index of the first step that is not done. */
  readonly current: number;
  readonly shown: string;
  /** A step's key; null: where one is. */
  onLook(key: string | null): void;
}

/** As many stops as a telephone has room for side by side; more make two rows. */
const ONE_ROW = 7;

export function RunStrip({ steps, current, shown, onLook }: StripProps): ReactNode {
  const stops = stopsOf(steps);
  const here = stops.find((stop) => stop.steps.some(({ key }) => key === shown));
  const now = steps[current];
  const reached = (step: RunStep): boolean => step.done || step === now;
  const strip = useRef<HTMLOListElement>(null);
  useEffect(() => {
    strip.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [here?.label]);
  return (
    <nav className="run-strip" aria-label="Steps of the run">
      <ol
        ref={strip}
        style={{ '--stops': stops.length > ONE_ROW ? Math.ceil(stops.length / 2) : stops.length } as CSSProperties}
      >
        {stops.map((stop) => {
          const done = stop.steps.every((step) => step.done);
          const first = firstToLookAt(stop, now);
          return (
            <li key={stop.label}>
              <button
                type="button"
                data-done={done ? '' : undefined}
                aria-current={stop === here ? 'step' : undefined}
                aria-label={`${stop.name}${done ? ', done' : ''}`}
                disabled={!stop.steps.some(reached)}
                onClick={() => onLook(first === now ? null : (first?.key ?? null))}
              >
                <span aria-hidden="true">{done ? '✓' : ' '}</span>
                <span>{stop.label}</span>
              </button>
            </li>
          );
        })}
      </ol>
      {here && here.steps.length > 1 && (
        <ol className="run-within" aria-label={here.name}>
          {here.steps.map((step) => (
            <li key={step.key}>
              <button
                type="button"
                data-done={step.done ? '' : undefined}
                aria-current={step.key === shown ? 'step' : undefined}
                disabled={!reached(step)}
                onClick={() => onLook(step === now ? null : step.key)}
              >
                {step.done && <span aria-label="done">✓ </span>}
                {STEP_NAMES[step.kind]}
              </button>
            </li>
          ))}
        </ol>
      )}
    </nav>
  );
}

/** Of a bend that is under way the step that is next, of one that is made its reading. */
const firstToLookAt = ({ steps }: Stop, now: RunStep | undefined): RunStep | undefined =>
  steps.find((step) => step === now) ?? steps.at(-1);
