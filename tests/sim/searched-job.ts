import type { Job, JobEntry } from '#core/job/job-document.ts';
import type { DrawnCar } from './drawn-car.ts';

type WithoutHead<T> = T extends unknown ? Omit<T, 'id' | 'at'> : never;

/** An entry before it has its number and its time. */
export type NewEntry = WithoutHead<JobEntry>;

export function numberedEntry(entry: NewEntry, number: number): JobEntry {
  return { ...entry, id: `entry:${number}`, at: '2026-01-05T09:00:00Z' };
}

/** What is in the record before the search begins: the plug that was parted, if any. */
export function startEntries({ plugTest }: DrawnCar): JobEntry[] {
  if (!plugTest) return [];
  const state = {
    apartNodeIds: [plugTest.nodeId],
    switchClosed: null,
    ignitionOn: true,
    batteryConnected: true,
  };
  const reading = { test: 'symptom', stays: plugTest.stays } as const;
  return [numberedEntry({ type: 'reading', reading, state, note: '' }, 0)];
}

/** The job of a drawn car with a record. */
export function searchedJob({ map, circuit, failureType }: DrawnCar, entries: readonly JobEntry[]): Job {
  return {
    format: 'undertrim.job',
    version: 1,
    id: 'job:searched',
    mapId: map.id,
    mapRevision: 0,
    openedAt: '2026-01-05T08:00:00Z',
    vehicle: { plate: '', odometer: null, odometerUnit: 'km' },
    complaint: '',
    failureType,
    circuitId: circuit.id,
    alsoFailingCircuitIds: [],
    workingCircuitIds: [],
    entries: [...entries],
  };
}
