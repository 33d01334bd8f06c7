import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { distance, dot, length, rejectFrom, subtract } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { landingOf, middleOf } from '../../../src/core/cope/landing.ts';
import { inSpace, needsWrap, roll, unroll, wrapOf, type WrapSetting } from '../../../src/core/cope/wrap.ts';
import { trimOn } from '../../../src/core/solve/end-cutter.ts';
import { demoText } from '../../command-line.ts';
import { branchAt60 } from '../../exports/jobs.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { degrees, derived, tube } from '../frame.ts';

const PAPER: WrapSetting = { surface: 'outer', thickness: 0.1, step: 10 };

function demo(): Derived {
  const parsed = parseJob(demoText());
  if (!parsed.ok) return expect.fail('the demo does not parse');
  const derivation = derive(parsed.job);
  return derivation.ok ? derivation.value : expect.fail('the demo cannot be derived');
}
const frame = demo();
const ends = frame.tubes.flatMap((each) => ([0, 1] as const).map((which) => ({ tube: each, which })));

/** A branch up from the middle of a run of 44.45 along x, 400 mm to either side. */
const upright = (outerDiameter: number, towards: readonly number[], y = 0) =>
  derived({
    sections: [
      { id: 'main', outerDiameter: 44.45, wall: 3.048 },
      { id: 'branch', outerDiameter, wall: 2 },
    ],
    nodes: { back: [-400, 0, 0], fore: [400, 0, 0], joint: [0, y, 0], top: towards },
    members: [
      { id: 'run', path: ['back', 'fore'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      {
        id: 'branch',
        path: ['joint', 'top'],
        section: 'branch',
        ends: [{ fit: 'cope', against: ['run'] }, { fit: 'square' }],
      },
    ],
  });

/** The same on a run that is coped at end A to a post across it, and with 30 mm left long there. */
function postAndRun(): { readonly tee: Derived; readonly left: Derived } {
  const frame = (allowance: number) =>
    derived({
      sections: [
        { id: 'main', outerDiameter: 44.45, wall: 3.048 },
        { id: 'thick', outerDiameter: 60, wall: 3 },
      ],
      nodes: {
        under: [-400, 0, -300],
        over: [-400, 0, 300],
        back: [-400, 0, 0],
        fore: [400, 0, 0],
        joint: [0, 0, 0],
        top: [0, 0, 500],
      },
      members: [
        { id: 'post', path: ['under', 'over'], section: 'thick', ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'run', path: ['back', 'fore'], ends: [{ fit: 'cope', against: ['post'], allowance }, { fit: 'square' }] },
        { id: 'branch', path: ['joint', 'top'], ends: [{ fit: 'cope', against: ['run'] }, { fit: 'square' }] },
      ],
    });
  return { tee: frame(0), left: frame(30) };
}

describe('a wrap template', () => {
  it('gives the worked numbers of docs/maths/wrap.md', () => {
    const joint = branchAt60();
    const wrap = wrapOf(tube(joint, 'branch'), 0, PAPER)!;
    expect(wrap.width).toBeCloseTo(120.0088, 4);
    const at = (phi: number) => wrap.pieces[0]!.find((place) => Math.abs(degrees(place.phi) - phi) < 1e-9)!;
    const acute = unroll(wrap, at(0));
    expect(acute.x).toBeCloseTo(60.0044, 4);
    expect(acute.y).toBeCloseTo(25.214, 3);
    expect(unroll(wrap, at(90)).y).toBeCloseTo(1.771, 3);
    expect(wrap.baseline - wrap.blankEnd).toBeCloseTo(60, 9);
  });

  it('turned by nothing is the profile itself, at every end of the demo', () => {
    for (const end of ends) {
      const { outer } = end.tube.ends[end.which];
      expect(trimOn(end.tube.ends[end.which].cutter, end.tube.section.outerDiameter / 2)).toEqual(outer);
    }
  });

  it('passes through every degree of the profile and strays from the exact curve between them by less than 0.02 mm', () => {
    let worst = 0;
    for (const { tube: each, which } of ends) {
      const wrap = wrapOf(each, which, PAPER)!;
      expect(wrap.closed).toBe(true);
      const line = wrap.pieces[0]!;
      const whole = line.filter(({ phi }) => Math.abs(degrees(phi) - Math.round(degrees(phi))) < 1e-6);
      expect(whole.length).toBe(361);
      const { outer, lows, high } = each.ends[which];
      for (const { phi, s } of whole) {
        const listed = outer[(Math.round(degrees(phi)) + 720) % 360]!;
        // Where the curve's extreme stands on a whole degree the two may differ by what rounding leaves of a touch.
        if ([...lows, high!].some((place) => place.s === s)) expect(Math.abs(s - listed)).toBeLessThan(1e-5);
        else expect(s).toBe(listed);
      }
      for (const turn of [0.21, 0.47, 0.83]) {
        const exact = trimOn(each.ends[which].cutter, each.section.outerDiameter / 2, (turn * Math.PI) / 180);
        exact.forEach((s, degree) => {
          const phi = ((degree + turn) * Math.PI) / 180;
          const at = [phi - 2 * Math.PI, phi].find((way) => way >= wrap.left && way <= wrap.left + 2 * Math.PI)!;
          const next = line.findIndex((place) => place.phi >= at);
          const [a, b] = [line[next - 1]!, line[next]!];
          worst = Math.max(worst, Math.abs(a.s + ((at - a.phi) / (b.phi - a.phi)) * (b.s - a.s) - s));
        });
      }
    }
    expect(worst).toBeLessThan(0.02);
  });

  it('unrolled and rolled up again is the same place, on the surface, wherever it is', () => {
    const draw = drawFrom(7);
    for (const { tube: each, which } of ends.slice(0, 30)) {
      const wrap = wrapOf(each, which, PAPER)!;
      const end = each.ends[which];
      for (let i = 0; i < 10; i++) {
        const place = { phi: wrap.left + draw.between(0, 2 * Math.PI), s: draw.between(-20, 60) };
        const back = roll(wrap, unroll(wrap, place));
        const [before, after] = [inSpace(each, which, place), inSpace(each, which, back)];
        expect(distance(before, after)).toBeLessThan(0.001);
        const spoke = subtract(after, end.position);
        expect(length(rejectFrom(spoke, end.direction))).toBeCloseTo(each.section.outerDiameter / 2, 6);
        expect(dot(spoke, end.direction)).toBeCloseTo(place.s, 6);
      }
    }
  });

  it('meets itself at the seam, 60 degrees or more from the throat', () => {
    for (const { tube: each, which } of ends) {
      const wrap = wrapOf(each, which, PAPER)!;
      const line = wrap.pieces[0]!;
      expect(line.at(-1)!.s).toBe(line[0]!.s);
      expect(line.at(-1)!.phi - line[0]!.phi).toBeCloseTo(2 * Math.PI, 9);
      if (wrap.throat.s - wrap.tips[0]!.s < 1) continue;
      const round = degrees(wrap.throat.phi - wrap.left);
      expect(Math.min(((round % 360) + 360) % 360, 360 - (((round % 360) + 360) % 360))).toBeGreaterThanOrEqual(60);
    }
  });

  it('for a cut square to the wall goes by the face that stands farther out of the way', () => {
    for (const { tube: each, which } of ends.slice(0, 20)) {
      const { outer, inner } = each.ends[which];
      const wrap = wrapOf(each, which, { ...PAPER, surface: 'square-wall' })!;
      for (const { phi, s } of wrap.pieces[0]!) {
        const degree = degrees(phi);
        if (Math.abs(degree - Math.round(degree)) > 1e-6) continue;
        const k = (Math.round(degree) + 720) % 360;
        const farther = Math.max(outer[k]!, inner[k]!);
        // As above: an extreme on a whole degree, which the square cut has of its own.
        if ([...wrap.tips, wrap.throat].some((place) => place.s === s))
          expect(Math.abs(s - farther)).toBeLessThan(1e-5);
        else expect(s).toBe(farther);
      }
    }
  });

  it('has two tips where a saddle has two, and one where the line only lies flat about it', () => {
    const saddle = branchAt60();
    const [one, other] = wrapOf(tube(saddle, 'branch'), 0, PAPER)!.tips;
    // Where the trim's derivative is 0: cos phi = -cot 60 x sqrt((22.225 / 19.05)^2 - 1), 110.3 degrees either way.
    const tip = (Math.acos(Math.sqrt((22.225 / 19.05) ** 2 - 1) / Math.tan(Math.PI / 3)) * 180) / Math.PI;
    expect(Math.abs(degrees(one!.phi))).toBeCloseTo(180 - tip, 3);
    expect(degrees(one!.phi + other!.phi)).toBeCloseTo(0, 9);
    // A plate 1.4 degrees off square: within 0.01 mm of its longest point for 11 degrees either way.
    const plate = derived({
      nodes: { a: [0, 0, 0], b: [0, 0, 800] },
      members: [
        {
          id: 'leg',
          path: ['a', 'b'],
          ends: [{ fit: 'plate', normal: [Math.tan((1.4 * Math.PI) / 180), 0, 1] }, { fit: 'square' }],
        },
      ],
    });
    expect(wrapOf(tube(plate, 'leg'), 0, PAPER)!.tips.length).toBe(1);
  });

  it('is open where nothing reaches: a thick branch past a thin run', () => {
    const wide = upright(60, [0, 0, 500]);
    const wrap = wrapOf(tube(wide, 'branch'), 0, PAPER)!;
    expect(wrap.closed).toBe(false);
    // Lines farther aside than the run's radius miss it: asin(22.225 / 30) = 47.8 degrees either side of the run's length.
    expect(wrap.pieces.map((piece) => piece.length > 1)).toEqual([true, true, true]);
    const [, middle] = wrap.pieces;
    expect(degrees(middle![0]!.phi)).toBeCloseTo(-47.8, 0);
    expect(degrees(middle!.at(-1)!.phi)).toBeCloseTo(47.8, 0);
  });

  it('there is none where nothing reaches at all, and none is needed at a square end', () => {
    const past = upright(30, [0, 60, 500], 60);
    expect(wrapOf(tube(past, 'branch'), 0, PAPER)).toBeNull();
    expect(needsWrap(tube(past, 'run').ends[0])).toBe(false);
    expect(needsWrap(tube(past, 'branch').ends[0])).toBe(true);
  });
});

describe('the landing of a tip on the run', () => {
  it('of an equal branch square to the run lies a quarter turn to either side of it, at the crossing', () => {
    const tee = upright(44.45, [0, 0, 500]);
    const branch = tube(tee, 'branch');
    const { tips, throat } = wrapOf(branch, 0, PAPER)!;
    expect(tips.map(({ phi }) => Math.abs(Math.round(degrees(phi))))).toEqual([90, 90]);
    const landings = tips.map((tip) => landingOf(tee, branch, 0, inSpace(branch, 0, tip))!);
    for (const landing of landings) {
      expect(landing.runTube.id).toBe('run');
      expect(landing.bend).toBeNull();
      expect(landing.fromTipA).toBeCloseTo(400, 4);
    }
    // The run tube's own reference is straight up; the branch stands on top of it.
    expect(landings.map(({ turn }) => Math.round(degrees(turn))).toSorted((a, b) => a - b)).toEqual([-90, 90]);
    const deep = landingOf(tee, branch, 0, inSpace(branch, 0, throat))!;
    expect(degrees(deep.turn)).toBeCloseTo(0, 4);
    expect(Math.abs(deep.fromTipA - 400)).toBeCloseTo(22.225, 4);
  });

  it('is along the run from its tip A: what is left long there does not move it', () => {
    // End A of the run is coped to a post of 60: where its sides touch that, the wall begins.
    const tip = Math.sqrt(30 ** 2 - 22.225 ** 2);
    const { tee, left } = postAndRun();
    for (const frame of [tee, left]) {
      const branch = tube(frame, 'branch');
      const { tips } = wrapOf(branch, 0, PAPER)!;
      expect(tips).toHaveLength(2);
      for (const place of tips)
        expect(landingOf(frame, branch, 0, inSpace(branch, 0, place))!.fromTipA).toBeCloseTo(400 - tip, 4);
      const [cut] = branch.ends[0].cuts;
      expect(middleOf(frame, branch.ends[0], cut!).fromTipA).toBeCloseTo(400 - tip, 4);
    }
    expect(tube(left, 'run').ends[0].allowance).toBe(30);
  });

  it('on a bent run is counted from the inside of the nearest bend, and from its tangent', () => {
    // A hoop across y, bent at both top corners; the branch comes forward out of the middle of its top, in x.
    const hoop = derived({
      nodes: {
        a: [0, -500, 0],
        b: [0, -500, 900],
        c: [0, 500, 900],
        d: [0, 500, 0],
        joint: [0, 0, 900],
        fore: [600, 0, 900],
      },
      members: [
        { id: 'hoop', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'branch', path: ['joint', 'fore'], ends: [{ fit: 'cope', against: ['hoop'] }, { fit: 'square' }] },
      ],
    });
    const branch = tube(hoop, 'branch');
    const wrap = wrapOf(branch, 0, PAPER)!;
    const landings = wrap.tips.map((tip) => landingOf(hoop, branch, 0, inSpace(branch, 0, tip))!);
    const middle = tube(hoop, 'hoop').developedLength / 2;
    for (const landing of landings) {
      expect(landing.fromTipA).toBeCloseTo(middle, 3);
      expect(landing.bend).toBe(1);
      expect(landing.tangent).toBe('end');
      expect(landing.fromTangent).toBeCloseTo(500 - 152.4, 3);
    }
    // Tips touch the top of the hoop and its underside, which is the inside of the bend.
    expect(landings.map(({ turn }) => Math.abs(Math.round(degrees(turn)))).toSorted((a, b) => a - b)).toEqual([0, 180]);
    const deep = landingOf(hoop, branch, 0, inSpace(branch, 0, wrap.throat))!;
    // One looks along +y with the front on the right and the inside below: from below, clockwise leads to the left.
    expect(degrees(deep.turn)).toBeCloseTo(-90, 3);
  });
});
