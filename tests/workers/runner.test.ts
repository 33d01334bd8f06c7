/** The slow stages' runner: in this thread, and through what stands in for a worker, with copies in and out. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/core/checks/types.ts';
import { derive, type Derived } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { SolvedTube } from '../../src/core/solve/types.ts';
import { rehearsals } from '../../src/core/stages/rehearsals.ts';
import type { SlowWork } from '../../src/core/stages/slow-stage.ts';
import { SLOW } from '../../src/core/stages/slow.ts';
import { WORK, withSlowFindings } from '../../src/core/stages/work.ts';
import { besidePage, type After, type HireForStages } from '../../src/workers/beside.ts';
import { inSpareTime, type AnyStage, type DoItem, type RunOf } from '../../src/workers/doing.ts';
import { createRunner, type Runner } from '../../src/workers/runner.ts';
import { createStageWork } from '../../src/workers/stage-work.ts';

const parsed = parseJob(readFileSync('tests/fixtures/demo-typed.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
const JOB = parsed.job;

function derivedFrom(job = JOB, previous?: Derived): Derived {
  const derivation = derive(job, previous);
  if (!derivation.ok) throw new Error(derivation.faults[0]?.message);
  return derivation.value;
}

/** Tasks that wait until they are let go, one at a time. */
function queue() {
  const waiting: (() => void)[] = [];
  return {
    put(task: () => void): () => void {
      waiting.push(task);
      return () => {
        if (waiting.includes(task)) waiting.splice(waiting.indexOf(task), 1);
      };
    },
    next(): boolean {
      const task = waiting.shift();
      task?.();
      return task !== undefined;
    },
  };
}

const finding = (tube: SolvedTube): Finding => ({
  id: 'end/plate-along-tube',
  severity: 'error',
  tube: tube.id,
  end: 'A',
  at: tube.ends[0].position,
  source: 'practice',
});

/** A stage's own work, else that of the program. */
const runOf: RunOf = (stage) =>
  'run' in stage ? (stage as SlowWork<object, unknown>).run : WORK.find(({ name }) => name === stage.name)!.run;

/** A stage that weighs each of three tubes, and cannot do one of them. */
const weighing: SlowWork<SolvedTube, number> = {
  name: 'weighing',
  items: ({ tubes }) => tubes.slice(0, 3),
  idOf: ({ id }) => id,
  run(tube) {
    if (tube.number === 2) throw new Error('the scales are gone');
    return tube.mass;
  },
  findings: (_, tube, mass) => (mass > 0 ? [finding(tube)] : []),
};

/** A runner that goes on by itself with this frame, as a page does. */
function running(doItem: DoItem, derived: Derived, stages: readonly AnyStage[], first: string | null = null) {
  const seen: string[] = [];
  const runner: Runner = createRunner(
    () => stages,
    doItem,
    () => {
      const { done, of } = runner.progress(derived);
      seen.push(`${done} of ${of}`);
      runner.want(derived, first);
    },
  );
  runner.want(derived, first);
  return { runner, seen };
}

/** Stands in for a worker: what goes in and out is copied. `hired` counts. */
function worker(tasks: ReturnType<typeof queue>, stages: readonly SlowWork<object, unknown>[]) {
  const hired: string[] = [];
  const sent: boolean[] = [];
  const hire: HireForStages = () => {
    const work = createStageWork(stages);
    let heard: Parameters<ReturnType<HireForStages>['listen']>[0] | null = null;
    hired.push('hired');
    return {
      send(ask) {
        sent.push(ask.job !== null);
        const copy = structuredClone(ask);
        tasks.put(() => heard?.(structuredClone(work(copy))));
      },
      listen: (next) => void (heard = next),
      end() {
        heard = null;
        hired.push('ended');
      },
    };
  };
  return { hire, hired, sent };
}

/** A clock that stands still. */
const endless: After = () => () => {};

const never: DoItem = () => expect.fail('the page should not do it');

describe('the runner', () => {
  it('goes through all items, the chosen one first, and says how far it is', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const third = derived.tubes[2]!.id;
    const { runner, seen } = running(inSpareTime(tasks.put, runOf), derived, [weighing], third);
    expect(runner.progress(derived)).toEqual({ done: 0, of: 3, failed: [] });
    tasks.next();
    expect([...runner.known(weighing, derived).keys()]).toEqual([third]);
    while (tasks.next());
    expect(seen).toEqual(['1 of 3', '2 of 3', '3 of 3']);
  });

  it('says what an item that throws died of, and does the others', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const { runner } = running(inSpareTime(tasks.put, runOf), derived, [weighing]);
    while (tasks.next());
    const [one, two, three] = derived.tubes;
    expect(runner.progress(derived).failed).toEqual([{ stage: 'weighing', id: two!.id, why: 'the scales are gone' }]);
    expect(runner.known(weighing, derived)).toEqual(
      new Map([
        [one!.id, one!.mass],
        [three!.id, three!.mass],
      ]),
    );
    const added = runner.addedTo(derived).findings.filter(({ id }) => id === 'end/plate-along-tube');
    expect(added.map(({ tube }) => tube)).toEqual([one!.id, three!.id]);
  });

  it('drops an answer that comes after something else was asked for', () => {
    const asked: { item: object; heard: (value: unknown) => void }[] = [];
    let stopped = 0;
    // An answer that is on its way cannot be called back.
    const late: DoItem = (_, __, item, heard) => {
      asked.push({ item, heard: (value) => heard({ ok: true, value }) });
      return () => void (stopped += 1);
    };
    const derived = derivedFrom();
    const runner = createRunner(
      () => [weighing],
      late,
      () => {},
    );
    runner.want(derived, null);
    const other = derivedFrom();
    runner.want(other, null);
    expect(stopped).toBe(1);
    asked[0]!.heard(1);
    expect([runner.progress(derived).done, runner.progress(other).done]).toEqual([0, 0]);
    asked[1]!.heard(2);
    expect(asked[1]!.item).toBe(other.tubes[0]);
    expect(runner.known(weighing, other).get(other.tubes[0]!.id)).toBe(2);
    asked[1]!.heard(3);
    expect(runner.known(weighing, other).get(other.tubes[0]!.id)).toBe(2);
  });

  it('stops when it is told to, and begins again where it was', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const { runner } = running(inSpareTime(tasks.put, runOf), derived, [weighing]);
    tasks.next();
    runner.rest();
    expect(tasks.next()).toBe(false);
    expect(runner.progress(derived).done).toBe(1);
    runner.want(derived, null);
    while (tasks.next());
    expect(runner.progress(derived).done).toBe(3);
  });

  it('goes on with what an edit left alone, and keeps what is known of it', () => {
    const begun: object[] = [];
    const tasks = queue();
    const counting: SlowWork<SolvedTube, string> = { ...weighing, run: ({ id }) => id, findings: () => [] };
    const noting: DoItem = (derived, stage, item, heard) => {
      begun.push(item);
      return inSpareTime(tasks.put, runOf)(derived, stage, item, heard);
    };
    const derived = derivedFrom();
    const runner = createRunner(
      () => [counting],
      noting,
      () => {},
    );
    runner.want(derived, null);
    const renamed = derivedFrom(
      { ...JOB, members: JOB.members.map((each, i) => (i === 2 ? { ...each, name: 'Other' } : each)) },
      derived,
    );
    runner.want(renamed, null);
    expect(begun.length, 'the same item still').toBe(1);
    tasks.next();
    expect(runner.known(counting, renamed).size).toBe(1);
  });
});

/** Of all slow stages. */
const pieces = (derived: Derived): number => SLOW.reduce((sum, { items }) => sum + items(derived).length, 0);

describe('beside the page', () => {
  it('comes to what the page comes to in its spare time, and the command line at once', () => {
    const derived = derivedFrom();
    const [here, there] = [queue(), queue()];
    const { hire, hired, sent } = worker(there, WORK);
    const inPage = running(inSpareTime(here.put, runOf), derived, SLOW).runner;
    const beside = running(besidePage(hire, endless, never), derived, SLOW).runner;
    while (here.next());
    while (there.next());
    expect(beside.progress(derived)).toEqual(inPage.progress(derived));
    expect(beside.progress(derived)).toMatchObject({ done: pieces(derived), failed: [] });
    expect(beside.known(rehearsals, derived)).toEqual(inPage.known(rehearsals, derived));
    expect(beside.addedTo(derived).findings).toEqual(withSlowFindings(derived).findings);
    expect(hired, 'one for all').toEqual(['hired']);
    expect(sent, 'the job goes once').toEqual(Array.from({ length: pieces(derived) }, (_, i) => i === 0));
  });

  it('says what an item died of there, and does the others', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const { runner } = running(besidePage(worker(tasks, [weighing]).hire, endless, never), derived, [weighing]);
    while (tasks.next());
    expect(runner.progress(derived)).toMatchObject({ done: 3, failed: [{ why: 'the scales are gone' }] });
  });

  it('lets the worker come to the end of what is stopped, drops its answer, and goes on in it with what is asked last', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const { hire, hired, sent } = worker(tasks, [weighing]);
    const { runner } = running(besidePage(hire, endless, never), derived, [weighing]);
    runner.rest();
    runner.want(derivedFrom({ ...JOB }), null);
    const other = derivedFrom({ ...JOB });
    runner.want(other, null);
    expect(sent.length, 'what is asked waits').toBe(1);
    tasks.next();
    expect([runner.progress(derived).done, runner.progress(other).done]).toEqual([0, 0]);
    expect(sent, 'and only the last of it is done').toEqual([true, true]);
    tasks.next();
    expect(runner.progress(other).done).toBe(1);
    expect(hired).toEqual(['hired']);
  });

  it('derives of the next job in the worker what the edit touched, and comes to the same', () => {
    const itself: SlowWork<SolvedTube, SolvedTube> = { ...weighing, run: (tube) => tube, findings: () => [] };
    const work = createStageWork([itself]);
    const [one, two, three] = derivedFrom().tubes.map(({ id }) => id);
    const answerOf = (job: Job | null, id: string): unknown => {
      const said = work({ job: job && structuredClone(job), stage: weighing.name, id });
      return said.ok ? said.value : said.why;
    };
    const before = [one, two, three].map((id) => answerOf(JOB, id!));
    const changed: Job = {
      ...JOB,
      members: JOB.members.map((each) => (each.id === two ? { ...each, name: 'Other' } : each)),
    };
    const after = [one, two, three].map((id) => answerOf(changed, id!));
    expect(after[0]).toBe(before[0]);
    expect(after[1]).not.toEqual(before[1]);
    expect(after).toEqual(derivedFrom(changed).tubes.slice(0, 3));
    expect(answerOf(JOB, two!), 'and back').toEqual(before[1]);
  });

  it('does nothing more when it rests while it waits for what was stopped', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const { hire, sent } = worker(tasks, [weighing]);
    const { runner } = running(besidePage(hire, endless, never), derived, [weighing]);
    runner.rest();
    runner.want(derived, null);
    runner.rest();
    while (tasks.next());
    expect(sent.length).toBe(1);
    runner.want(derived, null);
    while (tasks.next());
    expect(runner.progress(derived).done).toBe(3);
  });

  it('ends at once the worker that is at something long', () => {
    const tasks = queue();
    const derived = derivedFrom();
    const { hire, hired } = worker(tasks, [weighing]);
    const { runner } = running(besidePage(hire, endless, never), derived, [{ ...weighing, patience: 300_000 }]);
    runner.rest();
    expect(hired).toEqual(['hired', 'ended']);
    while (tasks.next());
    expect(runner.progress(derived).done).toBe(0);
    runner.want(derived, null);
    while (tasks.next());
    expect(hired).toEqual(['hired', 'ended', 'hired']);
    expect(runner.progress(derived).done).toBe(3);
  });

  it('is given up where the worker fails: the page does it', () => {
    const tasks = queue();
    const derived = derivedFrom();
    let hired = 0;
    const broken: HireForStages = () => {
      hired += 1;
      let failed: (why: string) => void = () => {};
      return {
        send: () => void tasks.put(() => failed('no worker here')),
        listen: (_, next) => void (failed = next),
        end: () => {},
      };
    };
    const { runner } = running(besidePage(broken, endless, inSpareTime(tasks.put, runOf)), derived, SLOW);
    while (tasks.next());
    expect(hired).toBe(1);
    expect(runner.known(rehearsals, derived).size).toBe(rehearsals.items(derived).length);
  });

  it.each<[string, HireForStages]>([
    [
      'no worker may be had',
      () => {
        throw new DOMException('', 'SecurityError');
      },
    ],
    [
      'nothing can be sent to it',
      () => ({
        send() {
          throw new DOMException('', 'DataCloneError');
        },
        listen: () => {},
        end: () => {},
      }),
    ],
  ])('is given up where %s: the page does it', (_, hire) => {
    const tasks = queue();
    const derived = derivedFrom();
    let hired = 0;
    const counting: HireForStages = () => {
      hired += 1;
      return hire();
    };
    const { runner } = running(besidePage(counting, endless, inSpareTime(tasks.put, runOf)), derived, SLOW);
    while (tasks.next());
    expect(hired).toBe(1);
    expect(runner.known(rehearsals, derived).size).toBe(rehearsals.items(derived).length);
  });

  describe('where the worker does not answer', () => {
    /** A worker that hangs on one item, and a clock that is set by hand. */
    function hanging(on: string, times: number) {
      const tasks = queue();
      const { hire, hired } = worker(tasks, [weighing]);
      let hung = 0;
      const deaf: HireForStages = () => {
        const hand = hire();
        return { ...hand, send: (ask) => void (ask.id === on && hung < times ? (hung += 1) : hand.send(ask)) };
      };
      const due = new Set<() => void>();
      const after: After = (_, task) => {
        due.add(task);
        return () => due.delete(task);
      };
      const ring = (): void => {
        const now = [...due]; // what they set anew is for the next time
        for (const task of now) {
          due.delete(task);
          task();
        }
      };
      return { tasks, hired, doItem: besidePage(deaf, after, never), due, ring };
    }

    it('ends it and tries once more in a new one', () => {
      const derived = derivedFrom();
      const { tasks, hired, doItem, due, ring } = hanging(derived.tubes[0]!.id, 1);
      const { runner } = running(doItem, derived, [weighing]);
      expect(tasks.next()).toBe(false);
      ring();
      expect(hired).toEqual(['hired', 'ended', 'hired']);
      while (tasks.next());
      expect(runner.known(weighing, derived).size).toBe(2);
      expect(runner.progress(derived).done).toBe(3);
      expect(due.size, 'no clock runs on').toBe(0);
    });

    it('says so in words after that, and goes on with the others', () => {
      const derived = derivedFrom();
      const { id } = derived.tubes[0]!;
      const { tasks, doItem, due, ring } = hanging(id, 2);
      const { runner } = running(doItem, derived, [weighing]);
      ring();
      ring();
      while (tasks.next());
      const why = 'no answer came within 20 seconds, 2 times';
      expect(runner.progress(derived).failed).toContainEqual({ stage: 'weighing', id, why });
      expect(runner.progress(derived).done).toBe(3);
      expect(due.size).toBe(0);
    });

    it('ends what is stopped and does not end by itself, and hires another for what is asked next', () => {
      const derived = derivedFrom();
      const { tasks, hired, doItem, due, ring } = hanging(derived.tubes[0]!.id, 1);
      const { runner } = running(doItem, derived, [weighing]);
      runner.rest();
      runner.want(derived, null);
      expect(hired).toEqual(['hired']);
      expect(due.size).toBe(1);
      ring();
      expect(hired).toEqual(['hired', 'ended', 'hired']);
      while (tasks.next());
      expect(runner.progress(derived).done).toBe(3);
      expect(due.size, 'no clock runs on').toBe(0);
    });
  });
});
