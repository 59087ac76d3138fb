import { join } from 'node:path';
import { ok, type Result } from '#core/quantity/result.ts';
import { comingOf, finishSwap } from '#db/backup/swap-store.ts';
import { dropPart, partOf } from '#db/backup/whole-file.ts';
import { closeStore } from '#db/closed-store.ts';
import type { Connection } from '#db/connection.ts';
import { holdFolder } from '#db/folder-hold.ts';
import { openStore } from '#db/open-store.ts';
import { openOrSalvage } from '#db/salvage/open-or-salvage.ts';
import { type BackupKeeper, keepBackups } from './backup-keeper.ts';
import type { WireReply } from './contract/client.ts';
import type { Handlers } from './contract/handlers.ts';
import { answer } from './handlers/answer.ts';
import { handlersOver } from './handlers/index.ts';
import { machineChance } from './handlers/machine-chance.ts';
import { offerSamples } from './handlers/offer-samples.ts';
import { indexPastJobs } from './index-past-jobs.ts';
import { type Log, openLog } from './log.ts';

/** A data folder opened for work: the one thing every host needs. */
export interface Workshop {
  answer(name: unknown, input: unknown): WireReply;
  readonly log: Log;
  readonly backups: BackupKeeper;
  close(): void;
}

/**
 * Claims a data folder, opens its store and brings in the samples not offered before; a damaged store is set
 * aside and what can be read of it saved. A backup of what changed begins at once. Problems: `store-busy` when
 * another process has the folder, and those of `openStore`.
 */
export function openWorkshop(folder: string, sampleFolder: string): Result<Workshop> {
  const hold = holdFolder(folder);
  if (!hold.ok) return hold;
  const now = (): string => new Date().toISOString();
  const file = join(folder, 'undertrim.db');
  const store = openHeld(file, now());
  if (!store.ok) {
    hold.value.release();
    return store;
  }
  let connection = store.value;
  const log = openLog(folder, now);
  const handlersNow = (): Handlers => handlersOver({ connection, now, chance: machineChance, backups });
  const backups = keepBackups({
    file,
    now,
    log,
    connection: () => connection,
    close: () => connection.close(),
    reopen: () => {
      const opened = openStore(file);
      if (!opened.ok) return opened;
      connection = opened.value;
      handlers = handlersNow();
      return ok(null);
    },
  });
  let handlers = handlersNow();
  offerSamples({ connection, now, chance: machineChance, backups }, log, sampleFolder);
  backups.begin('start');
  const stopIndexing = indexPastJobs({ log, connection: () => connection, isBusy: backups.isBusy });
  return ok({
    answer: (name, input) => {
      const reply = answer(handlers, log, name, input);
      if (!reply.ok && reply.problem.code === 'store-damaged') backups.doubt();
      return reply;
    },
    log,
    backups,
    close: () => {
      stopIndexing();
      backups.stop();
      if (backups.isDoubted()) connection.close();
      else closeStore(connection, file);
      hold.value.release();
    },
  });
}

/**
 * Opens the store of a folder this process has claimed: ends what the end of the last program cut off, and saves
 * what can be read of a damaged one.
 */
export function openHeld(file: string, now: string): Result<Connection> {
  finishSwap(file, now);
  for (const whole of [file, comingOf(file)]) dropPart(partOf(whole));
  return openOrSalvage(file, now);
}
