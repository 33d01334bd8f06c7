/**
 * Reads a trace of the browser: how long the page's main thread was at what, between the marks `typed` and `shown`. In time of the
 * processor, so that what else the machine has to do counts for little.
 */

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  /** Microseconds of the thread's own time: when it began, and how long it took. */
  readonly tts: number;
  readonly tdur?: number;
  readonly pid: number;
  readonly tid: number;
}

export interface Times {
  /** Milliseconds. */
  readonly script: number;
  readonly layout: number;
}

export interface Spent {
  readonly toFrame: Times;
  readonly toRest: Times;
}

const LAYOUT = new Set([
  'Layout',
  'UpdateLayoutTree',
  'PrePaint',
  'Paint',
  'Layerize',
  'HitTest',
  'IntersectionObserverController::computeIntersections',
]);
const SCRIPT =
  /^(?:FunctionCall|EvaluateScript|EventDispatch|TimerFire|FireAnimationFrame|FireIdleCallback|RunMicrotasks|HandlePostMessage|MajorGC|MinorGC|V8\.GC.*|v8\..*|V8\..*)$/u;

export function spentIn(text: string): Spent {
  const { traceEvents } = JSON.parse(text) as { traceEvents: readonly TraceEvent[] };
  const mark = (name: string): TraceEvent => {
    const found = traceEvents.find((event) => event.name === name && event.ph !== 'n');
    if (found === undefined) throw new Error(`the trace has no mark "${name}"`);
    return found;
  };
  const [typed, shown] = [mark('typed'), mark('shown')];
  const main = traceEvents
    .filter(({ ph, tdur, pid, tid }) => ph === 'X' && tdur !== undefined && pid === typed.pid && tid === typed.tid)
    .toSorted((a, b) => a.tts - b.tts || b.tdur! - a.tdur!);
  return { toFrame: between(main, typed.tts, shown.tts), toRest: between(main, typed.tts, Infinity) };
}

/** Each event's own time counts, from the moment of the key on: the part before it, and what is nested in it, does not. */
function between(events: readonly TraceEvent[], from: number, to: number): Times {
  let [script, layout] = [0, 0];
  const open: { kind: 'script' | 'layout' | null; end: number; own: number }[] = [];
  const close = (): void => {
    const { kind, own } = open.pop()!;
    if (kind === 'script') script += own;
    if (kind === 'layout') layout += own;
  };
  for (const { name, tts, tdur = 0 } of events) {
    const [start, end] = [Math.max(tts, from), Math.min(tts + tdur, to)];
    if (end <= start) continue;
    while (open.length > 0 && open.at(-1)!.end <= start) close();
    const outer = open.at(-1);
    if (outer !== undefined) outer.own -= end - start;
    // What says nothing of itself belongs to what it stands in.
    const kind = LAYOUT.has(name) ? 'layout' : SCRIPT.test(name) ? 'script' : (outer?.kind ?? null);
    open.push({ kind, end, own: end - start });
  }
  while (open.length > 0) close();
  return { script: script / 1000, layout: layout / 1000 };
}
