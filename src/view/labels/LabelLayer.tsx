/**
 * Labels over the bay, as page text: sharp at any zoom, in the program's own face. React writes the words; the places
 * are set frame by frame through refs, from the same rig that the frame is drawn with.
 */
import { useLayoutEffect, useRef, type RefObject } from 'react';
import type { Projection } from '../camera/projection.ts';
import { seeTubes, tubeAt } from '../pick.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { declutter } from './declutter.ts';
import type { Label } from './label.ts';

export type PlaceLabels = (view: Projection) => void;

interface Props {
  readonly labels: readonly Label[];
  readonly tubes: readonly SolvedTube[];
  /** Pixels along the lower edge that are covered. */
  readonly below: number;
  /** Filled with the function that the bay calls for each frame. */
  readonly placerRef: RefObject<PlaceLabels>;
  /** Asks for a frame after the words have changed. */
  readonly onWords: () => void;
}

export function LabelLayer({ labels, tubes, below, placerRef, onWords }: Props) {
  const layer = useRef<HTMLDivElement>(null);

  useLayoutEffect(() => {
    const elements = Array.from(layer.current?.children ?? []) as HTMLElement[];
    const sizes = elements.map((element) => ({ width: element.offsetWidth, height: element.offsetHeight }));
    placerRef.current = (view) => {
      const seen = seeTubes(tubes, view);
      const wishes = labels.map(({ rank, at, on, shift }, i) => ({
        ...sizes[i]!,
        rank,
        places: (typeof at === 'function' ? at(view.pixelsPerMm) : at)
          .map(view.toScreen)
          .filter(({ x, y }) => on === undefined || tubeAt(seen, view.pixelsPerMm, x, y, 0) === on)
          .map(({ x, y }) => ({ x: x + (shift?.[0] ?? 0), y: y + (shift?.[1] ?? 0) })),
      }));
      declutter(wishes, { width: view.width, height: view.height - below }).forEach((place, i) => {
        const { style } = elements[i]!;
        style.visibility = place === null ? 'hidden' : 'visible';
        if (place === null) return;
        const { width, height } = sizes[i]!;
        style.transform = `translate(${Math.round(place.x - width / 2)}px, ${Math.round(place.y - height / 2)}px)`;
      });
    };
    onWords();
  }, [labels, tubes, below, placerRef, onWords]);

  return (
    <div className="bay-labels" aria-hidden="true" ref={layer}>
      {labels.map((label) => (
        <span key={label.key} className={`bay-label bay-label-${label.look}`} data-tone={label.tone}>
          {label.text}
        </span>
      ))}
    </div>
  );
}
