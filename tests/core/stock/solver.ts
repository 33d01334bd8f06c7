/** The solver as the command line starts it. */
import { createRequire } from 'node:module';
import load from 'highs';
import { startSolver } from '../../../src/exports/shared/solver.ts';

export const startedSolver = () => startSolver(load, createRequire(import.meta.url).resolve('highs/runtime'));
