/** The steps from version to version of the job file. */
import { migratedBy, type Migration } from './migrate.ts';

/** MIGRATIONS[n - 1] brings version n to n + 1. Version 1 is the first. */
export const MIGRATIONS: readonly Migration[] = [];

/** The version that this program writes. */
export const PRESENT_VERSION = MIGRATIONS.length + 1;

/** A file of a version from 1 to the present one, as the present version would hold it. */
export const migrate = migratedBy(MIGRATIONS);
