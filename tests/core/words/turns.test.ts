/** The words of a turn, against what a person would say of it; that they are right is tested by following them (exports/literal). */
import { describe, expect, it } from 'vitest';
import type { RotationReading } from '../../../src/core/run/rotation-reading.ts';
import {
  firstBendInWords,
  lineInWords,
  readerInWords,
  seamInWords,
  turnSentence,
  turnSentences,
  zeroInWords,
} from '../../../src/core/words/turns.ts';

const reading: RotationReading = {
  by: 'level',
  zeroOn: 1,
  legTo: 'left',
  assumed: false,
  asItLies: true,
  turn: 120,
  off: 0.04,
  sense: 'clockwise',
  seenFrom: 'B',
  sits: { where: 'behind', before: null },
  reads: 60,
  pastPlumb: true,
  alongLeg: 33.1,
  line: 120,
  lineRound: 46.548,
};
const said = (change: Partial<RotationReading>) => turnSentences({ ...reading, ...change }, 'mm').join(' ');

describe('a turn in words', () => {
  it('says what is turned, which way, seen from where, from which zero, and what is then read', () => {
    expect(said({})).toBe(
      'Turn the tube 120° clockwise, looking from behind (end B’s side) towards the die. ' +
        'Zero: bend 1 level, its leg to the left, as it comes off the die; turned, it points up to the right. ' +
        'A level on a bar across the tube behind the die goes from 0°, past plumb, to 60°; laid along the leg, to 33.1°. ' +
        'The scribed line then stands 120.0° clockwise of the top, 46.5 mm round.',
    );
  });
  it.each([
    ['left', 'clockwise', 30, 'up to the left'],
    ['left', 'anticlockwise', 30, 'down to the left'],
    ['right', 'clockwise', 30, 'down to the right'],
    ['right', 'anticlockwise', 130, 'up to the left'],
    ['right', 'clockwise', 90, 'straight down'],
    ['left', null, 180, 'level to the right'],
  ] as const)('a leg on the %s, turned %s by %d, points %s', (legTo, sense, turn, words) => {
    expect(zeroInWords({ ...reading, legTo, sense, turn })).toContain(`it points ${words}.`);
  });
  it('half a turn goes either way; where nothing is turned there is nothing to read', () => {
    expect(turnSentence({ ...reading, turn: 180, sense: null })).toBe('Turn the tube half round, 180°, either way.');
    const none = said({ turn: 0, sense: null, line: 0 });
    expect(none).toBe(
      'Do not turn the tube. Zero: bend 1 level, its leg to the left, as it comes off the die. The scribed line then is on top.',
    );
    expect(said({ turn: 0, sense: null, asItLies: false })).toMatch(
      /^Turn the tube to zero and no further\. Zero: lay bend 1/u,
    );
  });
  it('names the wheel, a short seat, rounding of more than a quarter of a degree, and a bender that nobody has set up', () => {
    const wheel = { ...reading, by: 'wheel', reads: 120, pastPlumb: false } as const;
    expect(readerInWords({ ...wheel, off: -0.4, sits: { where: 'in-front', before: 3 } })).toBe(
      'A degree wheel on the tube in front of the clamp, short of bend 3, goes from 0° to 120°; a level laid along the leg, to 33.1°. 0.40° is lost in rounding.',
    );
    expect(readerInWords({ ...wheel, sits: null, alongLeg: null })).toMatch(
      /no straight in the feed.*go by the scribed line/u,
    );
    expect(readerInWords({ ...reading, sits: null })).toMatch(
      /no straight in the feed.*laid along the leg, to 33\.1°/u,
    );
    expect(zeroInWords({ ...reading, assumed: true })).toMatch(/No bender is set up.*bends to the left/u);
  });
  it('says where the line is underneath, and in inches to 1/64', () => {
    expect(lineInWords({ ...reading, line: -180, lineRound: 69.8 }, 'in')).toBe('The scribed line then is underneath.');
    expect(lineInWords({ ...reading, line: -21.4, lineRound: 8.3 }, 'in')).toBe(
      'The scribed line then stands 21.4° anticlockwise of the top, 21/64 in round.',
    );
  });
});

describe('the seam of a welded tube', () => {
  const section = (material: string) => ({ id: 's', name: 'S', outerDiameter: 44.45, wall: 3.048, material });
  // Common practice: on the neutral axis, where the wall is neither stretched nor pressed.
  it('goes to the side of the first bend; drawn tube has none', () => {
    expect(firstBendInWords(section('erw-1020'), false)).toBe(
      'Lay the tube with its seam to the side of the first bend, half-way round between inside and outside.',
    );
    expect(firstBendInWords(section('HREW'), true)).toMatch(
      /seam to the side.*, and scribe a line along its top, end to end\.$/u,
    );
    for (const drawn of ['dom-1020', '4130-n', 'e235-n', '', 'screwed'])
      expect(firstBendInWords(section(drawn), false)).toBe('Lay the tube any way round for the first bend.');
  });
  it('is as far round from a later bend’s side as the scribed line from its top or its bottom', () => {
    const at = (line: number) => seamInWords(section('erw-1020'), { line } as RotationReading);
    expect([0, 180, -180, 0.3].map(at)).toEqual(Array(4).fill('Its seam is to the side of this bend too.'));
    expect([35, -35, 145, -145].map(at)).toEqual(Array(4).fill('Its seam is 35° round from the side of this bend.'));
    expect(at(90)).toContain('90°');
    expect(seamInWords(section('dom-1020'), { line: 35 } as RotationReading)).toBeNull();
  });
});
