/**
 * The place that a pointer means, for a tube that is being drawn. In this order: a named place within reach, anywhere on the tube that is
 * seen there, straight along an axis of the car from the place before, and a place in a plane. Pure; pixels of the bay.
 *
 * A pixel with nothing under it is a place in the one plane of the car, of those through the place before, that faces the view most; for the
 * first place on the floor or, where that is seen on edge, in the centre plane.
 */
import { nearestToLine, runsAlong } from '../../core/geometry/nearest-to-line.ts';
import { placeAt } from '../../core/geometry/path.ts';
import { placesInPlane } from '../../core/geometry/plane-places.ts';
import { FARTHEST } from '../../core/geometry/tolerance.ts';
import { addScaled, dot, mirrored, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../../core/geometry/vector.ts';
import type { Ground } from '../../core/shape/draw/ground.ts';
import { rankOf, snapsOf, type Snap } from '../../core/shape/draw/snaps.ts';
import type { Bar, Frame } from '../../core/solve/types.ts';
import type { Guide } from '../../core/words/drawing.ts';
import type { Projection } from '../camera/projection.ts';
import { tubeAt, type Sight } from '../canvas/sight.ts';

/** What is aimed at. */
export interface Aim extends Snap {
  /** The lines and planes that a place in space is on; of one on a tube, that it is level with the place before. */
  readonly guides: readonly Guide[];
}

/** What a pointer can mean, made once for each frame and each place that is drawn. */
export interface Targets {
  readonly frame: Frame;
  readonly sight: Sight;
  readonly named: readonly Aim[];
  /** The place before; null for the first. */
  readonly last: Vec3 | null;
}

/** Pixels. */
export interface Pointer {
  readonly x: number;
  readonly y: number;
  /** How far a pointer of this kind may miss. */
  readonly reach: number;
}

/** A tube that rises less than this a mm is nearly level: no one place of it is level with another. */
const LEAST_RISE = 0.1;

/** With the places drawn so far, which a tube may come back to. */
export function targetsOf(frame: Frame, sight: Sight, drawn: readonly Snap[]): Targets {
  const last = drawn.at(-1)?.at ?? null;
  const level = last === null ? [] : [...frame.bars.values()].flatMap((bar) => levelOn(bar, last[2]));
  const own = [...drawn, ...drawn.flatMap(imageOf)];
  return { frame, sight, last, named: [...own.map(unguided), ...snapsOf(frame).map(unguided), ...level] };
}

/** The mirror image of a place of the tube, so that a hoop comes out alike on both sides; none of what lies on the centre plane. */
const imageOf = ({ ground, at }: Snap): readonly Snap[] =>
  ground.kind === 'image' || at[1] === 0 ? [] : [{ ground: { kind: 'image', of: ground }, at: mirrored(at) }];

const unguided = (snap: Snap): Aim => ({ ...snap, guides: [] });

const levelOn = (bar: Bar, height: number): readonly Aim[] =>
  placesInPlane(bar.path, 2, height).flatMap(({ at, point, tangent }): readonly Aim[] =>
    Math.abs(tangent[2]) < LEAST_RISE || at > bar.developedLength
      ? []
      : [{ ground: { kind: 'along', tube: bar.id, distance: at }, at: point, guides: ['level'] }],
  );

/** What the pointer means; null where the view gives no plane to lay a place in. `step`, mm: of lengths and coordinates. */
export function aimAt(targets: Targets, view: Projection, pointer: Pointer, step: number): Aim | null {
  return (
    namedAt(targets, view, pointer) ??
    onTubeAt(targets, view, pointer, step) ??
    straightFrom(targets, view, pointer, step) ??
    inPlane(targets, view, pointer, step)
  );
}

/** A named place is a spot of some size. */
const SPOT = 6;
/** Pixels: what is hardly nearer than another lies under the pointer as that does. */
const AS_NEAR = 3;

/** The nearest in pixels; of several as near the one of the first rank, then the one nearer to the eye. */
function namedAt({ named }: Targets, view: Projection, { x, y, reach }: Pointer): Aim | null {
  let within: { readonly aim: Aim; readonly away: number; readonly depth: number }[] = [];
  let least = SPOT + reach;
  for (const aim of named) {
    const seen = view.toScreen(aim.at);
    const away = Math.hypot(seen.x - x, seen.y - y);
    if (away > least + AS_NEAR || away > SPOT + reach) continue;
    within.push({ aim, away, depth: seen.depth });
    least = Math.min(least, away);
  }
  within = within.filter(({ away }) => away <= least + AS_NEAR);
  within.sort((a, b) => rankOf(a.aim) - rankOf(b.aim) || b.depth - a.depth);
  return within[0]?.aim ?? null;
}

/** On the centreline nearest the line of sight, so many whole steps from end A. */
function onTubeAt({ frame, sight }: Targets, view: Projection, { x, y, reach }: Pointer, step: number): Aim | null {
  const bar = frame.bars.get(tubeAt(sight, view, x, y, reach)?.tube.bar ?? '');
  if (bar === undefined || bar.developedLength < step || runsAlong(bar.path, view.toEye)) return null;
  const { at } = nearestToLine(bar.path, view.toPlace(x, y), view.toEye);
  const along = Math.min(bar.developedLength, Math.round(at / step) * step);
  const ground: Ground = { kind: 'along', tube: bar.id, distance: along };
  return { ground, at: placeAt(bar.path, along).point, guides: [] };
}

const LINES: readonly { readonly guide: Guide; readonly along: Vec3 }[] = [
  { guide: 'plumb', along: Z_AXIS },
  { guide: 'ahead', along: X_AXIS },
  { guide: 'across', along: Y_AXIS },
];

/** A line that points at the eye more than this cannot be aimed along. */
const LEAST_LINE = 0.3;

const inSpace = (position: Vec3, guides: readonly Guide[]): Aim => ({
  ground: { kind: 'space', position },
  at: position,
  guides,
});

/** Along an axis from the place before, so many whole steps, where the pointer is near enough to that line. */
function straightFrom({ last }: Targets, view: Projection, { x, y, reach }: Pointer, step: number): Aim | null {
  if (last === null) return null;
  const from = view.toScreen(last);
  const [dx, dy] = [x - from.x, y - from.y];
  let nearest: { readonly guide: Guide; readonly along: Vec3; readonly mm: number } | null = null;
  let least = SPOT + reach;
  for (const { guide, along } of LINES) {
    const [ux, uy] = [dot(along, view.right), -dot(along, view.up)];
    const size = Math.hypot(ux, uy);
    if (size < LEAST_LINE) continue;
    const away = Math.abs(dx * uy - dy * ux) / size;
    if (away >= least) continue;
    least = away;
    nearest = { guide, along, mm: (dx * ux + dy * uy) / (size * size) / view.pixelsPerMm };
  }
  if (nearest === null) return null;
  const { guide, along, mm } = nearest;
  if (guide === 'across' && last[1] !== 0 && Math.abs(last[1] + mm) * view.pixelsPerMm <= SPOT + reach) {
    return inSpace([last[0], 0, last[2]], ['across', 'centre']);
  }
  const whole = Math.round(mm / step) * step;
  return whole === 0 ? null : inSpace(addScaled(last, along, whole), [guide]);
}

/** Of a unit vector square to the plane, the part towards the eye: seen flatter than this it is no plane to lay a place in. */
const LEAST_FLOOR = 0.2;
const AXES = [X_AXIS, Y_AXIS, Z_AXIS] as const;
/** What a place in a plane through the place before has in common with it. */
const PLANES = ['abreast', 'as-far-out', 'level'] as const;

function inPlane({ last }: Targets, view: Projection, { x, y, reach }: Pointer, step: number): Aim | null {
  const axis = planeFor(view, last);
  if (axis === null) return null;
  const value = last?.[axis] ?? 0;
  const seen = view.toPlace(x, y);
  const under = addScaled(seen, view.toEye, (value - seen[axis]) / view.toEye[axis]);
  // Adding 0 takes the sign off a zero, which a file has not.
  const at = under.map((each, i) => (i === axis ? value : Math.round(each / step) * step + 0)) as [
    number,
    number,
    number,
  ];
  if (at.some((each) => Math.abs(each) > FARTHEST)) return null;
  const acrossPixels = Math.hypot(dot(Y_AXIS, view.right), dot(Y_AXIS, view.up)) * view.pixelsPerMm;
  if (axis !== 1 && Math.abs(at[1]) * acrossPixels <= SPOT + reach) at[1] = 0;
  const guides: Guide[] = at[1] === 0 ? ['centre'] : [];
  const plane = last === null ? (axis === 2 ? 'floor' : null) : PLANES[axis];
  return inSpace(at, plane === null ? guides : [plane, ...guides]);
}

/** The axis that the plane is square to. */
function planeFor({ toEye }: Projection, last: Vec3 | null): 0 | 1 | 2 | null {
  if (last === null) return Math.abs(toEye[2]) >= LEAST_FLOOR ? 2 : Math.abs(toEye[1]) >= LEAST_FLOOR ? 1 : null;
  const facing = AXES.map((axis) => Math.abs(dot(axis, toEye)));
  return facing.indexOf(Math.max(...facing)) as 0 | 1 | 2;
}
