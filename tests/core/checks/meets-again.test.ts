/** Tubes that meet their run again past the cope, and cuts that stand elsewhere; depths by hand: radii added, less how far axes pass. */
import { describe, expect, it } from 'vitest';
import type { Member } from '../../../src/core/job/kinds/member.ts';
import { derive } from '../../../src/core/derive.ts';
import { copedTo, dieOf, fixed, jobOf, member, SQUARE, tubing } from '../../reference/jobs.ts';
import type { Triple } from '../../reference/oracles/space.ts';

const RUN = 45;
const OWN = 38;

/** A run and a tube coped to it, through these corners; end B of the tube as asked, square if nothing is. */
function found(run: readonly Triple[], tube: readonly Triple[], more: Partial<Member> = {}) {
  const ids = (name: string, corners: readonly Triple[]) => corners.map((_, i) => `${name}${i}`);
  const result = derive(
    jobOf({
      sections: [tubing('run', RUN, 2.5), tubing('own', OWN, 2)],
      dies: [dieOf('r', RUN, 150), dieOf('o', OWN, 120)],
      nodes: [...run.map((corner, i) => fixed(`r${i}`, corner)), ...tube.map((corner, i) => fixed(`t${i}`, corner))],
      members: [
        member('run', ids('r', run), 'run', { die: 'r' }),
        member('tube', ids('t', tube), 'own', { die: 'o', ends: [copedTo('run'), SQUARE], ...more }),
      ],
    }),
  );
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value.findings.filter(({ severity }) => severity === 'error');
}

/** Legs 600 apart, along z. */
const HOOP: readonly Triple[] = [
  [0, 0, 0],
  [0, 0, 1000],
  [600, 0, 1000],
  [600, 0, 0],
];
const UPRIGHT: readonly Triple[] = [
  [0, 0, -500],
  [0, 0, 900],
];

describe('a tube that meets its run again', () => {
  it('does so where it runs on through the other leg of a hoop', () => {
    const [again, ...others] = found(HOOP, [
      [0, 0, 400],
      [900, 0, 400],
    ]);
    expect(others).toEqual([]);
    expect(again).toMatchObject({ id: 'end/meets-run-again', tube: 'tube', end: 'A', runTube: 'run' });
    if (again?.id !== 'end/meets-run-again') return;
    // A line of the wall goes through the leg's own axis.
    expect(again.depth).toBeCloseTo(RUN / 2, 6);
    expect(again.at[0]).toBeCloseTo(600, 3);
  });

  it('does not where it is coped to both legs, nor where it passes the other by', () => {
    const across: readonly Triple[] = [
      [0, 0, 400],
      [600, 0, 400],
    ];
    expect(found(HOOP, across, { ends: [copedTo('run'), copedTo('run')] })).toEqual([]);
    const beside: readonly Triple[] = [
      [0, 0, 400],
      [900, 90, 400],
    ];
    expect(found(HOOP, beside)).toEqual([]);
  });

  it.each([
    // Past the axis by 40 and by 42: the radii are 41.5 together.
    [40, 1.5],
    [42, null],
  ])('after bends of its own, passing the axis by %f', (past, depth) => {
    const back: readonly Triple[] = [
      [0, 0, 0],
      [300, 0, 0],
      [300, past, 400],
      [-300, past, 400],
    ];
    for (const corners of [back, [...back, [-300, past, 900] as const]]) {
      const all = found(UPRIGHT, corners);
      expect(all.map(({ id }) => id)).toEqual(depth === null ? [] : ['end/meets-run-again']);
      for (const each of all) if (each.id === 'end/meets-run-again') expect(each.depth).toBeCloseTo(depth!, 4);
    }
  });
});

describe('a run that a tube is told to cope to, on the other side of the car', () => {
  it('is said to cut the mirror image elsewhere', () => {
    const onLeft: readonly Triple[] = [
      [0, 700, 0],
      [0, 700, 900],
    ];
    const ends = found(
      onLeft,
      [
        [0, 700, 400],
        [0, -750, 500],
      ],
      { mirror: true },
    ).map((each) => [each.id, each.tube, each.end]);
    expect(ends).toEqual([['end/cut-elsewhere', "tube'", 'A']]);
  });
});
