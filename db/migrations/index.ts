import * as firstTables from './0001-first-tables.ts';
import * as closedJobs from './0002-closed-jobs.ts';
import * as lessons from './0003-lessons.ts';
import * as provedFinds from './0004-proved-finds.ts';
import * as quickSearch from './0005-quick-search.ts';

/** One step forward. It sees only a bare connection, so that today's code can never bend an old step. */
export interface MigrationStep {
  readonly version: number;
  up(connection: { exec(sql: string): unknown }): void;
}

/** Every step, oldest first; the file's number is the version it lifts a store to. */
export const migrationSteps: readonly MigrationStep[] = [
  firstTables,
  closedJobs,
  lessons,
  provedFinds,
  quickSearch,
];
