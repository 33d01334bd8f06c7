/**
 * What the slow stages find of the job that is shown, with the revision of the document that it belongs to. It hears of each
 * change before the screen does, so that no finding of a frame that is gone is ever shown; what is not known yet comes item by
 * item.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import { variants, type VariantFigures } from '../../core/compare/variants.ts';
import type { Derived } from '../../core/derive.ts';
import type { Finding } from '../../core/checks/types.ts';
import type { SectionId, TubeRef } from '../../core/job/reference.ts';
import type { Rehearsal } from '../../core/rehearse/types.ts';
import { rehearsals } from '../../core/stages/rehearsals.ts';
import type { Forecast } from '../../core/forecast/types.ts';
import { forecast } from '../../core/stages/forecast.ts';
import { proof } from '../../core/stages/proof.ts';
import { stock } from '../../core/stages/stock.ts';
import { begunPlanned } from '../../core/stock/begun-plan.ts';
import type { Planned } from '../../core/stock/of-job.ts';
import { isProven } from '../../core/stock/types.ts';
import { toCut, type ToCut } from '../../core/stock/to-cut.ts';
import { SLOW } from '../../core/stages/slow.ts';
import type { SlowStage } from '../../core/stages/slow-stage.ts';
import { attempt, type DoItem } from '../../workers/doing.ts';
import { createRunner, type Progress, type Runner } from '../../workers/runner.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { EditorStore } from '../editor/createEditor.ts';
import { createLastPlans, type PlanBefore } from './lastPlans.ts';

export interface ResultsState {
  /** Of the document. */
  readonly revision: number;
  /** What the derivation found, and what the rehearsals find tube by tube as it becomes known. */
  readonly findings: readonly Finding[];
  /** Of the tubes shown that can be put in a bender, as far as they were rehearsed yet. */
  readonly rehearsals: ReadonlyMap<TubeRef, Rehearsal>;
  /** Of all slow stages; nothing is to be done before they are started. */
  readonly progress: Progress;
  /** Of the tubes that have none and will have none, why: a fault of the program. */
  readonly unrehearsed: ReadonlyMap<TubeRef, string>;
  /** How the joints will fit, while somebody looks at it and once it is worked out; else null. */
  readonly forecast: Forecast | null;
  /** The cutting plans, as far as they are known, by section: the best so far; of one that is being sawn at once. */
  readonly plans: ReadonlyMap<SectionId, Planned>;
  /** Of the sections that have none yet, the last that they had. */
  readonly plansBefore: ReadonlyMap<SectionId, PlanBefore>;
  /** Of those that will have none, why: a fault of the program. */
  readonly unplanned: ReadonlyMap<SectionId, string>;
  /** Of the plans that the own search did not prove, how far the search for a cheaper one is. */
  readonly proofs: ReadonlyMap<SectionId, Proof>;
  /** What the variants of the job come to, as far as they were worked out, by their ids. */
  readonly variants: ReadonlyMap<string, VariantFigures>;
  /** Of those looked at of which nothing will be known, why: a fault of the program. */
  readonly unmeasured: ReadonlyMap<string, string>;
  /** Why there will be no forecast: a fault of the program. */
  readonly unforecast: string | null;
}

/** open: not begun, or not through; else why there is none, a fault of the program. */
export type Proof = 'open' | 'done' | { readonly why: string };

export interface ResultsStore extends StoreApi<ResultsState> {
  /** From now on what is not known is searched for, item by item, by `doItem`. */
  start(doItem: DoItem): void;
  /** From now on that stage is gone through, too, one that nobody waits for but who looks at it; answers how to end that. */
  lookAt(stage: LookedAt): () => void;
  /** From now on a cheaper plan of that section is looked for, too, where its own is not proven; answers how to end that. */
  lookAtProof(section: SectionId): () => void;
}

const NOTHING: Omit<ResultsState, 'revision' | 'findings'> = {
  rehearsals: new Map(),
  progress: { done: 0, of: 0, failed: [] },
  unrehearsed: new Map(),
  plans: new Map(),
  plansBefore: new Map(),
  unplanned: new Map(),
  proofs: new Map(),
  forecast: null,
  variants: new Map(),
  unmeasured: new Map(),
  unforecast: null,
};

/** Last what nobody waits for but who looks at it. */
const LOOKED_AT = [forecast, variants] as const;
type LookedAt = (typeof LOOKED_AT)[number];

export function createResults(document: DocumentStore, editor: EditorStore): ResultsStore {
  /** null until something is searched for. */
  let runner: Runner | null = null;
  /** At what somebody looks, as often as somebody does. */
  let looked: readonly LookedAt[] = [];
  /** Whose plans are looked at. */
  const atProofs = new Set<SectionId>();
  const lastPlans = createLastPlans();
  /** Where the own search has proven its plan, or is not through, nothing is to be done. */
  const unproven: typeof proof = {
    ...proof,
    items: (frame) => {
      const plans = runner?.known(stock, frame);
      return proof.items(frame).filter((item) => {
        const planned = plans?.get(item.section);
        return planned !== undefined && !isProven(planned.plan);
      });
    },
  };
  const lookedAt: typeof proof = {
    ...unproven,
    items: (frame) => unproven.items(frame).filter(({ section }) => atProofs.has(section)),
  };
  const stages = (): typeof SLOW => [...SLOW, ...LOOKED_AT.filter((stage) => looked.includes(stage)), lookedAt];

  const known = (): ResultsState => {
    const { revision, derived } = document.getState();
    const bare: ResultsState = { ...NOTHING, revision, findings: derived.findings };
    const slow = runner;
    if (slow === null) return bare;
    const found = attempt(() => ({
      findings: slow.addedTo(derived).findings,
      rehearsals: slow.known(rehearsals, derived),
      ...plansOf(slow, derived),
      progress: slow.progress(derived),
      forecast: (looked.includes(forecast) && slow.known(forecast, derived).get('')) || null,
      variants: slow.known(variants, derived),
    }));
    return found.ok ? withWhys({ revision, ...found.value }, null) : withWhys(bare, found.why);
  };

  function plansOf(slow: Runner, derived: Derived): Pick<ResultsState, 'plans' | 'plansBefore' | 'proofs'> {
    const proven = slow.known(unproven, derived);
    const { failed } = slow.progress(derived);
    const proofOf = ({ section }: ToCut): Proof => {
      const why = failed.find(({ stage, id }) => stage === proof.name && id === section)?.why;
      if (why !== undefined) return { why };
      return proven.has(section) ? 'done' : 'open';
    };
    const begun = toCut(derived).flatMap((section) => {
      const planned = begunPlanned(section);
      return planned === null ? [] : [[section.section, planned] as const];
    });
    const plans = new Map([...begun, ...slow.known(stock, derived), ...proven]);
    return {
      plans,
      plansBefore: lastPlans(derived, document.getState().opened, plans),
      proofs: new Map(unproven.items(derived).map((item) => [item.section, proofOf(item)])),
    };
  }

  /** With why what is missing will never be there. `stopped`: why nothing more is searched for. */
  function withWhys(
    state: Omit<ResultsState, 'unrehearsed' | 'unplanned' | 'unmeasured' | 'unforecast'>,
    stopped: string | null,
  ): ResultsState {
    const { derived } = document.getState();
    const whys = new Map(state.progress.failed.map(({ stage, id, why }) => [`${stage} ${id}`, why]));
    const missing = <Item extends object>(
      { name, items, idOf }: SlowStage<Item, unknown>,
      found: ReadonlyMap<string, unknown>,
    ) => {
      // Where the items cannot be told, none can be named.
      const told = attempt(() => items(derived).map(idOf));
      return (told.ok ? told.value : []).flatMap((id) => {
        const why = whys.get(`${name} ${id}`) ?? stopped;
        return why === null || found.has(id) ? [] : [[id, why] as const];
      });
    };
    const [toForecast, toMeasure] = [looked.includes(forecast), looked.includes(variants)];
    return {
      ...state,
      unrehearsed: new Map(missing(rehearsals, state.rehearsals)),
      unplanned: new Map(missing(stock, state.plans)),
      unmeasured: new Map(toMeasure ? missing(variants, state.variants) : []),
      unforecast: toForecast && state.forecast === null ? (whys.get(`${forecast.name} `) ?? stopped) : null,
    };
  }

  const store = createStore<ResultsState>(known);

  /** Of the committed job, the tube that is chosen first; nothing while a gesture is under way. Whatever fails, the document goes on. */
  function want(): void {
    const { gesture, committed } = document.getState();
    const { selection } = editor.getState();
    const asked = attempt(() => {
      if (gesture.state !== 'idle') runner?.rest();
      else runner?.want(committed.derived, selection?.kind === 'tube' ? selection.id : null);
    });
    if (!asked.ok) store.setState(withWhys(store.getState(), asked.why));
  }

  function update(): void {
    store.setState(known());
    want();
  }

  document.subscribe(update);
  editor.subscribe((next, last) => {
    if (next.selection !== last.selection) want();
  });

  return Object.assign(store, {
    start(doItem: DoItem) {
      runner = createRunner(stages, doItem, update);
      update();
    },
    lookAtProof(section: SectionId) {
      atProofs.add(section);
      update();
      return () => {
        atProofs.delete(section);
        update();
      };
    },
    lookAt(stage: LookedAt) {
      looked = [...looked, stage];
      update();
      return () => {
        looked = looked.toSpliced(looked.indexOf(stage), 1);
        update();
      };
    },
  });
}
