import type { MapDocument } from '../map/map-document.ts';
import { segmentLine } from '../map/segment-line.ts';
import type { SegmentId } from '../quantity/id.ts';
import type { Job, JobEntry } from './job-document.ts';
import { jobFaults, namedEntry } from './job-faults.ts';
import { closingOf } from './job-stage.ts';
import { standingEntries } from './standing-entries.ts';

/**
 * A closed job as another workshop may have it: what was measured, opened, found, repaired and proved, and how
 * long it took. Plate, odometer, complaint, every note, name, photo and agreement stay at home. Null while the
 * job is open.
 * @example
 * historyJob(sample.job) // => null
 */
export function historyJob(job: Job): Job | null {
  const standing = standingEntries(job);
  if (!closingOf(standing)) return null;
  const kept = standing.flatMap(withoutCustomer);
  const ids = new Set(kept.map(({ id }) => id));
  return {
    ...job,
    handedOn: true,
    vehicle: { plate: '', odometer: null, odometerUnit: job.vehicle.odometerUnit },
    complaint: '',
    entries: kept.filter((entry) => {
      const named = namedEntry(entry);
      return named === null || ids.has(named.id);
    }),
  };
}

/** One entry without anything that was typed freely or shows the car; none where nothing would be left. */
function withoutCustomer(entry: JobEntry): JobEntry[] {
  switch (entry.type) {
    case 'reading':
    case 'proof': {
      const meter = entry.meter ? { meter: { ...entry.meter, name: 'Meter' } } : {};
      return [{ ...entry, ...meter, note: '' }];
    }
    case 'finding':
    case 'repair':
      return [{ ...entry, photos: [], note: '' }];
    case 'inspection':
    case 'proof-of-cause':
    case 'looked-along':
    case 'search-on':
      return [{ ...entry, note: '' }];
    case 'close':
      return [{ ...entry, reason: '', advice: '' }];
    case 'panel-off':
    case 'panel-on':
    case 'time':
      return [entry];
    default:
      return [];
  }
}

/** Runs drawn anew by less than this are the same runs. Judgement: less than a hand covers. */
const sameRunMm = 20;

/**
 * The job on another drawing of the same model: on `to`, where that has everything the job names and its runs are
 * as long as on `from`, so that each place is still the same place. Null where it does not fit.
 * @example
 * jobOnMap(sample.job, sample.map, { ...sample.map, revision: 7 }).mapRevision // => 7
 */
export function jobOnMap(job: Job, from: MapDocument, to: MapDocument): Job | null {
  const moved = { ...job, mapId: to.id, mapRevision: to.revision };
  if (jobFaults(to, moved).length > 0) return null;
  const same = [...runsNamed(job)].every((id) => {
    const [before, now] = [from, to].map((map) => {
      const segment = map.segments.get(id);
      return segment ? (segmentLine(map, segment)?.lengthMm ?? 0) : Number.NaN;
    });
    return Math.abs((before as number) - (now as number)) <= sameRunMm;
  });
  return same ? moved : null;
}

function runsNamed({ entries }: Job): ReadonlySet<SegmentId> {
  const runs = new Set<SegmentId>();
  for (const entry of entries) {
    const reading = entry.type === 'reading' || entry.type === 'proof' ? entry.reading : undefined;
    const stretches =
      'stretches' in entry ? entry.stretches : reading && 'stretches' in reading ? reading.stretches : [];
    for (const { segmentId } of stretches) runs.add(segmentId);
  }
  return runs;
}
