import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { EntryOf, JobEntry } from './job-document.ts';
import { looksSound } from './looks-sound.ts';
import { meterOf } from './meter-record.ts';
import { testKey } from './proof-checklist.ts';
import { soundExpectation } from './sound-expectation.ts';

/**
 * Readings taken since the newest repair that no sound circuit shows, unless the same test came back good later:
 * the fault is still there, or another one is. None before a repair, and none once the search went on after it.
 * @example
 * shownAfterRepair(sample.map, sample.line, sample.job.entries) // => []
 */
export function shownAfterRepair(
  map: MapDocument,
  line: CircuitLine,
  entries: readonly JobEntry[],
): readonly EntryOf<'reading'>[] {
  const lastRepair = entries.findLastIndex((entry) => entry.type === 'repair');
  const goesOn = entries.findLastIndex((entry) => entry.type === 'search-on');
  if (lastRepair < 0 || goesOn > lastRepair) return [];
  const before = entries.slice(0, lastRepair).filter((entry) => entry.type === 'reading');
  const newest = new Map<string, EntryOf<'reading'>>();
  for (const entry of entries.slice(lastRepair)) {
    if (entry.type === 'reading') newest.set(testKey(entry), entry);
  }
  return [...newest.values()].filter((entry) => {
    const meter = meterOf(entry.meter);
    const expected = soundExpectation(map, line, entry.reading, entry.state, { meter, before });
    return looksSound(expected, entry.reading, meter) === false;
  });
}
