/** What the checks find of gussets, in words; they come with the slow stages. */
import { describe, expect, it } from 'vitest';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { derived, inWords } from '../frame.ts';
import { bendJob, jointJob, type Asked } from '../gusset/gusset-jobs.ts';

const found = (frame: ReturnType<typeof jointJob>): readonly string[] => {
  const whole = withSlowFindings(frame);
  return inWords(
    whole,
    whole.findings.filter(({ id }) => id.startsWith('gusset/')),
  ).map((each) => JSON.stringify(each));
};
const said = (asked: Asked): string => found(jointJob(asked)).join('\n');

describe('a gusset', () => {
  it('as they usually are is left alone', () => {
    expect(found(jointJob())).toEqual([]);
    expect(found(bendJob({ legs: [170, 170] }))).toEqual([]);
  });

  it('thinner than the thicker wall, and than 1 mm', () => {
    expect(said({ gusset: { thickness: 2.5 } })).toContain('is 2.5 mm thick');
    expect(said({ gusset: { thickness: 2.5 } })).toContain('3.0 mm or more');
    expect(said({ gusset: { thickness: 3.048 } })).toBe('');
  });

  // Two and four diameters of 44.45: 88.9 and 177.8.
  it.each([
    [88.8, 1],
    [88.9, 0],
    [177.8, 0],
    [177.9, 1],
  ])('with a leg of %s: %s notes', (leg, count) => {
    expect(found(jointJob({ legs: [leg, 100] }))).toHaveLength(count);
    expect(found(jointJob({ legs: [100, leg] }))).toHaveLength(count);
  });

  it.each([
    [{ from: [0, 5, 0], to: [0, 5, 600] }, 'pass each other 5.0 mm apart'],
    [{ from: [0, 0, 60], to: [0, 0, 600] }, 'passes its node 60.0 mm off'],
    [{ to: [600, 0, 60] }, 'its legs stand 5.7° to each other'],
    [{ runHalf: 130, legs: [110, 90] }, 'ends at 107.8 mm. Make it shorter'],
    [{ runHalf: 20, legs: [90, 90] }, 'has no straight for a leg'],
    [{ diameter: 30, gusset: { kind: 'bent', width: 38, radius: 4 } }, 'lets it be 30.0 mm'],
  ] as const)('that cannot be made: %j', (asked, words) => {
    expect(said(asked as Asked)).toContain(words);
    const whole = withSlowFindings(jointJob(asked as Asked));
    expect(fabrication(whole).findings.find(({ id }) => id === 'gusset/cannot')).toMatchObject({
      gusset: 'g',
      severity: 'warning',
      node: 'joint',
    });
  });

  it('across a bend that its leg does not get past', () => {
    expect(found(bendJob({ legs: [120, 170] })).join()).toContain('ends in the bend. Make it 130.2 mm or more');
  });

  it('whose corner lies in a third tube', () => {
    // Two of 25 mm at 127 degrees stand on one of 50: the corner is 12.5 / sin 63.5 over the axis of that, 25 - 13.967 inside it.
    const [across, up] = [600 * Math.sin((63.5 * Math.PI) / 180), 600 * Math.cos((63.5 * Math.PI) / 180)];
    const joint = (relief: number) =>
      derived({
        sections: [
          { id: 'thick', outerDiameter: 50, wall: 3 },
          { id: 'light', outerDiameter: 25, wall: 2 },
        ],
        dies: [],
        nodes: { a: [-500, 0, 0], b: [500, 0, 0], n: [0, 0, 0], c: [across, 0, up], d: [-across, 0, up] },
        members: [
          { id: 'run', name: 'Run', section: 'thick', path: ['a', 'b'], die: undefined },
          { id: 'c', name: 'Brace 1', section: 'light', path: ['n', 'c'], die: undefined },
          { id: 'd', name: 'Brace 2', section: 'light', path: ['n', 'd'], die: undefined },
        ],
        gussets: [
          {
            id: 'g',
            name: 'Between the braces',
            kind: 'flat',
            node: 'n',
            between: [
              { member: 'c', towards: 'B', leg: 75 },
              { member: 'd', towards: 'B', leg: 75 },
            ],
            thickness: 3,
            relief,
          },
        ],
      });
    const [corner] = found(joint(0));
    expect(corner).toContain('The corner of Between the braces lies 11.0 mm inside Run');
    // So much farther along a leg that rises at 26.5 degrees, its edge 12.5 off its axis: 25 over the axis of the run.
    const clear = (25 - 12.5 / Math.sin((63.5 * Math.PI) / 180)) / Math.cos((63.5 * Math.PI) / 180);
    expect(found(joint(clear - 1)).join()).toContain('gusset/in-tube');
    expect(found(joint(clear + 0.5)).join()).not.toContain('gusset/in-tube');
  });
});
