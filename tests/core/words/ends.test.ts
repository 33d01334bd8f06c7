import { cutLengths, plateOffSquare } from '../../../src/core/cope/end-cut.ts';
import { describe, expect, it } from 'vitest';
import type { Frame } from '../../../src/core/solve/types.ts';
import {
  endInWords,
  placesInWords,
  referenceInWords,
  scribeInWords,
  turnInWords,
} from '../../../src/core/words/ends.ts';
import { bentTube, cutAt, endWith, straightTube } from '../run/tubes.ts';

const run = new Map([['run', { ...straightTube({ cutsA: 0, cutsB: 0 }), id: 'run', bar: 'run' }]]);
const frame = { byId: run, bars: run } as unknown as Frame;

describe('what is done to an end, in words', () => {
  it('names what it is coped to, butted to, or how it is cut', () => {
    expect(endInWords(frame, endWith({ fit: 'cope', cuts: [cutAt(60)] }))).toBe('coped to Tube');
    expect(endInWords(frame, endWith({ fit: 'plate' }))).toBe('cut to its plate');
    expect(endInWords(frame, endWith({ butted: ['run'] }))).toBe('butted to Tube, cut square');
  });

  it('gives a turn the sense in which one sees it, looking into the end', () => {
    // Right-hand about a direction that points away from the eye is clockwise.
    expect(turnInWords(Math.PI / 6)).toBe('30.0° clockwise');
    expect(turnInWords(-Math.PI / 2)).toBe('90.0° anticlockwise');
    expect(turnInWords(Math.PI)).toBe('180°');
    expect(turnInWords(-1e-12)).toBe('0°');
  });
});

describe('lengths and plates', () => {
  it('gives the three lengths that shops cut by', () => {
    const tube = bentTube(1, { ends: [endWith({ tip: 2, throat: 22 }), endWith({ tip: -3, throat: 9 })] });
    expect(cutLengths(tube)).toEqual({ axis: 1000, tips: 1001, throats: 969 });
  });

  it('measures a plate’s tilt off square whichever way its normal points', () => {
    const tilted = Math.PI / 9;
    const normal = [Math.cos(tilted), 0, Math.sin(tilted)] as const;
    const away = [-normal[0], 0, -normal[2]] as const;
    expect(plateOffSquare(endWith({ fit: 'plate', plateNormal: normal }))).toBeCloseTo(tilted, 12);
    expect(plateOffSquare(endWith({ fit: 'plate', plateNormal: away }))).toBeCloseTo(tilted, 12);
  });
});

it('a place of a cut is said to be short of the node or beyond it, not by a sign; both once where they are one', () => {
  const said = (tip: number | null, throat: number | null) => placesInWords(endWith({ tip, throat }), 'mm');
  expect(said(-1.6, 22)).toBe('Tip 1.6 mm beyond node, throat 22.0 mm short of node.');
  expect(said(3, 22)).toBe('Tip 3.0 mm, throat 22.0 mm short of node.');
  expect(said(-1e-9, 22)).toBe('Tip at node, throat 22.0 mm short of node.');
  expect(said(null, null)).toBeNull();
});

describe('what phi = 0 is', () => {
  it('is the inside of the bend nearest that end on a bent tube', () => {
    expect(referenceInWords(bentTube(1), 1)).toBe('inside line, on the inside of the bend');
    expect(referenceInWords(bentTube(4), 0)).toBe('inside line, on the inside of bend 1');
    expect(referenceInWords(bentTube(4), 1)).toBe('inside line, on the inside of bend 4');
  });

  it('is the first cut at end A on a straight one, at both ends; of end B when A has none', () => {
    expect(referenceInWords(straightTube({ cutsA: 1, cutsB: 2 }), 1)).toBe('same scribed line');
    expect(scribeInWords(straightTube({ cutsA: 1, cutsB: 2 }))).toContain('at end A, on the deep-bite side');
    expect(scribeInWords(straightTube({ cutsA: 0, cutsB: 1 }))).toContain('at end B, on the deep-bite side');
    expect(scribeInWords(straightTube({ cutsA: 0, cutsB: 0 }))).toContain('up in the car');
    expect(scribeInWords(bentTube(1))).toBeNull();
  });
});
