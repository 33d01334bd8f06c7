/** What a tube that is being drawn snaps to, why it cannot go there, and what its leg measures, in words. */
import type { DrawTrouble } from '../shape/draw/tube.ts';
import type { Ground } from '../shape/draw/ground.ts';
import type { Leg } from '../shape/draw/leg.ts';
import type { TypedTrouble } from '../shape/draw/typed-place.ts';
import { primed, type NodeRef } from '../job/reference.ts';
import { nodeName, pointName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength } from '../units/length.ts';

/** A line from the place before, or a plane, that a place with nothing under it is on. */
export type Guide = 'plumb' | 'ahead' | 'across' | 'level' | 'centre' | 'floor' | 'abreast' | 'as-far-out';

const GUIDE_WORDS: Readonly<Record<Guide, string>> = {
  plumb: 'Plumb',
  ahead: 'Level, straight along the car',
  across: 'Level, square across the car',
  level: 'Level',
  centre: 'on the centre plane',
  floor: 'On the floor',
  abreast: 'Abreast of the place before',
  'as-far-out': 'As far out as the place before',
};

/** The name of the place, as it stands at the pointer. */
export function groundName(frame: Frame, ground: Ground, guides: readonly Guide[] = []): string {
  switch (ground.kind) {
    case 'node':
      return [`Node ${nodeName(frame.job, ground.node)}`, ...endsAt(frame, ground.node)].join(', ');
    case 'point':
      return `Point ${pointName(frame.job, ground.point)}`;
    case 'image':
      return 'Mirror image of a place of this tube';
    case 'space':
      return guides.length === 0 ? 'Free place' : sentence(guides.map((guide) => GUIDE_WORDS[guide]).join(', '));
    case 'bend':
      return `${tubeName(frame, ground.tube)}, ${ground.where} of bend ${ground.bend}`;
    case 'middle': {
      const isWhole = frame.bars.get(ground.tube)?.straights.length === 1;
      return `${tubeName(frame, ground.tube)}, middle${isWhole ? '' : ` of straight ${ground.straight}`}`;
    }
    case 'centre':
      return `${tubeName(frame, ground.tube)}, on the centre plane`;
    case 'along':
      return guides.includes('level')
        ? `${tubeName(frame, ground.tube)}, level with the place before`
        : `${tubeName(frame, ground.tube)}, ${shown(ground.distance, frame)} from end A`;
  }
}

/** Of which bar the node is an end; the first in build order. */
function endsAt({ bars }: Frame, node: NodeRef): readonly string[] {
  for (const { id, name, member } of bars.values()) {
    const [a, b] = [member.path[0]!, member.path.at(-1)!].map((end) => (id === member.id ? end : primed(end)));
    if (a === node || b === node) return [`end ${a === node ? 'A' : 'B'} of ${name}`];
  }
  return [];
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

const slopeInWords = (slope: number): string => {
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
