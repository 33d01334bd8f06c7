/**
 * A short code for what a tube is made by: the same on screen, sheet and wrap, made of the figures that are printed. Where one of these changes, the
 * code does, and paper with the old one is waste; so where the job's tools do, for the recipes go by them. Where a tube lies in the car, and how far to pull (which is read anew at each pull), are no part of it.
 *
 * Lengths count to 0.01 mm and angles to 0.01 degrees, so that what arithmetic leaves over changes nothing. Hash: FNV-1a, 32 bits (Fowler, Noll, Vo; IETF
 * draft, from memory). Signs: Crockford's base 32, which leaves out I, L, O and U. Four of them: two revisions of a tube are told apart but for one
 * time in a million.
 */
import { toDegrees } from '../geometry/angle.ts';
import { remembered } from '../remembered.ts';
import { NO_TOOLS, type Tools } from '../job/kinds/tools.ts';
import type { Job } from '../job/types.ts';
import { feedOf, type Feed } from './feed.ts';
import type { Frame, SolvedTube, TubeEnd } from './types.ts';

const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LENGTH = 4;
const STEP = 0.01;

/** Four signs. Of a tube as the job has it fed. */
export const revisionOf = (
  job: Pick<Job, 'bent' | 'feeds' | 'marking' | 'lengthUnit' | 'tools'>,
  tube: SolvedTube,
): string => codeOf(tube)(feedOf(job, tube))(job.tools ?? NO_TOOLS);

/** Of the whole job: of all its tubes. */
export const jobRevision = ({ job, tubes }: Pick<Frame, 'job' | 'tubes'>): string =>
  signs(hashed(tubes.map((tube) => `${tube.id} ${revisionOf(job, tube)}`).join(';')));

const codeOf = remembered((tube: SolvedTube) =>
  remembered((feed: Feed) =>
    remembered((tools: Tools) => signs(hashed([figuresOf(tube, feed), ...figuresOfTools(tools)].join(' ')))),
  ),
);

const figuresOfTools = ({ notchers, saws, benchSaw }: Tools): readonly string[] => [
  ...notchers.flatMap(({ name, greatestOffSquare, takesOffset, step, leans }) =>
    [name, greatestOffSquare, takesOffset, step, leans].map(String),
  ),
  ...saws.flatMap(({ diameter, reach }) => [diameter, reach].map(String)),
  ...(benchSaw === undefined ? [] : [String(benchSaw)]),
];

const figure = (value: number): string => (Number.isFinite(value) ? String(Math.round(value / STEP) + 0) : '-');

function figuresOf(tube: SolvedTube, { from, mark, fine, order, cutLength }: Feed): string {
  const { number, member, section, die, bends, straights, ends, blankLength, developedLength } = tube;
  return [
    number,
    section.outerDiameter,
    section.wall,
    die?.clampOffset ?? '',
    from,
    mark,
    fine,
    ...order.map(({ bend, front }) => `${bend}${front}`),
    ...(member.cutOnCar === true ? ['on the car'] : []),
    ...[cutLength, blankLength, developedLength, ...straights].map(figure),
    ...bends.flatMap(({ angle, rotation, radius }) => [toDegrees(angle), toDegrees(rotation), radius].map(figure)),
    ...ends.flatMap(figuresOfEnd),
  ].join(' ');
}

const figuresOfEnd = ({ fit, allowance, tip, throat, cuts, outer }: TubeEnd): readonly string[] => [
  fit,
  ...[allowance, tip ?? NaN, throat ?? NaN].map(figure),
  ...cuts.flatMap(({ includedAngle, clocking, axisOffset, sawDiameter }) =>
    [toDegrees(includedAngle), toDegrees(clocking), axisOffset, sawDiameter].map(figure),
  ),
  ...Array.from(outer, figure),
];

function hashed(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  // The low bits alone mix too little of short texts: the high ones are folded in.
  return (hash ^ (hash >>> 12)) >>> 0;
}

const signs = (hash: number): string =>
  Array.from({ length: LENGTH }, (_, i) => SIGNS[(hash >>> (5 * i)) & 31]).join('');
