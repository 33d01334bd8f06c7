/** The steps from version to version of the shop record's file, as core/job/migrations.ts has them for the job's. */
import { migratedBy, type Migration } from '../job/migrate.ts';

/** SHOP_MIGRATIONS[n - 1] brings version n to n + 1. Version 1 is the first. */
export const SHOP_MIGRATIONS: readonly Migration[] = [];

/** The version that this program writes. */
export const PRESENT_SHOP_VERSION = SHOP_MIGRATIONS.length + 1;

/** Plain data of any version brought up to the present one, or why it cannot be. */
export const migrateShop = migratedBy(SHOP_MIGRATIONS);
