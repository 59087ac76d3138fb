import { isElectrical } from '../circuit/car-state.ts';
import type { TakenReading } from '../circuit/usable-readings.ts';
import type { EntryId } from '../quantity/id.ts';
import type { JobEntry } from './job-document.ts';
import { meterOf } from './meter-record.ts';

/** An electrical reading and the entry it stands in. */
export interface TakenEntry {
  readonly entryId: EntryId;
  readonly taken: TakenReading;
}

/**
 * The electrical readings among a job's entries, as the circuit reasons about them.
 * @example
 * takenReadings(sample.job.entries) // => []
 */
export function takenReadings(entries: readonly JobEntry[]): TakenEntry[] {
  return entries.flatMap((entry): TakenEntry[] => {
    if (entry.type !== 'reading' || !isElectrical(entry.reading)) return [];
    const { reading, state, meter } = entry;
    return [{ entryId: entry.id, taken: { reading, state, meter: meterOf(meter) } }];
  });
}
