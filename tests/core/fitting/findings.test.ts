/** What is found of the fitting of a cage: only where a figure is short, with the figure and what to do; and all of it in the fabrication file. */
import { describe, expect, it } from 'vitest';
import { fitTrouble } from '../../../src/core/checks/fit-findings.ts';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { derived, inWords } from '../frame.ts';

type Records = Parameters<typeof derived>[0];
const BOX = { id: 'box', name: 'Box', kind: 'box', size: [120, 120], thickness: 3, height: 60 };
const foot = { fit: 'foot', foot: 'box', normal: [0, 0, 1] };
/** A hoop 1000 high and wide, a bar that lands on its top, and the roof over that: 27.775 of air. */
const cage = (more: Records = {}): Records => ({
  lengthUnit: 'mm',
  points: [{ id: 'p', name: 'Roof', position: [20, 0, 1050] }],
  feet: [BOX],
  nodes: {
    a: [0, 500, 0],
    b: [0, 500, 1000],
    c: [0, -500, 1000],
    d: [0, -500, 0],
    rear: [-800, 0, 1000],
    middle: { kind: 'on', member: 'hoop', until: { axis: 'y', value: 0 } },
  },
  members: [
    { id: 'hoop', name: 'Hoop', path: ['a', 'b', 'c', 'd'], ends: [foot, foot] },
    { id: 'bar', name: 'Bar', path: ['middle', 'rear'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
  ],
  ...more,
});
const found = (more?: Records) => {
  const frame = derived(cage(more));
  return inWords(frame, fitTrouble(frame)).map(({ id, severity, tube, message, source }) => [
    id,
    severity,
    tube,
    message,
    source,
  ]);
};

describe('a joint that no torch reaches', () => {
  it('is not found while the boxes give what it lacks', () => {
    expect(found()).toEqual([]);
    expect(found({ torchRoom: 27.775 + 63 })).toEqual([]);
  });
  it('is a warning where they give too little, or there are none', () => {
    expect(found({ torchRoom: 100 })).toEqual([
      [
        'fit/no-air',
        'warning',
        'bar',
        'middle has 27.7 mm of air above it, up to Roof; a torch wants 100.0 mm. To weld it the cage has to stand 72.3 mm lower, and the boxes of the feet give 63.0 mm. Take boxes as high as that, make holes in the floor, or lead the tubes lower there.',
        'torch room above a joint as set in this job',
      ],
    ]);
    const plate = { id: 'box', name: 'Plate', kind: 'plate', size: [120, 120], thickness: 3 };
    expect(found({ feet: [plate] })[0]![3]).toContain('32.3 mm lower, and no foot is a box that would give it.');
    expect(found({ feet: [plate], points: [{ id: 'p', name: 'Roof', position: [0, 0, 1010] }] })[0]![3]).toMatch(
      /^middle stands 12.3 mm higher than Roof;/u,
    );
  });
});

describe('a hoop that the door does not let in', () => {
  it('is a warning where it is wider than the longest way across', () => {
    // From the outside of the top to the cut ends, which stand 63 up on their boxes.
    const width = 1000 + 44.45 / 2 - 63;
    expect(found({ doorOpening: width })).toEqual([]);
    expect(found({ doorOpening: 900 })).toEqual([
      [
        'fit/wider-than-door',
        'warning',
        'hoop',
        'Hoop, laid flat, wants an opening 959.3 mm wide and 44.5 mm thick; the longest straight way across the door is 900.0 mm. Bring it in by another opening; turned as it comes in it may go through, which is not worked out.',
        'the way across the door, measured or typed in this job',
      ],
    ]);
  });
});

describe('what is found', () => {
  it('stands among the findings that take longer, and in the fabrication file beside all figures', () => {
    const file = fabrication(withSlowFindings(derived(cage({ torchRoom: 100, doorOpening: 900 }))));
    expect(file.findings.map(({ id }) => id)).toEqual(expect.arrayContaining(['fit/no-air', 'fit/wider-than-door']));
    expect(file.findings.find(({ id }) => id === 'fit/no-air')).toMatchObject({ node: 'middle', point: 'p', end: 'A' });
    const { joints, ...rest } = file.fitting;
    expect(joints).toMatchObject([
      { node: 'middle', tube: 'bar', end: 'A', at: [0, 0, 1000], over: { point: 'p', aside: 20 } },
    ]);
    expect(joints[0]!.air).toBeCloseTo(27.775, 9);
    expect(joints[0]!.short).toBeCloseTo(72.225, 9);
    expect(rest).toMatchObject({ torchRoom: 100, decidedBy: 0, boxesGive: 63, door: { way: 900, between: null } });
    expect(rest.ends.map(({ tube, end, gives, into }) => [tube, end, gives, Number(into.toFixed(6))])).toEqual([
      ['hoop', 'A', 63, 9.225],
      ['hoop', 'B', 63, 9.225],
    ]);
    expect(rest.slits.map(({ tube }) => tube)).toEqual(['hoop']);
  });
});
