/** Angle, pull, mark and turn of a bend: what the run says is what its sheet prints, rounding too; also while its marks are held to those drawn. */
import { expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import { beginRun, findRun } from '../../src/core/edit/bent.ts';
import type { Job } from '../../src/core/job/types.ts';
import { drawnTube } from '../../src/core/run/drawn.ts';
import { toBeBent } from '../../src/core/run/laid-out.ts';
import { bendRun } from '../../src/core/run/run.ts';
import { feedOf } from '../../src/core/solve/feed.ts';
import { tapeReading } from '../../src/core/units/tape.ts';
import { pullFigure } from '../../src/core/words/pulls.ts';
import { onScale } from '../../src/core/words/turns.ts';
import { angleFigure, markFigure } from '../../src/drawing/figures.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import { liesOf } from '../../src/exports/sheets/locator.ts';
import { tubeSheets } from '../../src/exports/sheets/tube.ts';
import { fonts } from './fonts.ts';
import { derivedDemo } from './jobs.ts';

const derived = (job: Job): Derived => {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error('derives');
  return derivation.value;
};
const demo = derivedDemo().job;
const { die, section } = demo.members[0]!;
const pulled = (job: Job, ...read: (readonly [number, number])[]): Job => ({
  ...job,
  pulls: read.map(([p, net]) => ({ die: die!, section, pulled: p, net, on: '' })),
});
const begun = (job: Job): Job => {
  const frame = derived(job);
  const hoop = frame.byId.get('hoop')!;
  return beginRun(job, 'hoop', feedOf(job, hoop).order, drawnTube(hoop));
};
const byPulls: Job = { ...demo, dies: demo.dies.map((each) => ({ ...each, radius: 'from-pulls' })) };

it.each([
  ['the demo', begun(demo)],
  ['pulls that bear the law', begun(pulled(demo, [26.8, 25], [63.2, 60]))],
  ['marks drawn before one small pull', pulled(begun(byPulls), [16, 13])],
  ['marks that moved with two', pulled(begun(byPulls), [26.8, 25], [90, 84])],
])('%s', (_, job) => {
  const frame = derived(job);
  const tube = frame.byId.get('hoop')!;
  const run = findRun(job, 'hoop')!;
  const plan = toBeBent(tube, run);
  const feed = feedOf(job, plan);
  const unit = job.lengthUnit;
  const paper = { width: 210, height: 297 };
  const context = {
    derived: { ...frame, tubes: [tube] },
    unit,
    letters: lettering(fonts),
    paper,
    width: paper.width - 20,
  };
  const printed = tubeSheets(context, liesOf(frame.tubes))
    .flatMap((sheets) => sheets())
    .flatMap((sheet) => sheet.marks.flatMap((mark) => (mark.kind === 'words' && mark.size >= 5 ? [mark.text] : [])));
  const { steps } = bendRun(plan, run, feed);
  let compared = 0;
  for (const step of steps) {
    if (step.kind === 'pull') expect(printed).toContain(pullFigure(step.advice));
    if (step.kind === 'pull') expect(printed).toContain(angleFigure(step.target));
    if (step.kind !== 'clamp') continue;
    expect(printed).toContain(markFigure(tapeReading(step.step.marks[0]!.exact, unit, feed.fine)));
    expect(printed).toContain(step.rotation === null ? 'none' : `${onScale(step.rotation.turn)}°`);
    compared += 1;
  }
  expect(compared).toBe(4);
});
