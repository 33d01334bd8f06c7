/** The words at the ends of a node's bars: which way each leads in the car. */
import { addScaled, type Vec3 } from '../../core/geometry/vector.ts';
import type { Label } from '../labels/label.ts';
import { BAR, type Grip } from './grips.ts';

const WORDS: Readonly<Record<string, string>> = { x: 'forward', y: 'left', z: 'up' };

/** Pixels past the bar's end at which a word may stand: the farther ones for a long word beside a level bar. */
const WORD_GAPS = [28, 40, 52, 70, 88];

/** Each bar's end keeps the numbers of tubes off itself by a word, or by an empty label of its size. */
export const gripLabels = (place: Vec3, grips: readonly Grip[]): Label[] =>
  grips
    .filter(({ kind }) => kind === 'bar')
    .flatMap(({ key, along, bothWays }) => {
      const end = (pixels: number) => (pixelsPerMm: number) => [addScaled(place, along[0]!, pixels / pixelsPerMm)];
      const word = WORDS[key];
      const ends = [BAR.to, ...(bothWays ? [-BAR.to] : [])];
      return [
        ...ends.map((pixels): Label => ({
          key: `grip ${key} ${pixels}`,
          at: end(pixels),
          rank: -1,
          look: 'clear',
          text: '',
        })),
        ...(word === undefined
          ? []
          : [
              {
                key: `grip ${key}`,
                at: (pixelsPerMm) => WORD_GAPS.flatMap((gap) => end(BAR.to + gap)(pixelsPerMm)),
                rank: 1,
                look: 'grip',
                text: word,
              } satisfies Label,
            ]),
      ];
    });
