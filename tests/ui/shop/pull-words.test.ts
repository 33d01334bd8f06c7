/** The shop's sentences about springback. Numbers are by hand; 0.8 degrees of slack and 4 % of spring where nothing else is said. */
import { describe, expect, it } from 'vitest';
import type { Die, Job, Pull, Section } from '../../../src/core/job/types.ts';
import { pullLaw } from '../../../src/core/springback/pull-law.ts';
import { halfWidthInWords, inDoubt } from '../../../src/core/shop/pull-words.ts';
import { disagreements, lawInWords, pairsOf } from '../../../src/ui/shop/pull-words.ts';
import { bentTube } from '../../core/shop/tubes.ts';

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
  lawInWords(pullLaw(pulls, die, section, batch), batch);

describe('the law in words', () => {
  it('says of two pulls what to pull, and that two do not tell how sure', () => {
    const said = words([pull(26.8, 25), pull(63.2, 60)]);
    expect(said).toContain('From 2 pulls: pull 0.8° plus 4.0 % past the net angle. 90° net: pull to 94.4°.');
    expect(said).toContain('a third does');
  });

  it('gives the interval from three on', () => {
    // Opening 2, 4, 5 at 30, 60, 90: slope 0.05, intercept 2/3, s = 0.40825; at 90, 12.7062 s sqrt(1 + 1/3 + 1/2) = 7.0238.
    expect(words([pull(32, 30), pull(64, 60), pull(95, 90)])).toContain('pull to 95.2°, give or take 7.0°.');
  });

  it('says of one angle that it cannot tell slack from spring, and of none that it reads low', () => {
    expect(words([pull(66, 60)])).toContain('From 1 pull: pull 10.0 % past the net angle. 90° net: pull to 99.0°.');
    expect(words([pull(66, 60)])).toContain('One angle cannot tell slack from spring');
    expect(words([])).toContain('reads low');
    expect(lawInWords(pullLaw([], die, { ...section, material: '' }, undefined), undefined)).toContain(
      'no angle to pull to',
    );
  });

  it('names the batch it rests on, and says when the tube’s own has no pulls', () => {
    const pulls = [pull(26.8, 25, 'H-1'), pull(63.2, 60, 'H-1'), pull(70, 61, 'H-2')];
    expect(words(pulls, 'H-1')).toContain('From 2 pulls of batch H-1:');
    expect(words(pulls, 'H-3')).toContain('From 3 pulls:');
    expect(words(pulls, 'H-3')).toContain('Batch H-3 has no pulls of its own');
  });

  it('doubts angles that lie close together, and a slack or a spring below zero', () => {
    expect(words([pull(62.2, 59), pull(63.2, 60)])).toContain('this close together');
    // 1 at 20 and 6 at 70: 10 % less 1.
    expect(words([pull(21, 20), pull(76, 70)])).toContain('pull 10.0 % past the net angle, less 1.0°');
    expect(words([pull(21, 20), pull(76, 70)])).toContain('read the pulls again');
  });

  it('never calls an interval nothing', () => {
    expect(halfWidthInWords(0)).toBe('less than 0.1°');
  });
});

describe('pulls that do not agree', () => {
  it('are named by their numbers, with what each opened by', () => {
    const found = disagreements([pull(26.8, 25), pull(63.2, 60), pull(67, 60.5)]);
    expect(found.map(({ pulls }) => pulls)).toEqual([[1, 2]]);
    expect(found[0]!.words).toContain('Pulls 2 and 3 do not agree');
    expect(found[0]!.words).toContain('3.2° and 6.5°');
  });

  it('put the law in doubt, as a slack below zero does', () => {
    const doubted = (pulls: readonly Pull[]): boolean => inDoubt(pullLaw(pulls, die, section, undefined)!);
    expect(doubted([pull(26.8, 25), pull(63.2, 60)])).toBe(false);
    expect(doubted([pull(26.8, 25), pull(63.2, 60), pull(67, 60.5)])).toBe(true);
    expect(doubted([pull(21, 20), pull(76, 70)])).toBe(true);
    // 6 written for 60: of 63.2 pulled no steel gives back 57.
    expect(doubted([pull(63.2, 6)])).toBe(true);
    expect(doubted([pull(63.2, 60)])).toBe(false);
  });

  it('are also one that closed when it was let go', () => {
    expect(disagreements([pull(60, 61)])[0]!.words).toContain('Pull 1 reads 61.0° net from 60.0° pulled');
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
