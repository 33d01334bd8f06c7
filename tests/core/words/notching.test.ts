/** A recipe as it is read: the steps in their order, which way the mark faces, and why a wrap. */
import { describe, expect, it } from 'vitest';
import { notchingOf, type Notching } from '../../../src/core/cope/notching.ts';
import type { Notcher } from '../../../src/core/job/kinds/notcher.ts';
import type { Tools } from '../../../src/core/job/kinds/tools.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { benchSawInWords, recipeRows, saidOfCut, seenInWords, wayInWords } from '../../../src/core/words/notching.ts';
import { copedTo, fixed, jobOf, member, SQUARE, tubeOf, tubing } from '../../reference/jobs.ts';

const DEGREE = Math.PI / 180;
const BENCH: Notcher = { name: 'Bench', greatestOffSquare: 50, takesOffset: true, step: 1, leans: 'over-tube' };
const LONG_SAW = { diameter: 45, reach: 200 };

/** A 40 mm branch on a 45 mm run at so many degrees, `allowance` left long. */
function branch(included: number, allowance = 0): SolvedTube {
  const job = jobOf({
    sections: [tubing('run', 45, 2), tubing('s', 40, 2)],
    nodes: [
      fixed('a', [-300, 0, 0]),
      fixed('b', [300, 0, 0]),
      fixed('n', [0, 0, 0]),
      fixed('f', [Math.cos(included * DEGREE) * 500, Math.sin(included * DEGREE) * 500, 0]),
    ],
    members: [
      member('run', ['a', 'b'], 'run'),
      member('branch', ['n', 'f'], 's', { ends: [{ ...copedTo('run'), allowance }, SQUARE] }),
    ],
  });
  return tubeOf(job, 'branch');
}

function read(tube: SolvedTube, tools?: Tools) {
  const notching: Notching = notchingOf(tube.ends[0], tools)!;
  const notch = notching.notches[0]!;
  return {
    way: wayInWords(notch, notching, 'mm'),
    said: saidOfCut(tube, 0, notching, 0, 'mm').join(' '),
    seen: seenInWords(notch, notching),
    rows: recipeRows(tube, notch, notching, 'mm').map(({ label, figure }) =>
      figure.kind === 'words' ? `${label} ${figure.words}` : `${label} ${figure.mm.toFixed(2)}`,
    ),
  };
}

const tools = (notcher: Partial<Notcher>, reach = 200): Tools => ({
  notchers: [{ ...BENCH, ...notcher }],
  saws: [{ ...LONG_SAW, reach }],
});

describe('a recipe', () => {
  it('goes in the order of the hands, the depth rounded up, the angle as the scale has it', () => {
    const { rows, said } = read(branch(60.4), tools({}));
    expect(rows.map((row) => row.replace(/ -?[\d.]+$/u, ''))).toEqual([
      'Mark, from line on the line',
      'Round the tube',
      'Hole saw 45.0 mm',
      'Off square 30°',
      'Centre beyond end',
      'Depth',
    ]);
    expect(said).toContain('Exactly 29.6°.');
    // Both halves of trade.md's formula at the mark, from the tip: cos 29.6 / sin ... + 22.5 / cos ..., with the setting's 30 degrees.
    const touch = (20 * Math.sin(30 * DEGREE) + 22.5) / Math.cos(30 * DEGREE) - branch(60.4).ends[0].tip!;
    expect(said).toContain(`First touch: on the mark, ${touch.toFixed(1)} mm from the sawn end`);
    const depth = notchingOf(branch(60.4).ends[0], tools({}))!.notches[0]!.sawn!.depth;
    expect(Number(rows.at(-1)!.split(' ')[1]) - depth).toBeGreaterThanOrEqual(-1e-6);
  });

  it('has the mark face the drill that leans over the tube, and turned away from one that leans past the end', () => {
    expect(read(branch(60), tools({})).said).toContain('Mark to the drill, which leans over the tube.');
    const past = read(branch(60), tools({ leans: 'past-end' }));
    expect(past.said).toContain('Mark away from the drill');
    expect(past.said).not.toContain('First touch');
    expect(past.seen).toContain('the mark away from it, the head 30° off square');
    // Set square a head leans nowhere.
    const square = read(branch(90), tools({ leans: 'past-end' }));
    expect(square.said).toContain('Mark to the drill, head square.');
    expect(square.seen).toContain('the mark towards it');
    expect(read(branch(60)).said).toContain('If yours leans out past the end: mark away from it.');
  });

  it('says nothing of a setting that is off by less than it shows', () => {
    expect(read(branch(89.98), tools({})).said).not.toMatch(/Exactly|stands off/u);
  });

  it('names the machine where there are several', () => {
    const two: Tools = {
      notchers: [
        { ...BENCH, greatestOffSquare: 20 },
        { ...BENCH, name: 'By the door' },
      ],
      saws: [LONG_SAW],
    };
    expect(read(branch(60), two).said).toContain('On By the door. Mark to the drill');
    expect(read(branch(60), tools({})).said).not.toContain('On Bench');
  });

  it('goes half from each side by halves, and says where the reach is only what most saws have', () => {
    const { way, rows } = read(branch(60), tools({ leans: 'either' }, 40));
    expect(way).toMatch(
      /^Half from each side: the saw cuts only 40\.0 mm deep\. .* lean the head as far the other way/u,
    );
    const whole = notchingOf(branch(60).ends[0], tools({}))!.notches[0]!.sawn!.depth;
    expect(Number(rows.at(-1)!.replace('Depth, each side ', ''))).toBeCloseTo(whole / 2, 0);
    const unmeasured: Tools = { notchers: [{ ...BENCH, leans: 'either' }], saws: [{ diameter: 45 }] };
    expect(read(branch(60), unmeasured).way).toContain('most saws cut only 40.0 mm deep, measure yours');
  });

  it('is of the end as it is once what was left long is off', () => {
    const depth = notchingOf(branch(60).ends[0], tools({}))!.notches[0]!.sawn!.depth;
    const long = read(branch(60, 30), tools({}, depth + 1));
    expect(long.way).toContain('Saw off what is left long first');
    expect(long.rows).toEqual(read(branch(60), tools({})).rows);
  });
});

describe('the wrap is used', () => {
  it.each([
    [35, tools({}), '55.0° off square, Bench swings to 50°'],
    [30, tools({}), 'no saw at 30° and less'],
    [60, { notchers: [BENCH], saws: [{ diameter: 60 }] }, 'no hole saw of 45.0 mm'],
    [60, tools({}, 40), 'deep, the saw cuts 40.0 mm, the head leans one way only'],
    [47, tools({ step: 10 }), '43.0° off square, too far from what Bench can be set to'],
  ] as const)('at %d degrees', (included, with_, why) => {
    expect(read(branch(included), with_).way).toMatch(/^Use the wrap: /u);
    expect(read(branch(included), with_).way).toContain(why);
    expect(read(branch(included), with_).rows).toHaveLength(2);
  });

  it('for a plain cut beyond the bench saw', () => {
    const saw: Tools = { notchers: [], saws: [], benchSaw: 45 };
    expect(benchSawInWords(57.9 * DEGREE, saw)).toBe('Use the wrap: the bench saw goes to 45°.');
    expect(benchSawInWords(45 * DEGREE, saw)).toBeNull();
    expect(benchSawInWords(57.9 * DEGREE, undefined)).toBeNull();
  });
});
