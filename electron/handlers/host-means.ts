import type { Chance } from '#core/quantity/chance.ts';
import type { Connection } from '#db/connection.ts';
import type { BackupKeeper } from '../backup-keeper.ts';

/** What handlers work with: the store, and the clock and chance that core must never reach for. */
export interface HostMeans {
  readonly connection: Connection;
  /** The time now as ISO 8601 in UTC. */
  readonly now: () => string;
  readonly chance: Chance;
  /** Copies of the store, and going back to one. */
  readonly backups: BackupKeeper;
}
