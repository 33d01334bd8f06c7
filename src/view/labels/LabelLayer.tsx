/**
 * Labels over the bay, as page text: sharp at any zoom, in the program's own face. React writes the words; the places
 * are set frame by frame through refs, from the same rig that the frame is drawn with. What is the same as in the frame
 * before, view, words or place, is left alone.
 */
import { memo, useEffect, useLayoutEffect, useReducer, useRef, type RefObject } from 'react';
import type { Projection } from '../camera/projection.ts';
import type { Sight } from '../canvas/sight.ts';
import type { Placed } from './declutter.ts';
import type { Label } from './label.ts';
import { placeLabels } from './place-labels.ts';

export type PlaceLabels = (view: Projection) => void;

interface Props {
  readonly labels: readonly Label[];
  readonly sight: Sight;
  /** Pixels along the lower edge that are covered. */
  readonly below: number;
  /** Filled with the function that the bay calls for each frame. */
  readonly placerRef: RefObject<PlaceLabels>;
  /** Asks for a frame after the words have changed. */
  readonly onWords: () => void;
}

export function LabelLayer({ labels, sight, below, placerRef, onWords }: Props) {
  const layer = useRef<HTMLDivElement>(null);
  const signs = useRef(new WeakMap<HTMLElement, Sign>());
  const faces = useFacesLoaded();

  useLayoutEffect(() => {
    const known = signs.current;
    const elements = Array.from(layer.current?.children ?? []) as HTMLElement[];
    const shown = elements.map((element, i) => {
      const before = known.get(element);
      const same = before?.label === labels[i] && before?.faces === faces;
      const sign = same ? before : newSign(element, labels[i]!, faces, before?.place);
      known.set(element, sign);
      return sign;
    });
    const still = labels.every(({ drifts }) => drifts !== true);
    let last: Projection | null = null;
    placerRef.current = (view) => {
      if (still && view === last) return;
      last = view;
      placeLabels(labels, shown, sight, view, below).forEach((place, i) => putUp(shown[i]!, place));
    };
    onWords();
  }, [labels, sight, below, faces, placerRef, onWords]);

  return (
    <div className="bay-labels" aria-hidden="true" ref={layer}>
      {labels.map((label) => (
        <Words key={label.key} label={label} />
      ))}
    </div>
  );
}

const Words = memo(function Words({ label }: { readonly label: Label }) {
  return (
    <span className={`bay-label bay-label-${label.look}`} data-tone={label.tone}>
      {label.text}
    </span>
  );
});

/** A label as it stands in the page. */
interface Sign {
  readonly element: HTMLElement;
  readonly label: Label;
  /** Pixels, in the typefaces that were there. */
  readonly width: number;
  readonly height: number;
  readonly faces: number;
  /** Where it was put up last: null hidden, undefined not yet. */
  place: string | null | undefined;
}

const newSign = (element: HTMLElement, label: Label, faces: number, place: Sign['place']): Sign => ({
  element,
  label,
  width: element.offsetWidth,
  height: element.offsetHeight,
  faces,
  place,
});

function putUp(sign: Sign, at: Placed | null): void {
  const [left, top] = at === null ? [0, 0] : [at.x - sign.width / 2, at.y - sign.height / 2];
  const place = at === null ? null : `translate(${Math.round(left)}px, ${Math.round(top)}px)`;
  if (place === sign.place) return;
  const { style } = sign.element;
  if (place !== null) style.transform = place;
  if (sign.place == null || place === null) style.visibility = place === null ? 'hidden' : 'visible';
  sign.place = place;
}

/** Counts up when typefaces have come: words are then of other sizes. */
function useFacesLoaded(): number {
  const [count, more] = useReducer((before: number) => before + 1, 0);
  useEffect(() => {
    document.fonts.addEventListener('loadingdone', more);
    return () => document.fonts.removeEventListener('loadingdone', more);
  }, []);
  return count;
}
