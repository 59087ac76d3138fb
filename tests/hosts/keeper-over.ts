import { dirname } from 'node:path';
import { onTestFinished } from 'vitest';
import { fail } from '#core/quantity/result.ts';
import type { Connection } from '#db/connection.ts';
import { type BackupKeeper, keepBackups } from '#electron/backup-keeper.ts';
import { openLog } from '#electron/log.ts';

const now = (): string => '2026-01-05T09:00:00.000Z';

/** A keeper of backups over one open store, which cannot go back to one. */
export function keeperOver(connection: Connection, file: string): BackupKeeper {
  const keeper = keepBackups({
    file,
    now,
    log: openLog(dirname(file), now),
    connection: () => connection,
    close: () => connection.close(),
    reopen: () => fail({ code: 'store-busy' }),
  });
  onTestFinished(() => keeper.stop());
  return keeper;
}
