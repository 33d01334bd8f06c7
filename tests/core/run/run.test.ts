import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { beginRun, findRun, keepBend, logReading, setCheck, tickStep } from '../../../src/core/edit/bent.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { judge } from '../../../src/core/run/judge.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import { toBeBent } from '../../../src/core/run/laid-out.ts';
import { tickRun } from '../../../src/core/shape/made-stage.ts';
import { bendRun, type BendRun, type RunStep } from '../../../src/core/run/run.ts';
import { unseen } from '../../../src/core/checks/seen.ts';
import { answerRadius, OPENS } from '../../../src/core/mend/answer-radius.ts';
import { radiusAnswers } from '../../../src/core/run/radius-answers.ts';
import { costOfIgnoringRadius } from '../../../src/core/solve/ignored-radius.ts';
import { answerInWords } from '../../../src/core/words/radius.ts';
import type { TapeSetting } from '../../../src/core/marks/tape.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';

const SETTING: TapeSetting = { from: 'A', mark: 'clamp', step: 1 };

/** A hoop of two bends, with a tail that the clamp is too long for; its log holds 63.2 -> 60 and 26.8 -> 25, net + 0.8 + 0.04 net. */
function hoopJob(bender: object | null = { pullStep: 0.5 }, more: object = {}): Job {
  const parsed = parseJob(
    JSON.stringify({
      format: 'cagewright/job',
      version: 1,
      sections: [{ id: 's', outerDiameter: 44.45, wall: 3.048, material: 'dom-1020' }],
      dies: [
        {
          id: 'd',
          outerDiameter: 44.45,
          centrelineRadius: 152.4,
          clampOffset: 100,
          leastGrip: 150,
          ...(bender && { bender }),
        },
      ],
      nodes: (
        [
          ['a', [0, 0, 0]],
          ['b', [0, 0, 600]],
          ['c', [500, 0, 600]],
          ['d', [500, 0, 500 - 52.4]],
        ] as const
      ).map(([id, position]) => ({ id, at: { kind: 'fixed', position } })),
      members: [
        {
          id: 'hoop',
          name: 'Hoop',
          path: ['a', 'b', 'c', 'd'],
          section: 's',
          die: 'd',
          batch: 'H1',
          ends: [{ fit: 'square' }, { fit: 'square' }],
        },
      ],
      pulls: [
        { die: 'd', section: 's', batch: 'H1', pulled: 63.2, net: 60 },
        { die: 'd', section: 's', batch: 'H1', pulled: 26.8, net: 25 },
      ],
      ...more,
    }),
  );
  if (!parsed.ok) throw new Error(parsed.faults.map(({ place, message }) => `${place} ${message}`).join());
  return parsed.job;
}

const tubeOf = (job: Job): SolvedTube => {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error('derives');
  return derivation.value.byId.get('hoop')!;
};
const ORDER: readonly BendStep[] = [
  { bend: 1, front: 'A' },
  { bend: 2, front: 'A' },
];
const begun = (job = hoopJob(), order = ORDER): Job => beginRun(job, 'hoop', order, drawnTube(tubeOf(job)));
const runOf = (job: Job): BendRun => bendRun(tubeOf(job), findRun(job, 'hoop')!, SETTING);
const reading = (job: Job, bend: number, pulled: number, net: number): Job =>
  logReading(job, 'hoop', bend, { pulled, net, on: '2026-03-02' });
const current = (job: Job): string | undefined => {
  const { steps, current: at } = runOf(job);
  return steps[at]?.key;
};
const stepOf = <K extends RunStep['kind']>(job: Job, kind: K, bend?: number) =>
  runOf(job).steps.find(
    (step) => step.kind === kind && (bend === undefined || ('bend' in step && step.bend === bend)),
  )! as Extract<RunStep, { kind: K }>;

describe('the steps of a run', () => {
  it('cut, mark, then clamp, pull and read for each bend, then check', () => {
    expect(
      runOf(begun())
        .steps.map(({ key }) => key)
        .join(', '),
    ).toBe('cut, mark, clamp 1, pull 1, read 1, clamp 2, pull 2, read 2, check');
  });
  it('the first that is not done is next; a reading stands for clamp and pull too', () => {
    let job = begun();
    expect(current(job)).toBe('cut');
    job = tickStep(tickStep(job, 'hoop', 'cut'), 'hoop', 'mark');
    expect(current(job)).toBe('clamp 1');
    job = tickStep(job, 'hoop', 'clamp 1');
    expect(current(job)).toBe('pull 1');
    job = reading(job, 1, 95, 90);
    expect(current(job)).toBe('clamp 2');
    job = tickStep(reading(job, 2, 95, 90.2), 'hoop', 'check');
    expect(current(job)).toBeUndefined();
    expect(runOf(job).current).toBe(9);
  });
  it('the blank to cut holds the grip: nothing is left of the tail of 0 but 150', () => {
    const cut = stepOf(begun(), 'cut');
    expect(cut.grip).toEqual([0, expect.closeTo(150, 6)]);
    expect(cut.blank).toBeCloseTo(tubeOf(begun()).blankLength + 150, 6);
  });
  it('says where to clamp, how it is turned and when the tube is flipped', () => {
    const order = [ORDER[1]!, { bend: 1, front: 'B' as const }];
    const job = begun(hoopJob(), order);
    // Bend 1 runs from 447.6 to 447.6 + 239.39; the clamp sits beyond it, towards end B.
    expect(stepOf(job, 'clamp', 1)).toMatchObject({
      flip: true,
      rotation: { turn: 0, zeroOn: 2, asItLies: false, seenFrom: 'A' },
      step: { marks: [{ kind: 'clamp', at: 787, bendLies: 'before' }] },
    });
    expect(stepOf(job, 'clamp', 2)).toMatchObject({ flip: false, rotation: null });
  });
  it('pulls by the log: 60 takes 63.2 and 25 takes 26.8, so 90 takes 94.4, on a half-degree scale 94.5', () => {
    const pull = stepOf(begun(), 'pull', 1);
    expect(pull.advice).toMatchObject({ kind: 'law', pullTo: 94.5, within: null });
    expect(stepOf(begun(hoopJob({ pullStep: 0.2 })), 'pull', 1).advice.pullTo).toBe(94.4);
    expect(stepOf(begun(hoopJob(null)), 'pull', 1).advice.pullTo).toBe(94.5);
  });
  it('after a small bend alone it is first pulled to what cannot be too far', () => {
    // 14.6 gives 12.6: laid all to spring that would be 104 for 90, all to slack it is 92.
    const log = (pulls: object[]) => begun(hoopJob({ pullStep: 0.5 }, { pulls }));
    const small = stepOf(log([{ die: 'd', section: 's', pulled: 14.6, net: 12.6 }]), 'pull', 1);
    expect(small.advice).toMatchObject({ kind: 'first', pullTo: 92 });
    expect(stepOf(log([{ die: 'd', section: 's', pulled: 94.4, net: 90 }]), 'pull', 1).advice.kind).toBe('law');
    expect(stepOf(log([]), 'pull', 1).advice.kind).toBe('estimate');
  });
  it('the next bend’s pull follows from what was read at the first', () => {
    const before = stepOf(begun(), 'pull', 2).advice;
    const after = stepOf(reading(begun(), 1, 94.5, 88.8), 'pull', 2).advice;
    expect(after).toMatchObject({ kind: 'law', within: expect.any(Number) });
    expect(after.pullTo).toBeGreaterThan(before.pullTo + 0.4);
  });
  it('a reading that the log cannot be true with leaves a first pull for the next bend', () => {
    const job = reading(begun(), 1, 94.5, 85);
    expect(stepOf(job, 'pull', 2).advice).toMatchObject({ kind: 'first', why: 'disagree' });
  });
  it('a bend that is short or over stays open until it is pulled on, or kept', () => {
    const short = reading(tickStep(tickStep(begun(), 'hoop', 'cut'), 'hoop', 'mark'), 1, 92, 87);
    expect(current(short)).toBe('read 1');
    expect(stepOf(short, 'read', 1).verdict).toMatchObject({ kind: 'short' });
    expect(current(reading(short, 1, 95, 90))).toBe('clamp 2');
    expect(current(keepBend(short, 'hoop', 1))).toBe('clamp 2');
    expect(current(reading(keepBend(short, 'hoop', 1), 1, 93, 88))).toBe('read 1');
  });
  it('check dimensions are of the tube as it was bent, beside those drawn and what the tape read', () => {
    const job = setCheck(reading(begun(), 2, 96, 91), 'hoop', 'chord', 498.5);
    const chord = stepOf(job, 'check').checks.find(({ predicted }) => predicted.id === 'chord')!;
    expect(chord).toMatchObject({ measured: 498.5 });
    expect(chord.predicted.value).not.toBeCloseTo(chord.drawn, 1);
    const untouched = stepOf(begun(), 'check').checks;
    for (const { predicted, drawn, measured } of untouched) {
      expect(predicted.value).toBeCloseTo(drawn, 9);
      expect(measured).toBeNull();
    }
  });
});

describe('a drawing that is changed after bending began', () => {
  const moved = (job: Job, position: readonly [number, number, number]): Job => ({
    ...job,
    nodes: job.nodes.map((node) => (node.id === 'c' ? { ...node, at: { kind: 'fixed' as const, position } } : node)),
  });
  it('says which legs, angles and rotations', () => {
    expect(runOf(begun()).changed).toEqual([]);
    const changed = runOf(moved(begun(), [510, 0, 600])).changed;
    expect(changed).toContainEqual({ what: 'leg', index: 2, was: expect.closeTo(500, 9), now: expect.closeTo(510, 9) });
    expect(changed.map(({ what }) => what)).toContain('angle');
    expect(runOf(moved(begun(), [500, 20, 600])).changed.some(({ what }) => what === 'rotation')).toBe(true);
  });
  it('nothing of what a tape does not show', () => {
    expect(runOf(moved(begun(), [500.2, 0, 600])).changed).toEqual([]);
  });
  it('what is cut and bent stays as it was cut and bent; the blank lacks what the drawing has more', () => {
    const starts = tubeOf(begun()).bends.map(({ start }) => start);
    const cut = tickStep(begun(), 'hoop', 'cut');
    const made = [1, 2].reduce(
      (job, bend) => logReading(job, 'hoop', bend, { pulled: 92, net: 89, on: '', start: starts[bend - 1]! }),
      cut,
    );
    const longer = (job: Job): Job => ({
      ...job,
      nodes: job.nodes.map((node) =>
        node.id === 'a' ? { ...node, at: { kind: 'fixed' as const, position: [0, 0, -50] as const } } : node,
      ),
    });
    const before = runOf(made);
    const after = runOf(longer(made));
    const blankOf = (run: BendRun) => (run.steps[0] as Extract<RunStep, { kind: 'cut' }>).blank;
    expect(before.blankLacks).toBe(0);
    expect(after.blankLacks).toBeCloseTo(50, 9);
    expect(blankOf(after)).toBeCloseTo(blankOf(before), 9);
    before.asBent.checks.forEach(({ value }, i) => expect(after.asBent.checks[i]!.value).toBeCloseTo(value, 9));
    // Not yet cut, it is cut to the new length.
    expect(runOf(longer(begun())).blankLacks).toBeCloseTo(0, 9);
    expect(blankOf(runOf(longer(begun())))).toBeCloseTo(blankOf(before) + 50, 9);
  });
  it('another number of bends: there are no steps', () => {
    const fewer = { ...begun(), members: begun().members.map((member) => ({ ...member, path: ['a', 'b', 'd'] })) };
    const run = runOf(fewer);
    expect(run.changed).toEqual([{ what: 'bends', was: 2, now: 1 }]);
    expect(run.steps).toEqual([]);
  });
  it('another die or section, or one of another size, and not another name', () => {
    const with_ = (change: object, section: object = {}): BendRun => {
      const job = begun();
      return runOf({
        ...job,
        dies: job.dies.map((die) => ({ ...die, ...change })),
        sections: job.sections.map((each) => ({ ...each, ...section })),
      });
    };
    expect(with_({ name: 'Other' }, { name: 'Other' }).changed).toEqual([]);
    expect(with_({ clampOffset: 90 }).changed).toMatchObject([
      { what: 'die', was: { clampOffset: 100 }, now: { clampOffset: 90 } },
    ]);
    // A clamp set 10 mm nearer has its marks elsewhere on the tube.
    expect(with_({ clampOffset: 90 }).marksMoved).toEqual([
      { bend: 1, by: expect.closeTo(10, 9) },
      { bend: 2, by: expect.closeTo(10, 9) },
    ]);
    expect(with_({ centrelineRadius: 140 }).changed).toMatchObject([{ what: 'die', was: { centrelineRadius: 152.4 } }]);
    expect(with_({}, { wall: 2 }).changed).toMatchObject([{ what: 'section', now: { wall: 2 } }]);
  });
  it('pulls that open the radius of a die that goes by them are no change of the drawing', () => {
    const job = hoopJob({}, {});
    const opening = { ...job, dies: job.dies.map((die) => ({ ...die, radius: 'from-pulls' as const })) };
    const run = runOf(reading(begun(opening), 1, 95, 88));
    expect(run.changed).toEqual([]);
    // The marks drawn by the smaller radius have moved all the same: the larger set-back takes from the straight before bend 1.
    expect(run.marksMoved.map(({ bend }) => bend)).toContain(1);
    expect(run.marksMoved[0]!.by).toBeLessThan(-0.5);
    expect(runOf(reading(begun(), 1, 95, 88)).marksMoved).toEqual([]);
    // A blank that is cut is held with the radii of that day; its bends are still made by those of today.
    const derivation = derive(begun(opening));
    if (!derivation.ok) throw new Error('derives');
    const cut = reading(tickRun(begun(opening), derivation.value, 'hoop', 'cut'), 1, 95, 88);
    expect(tubeOf(cut).held).not.toBeNull();
    const held = bendRun(toBeBent(tubeOf(cut), findRun(cut, 'hoop')), findRun(cut, 'hoop')!, SETTING);
    expect(held.marksMoved.map(({ by }) => by)).toEqual(run.marksMoved.map(({ by }) => expect.closeTo(by, 6)));
  });

  describe('where the pulls cannot tell slack from spring', () => {
    const job = hoopJob({}, { pulls: [] });
    const opening = begun({ ...job, dies: job.dies.map((die) => ({ ...die, radius: 'from-pulls' as const })) });
    const marks = (of: Job, from: 'A' | 'B' | 'middle' = 'A') => {
      const { steps, asBent: bent, marksMoved } = bendRun(tubeOf(of), findRun(of, 'hoop')!, { ...SETTING, from });
      const at = steps.flatMap((step) => (step.kind === 'clamp' ? step.step.marks.map(({ exact }) => exact) : []));
      const starts = steps.flatMap((step) => (step.kind === 'read' ? [step.start] : []));
      const [first] = steps;
      const cut = first!.kind === 'cut' ? first!.blank : Number.NaN;
      const grip = first!.kind === 'cut' ? first!.grip[0] + first!.grip[1] : Number.NaN;
      return { at, starts, cut, grip, bent, marksMoved };
    };
    // Of 14 for 12 no more than 2 degrees are sure for any bend; another pull, 70 for 66.5, says how they grow.
    const pulled = (of: Job, ...pulls: (readonly [number, number])[]): Job => ({
      ...of,
      pulls: pulls.map(([p, net]) => ({ die: 'd', section: 's', pulled: p, net, on: '' })),
    });
    const one = pulled(opening, [14, 12]);
    const two = pulled(opening, [14, 12], [70, 66.5]);

    it('the marks stay as they were drawn, and nothing is said to have moved', () => {
      for (const from of ['A', 'B'] as const) {
        const [before, after] = [marks(opening, from), marks(one, from)];
        expect(tubeOf(one).bends[0]!.start).toBeLessThan(tubeOf(opening).bends[0]!.start - 0.5);
        expect(after.at).toHaveLength(2);
        after.at.forEach((mark, i) => expect(mark).toBeCloseTo(before.at[i]!, 6));
        after.starts.forEach((start, i) => expect(start).toBeCloseTo(before.starts[i]!, 6));
        expect(after.cut).toBeCloseTo(before.cut, 6);
        expect(after.marksMoved).toEqual([]);
        expect(after.bent.endMoves).toBeLessThan(1e-6);
      }
    });
    it('they move, and it is said, once another angle tells them apart', () => {
      const isCut = (job: Job): Job => tickStep(job, 'hoop', 'cut');
      const moved = marks(isCut(two));
      expect(moved.at[0]! - marks(opening).at[0]!).toBeCloseTo(moved.marksMoved[0]!.by, 9);
      expect(moved.marksMoved[0]!.by).toBeLessThan(-0.5);
      // The blank is cut: what the wider bends need less of it stays at the end opposite the zero.
      expect(moved.cut).toBeCloseTo(marks(opening).cut, 6);
      // One that is not cut yet is cut as the tube is laid out now: a run and its paper give one length.
      expect(marks(two).cut).toBeCloseTo(tubeOf(two).blankLength + marks(two).grip, 6);
      expect(Math.abs(marks(two).cut - moved.cut)).toBeGreaterThan(0.5);
      const less = tubeOf(opening).developedLength - tubeOf(two).developedLength;
      expect(less).toBeGreaterThan(0.5);
      expect(moved.starts[0]).toBeCloseTo(tubeOf(two).bends[0]!.start, 6);
      expect(marks(isCut(two), 'B').starts[0]).toBeCloseTo(tubeOf(two).bends[0]!.start + less, 6);
    });
    it('a bend that is made stays where it was made', () => {
      const { starts } = marks(opening);
      const made = logReading(opening, 'hoop', 1, { pulled: 92, net: 90, on: '', start: starts[0]! });
      const later = { ...made, pulls: two.pulls };
      expect(marks(later).bent.bends[0]!.straight).toBeCloseTo(starts[0]!, 6);
      expect(marks(later).bent.bends[0]!.straight).toBeGreaterThan(tubeOf(later).bends[0]!.start + 0.5);
    });
    it('a changed drawing is marked as it is drawn now', () => {
      const longer = {
        ...one,
        nodes: one.nodes.map((node) =>
          node.id === 'a' ? { ...node, at: { kind: 'fixed' as const, position: [0, 0, -20] as const } } : node,
        ),
      };
      expect(marks(longer).starts[0]).toBeCloseTo(tubeOf(longer).bends[0]!.start, 9);
    });
  });
});

describe('which radius the marks follow', () => {
  const answersOf = (job: Job, run = { tube: 'hoop', order: ORDER, done: [], bends: [], checks: [] }) =>
    radiusAnswers(tubeOf(job), findRun(job, 'hoop') ?? run, SETTING);
  const fromPulls = (job: Job): Job => ({
    ...job,
    dies: job.dies.map((die) => ({ ...die, radius: 'from-pulls' as const })),
  });

  it('the die’s own: each bend 152.4 x 94.4 / 90, so end B comes out 12.1 mm off; the pulls’: as it is drawn', () => {
    // Each bend is wider by this, and ends later by its arc of a quarter turn: twice across less one arc, and one arc short.
    const more = (152.4 * 4.4) / 90;
    const late = (more * Math.PI) / 2;
    const [own, pulls] = answersOf(hoopJob())!;
    expect(own.endMoves).toBeCloseTo(Math.hypot(2 * more - late, late), 6);
    expect(own.endMoves).toBeCloseTo(costOfIgnoringRadius(tubeOf(hoopJob())), 6);
    expect(own.radii).toEqual([152.4, 152.4]);
    expect(own.wider).toBeGreaterThan(2);
    expect(pulls.endMoves).toBeLessThan(1e-6);
    expect(Math.abs(pulls.wider)).toBeLessThan(1e-6);
    expect(pulls.radii[1]).toBeCloseTo(152.4 + more, 6);
    // The same two answers, whichever the die goes by.
    const [again, same] = answersOf(fromPulls(hoopJob()))!;
    expect(again.endMoves).toBeCloseTo(own.endMoves, 6);
    expect(same.endMoves).toBeLessThan(1e-6);
  });
  it('a bend that is made counts as it was read: what follows can still go by the pulls, that one no more', () => {
    const job = reading(begun(), 1, 94.5, 90.1);
    const [own, pulls] = answersOf(job)!;
    // The tenth of a degree that it is off stays.
    expect(pulls.endMoves).toBeGreaterThan(0.1);
    expect(pulls.endMoves).toBeLessThan(own.endMoves);
  });
  it('is not asked without pulls, and where they do not bear the law', () => {
    expect(answersOf(hoopJob({}, { pulls: [] }))).toBeNull();
    expect(answersOf({ ...hoopJob(), pulls: hoopJob().pulls.slice(0, 1) })).toBeNull();
  });
  it('is answered in the job: the die’s radius, and that the other was seen; the same answer again changes nothing', () => {
    const job = hoopJob();
    const derivation = derive(job);
    if (!derivation.ok) throw new Error('derives');
    const opens = (of: Job) => {
      const now = derive(of);
      return now.ok ? unseen(now.value.findings, of.seen).filter(({ id }) => id === OPENS).length : -1;
    };
    const own = answerRadius(job, 'hoop', 'd', 'nominal', derivation.value);
    expect([opens(job), opens(own)]).toEqual([1, 0]);
    expect(own.dies).toBe(job.dies);
    expect(answerRadius(own, 'hoop', 'd', 'nominal', derivation.value)).toBe(own);
    const pulls = answerRadius(own, 'hoop', 'd', 'from-pulls', derivation.value);
    expect(pulls.dies[0]!.radius).toBe('from-pulls');
    expect(opens(answerRadius(fromPulls(job), 'hoop', 'd', 'nominal', derivation.value))).toBe(0);
  });
  it('says what either does, with the measure that differs', () => {
    const [own, pulls] = answersOf(hoopJob())!;
    expect(answerInWords(own, 'mm')).toMatch(
      /^As the die says, 152\.4 mm: end B comes out 1[23](\.\d)? mm from its place, end A held; overall width, along both ends, .* mm more\.$/u,
    );
    expect(answerInWords(pulls, 'mm')).toBe('As the pulls say, 159.9 mm: it comes out as drawn.');
  });
});

describe('what a reading says', () => {
  const verdict = (pulled: number, net: number, pullStep = 0.5) =>
    judge(tubeOf(hoopJob()), ORDER, { bend: 2, pulled, net }, pullStep);
  it('half a degree is within, or one division of a coarser scale', () => {
    expect(verdict(95, 90.5)).toMatchObject({ kind: 'within', off: expect.closeTo(0.5, 9) });
    expect(verdict(95, 89.5)).toMatchObject({ kind: 'within', off: expect.closeTo(-0.5, 9) });
    expect(verdict(95, 89.4).kind).toBe('short');
    expect(verdict(95, 89.1, 1).kind).toBe('within');
    expect(verdict(95, 90.6).kind).toBe('over');
  });
  it('2.4 short takes 2.4 x 1.04 = 2.5 more', () => {
    expect(verdict(92.5, 87.6)).toMatchObject({
      kind: 'short',
      by: expect.closeTo(2.4, 9),
      more: expect.closeTo(2.496, 9),
      pullTo: 95,
    });
    // Never asked to pull to where it was pulled.
    expect(verdict(92.5, 89.3, 0.5)).toMatchObject({ pullTo: 93 });
  });
  it('bend 1 at 92: end B comes out 13.16 mm from its place', () => {
    // Worked in the hoop's plane (x, z): bend 1 ends at (157.719, 599.907), 189.880 of straight is left, and bend 2 with no leg
    // behind it ends at (494.472, 435.655); its place is (500, 447.6).
    const verdict = judge(tubeOf(hoopJob()), ORDER, { bend: 1, pulled: 92, net: 92 }, 0.5);
    expect(verdict).toEqual({ kind: 'over', by: expect.closeTo(2, 9), endMoves: expect.closeTo(13.163, 2) });
  });
  it('no bend opens to more than it was pulled to', () => {
    expect(verdict(88, 90)).toEqual({ kind: 'impossible', opened: 'to-more' });
    expect(verdict(90, 90)).toMatchObject({ kind: 'within' });
  });
  it('nor by more than steel and slack give back: 64 is never pulled on by 576', () => {
    expect(verdict(64, 6.1)).toEqual({ kind: 'impossible', opened: 'by-too-much' });
    expect(verdict(92, 60).kind).toBe('impossible');
    // A third of the bend still counts as short; and of a small pull two degrees of slack are most.
    expect(verdict(92, 62).kind).toBe('short');
    expect(verdict(4.1, 1.9).kind).toBe('short');
  });
  it('where slack cannot be told from spring nothing is added for spring: 2 short of a small bend is 2 more', () => {
    // 6.1 pulled came out as 4: a third of it would be taken for spring, and 3 more bend it too far.
    const job = hoopJob({ pullStep: 0.5 }, { pulls: [{ die: 'd', section: 's', pulled: 6.1, net: 4 }] });
    const verdict = judge(tubeOf(job), ORDER, { bend: 1, pulled: 88, net: 88 }, 0.5);
    expect(verdict).toMatchObject({ kind: 'short', more: expect.closeTo(2, 9), pullTo: 90 });
  });
});
