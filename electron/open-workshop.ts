import { join } from 'node:path';
import { ok, type Result } from '#core/quantity/result.ts';
import { holdFolder } from '#db/folder-hold.ts';
import { openStore } from '#db/open-store.ts';
import type { WireReply } from './contract/client.ts';
import { answer } from './handlers/answer.ts';
import type { HostMeans } from './handlers/host-means.ts';
import { handlersOver } from './handlers/index.ts';
import { machineChance } from './handlers/machine-chance.ts';
import { offerSamples } from './handlers/offer-samples.ts';
import { type Log, openLog } from './log.ts';

/** A data folder opened for work: the one thing every host needs. */
export interface Workshop {
  answer(name: unknown, input: unknown): WireReply;
  readonly log: Log;
  close(): void;
}

/**
 * Claims a data folder, opens its store and brings in the samples not offered before. Problems:
 * `store-busy` when another process has the folder, and those of `openStore`.
 */
export function openWorkshop(folder: string, sampleFolder: string): Result<Workshop> {
  const hold = holdFolder(folder);
  if (!hold.ok) return hold;
  const store = openStore(join(folder, 'undertrim.db'));
  if (!store.ok) {
    hold.value.release();
    return store;
  }
  const connection = store.value;
  const now = (): string => new Date().toISOString();
  const means: HostMeans = { connection, now, chance: machineChance };
  const log = openLog(folder, now);
  const handlers = handlersOver(means);
  offerSamples(means, log, sampleFolder);
  return ok({
    answer: (name, input) => answer(handlers, log, name, input),
    log,
    close: () => {
      connection.close();
      hold.value.release();
    },
  });
}
