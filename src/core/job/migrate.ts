/** Files of earlier versions, brought up to the present one step at a time. */
import type { PlainObject } from './plain.ts';

/** Takes the plain data of one version and gives that of the next; never changed once it is released. */
export type Migration = (file: PlainObject) => PlainObject;

/** What brings a file of a version from 1 up to the present one; steps[n - 1] brings version n to n + 1. */
export const migratedBy =
  (steps: readonly Migration[]) =>
  (file: PlainObject, version: number): PlainObject =>
    steps.slice(version - 1).reduce((older, step) => step(older), file);
