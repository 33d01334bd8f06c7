/** Each joint once, told against the fabrication file and by hand. */
import { describe, expect, it } from 'vitest';
import { weldList } from '../../../src/core/dossier/weld-list.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { demoText, secondRoundText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { derived } from '../frame.ts';

const said = (frame: ReturnType<typeof derived>) =>
  weldList(frame).map(({ tube, which, kind, to }) => [
    `${tube.id} ${'AB'[which]}`,
    kind,
    to.map(({ id }) => id).join(' '),
  ]);

describe('the joints', () => {
  it.each([
    ['the demo', demoText()],
    ['an earlier demo', secondRoundText()],
  ])('of %s are its ends, two that are mitred once', (_, text) => {
    const frame = derivedFrom(text);
    const file = fabrication(frame);
    const ends = file.tubes.flatMap(({ ends: both }) => both);
    const mitred = ends.filter(({ fit }) => fit === 'mitre').length;
    const welds = weldList(frame);
    expect(welds.length).toBe(ends.length - mitred / 2);
    expect(new Set(welds.map(({ tube, which }) => `${tube.id} ${which}`)).size).toBe(welds.length);
    // What a cope names in the file, its joint is with.
    for (const { tube, which, kind, to } of welds) {
      const end = file.tubes.find(({ id }) => id === tube.id)!.ends[which];
      if (kind !== 'cope') continue;
      expect(to.map(({ bar }) => bar)).toEqual(expect.arrayContaining(end.cuts.map(({ against }) => against)));
    }
  });

  it('of two tubes that are mitred are one, of one that meets nothing none that is welded', () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [0, 0, 900], c: [700, 0, 900] },
      members: [
        { id: 'post', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'mitre', with: 'rail' }] },
        {
          id: 'rail',
          path: ['b', 'c'],
          ends: [
            { fit: 'mitre', with: 'post' },
            { fit: 'plate', normal: [1, 0, 0] },
          ],
        },
      ],
    });
    expect(said(frame)).toEqual([
      ['post A', 'none', ''],
      ['post B', 'mitre', 'rail'],
      ['rail B', 'plate', ''],
    ]);
  });

  it('of a tube that is butted in line is one, and of an end in a corner of two tubes one with both', () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [800, 0, 0], c: [1500, 0, 0], d: [800, 0, 700] },
      members: [
        { id: 'one', path: ['a', 'b'] },
        { id: 'two', path: ['b', 'c'] },
        { id: 'post', path: ['b', 'd'] },
      ],
    });
    expect(said(frame).filter(([, kind]) => kind !== 'none')).toEqual([
      ['two A', 'butt', 'one'],
      ['post A', 'cope', 'one two'],
    ]);
  });
});
