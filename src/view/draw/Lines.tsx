/**
 * The tube on the way, over the picture: where it would run, its mirror image, its places, and what is aimed at. Lines of the page, so
 * that a pointer that moves has nothing drawn anew in 3D; put in place from the rig that each frame is drawn with.
 */
import { useEffect, useLayoutEffect, useRef, type RefObject } from 'react';
import { addScaled, length, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import { standsAt } from '../../core/shape/draw/ground.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import type { Frame } from '../../core/solve/types.ts';
import type { Projection } from '../camera/projection.ts';
import type { PlaceLabels } from '../labels/LabelLayer.tsx';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Course } from './course.ts';
import { TOOLBAR } from '../canvas/useViews.ts';
import { LATELY, SIGNS } from './signs.ts';
import { standBeside } from './stand-beside.ts';

interface Props {
  readonly viewpoint: Viewpoint;
  readonly overlay: RefObject<PlaceLabels>;
  readonly course: Course;
  readonly places: readonly Vec3[];
  readonly aim: Snap | null;
  readonly guides: readonly Guide[];
  /** What the aim lately rested on: places can be lined up with it. */
  readonly lately: readonly Snap[];
  /** Where a finger aims from, in pixels: the cross stands off it. */
  readonly finger: { readonly x: number; readonly y: number } | null;
  /** Whether keys led the aim there. */
  readonly byKey: boolean;
  /** Stands beside what is aimed at. */
  readonly beside: RefObject<HTMLElement | null>;
}

/** Pixels: an axis line runs on so far past what is aimed at. */
const PAST = 60;

export function Lines({ viewpoint, overlay, course, places, aim, guides, lately, finger, byKey, beside }: Props) {
  const svg = useRef<SVGSVGElement>(null);

  const paint = (view: Projection): void => {
    const element = svg.current;
    if (element === null) return;
    const pixels = (chain: readonly Vec3[]): string =>
      chain
        .map((place) => {
          const { x, y } = view.toScreen(place);
          return `${x.toFixed(1)},${y.toFixed(1)}`;
        })
        .join(' ');
    const line = (name: string, chain: readonly Vec3[]): void => {
      for (const each of element.querySelectorAll(`.draw-${name}`)) each.setAttribute('points', pixels(chain));
    };
    const spot = (each: Element, place: Vec3): void => {
      const { x, y } = view.toScreen(place);
      each.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
    };
    line('course', course.chain);
    line('twin', course.twin);
    element.querySelectorAll('.draw-guide').forEach((each, i) => {
      each.setAttribute('points', pixels(guideLine(guides[i]!, aim!.at, view)));
    });
    element.querySelectorAll('.draw-lately').forEach((each, i) => spot(each, lately[i]!.at));
    element.querySelectorAll('.draw-place').forEach((each, i) => spot(each, places[i]!));
    const stands = aim?.at ?? places.at(-1);
    if (stands === undefined) return;
    for (const each of element.querySelectorAll('.draw-aim')) spot(each, stands);
    const strip = stripOf(element);
    if (strip) strip.dataset['aside'] = String(byKey && isUnder(strip, view, view.toScreen(stands)));
    if (beside.current !== null) stand(beside.current, view, stands, aim === null ? null : (places.at(-1) ?? null));
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
      {guides.map((_, i) => (
        <polyline className="draw-guide" key={i} />
      ))}
      {lately.map((_, i) => (
        <path className="draw-lately" key={i} d={LATELY} />
      ))}
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

const signOf = ({ ground: { kind } }: Snap): keyof typeof SIGNS =>
  kind === 'space' ? 'space' : kind === 'along' || kind === 'level' ? 'along' : 'named';

/** From a place that the aim is in line with. */
interface Guide {
  readonly from: Vec3;
  /** Plumb, or straight along or across the car: the line runs on past what is aimed at. */
  readonly isStraight: boolean;
}

/** One for each place that owns coordinates of the aim. None from the place before where it owns but one: the tube itself runs there. */
export function guidesOf(frame: Frame, { ground }: Snap, last: Snap | null): readonly Guide[] {
  const by = ground.kind === 'space' ? (ground.by ?? []) : [];
  return [...new Set(by)].flatMap((owner): readonly Guide[] => {
    const isStraight = by.filter((each) => each === owner).length > 1;
    const from = owner === null || (owner === last?.ground && !isStraight) ? null : standsAt(frame, owner);
    return from === null ? [] : [{ from, isStraight }];
  });
}

function guideLine({ from, isStraight }: Guide, at: Vec3, view: Projection): readonly Vec3[] {
  const way = subtract(at, from);
  // The place has just been put there.
  if (length(way) === 0) return [];
  return [from, isStraight ? addScaled(at, way, PAST / view.pixelsPerMm / length(way)) : at];
}

/** Puts the card beside the place; `from` is where the leg that leads there begins. */
function stand(card: HTMLElement, view: Projection, place: Vec3, from: Vec3 | null): void {
  const strip = stripOf(card);
  const { offsetLeft: left = 0, offsetTop: top = 0, offsetWidth = 0, offsetHeight = 0 } = strip ?? {};
  const room = {
    bay: view,
    below: TOOLBAR,
    strip: strip ? { left, top, right: left + offsetWidth, bottom: top + offsetHeight } : null,
  };
  const size = { width: card.offsetWidth, height: card.offsetHeight };
  const { x, y } = standBeside(size, room, view.toScreen(place), from && view.toScreen(from));
  card.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`;
}

const stripOf = (element: Element): HTMLElement | null =>
  element.parentElement?.querySelector<HTMLElement>('.draw-strip') ?? null;

/** Pixels: what is aimed at is kept so far from the strip. */
const CLEAR = 12;

/** Keys lead the aim where no pointer could: whether the strip would hide it. In a bay so low that it would be as much in the way along the lower edge, it stays. */
function isUnder(strip: HTMLElement, view: Projection, { x, y }: { readonly x: number; readonly y: number }): boolean {
  const { offsetLeft, offsetWidth, offsetHeight } = strip;
  const isAcross = x > offsetLeft - CLEAR && x < offsetLeft + offsetWidth + CLEAR;
  return isAcross && y >= 0 && y < Math.min(offsetHeight + CLEAR, view.height / 2);
}
