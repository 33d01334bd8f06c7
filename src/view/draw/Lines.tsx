/**
 * The tube on the way, over the picture: where it would run, its mirror image, its places, and what is aimed at. Lines of the page, so
 * that a pointer that moves has nothing drawn anew in 3D; put in place from the rig that each frame is drawn with.
 */
import { useEffect, useLayoutEffect, useRef, type RefObject } from 'react';
import { addScaled, length, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { Projection } from '../camera/projection.ts';
import type { PlaceLabels } from '../labels/LabelLayer.tsx';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Aim } from './aim.ts';
import type { Course } from './course.ts';

interface Props {
  readonly viewpoint: Viewpoint;
  readonly overlay: RefObject<PlaceLabels>;
  readonly course: Course;
  readonly places: readonly Vec3[];
  readonly aim: Aim | null;
  /** Where a finger aims from, in pixels: the cross stands off it. */
  readonly finger: { readonly x: number; readonly y: number } | null;
  /** Stands beside what is aimed at. */
  readonly beside: RefObject<HTMLElement | null>;
}

/** Pixels: an axis line runs on so far past what is aimed at. */
const PAST = 60;
/** Pixels from what is aimed at to the words beside it, and what these keep off the bay's edge. */
const BESIDE = 18;
const EDGE = 8;

export function Lines({ viewpoint, overlay, course, places, aim, finger, beside }: Props) {
  const svg = useRef<SVGSVGElement>(null);

  const paint = (view: Projection): void => {
    const element = svg.current;
    if (element === null) return;
    const line = (name: string, chain: readonly Vec3[]): void => {
      const points = chain.map((place) => {
        const { x, y } = view.toScreen(place);
        return `${x.toFixed(1)},${y.toFixed(1)}`;
      });
      for (const each of element.querySelectorAll(`.draw-${name}`)) each.setAttribute('points', points.join(' '));
    };
    const spot = (each: Element, place: Vec3): void => {
      const { x, y } = view.toScreen(place);
      each.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
    };
    line('course', course.chain);
    line('twin', course.twin);
    line('guide', guideLine(aim, places.at(-1), view));
    element.querySelectorAll('.draw-place').forEach((each, i) => spot(each, places[i]!));
    const stands = aim?.at ?? places.at(-1);
    if (stands === undefined) return;
    for (const each of element.querySelectorAll('.draw-aim')) spot(each, stands);
    if (beside.current !== null) standBeside(beside.current, view, stands);
  };

  const latest = useRef(paint);
  useLayoutEffect(() => {
    latest.current = paint;
    paint(viewpoint.projection());
  });
  useEffect(() => {
    overlay.current = (view) => latest.current(view);
    return () => {
      overlay.current = () => {};
    };
  }, [overlay]);

  const isOff = course.trouble !== null ? '' : undefined;
  return (
    <svg className="draw-lines" ref={svg} aria-hidden="true">
      <polyline className="draw-guide" />
      <polyline className="draw-twin" />
      <polyline className="draw-course draw-halo" />
      <polyline className="draw-course" data-off={isOff} />
      {places.map((_, i) => (
        <circle className="draw-place" key={i} r={5} />
      ))}
      {aim !== null && <path className="draw-aim" d={SIGNS[signOf(aim)]} data-off={isOff} />}
      {finger !== null && (
        <path className="draw-finger" d={`M${finger.x - 22} ${finger.y}h44M${finger.x} ${finger.y - 22}v82`} />
      )}
    </svg>
  );
}

/** A named place is ringed, a place along a tube barred across, a place in space crossed. */
const SIGNS = {
  named: 'M-10 0a10 10 0 1 0 20 0a10 10 0 1 0 -20 0',
  along: 'M-10 0a10 10 0 1 0 20 0a10 10 0 1 0 -20 0M-15 0h10M5 0h10',
  space: 'M-9 0h18M0 -9v18',
} as const;

const signOf = ({ ground: { kind } }: Aim): keyof typeof SIGNS =>
  kind === 'space' ? 'space' : kind === 'along' ? 'along' : 'named';

/** Through the place before and past what is aimed at, where that is straight along an axis. */
function guideLine(aim: Aim | null, last: Vec3 | undefined, view: Projection): readonly Vec3[] {
  const isStraight = aim?.guides.some((guide) => guide === 'plumb' || guide === 'ahead' || guide === 'across');
  if (!isStraight || last === undefined) return [];
  const way = subtract(aim!.at, last);
  // The place has just been put there.
  if (length(way) === 0) return [];
  return [last, addScaled(aim!.at, way, PAST / view.pixelsPerMm / length(way))];
}

/** To the right of the place and under it; on the other side where there is no room; never under the strip. */
function standBeside(element: HTMLElement, view: Projection, place: Vec3): void {
  const { x, y } = view.toScreen(place);
  const { offsetWidth: width, offsetHeight: height } = element;
  const strip = element.parentElement?.querySelector<HTMLElement>('.draw-strip');
  const below = EDGE + (strip ? strip.offsetTop + strip.offsetHeight : 0);
  const left = x + BESIDE + width > view.width - EDGE ? x - BESIDE - width : x + BESIDE;
  const top = y + BESIDE + height > view.height - EDGE ? y - BESIDE - height : y + BESIDE;
  element.style.transform = `translate(${Math.round(Math.max(EDGE, left))}px, ${Math.round(Math.max(below, top))}px)`;
}
