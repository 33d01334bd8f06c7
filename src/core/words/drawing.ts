/** What a tube that is being drawn snaps to, why it cannot go there, and what its leg measures, in words. */
import type { DrawTrouble } from '../shape/draw/tube.ts';
import { standsAt, type Ground, type InSpace } from '../shape/draw/ground.ts';
import type { Leg } from '../shape/draw/leg.ts';
import type { TypedTrouble } from '../shape/draw/typed-place.ts';
import { primed, type NodeRef } from '../job/reference.ts';
import { angleBetween } from '../geometry/angle.ts';
import { distanceToPath } from '../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING, STRAIGHT_THROUGH } from '../geometry/tolerance.ts';
import { length, subtract, type Vec3 } from '../geometry/vector.ts';
import { nodeName, pointName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength } from '../units/length.ts';

/**
 * The name of the place, as it stands at the pointer.
 *
 * @param drawn the places of the tube so far
 */
export function groundName(frame: Frame, ground: Ground, drawn: readonly Ground[]): string {
  switch (ground.kind) {
    case 'node':
      return [
        `Node ${nodeName(frame.job, ground.node)}`,
        ...endsAt(frame, ground.node),
        ...outside(frame, ground.node),
      ].join(', ');
    case 'point':
      return `Point ${pointName(frame.job, ground.point)}`;
    case 'image':
      return 'Mirror image of a place of this tube';
    case 'space':
      return sentence(drawn.includes(ground) ? ownName(ground, drawn) : spaceName(frame, ground, drawn));
    case 'bend':
      return `${tubeName(frame, ground.tube)}, ${ground.where} of bend ${ground.bend}`;
    case 'middle': {
      const isWhole = frame.bars.get(ground.tube)?.straights.length === 1;
      return `${tubeName(frame, ground.tube)}, middle${isWhole ? '' : ` of straight ${ground.straight}`}`;
    }
    case 'centre':
      return `${tubeName(frame, ground.tube)}, on the centre plane`;
    case 'level':
      return `${tubeName(frame, ground.tube)}, level with ${ownerName(frame, ground.with, drawn)}`;
    case 'along':
      return `${tubeName(frame, ground.tube)}, ${shown(ground.distance, frame)} from end A`;
  }
}

/** A place in the air: what it is in line with, of the place before first. */
function spaceName(frame: Frame, ground: InSpace, drawn: readonly Ground[]): string {
  const { by, position } = ground;
  const owners = [...new Set(by)].filter((owner) => owner !== null);
  owners.sort((a, b) => Number(b === drawn.at(-1)) - Number(a === drawn.at(-1)));
  const inLine = owners.map((owner) => {
    const shared = 'xyz'.split('').filter((_, axis) => by![axis] === owner);
    const above = position[2] >= (standsAt(frame, owner)?.[2] ?? 0);
    return `${IN_LINE[shared.join('')] ?? (above ? 'plumb over' : 'plumb under')} ${ownerName(frame, owner, drawn)}`;
  });
  const on = isStraightOn(frame, position, drawn) ? ['straight on'] : [];
  const [, y, z] = position.map((value, axis) => value === 0 && (by?.[axis] ?? null) === null);
  const planes = [...(z ? ['on the floor'] : []), ...(y ? ['on the centre plane'] : [])];
  return [...on, ...inLine, ...planes].join(', ') || 'free place';
}

/** Whether the tube comes to the place without turning at the place before. */
function isStraightOn(frame: Frame, position: Vec3, drawn: readonly Ground[]): boolean {
  const [before, last] = drawn.slice(-2).map((ground) => standsAt(frame, ground));
  if (!before || !last) return false;
  const [in_, out] = [subtract(last, before), subtract(position, last)];
  return length(out) > ROUNDING && length(in_) > ROUNDING && angleBetween(in_, out) <= STRAIGHT_THROUGH;
}

/** By the coordinates that two places have in common; plumb is said with which is above. */
const IN_LINE: Readonly<Record<string, string>> = {
  x: 'as far along the car as',
  y: 'as far out as',
  z: 'level with',
  xz: 'level and straight across from',
  yz: 'level and straight along from',
};

function ownerName(frame: Frame, owner: Ground, drawn: readonly Ground[]): string {
  if (drawn.includes(owner)) return ownName(owner, drawn);
  if (owner.kind === 'node') return nodeName(frame.job, owner.node);
  return owner.kind === 'point' ? pointName(frame.job, owner.point) : 'an earlier place';
}

function ownName(ground: Ground, drawn: readonly Ground[]): string {
  const nth = drawn.indexOf(ground);
  return nth === drawn.length - 1 ? 'the place before' : nth === 0 ? 'where the tube begins' : `corner ${nth}`;
}

/** Of which bar the node is an end; the first in build order. */
function endsAt({ bars }: Frame, node: NodeRef): readonly string[] {
  for (const { id, name, member } of bars.values()) {
    const [a, b] = [member.path[0]!, member.path.at(-1)!].map((end) => (id === member.id ? end : primed(end)));
    if (a === node || b === node) return [`end ${a === node ? 'A' : 'B'} of ${name}`];
  }
  return [];
}

/** A sharp corner lies off the tube that is bent round it, and a tube that ends there ends in the air: how far off the nearest of those tubes passes. */
function outside(frame: Frame, node: NodeRef): readonly string[] {
  const at = frame.nodes.get(node);
  if (at === undefined) return [];
  const passing = [...frame.bars.values()].flatMap(({ id, name, path, member }) => {
    const isCorner = member.path.slice(1, -1).some((each) => (id === member.id ? each : primed(each)) === node);
    return isCorner ? [{ name, off: distanceToPath(path, at) }] : [];
  });
  if (passing.length === 0 || passing.some(({ off }) => off <= MEETING_DISTANCE)) return [];
  const nearest = passing.reduce((a, b) => (b.off < a.off ? b : a));
  return [`the sharp corner: ${nearest.name} passes ${shown(nearest.off, frame)} off it`];
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

export const DRAW_TROUBLE_WORDS: Readonly<Record<DrawTrouble, string>> = {
  'too-few': 'A tube needs two places at least.',
  'same-place': 'The tube is there already.',
  'doubles-back': 'The tube would double back on itself.',
  'no-die': 'No die bends this tube: choose another tube, or add a die under Tube & dies.',
  'die-too-tight': 'The die would bend this tube tighter than the tube is wide.',
  gone: 'What it was drawn onto is not there any more.',
};

export const TYPED_TROUBLE_WORDS: Readonly<Record<TypedTrouble, string>> = {
  'too-many': 'Two of the three say it all: leave one empty.',
  'no-direction': 'Point the way first: the numbers say how far and how steep.',
  'no-length': 'The leg has no length.',
  'too-steep': 'An angle to level is 90° at most.',
  'too-short': 'So short a leg does not come to that height.',
  'never-there': 'At that angle it never comes to that height.',
  'level-there': 'Level, it is at that height all the way: type how long it is, and leave the height empty.',
  'begins-there': 'It begins at that height, and at that angle leaves it at once: type another height, or a length.',
};

/** In the job's unit, as the bay writes it. */
const shown = (mm: number, { job }: Frame): string => `${formatLength(mm, job.lengthUnit).text} ${job.lengthUnit}`;

/** The leg for those who do not see it: its length, its slope, its turn and what it meets. */
export function legInWords(frame: Frame, { length, slope, turn, meets }: Leg): string {
  return [
    `leg ${shown(length, frame)}`,
    slopeInWords(slope),
    ...(turn === null ? [] : [`turns ${degrees(turn)}`]),
    ...(meets === null ? [] : [`${degrees(meets.angle)} to ${tubeName(frame, meets.tube)}`]),
  ].join(', ');
}

/** Of a slope in degrees above level, -90..90. */
export const slopeInWords = (slope: number): string => {
  const text = degrees(Math.abs(slope));
  return text === degrees(0) ? 'level' : text === degrees(90) ? 'plumb' : `${text} ${slope > 0 ? 'up' : 'down'}`;
};

/** To a tenth, which is what an angle finder shows. */
export const degrees = (angle: number): string => `${formatAngle(angle, 1)}°`;

/** A half-drawn tube lost some of its places with what they stood on. */
export const placesGone = (count: number): string =>
  count === 1
    ? 'What a place of the tube stood on is gone, and the place with it.'
    : `What ${count} places of the tube stood on is gone, and they with it.`;
