/**
 * What of a picture's words stands over other words, and what of it stands beyond its edges. Words lie level here. Of a letter's body what
 * ink may stand on counts: a fifth under the line to three quarters over it.
 */
import type { Lettering } from '../../src/drawing/lettering.ts';
import type { Picture, Words } from '../../src/drawing/types.ts';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

const boxOf = ({ at, text, size, anchor, bold }: Words, letters: Lettering): Box => {
  const wide = letters.width(text, size, bold);
  const left = at.x - { start: 0, middle: wide / 2, end: wide }[anchor];
  return { left, right: left + wide, low: at.y - 0.2 * size, high: at.y + 0.75 * size };
};

export const wordsOf = ({ marks }: Picture): Words[] => marks.filter((mark) => mark.kind === 'words');

export function overlapping(picture: Picture, letters: Lettering): string[] {
  const boxes = wordsOf(picture).map((words) => ({ text: words.text, ...boxOf(words, letters) }));
  return boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (other) => one.left < other.right && other.left < one.right && one.low < other.high && other.low < one.high,
      )
      .map((other) => `“${one.text}” and “${other.text}”`),
  );
}

/** More than a hair, mm. */
export function beyond(picture: Picture, letters: Lettering): string[] {
  const { width, height, marks } = picture;
  const isOut = ({ left, right, low, high }: Box): boolean =>
    left < -1e-6 || right > width + 1e-6 || low < -1e-6 || high > height + 1e-6;
  return marks.flatMap((mark) => {
    if (mark.kind === 'words') return isOut(boxOf(mark, letters)) ? [`“${mark.text}”`] : [];
    if (mark.kind === 'arc') return [`an arc on ${mark.layer}`];
    const out = mark.places.some(({ x, y }) => isOut({ left: x, right: x, low: y, high: y }));
    return out ? [`a line on ${mark.layer}`] : [];
  });
}
