/** The shop's sentences about springback. Numbers are of net + 0.8 + 0.04 net (63.2 -> 60, 26.8 -> 25), or by hand. */
import { describe, expect, it } from 'vitest';
import type { Die } from '../../../src/core/job/kinds/die.ts';
import type { Pull } from '../../../src/core/job/kinds/pull.ts';
import type { Section } from '../../../src/core/job/kinds/section.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { pullLaw } from '../../../src/core/springback/pull-law.ts';
import { halfWidthInWords } from '../../../src/core/words/pulls.ts';
import { disagreements, lawInWords } from '../../../src/core/words/pull-log.ts';
import { pairsOf } from '../../../src/ui/shop/pairs.ts';
import { bentTube } from '../../core/run/tubes.ts';

const tube = bentTube(1);
const die: Die = tube.die!;
const section: Section = { ...tube.section, material: 'dom-1020' };
const pull = (pulled: number, net: number, batch?: string): Pull => ({
  die: 'd',
  section: 's',
  pulled,
  net,
  on: '',
  ...(batch !== undefined && { batch }),
});
const words = (pulls: readonly Pull[], batch?: string): string =>
  lawInWords(pullLaw(pulls, die, section, batch), batch, 0.5);

describe('the law in words', () => {
  it('says of two pulls what to pull, and for which bends that is enough', () => {
    const said = words([pull(26.8, 25), pull(63.2, 60)]);
    expect(said).toContain(
      'From 2 pulls: pull 0.8° plus 4.0 % past the finished angle. For a finished 90° pull to 94.5° (1/2° scale; exactly 94.4°).',
    );
    expect(said).toContain('These pulls are enough for bends of 1° to 104°.');
  });

  it('gives the interval from three on', () => {
    // Opening 2, 3, 4.6 at 30, 60, 90: slope 0.04333, intercept 0.6; at 90, 5 - 0.5 = 4.5. Residuals 0.1, -0.2, 0.1: 0.06 over one
    // degree of freedom, and 10 x 0.04 known: s = 0.20449 of 11, t = 2.2010; 2.2010 s sqrt(1 + 1/3 + 1/2) = 0.609.
    expect(words([pull(32, 30), pull(63, 60), pull(94.6, 90)])).toContain('pull to 94.5°, give or take 0.6°.');
  });

  it('says of one angle that it cannot tell slack from spring, and of none that the bend comes out under-bent', () => {
    expect(words([pull(62.4, 60)])).toContain('From 1 pull.');
    expect(words([pull(62.4, 60)])).toContain(
      'For a finished 90° first pull to 92.0°, let go, read, then go on: pulls at one angle cannot tell slack from spring. One more pull to a finished angle near 90°',
    );
    expect(words([])).toContain('start at 91.5° (1/2° scale; exactly 91.7°). That is an estimate');
    expect(words([])).toContain('up to 4.5° short, and the bend comes out under-bent; 2° to 6° in all are met with');
    expect(lawInWords(pullLaw([], die, { ...section, material: '' }, undefined), undefined, 0.5)).toContain(
      'Pull to the finished angle, let go, read',
    );
  });

  it('names the batch it rests on, and says when the tube’s own has no pulls', () => {
    const pulls = [pull(26.8, 25, 'H-1'), pull(63.2, 60, 'H-1'), pull(63.6, 60, 'H-2')];
    expect(words(pulls, 'H-1')).toContain('From 2 pulls of batch H-1:');
    expect(words(pulls, 'H-3')).toContain('From 3 pulls:');
    expect(words(pulls, 'H-3')).toContain('Batch H-3 has no pulls of its own');
  });

  it('doubts angles that lie close together, and a slack or a spring below zero', () => {
    // The line of these two asks 120 for 90.
    const close = words([pull(22, 20), pull(23.4, 21)]);
    expect(close).toContain('first pull to 92.0°');
    expect(close).toContain('this close together');
    expect(close).not.toContain('120');
    // 1 at 20 and 6 at 70: 10 % less 1.
    expect(words([pull(21, 20), pull(76, 70)])).toContain('the pulls in the log disagree');
  });

  it('never calls an interval nothing', () => {
    expect(halfWidthInWords(0)).toBe('less than 0.1°');
  });
});

describe('pulls that do not agree', () => {
  it('are named by their numbers, with what each opened by', () => {
    const found = disagreements([pull(26.8, 25), pull(63.2, 60), pull(66.5, 60.5)]);
    expect(found.map(({ pulls }) => pulls)).toEqual([[1, 2]]);
    expect(found[0]!.words).toContain('Pulls 2 and 3 do not agree');
    expect(found[0]!.words).toContain('3.2° and 6.0°');
  });

  it('are also one that closed when it was let go', () => {
    expect(disagreements([pull(60, 61)])[0]!.words).toContain('Pull 1 reads 61.0° from 60.0° pulled');
  });
});

it('offers each die with the tubes of its diameter, and what is bent or logged otherwise', () => {
  const other = { ...section, id: 'thin', wall: 2.4 };
  const odd = { ...section, id: 'odd', outerDiameter: 40 };
  const job = { dies: [die], sections: [section, other, odd], members: [], pulls: [] } as unknown as Job;
  const ids = (of: Job): string[] => pairsOf(of).map((pair) => `${pair.die.id} ${pair.section.id}`);
  expect(ids(job)).toEqual(['d s', 'd thin']);
  expect(ids({ ...job, pulls: [{ ...pull(26.8, 25), section: 'odd' }] })).toEqual(['d s', 'd thin', 'd odd']);
});
