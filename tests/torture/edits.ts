/**
 * Hundreds of random edits one after the other, as a person makes them over a day: committed as the program commits them,
 * gestures and their cancelling among them, undone in part and gone on from there. Then all of it undone and done again, every
 * state the same bytes; and once more after the history was written out as it is kept, and read.
 */
import { derive, type Derived } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { begin, commit, preview } from '../../src/core/session/gesture.ts';
import { commitEdit, newHistory, redo, undo, type History } from '../../src/core/session/history.ts';
import { keptHistory, resumeHistory } from '../../src/core/session/kept.ts';
import { fabricationJson } from '../../src/exports/tables/fabrication.ts';
import { admit } from '../../src/store/document/admit.ts';
import { sampleFile } from '../core/job/sample.ts';
import { RANDOM_EDITS } from '../laws/random-edits.ts';
import { drawFrom, type Draw } from '../reference/oracles/seeded.ts';
import type { Failure, Part } from './part.ts';

const RUNS = 3;
const EDITS = 500;
/** Of the states on the way, one in so many is also derived afresh. */
const DERIVED_EVERY = 25;

export const editsPart: Part = {
  name: 'edits',
  about: 'random edits, undone and done again, also after reopening',
  async run(scale, seed) {
    const edits = Math.round(EDITS * scale);
    const failures: Failure[] = [];
    for (let round = 0; round < RUNS; round++) {
      try {
        dayOfEdits(drawFrom(seed + round), edits);
      } catch (error) {
        const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
        failures.push({ what: `${edits} edits of round ${round}, seed ${seed}`, why });
      }
    }
    return { tries: RUNS * edits, failures };
  },
};

/** A history, and the bytes of the job before its first step and after each. */
interface Day {
  history: History;
  derived: Derived;
  bytes: string[];
}

/** Throws what is wrong. */
export function dayOfEdits(draw: Draw, edits: number): void {
  const start = parseJob(JSON.stringify(sampleFile()));
  const derivation = start.ok ? derive(start.job) : start;
  if (!start.ok || !derivation.ok) throw new Error('the sample is no frame');
  const day: Day = { history: newHistory(start.job), derived: derivation.value, bytes: [serialiseJob(start.job)] };
  for (let made = 0; made < edits;) {
    if (draw.chance(0.03)) goBack(day, draw);
    if (takenOn(day, draw)) {
      made += 1;
      if (made % DERIVED_EVERY === 0) mustDeriveTheSame(day);
    }
  }
  mustGoThere(day.history, day.bytes);
  const last = day.bytes.length - 1;
  for (const at of [last, Math.floor(last / 2), 0]) mustReopen(stepsBack(day.history, last - at), day.bytes);
}

/** One edit; false where it changes nothing, or the program would refuse it. */
function takenOn(day: Day, draw: Draw): boolean {
  const { history } = day;
  const edit = draw.oneOf(RANDOM_EDITS);
  const number = (): number => Math.floor(draw.between(0, 1001));
  const drafts = draw.chance(0.2) ? 5 : 1;
  const label = `Edit ${history.past.length}`;
  let gesture = begin(label, history.job);
  let next: Job = history.job;
  const [a, b] = [number(), number()];
  for (let draft = 0; draft < drafts; draft++) {
    const answer = edit(history.job, a, draft === 0 ? b : number());
    if (isJob(answer)) next = answer;
    gesture = preview(gesture, () => next);
  }
  // Cancelled: there is nothing to restore.
  if (drafts > 1 && draw.chance(0.3)) return false;
  const admitted = admit(next, { job: history.job, derived: day.derived });
  if (!admitted.ok || next === history.job) return false;
  next = admitted.job;
  const after =
    drafts > 1
      ? commit(
          preview(gesture, () => next),
          history,
        )
      : commitEdit(history, label, next);
  must(after !== history && after.job === next, 'an edit that changes the job is no step');
  must(after.past.length === history.past.length + 1 && after.future.length === 0, 'an edit is not one step');
  must(serialiseJob(history.job) === day.bytes.at(-1), 'an edit changed the job that it began with');
  day.history = after;
  day.derived = admitted.derived;
  day.bytes.push(serialiseJob(next));
  return true;
}

const isJob = (answer: ReturnType<(typeof RANDOM_EDITS)[number]>): answer is Job => !Array.isArray(answer);

/** Undone by some steps; what is edited next takes the place of what was undone. */
function goBack(day: Day, draw: Draw): void {
  const { job } = day.history;
  const steps = Math.min(day.history.past.length, Math.floor(draw.between(1, 8)));
  day.history = stepsBack(day.history, steps);
  day.bytes = day.bytes.slice(0, day.bytes.length - steps);
  const admitted = admit(day.history.job, { job, derived: day.derived });
  must(admitted.ok, 'a job that was shown cannot be shown again');
  day.derived = admitted.derived;
}

function stepsBack(history: History, steps: number): History {
  return steps === 0 ? history : stepsBack(undo(history), steps - 1);
}

/** From the last state to the first, to the last and to the first again: every state the same bytes, none more and none fewer. */
function mustGoThere(end: History, bytes: readonly string[]): void {
  let history = end;
  const mustBe = (at: number, way: string): void =>
    must(serialiseJob(history.job) === bytes[at], `state ${at} of ${bytes.length - 1}, ${way}, has other bytes`);
  const down = (): void => {
    for (let at = bytes.length - 1; at >= 0; at--) {
      mustBe(at, 'undone');
      const before = undo(history);
      must((before === history) === (at === 0), `undo ends at state ${at}`);
      history = before;
    }
  };
  down();
  for (let at = 0; at < bytes.length; at++) {
    mustBe(at, 'done again');
    const next = redo(history);
    must((next === history) === (at === bytes.length - 1), `redo ends at state ${at}`);
    history = next;
  }
  down();
}

/** As it is kept and read: the job's text, and its steps as plain data, by structured clone and as JSON. */
function mustReopen({ job, past, future }: History, bytes: readonly string[]): void {
  const text = serialiseJob(job);
  const kept = keptHistory({ job, past, future }, Infinity);
  for (const copy of [structuredClone(kept), JSON.parse(JSON.stringify(kept)) as unknown]) {
    const read = parseJob(text);
    must(read.ok, 'what was kept cannot be read');
    const { history, loss } = resumeHistory(text, read.job, copy);
    must(
      loss === null && history.past.length === past.length && history.future.length === future.length,
      'steps are lost in reopening',
    );
    mustGoThere(stepsOn(history, future.length), bytes);
  }
}

function stepsOn(history: History, steps: number): History {
  return steps === 0 ? history : stepsOn(redo(history), steps - 1);
}

function mustDeriveTheSame({ history, derived }: Day): void {
  const fresh = derive(history.job);
  must(fresh.ok, 'a job that was shown cannot be derived afresh');
  must(fabricationJson(fresh.value) === fabricationJson(derived), 'derived afresh it is another frame');
}

function must(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(what);
}
