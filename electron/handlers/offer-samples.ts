import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from '#core/quantity/compare-text.ts';
import { noteOffered, wasOffered } from '#db/sample-store.ts';
import type { Log } from '../log.ts';
import { bringIn } from './bring-in.ts';
import type { HostMeans } from './host-means.ts';

/**
 * Brings in each sample vehicle once: maps first, for jobs need theirs. One that was removed by the user
 * does not come back. A sample that cannot be read is noted in the log and never stops the start.
 */
export function offerSamples(means: HostMeans, log: Log, folder: string): void {
  if (!existsSync(folder)) return;
  const names = readdirSync(folder).sort(compareText);
  const inOrder = [
    ...names.filter((name) => name.endsWith('.map.json')),
    ...names.filter((name) => name.endsWith('.job.json')),
  ];
  for (const name of inOrder) {
    if (wasOffered(means.connection, name)) continue;
    try {
      const text = readFileSync(join(folder, name), 'utf8');
      // Already here without being noted: the last start ended between the two. No second copy.
      const looked = bringIn(means, text, false);
      const brought = looked.ok && !looked.value.summary.alreadyHere ? bringIn(means, text, true) : looked;
      if (brought.ok) noteOffered(means.connection, name, means.now());
      else log.trouble(`sample ${name} ${brought.problem.code}`, null);
    } catch (error) {
      log.trouble(`sample ${name}`, error);
    }
  }
}
