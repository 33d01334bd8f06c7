/** The solver of linear programs, loaded when it is first asked for: only where WebAssembly may run, in a worker of its own policy (scripts/policy.mjs). */
import wasm from 'highs/runtime?url';
import type { Solver } from '../core/stock/program.ts';
import { noSolver, startSolver } from '../exports/shared/solver.ts';

let started: Promise<Solver> | null = null;

/** Rejects with a sentence where it cannot be loaded. */
export function loadedSolver(): Promise<Solver> {
  started ??= import('highs').then(
    ({ default: load }) => startSolver(load, wasm),
    () => Promise.reject(new Error(NOT_LOADED)),
  );
  return started.catch((error: unknown) => {
    started = null;
    throw error;
  });
}

const NOT_LOADED =
  'The part that looks for cheaper plans could not be loaded. It wants the network once; after that it works without.';

/** For files: one that cannot be loaded costs nobody a file; its plan then says by itself how far it may be from the cheapest. */
export const solverForFiles = (): Promise<Solver> => loadedSolver().catch(() => noSolver);
