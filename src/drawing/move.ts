/** Marks laid elsewhere on a sheet: moved, turned by a quarter, or stretched for a printer that does not print true. */
import { ANGLE_ROUNDING } from '../core/geometry/tolerance.ts';
import type { Arc, Line, Mark, Place2 } from './types.ts';

export const moved = (marks: readonly Mark[], dx: number, dy: number): Mark[] =>
  marks.map((mark) => mapped(mark, ({ x, y }) => ({ x: x + dx, y: y + dy })));

/** A quarter turn anticlockwise about the origin, then up to the right by `width`: what stood in 0..width, 0..height stands in 0..height, 0..width. */
export const quarterTurned = (marks: readonly Mark[], height: number): Mark[] =>
  marks.map((mark) => {
    const turned = mapped(mark, ({ x, y }) => ({ x: height - y, y: x }));
    if (turned.kind === 'words') return { ...turned, turn: turned.turn + Math.PI / 2 };
    if (turned.kind === 'arc') return { ...turned, from: turned.from + Math.PI / 2, to: turned.to + Math.PI / 2 };
    return turned;
  });

/**
 * Every length across times x, and upwards times y, then moved. Letters take the stretch upwards only; a circle becomes the
 * polygon that no eye can see to be one.
 */
export const stretched = (marks: readonly Mark[], x: number, y: number, dx: number, dy: number): Mark[] =>
  marks.map((mark) => {
    const place = (at: Place2): Place2 => ({ x: at.x * x + dx, y: at.y * y + dy });
    const stretchedMark = mapped(mark.kind === 'arc' && x !== y ? chorded(mark) : mark, place);
    if (stretchedMark.kind === 'words') return { ...stretchedMark, size: stretchedMark.size * y };
    return stretchedMark.kind === 'arc' ? { ...stretchedMark, radius: stretchedMark.radius * y } : stretchedMark;
  });

/** Whether the arc goes all the way round, which each writer draws as a circle. */
export const isCircle = ({ from, to }: Arc): boolean => to - from >= 2 * Math.PI - ANGLE_ROUNDING;

/** How far a chord may leave its arc, mm: a tenth of the thinnest pen. */
const CHORD = 0.01;

/** The arc as straight lines, its ends exact. */
export function chorded({ layer, centre, radius, from, to, pen }: Arc): Line {
  const step = 2 * Math.acos(Math.max(0, 1 - CHORD / Math.max(radius, CHORD)));
  const count = Math.max(1, Math.ceil((to - from) / step));
  const places = Array.from({ length: count + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / count;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
  return { kind: 'line', layer, places, closed: false, pen, fill: null };
}

function mapped(mark: Mark, place: (at: Place2) => Place2): Mark {
  if (mark.kind === 'line') return { ...mark, places: mark.places.map(place) };
  if (mark.kind === 'arc') return { ...mark, centre: place(mark.centre) };
  return { ...mark, at: place(mark.at) };
}
