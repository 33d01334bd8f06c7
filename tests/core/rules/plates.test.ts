/** What a foot counts with: a plate with its face, a box with what its article says, or with neither where its two areas lie on either side of a limit. */
import { describe, expect, it } from 'vitest';
import type { Foot } from '../../../src/core/job/kinds/foot.ts';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import { verdictInWords } from '../../../src/core/words/rules.ts';
import { frameOf } from '../../reference/jobs.ts';
import { cageOf, hoop, verdictOn, type CageOf } from './cage.ts';

/** Covers 100 x 100 and stands on a ring 2 mm wide: 10 000 and 784 mm². */
const BOX: Foot = { id: 'f', name: 'Tower', kind: 'box', size: [100, 100], thickness: 3, wall: 2, height: 75 };
const PLATE: Foot = { id: 'f', name: 'Pad', kind: 'plate', size: [100, 100], thickness: 3 };

const on = (foot: Foot): CageOf => ({
  bars: { hoop: hoop(0, 600, { fit: 'foot', foot: 'f', normal: [0, 0, 1], allowance: 0 }) },
  feet: [foot],
});

const area = (fields: Partial<RuleCheck>): RuleCheck =>
  ({ article: '', text: '', mark: 'own', roles: ['main-hoop'], kind: 'plate', of: 'area', ...fields }) as RuleCheck;

describe('the plate area', () => {
  it('of a plate is that of its face', () => {
    expect(verdictOn(on(PLATE), area({ least: 10_000 }))).toMatchObject({ verdict: 'met', value: 10_000, count: 2 });
  });

  it('of a box is not known where its outline is enough and its walls are not, and the verdict names both', () => {
    const verdict = verdictOn(on(BOX), area({ least: 6000 }));
    expect(verdict).toMatchObject({ verdict: 'not-checked', because: { id: 'box', covers: 10_000 } });
    expect(verdict.because).toMatchObject({ touches: 100 * 100 - 96 * 96 });
    const said = verdictInWords(verdict, frameOf(cageOf(on(BOX))));
    expect(said).toContain('100.0 cm²');
    expect(said).toContain('7.8 cm²');
    expect(said).toContain('walls of a box');
  });

  it.each([
    [{ least: 10_001 }, 'not-met', 10_000],
    [{ least: 784 }, 'met', 784],
    [{ most: 783 }, 'not-met', 784],
    [{ most: 10_000 }, 'met', 10_000],
    [{ least: 6000, box: 'covers' as const }, 'met', 10_000],
    [{ least: 6000, box: 'touches' as const }, 'not-met', 784],
  ])('of a box is settled where both agree, or the article says which: %o', (fields, verdict, value) => {
    expect(verdictOn(on(BOX), area(fields))).toMatchObject({ verdict, value });
  });
});

it('a foot without holes is said to have none, per foot', () => {
  const words = (check: RuleCheck): string => verdictInWords(verdictOn(on(PLATE), check), frameOf(cageOf(on(PLATE))));
  expect(words(area({ of: 'bolts', least: 3 }))).toBe('0 holes per foot, hoop; at least 3 is asked: 3 short.');
  expect(words(area({ of: 'hole', least: 8 }))).toBe('No bolt holes, hoop; at least 8.0 mm across is asked.');
});

it('of two tubes that do, both are named where neither is met', () => {
  const check = area({
    kind: 'section',
    of: 'size',
    roles: ['main-hoop'],
    sizes: [
      { outerDiameter: 60, wall: 2.5 },
      { outerDiameter: 70, wall: 2 },
    ],
  });
  const said = verdictInWords(verdictOn(on(PLATE), check), frameOf(cageOf(on(PLATE))));
  expect(said).toContain('tube of at least 60.0 mm x 2.5 mm or 70.0 mm x 2.0 mm');
});
