import type { MapDocument } from '../map/map-document.ts';
import type { EntryId, NodeId } from '../quantity/id.ts';
import type { JobProblem } from '../quantity/problem.ts';
import type { Job, JobEntry } from './job-document.ts';
import type { Probe, Stretch } from './reading.ts';

/**
 * Everything in a job that does not fit its map: another map's job, no circuit chosen, and references
 * to things the map does not have, in the order of the document. Entries are all looked at, those
 * taken back too.
 * @example
 * jobFaults(sample.map, { ...sample.job, circuitId: null }) // => [{ code: 'job-circuit-unset' }]
 */
export function jobFaults(map: MapDocument, job: Job): JobProblem[] {
  const faults: JobProblem[] = [];
  if (job.mapId !== map.id) faults.push({ code: 'job-map-mismatch', jobMap: job.mapId, map: map.id });
  if (job.circuitId === null) faults.push({ code: 'job-circuit-unset' });
  const circuits = [
    ...(job.circuitId === null ? [] : [{ field: 'circuitId', id: job.circuitId }]),
    ...job.alsoFailingCircuitIds.map((id) => ({ field: 'alsoFailingCircuitIds', id })),
    ...job.workingCircuitIds.map((id) => ({ field: 'workingCircuitIds', id })),
  ];
  for (const { field, id } of circuits) {
    if (!map.circuits.has(id)) faults.push({ code: 'job-reference', entry: job.id, field, missing: id });
  }
  const known = new Set(job.entries.map((entry) => entry.id));
  for (const entry of job.entries) {
    const named = namedEntry(entry);
    if (named && !known.has(named.id)) {
      faults.push({ code: 'job-reference', entry: entry.id, field: named.field, missing: named.id });
    }
  }
  return [...faults, ...faultsOfEntries(map, job.entries).values()];
}

/**
 * The other entry an entry speaks of; null for those that stand alone.
 * @example
 * namedEntry({ id: 'entry:b', at: '2026-01-05T09:00:00Z', type: 'take-back', entryId: 'entry:a' }) // => { field: 'entryId', id: 'entry:a' }
 */
export function namedEntry(entry: JobEntry): { readonly field: string; readonly id: EntryId } | null {
  switch (entry.type) {
    case 'take-back':
      return { field: 'entryId', id: entry.entryId };
    case 'proof-of-cause':
    case 'repair':
    case 'looked-along':
      return { field: 'findingId', id: entry.findingId };
    case 'proof':
      return entry.repeats ? { field: 'repeats', id: entry.repeats } : null;
    default:
      return null;
  }
}

/**
 * The first thing each entry names that the map does not have; entries that fit are not listed.
 * @example
 * faultsOfEntries(sample.map, sample.job.entries).size // => 0
 */
export function faultsOfEntries(
  map: MapDocument,
  entries: readonly JobEntry[],
): ReadonlyMap<EntryId, JobProblem> {
  const faults = new Map<EntryId, JobProblem>();
  for (const entry of entries) {
    const missing = missingOf(map, entry);
    if (missing) faults.set(entry.id, { code: 'job-reference', entry: entry.id, ...missing });
  }
  return faults;
}

interface Missing {
  readonly field: string;
  readonly missing: string;
}

function missingOf(map: MapDocument, entry: JobEntry): Missing | null {
  if (entry.type === 'inspection') {
    const plug = entry.nodeIds?.find((id) => !map.nodes.has(id));
    if (plug) return { field: 'nodeIds', missing: plug };
    return missingPart(map, entry) ?? missingRun(map, entry.stretches);
  }
  if (entry.type === 'either-panel') {
    const missing = entry.panelIds.find((id) => !map.panels.has(id));
    return missing ? { field: 'panelIds', missing } : null;
  }
  if (entry.type === 'panel-off' || entry.type === 'panel-on' || entry.type === 'panel-wish') {
    return map.panels.has(entry.panelId) ? null : { field: 'panelId', missing: entry.panelId };
  }
  if (entry.type === 'finding') {
    const { circuitId } = entry;
    if (circuitId && !map.circuits.has(circuitId)) return { field: 'circuitId', missing: circuitId };
    return missingPart(map, entry) ?? missingRun(map, entry.stretches);
  }
  if (entry.type !== 'reading' && entry.type !== 'proof') return null;
  const apart = entry.state?.apartNodeIds.find((id) => !map.nodes.has(id));
  if (apart) return { field: 'state.apartNodeIds', missing: apart };
  const { reading } = entry;
  if (!reading) return null;
  if ('stretches' in reading) return missingRun(map, reading.stretches);
  for (const [field, value] of Object.entries(reading)) {
    const missing = typeof value === 'object' ? missingProbe(map, value as Probe) : null;
    if (missing) return { field: `${field}.${missing.field}`, missing: missing.missing };
  }
  return null;
}

function missingPart(
  map: MapDocument,
  { partNodeId }: { readonly partNodeId?: NodeId | undefined },
): Missing | null {
  return partNodeId && !map.nodes.has(partNodeId) ? { field: 'partNodeId', missing: partNodeId } : null;
}

function missingRun(map: MapDocument, stretches: readonly Stretch[]): Missing | null {
  const stretch = stretches.find(({ segmentId }) => !map.segments.has(segmentId));
  return stretch ? { field: 'stretches', missing: stretch.segmentId } : null;
}

function missingProbe(map: MapDocument, probe: Probe): Missing | null {
  if (probe.on !== 'wire') return null;
  if (!map.nodes.has(probe.nodeId)) return { field: 'nodeId', missing: probe.nodeId };
  if (probe.circuitId && !map.circuits.has(probe.circuitId)) {
    return { field: 'circuitId', missing: probe.circuitId };
  }
  return null;
}
