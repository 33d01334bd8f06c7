import { describe, expect, it } from 'vitest';
import { effectiveRadius } from '../../../src/core/springback/opened-radius.ts';
import { contradictions, pulledFor, pulledHalfWidth, pullLaw } from '../../../src/core/springback/pull-law.ts';
import { degrees, derived, inWords, tube } from '../frame.ts';
import { die, law, pull, radians, section } from './worked-die.ts';

describe('the law of pulls', () => {
  it('two pulls tell 0.8 degrees of slack and 4 % of spring apart, and are met exactly', () => {
    const two = law([pull(63.2, 60), pull(26.8, 25)]);
    expect(two.from).toBe('pulls');
    expect(degrees(pulledFor(two, radians(90)))).toBeCloseTo(94.4, 9);
    expect(degrees(pulledFor(two, radians(60)))).toBeCloseTo(63.2, 9);
    expect(degrees(pulledFor(two, radians(25)))).toBeCloseTo(26.8, 9);
    // Two pulls say nothing of how sure they are.
    expect(pulledHalfWidth(two, radians(60))).toBeNull();
  });
  it('one pull lays all to the share, and the radius opens by it', () => {
    const one = law([pull(94.4, 90)]);
    expect(one).toMatchObject({ from: 'one-angle', a: 0 });
    expect(effectiveRadius(one, 152.4, radians(90))).toBeCloseTo((152.4 * 94.4) / 90, 9);
  });
  it('pulls at one angle only: all is laid to the share, and their mean is taken', () => {
    const mean = law([pull(94, 90), pull(95, 90)]);
    expect(mean.from).toBe('one-angle');
    expect(degrees(pulledFor(mean, radians(90)))).toBeCloseTo(94.5, 9);
  });
  it('no pulls: the estimate, named so; none where the steel is unknown', () => {
    expect(law([])).toMatchObject({ from: 'estimate', a: 0 });
    expect(pullLaw([], die, { ...section, material: 'x' }, undefined)).toBeNull();
    expect(law([pull(63.2, 60, { die: 'other' }), pull(63.2, 60, { section: 'other' })]).from).toBe('estimate');
  });
  it('a batch with pulls of its own goes before the rest; without any, the rest serve', () => {
    const pulls = [pull(63.2, 60), pull(26.8, 25), pull(70, 61, { batch: 'H-2' })];
    expect(law(pulls, 'H-2')).toMatchObject({ from: 'one-angle', batch: 'H-2' });
    expect(law(pulls, 'H-9')).toMatchObject({ from: 'pulls', batch: null });
  });
  it('is found where pulls contradict each other', () => {
    expect([...contradictions([pull(63.2, 60), pull(26.8, 25)])]).toEqual([]);
    expect([...contradictions([pull(63.2, 60), pull(60, 60.5), pull(70, 61)])]).toEqual([[0, 1], [0, 2], [1], [1, 2]]);
    expect([...contradictions([pull(63.2, 60), pull(70, 61, { batch: 'other' })])]).toEqual([]);
  });
});

const hoop = (radius: string) => ({
  nodes: { a: [0, 600, 0], b: [0, 600, 1000] },
  dies: [{ id: 'd', name: '6 in CLR', outerDiameter: 44.45, centrelineRadius: 152.4, radius }],
  pulls: [{ die: 'd', section: 'main', pulled: 94.4, net: 90, on: '2026-03-02' }],
  members: [{ id: 'hoop', name: 'Hoop', path: ['a', 'b', "b'", "a'"], ends: [{ fit: 'square' }, { fit: 'square' }] }],
});

describe('a die that takes its radius from the pulls', () => {
  it('lays every bend out at die radius x pulled / net', () => {
    const [bend] = tube(derived(hoop('from-pulls')), 'hoop').bends;
    expect(bend!.radius).toBeCloseTo((152.4 * 94.4) / 90, 9);
    expect(bend!.setBack).toBeCloseTo((152.4 * 94.4) / 90, 9);
    expect(derived(hoop('from-pulls')).findings).toEqual([]);
  });
  it('keeps its own radius, and says why, where the pulls cannot be right', () => {
    const pulls = [
      { die: 'd', section: 'main', pulled: 10, net: 60, on: '' },
      { die: 'd', section: 'main', pulled: 20, net: 70, on: '' },
    ];
    const frame = derived({ ...hoop('from-pulls'), pulls });
    expect(tube(frame, 'hoop').bends.map(({ radius }) => radius)).toEqual([152.4, 152.4]);
    expect(frame.findings.map((finding) => finding.id)).toEqual(['bend/pulls-disagree']);
  });
  it('left out, the finding says how far the far end comes to lie', () => {
    const findings = inWords(derived(hoop('nominal')));
    expect(findings.map((finding) => finding.id)).toEqual(['bend/radius-opens']);
    // By hand: each bend takes dR x pi/2 more tube, dR = 7.4507, and throws the rest out by dR across and dR along: the top
    // comes out 2 dR wider, less the excess tube of bend 1, and the leg ends up by the difference of both bends' rise and excess.
    const dR = (152.4 * 4.4) / 90;
    const excess = (dR * Math.PI) / 2;
    const across = 2 * dR - excess;
    const up = dR - dR + excess;
    expect(findings[0]!.message).toContain(`${Math.hypot(across, up).toFixed(1)} mm`);
  });
  it('fed from end B it is end A that comes out, and by what bends that begin at their B sides make of it', () => {
    // An L with legs of 600 and 900: from A the excess shortens the second leg, from B the first; both corners move by dR along both.
    const bent = (from: 'A' | 'B') => ({
      ...hoop('nominal'),
      marking: { from, mark: 'start', fine: false },
      nodes: { a: [0, 600, 0], b: [0, 600, 600], c: [900, 600, 600] },
      members: [{ id: 'l', name: 'L', path: ['a', 'b', 'c'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
    });
    const dR = (152.4 * 4.4) / 90;
    const off = Math.hypot(dR, dR - (dR * Math.PI) / 2).toFixed(1);
    for (const [from, end] of [
      ['A', 'B'],
      ['B', 'A'],
    ] as const) {
      const [found] = inWords(derived(bent(from)));
      expect(found).toMatchObject({ id: 'bend/radius-opens', end });
      expect(found!.message).toContain(`end ${end} comes out ${off} mm from its place`);
    }
  });
});
