/** What the checks find of gussets, in words; they come with the slow stages. */
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
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

  // The bar crosses the sheet's plane y = 0, square to it, at x = z = `at`; a flat sheet of legs 100 has its corner at 15 and 22.225, its free edge on x + z = 137.225.
  const crossed = (at: number, gusset: object = {}, axis: readonly [number, number, number] = [0, 1, 0]) =>
    said({
      gusset,
      nodes: {
        c: [at - 200 * axis[0], -200 * axis[1], at - 200 * axis[2]],
        d: [at + 200 * axis[0], 200 * axis[1], at + 200 * axis[2]],
      },
      members: [{ id: 'third', path: ['c', 'd'], section: 'thin', ends: [{ fit: 'square' }, { fit: 'square' }] }],
      diameter: 30,
    });
  // From the bar's middle to the free edge sqrt(2) (at - 68.61): its outside is 15 nearer.
  it.each([
    [50, 'runs 15.0 mm into'],
    [75, 'runs 6.0 mm into'],
    [79, 'runs 0.3 mm into'],
    [79.3, ''],
  ])('that a third tube crosses %s along both legs', (at, words) => {
    if (words === '') expect(crossed(at)).not.toContain('into');
    else expect(crossed(at)).toContain(words);
  });

  it('that a third tube runs beside, level with its face: by what lies between them', () => {
    // 16.6 over the plane: 1.6 over half the sheet less 15 of the tube.
    const beside = (y: number) =>
      said({
        nodes: { c: [60, y, -300], d: [60, y, 300] },
        members: [{ id: 'third', path: ['c', 'd'], section: 'thin', ends: [{ fit: 'square' }, { fit: 'square' }] }],
        diameter: 30,
      });
    expect(beside(16.9)).not.toContain('into');
    expect(beside(15)).toContain('runs 1.6 mm into');
  });

  it('folded, whose strip a third tube crosses', () => {
    const bent = { kind: 'bent', width: 25, radius: 4, thickness: 3.2 };
    // Both faces lie 10.9 beside the plane: sqrt(22.225^2 - 10.9^2) + sqrt(15^2 - 10.9^2) + 100 = 129.673 to the free edge.
    expect(crossed(76, bent)).not.toContain('into');
    expect(crossed(74, bent)).toContain('runs 2.0 mm into');
  });

  it('in a corner that has one already, also where one is the mirror image of the other', () => {
    const job = jointJob();
    const twice = derive({
      ...job.job,
      gussets: [job.job.gussets[0]!, { ...job.job.gussets[0]!, id: 'h', name: 'h' }],
    });
    if (!twice.ok) throw new Error('no frame');
    expect(found(twice.value).join()).toContain('stands in the same corner');
    expect(found(job).join()).not.toContain('same corner');
  });

  it('whose leg begins before the tube that it lies on', () => {
    // At 150 degrees a thin branch and a thick run that ends at the node: (15 + 22.225 cos 150) / sin 150 = -8.5.
    const flat = { to: [-300 * Math.sqrt(3), 0, 300], diameter: 30, legs: [100, 100] } as const;
    expect(said(flat as Asked)).not.toContain('begins');
    const ending = derived({
      sections: [
        { id: 'main', outerDiameter: 44.45, wall: 3.048 },
        { id: 'thin', outerDiameter: 30, wall: 2 },
      ],
      nodes: { joint: [0, 0, 0], b: [500, 0, 0], end: [-300 * Math.sqrt(3), 0, 300] },
      members: [
        { id: 'run', path: ['joint', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'branch', path: ['joint', 'end'], section: 'thin', ends: [{ fit: 'square' }, { fit: 'square' }] },
      ],
      gussets: [
        {
          id: 'g',
          kind: 'flat',
          node: 'joint',
          between: [
            { member: 'run', towards: 'B', leg: 100 },
            { member: 'branch', towards: 'B', leg: 100 },
          ],
          thickness: 3.2,
        },
      ],
    });
    expect(found(ending).join()).toContain('its leg begins 8.5 mm before run does');
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
