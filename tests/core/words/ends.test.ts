import { cutLengths, plateOffSquare } from '../../../src/core/cope/end-cut.ts';
import { describe, expect, it } from 'vitest';
import type { Frame } from '../../../src/core/solve/types.ts';
import {
  endInWords,
  fromNodeInWords,
  insteadOfNotcher,
  referenceInWords,
  sawCautions,
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

describe('cautions about the saw (common practice: trade.md, copes)', () => {
  it('asks for a template at 30 degrees and below, for help below about 60, for nothing above', () => {
    expect(sawCautions(cutAt(30))).toEqual([expect.stringContaining('no saw')]);
    expect(sawCautions(cutAt(31))).toEqual([expect.stringContaining('slug')]);
    expect(sawCautions(cutAt(60))).toEqual([]);
    expect(sawCautions(cutAt(90))).toEqual([]);
  });

  it('says between which two an angle stands', () => {
    for (const degrees of [30, 50]) expect(sawCautions(cutAt(degrees))[0]).toContain('between the tubes');
  });

  it('where no saw fits that stands in the place of the notcher’s angle, also in a bend', () => {
    expect(insteadOfNotcher(cutAt(31))).toBeNull();
    for (const cut of [cutAt(30), { ...cutAt(89), onBend: true }, { ...cutAt(89), sawDepth: null }])
      expect(insteadOfNotcher(cut)).toBe('No saw fits: use the wrap template');
    expect(insteadOfNotcher({ ...cutAt(80), reaches: false })).toBe('Nothing is cut here');
  });

  it('speaks of a tube that is missed; of a bend nothing of saws, since none is used', () => {
    expect(sawCautions({ ...cutAt(50), onBend: true })).toEqual([]);
    expect(sawCautions({ ...cutAt(80), reaches: false })[0]).toContain('without meeting');
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

it('a place of a cut is said to be short of the node or beyond it, not by a sign', () => {
  expect(fromNodeInWords('Tip', -1.6)).toBe('Tip, beyond node');
  expect(fromNodeInWords('Throat', 22)).toBe('Throat, short of node');
  expect(fromNodeInWords('Tip', -1e-9)).toBe('Tip, at node');
  expect(fromNodeInWords('Tip', null)).toBe('Tip, from node');
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
