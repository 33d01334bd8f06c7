/**
 * Files of earlier versions, brought up to the present one step at a time. A step takes the plain data of version n
 * and gives that of version n + 1; it is numbered by its place here and is never changed once released.
 */
import type { PlainObject } from './plain.ts';

type Migration = (file: PlainObject) => PlainObject;

/** MIGRATIONS[n - 1] brings version n to n + 1. Version 1 is the first. */
export const MIGRATIONS: readonly Migration[] = [];

/** The version that this program writes. */
export const PRESENT_VERSION = MIGRATIONS.length + 1;

/** A file of a version from 1 to the present one, as the present version would hold it. */
export const migrate = (file: PlainObject, version: number): PlainObject =>
  MIGRATIONS.slice(version - 1).reduce((older, step) => step(older), file);
