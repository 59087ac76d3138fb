import { isElectrical } from '../circuit/car-state.ts';
import { allNodes, type CircuitLine } from '../circuit/circuit-line.ts';
import { endPlaces, reachedWire, type WirePlace } from '../circuit/wire-reach.ts';
import type { Evidence } from '../locate/hypotheses.ts';
import { faultFound, otherDamage, plugLook, soundLook } from '../locate/look-evidence.ts';
import { moveEvidence } from '../locate/move-evidence.ts';
import { type SharedRuns, sharedRunsEvidence } from '../locate/shared-runs-evidence.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import { unplugEvidence } from '../locate/unplug-evidence.ts';
import type { CircuitDuty, CircuitEndKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { CircuitId, EntryId, NodeId } from '../quantity/id.ts';
import type { Job, JobEntry } from './job-document.ts';
import { onCircuit } from './path-stretches.ts';
import type { UnusedReading } from './ranking.ts';
import type { Stretch } from './reading.ts';

/** What one reading that is judged by place says. */
export interface PlacedReading {
  readonly entryId: EntryId;
  readonly evidence: Evidence;
}

/** Everything a job says about the place of the fault, apart from its electrical readings. */
export interface JobEvidence {
  /** Looks, finds and other circuits. */
  readonly pieces: readonly Evidence[];
  /** Plugs pulled and things moved, a piece for each entry. */
  readonly placed: readonly PlacedReading[];
  readonly unused: readonly UnusedReading[];
}

/**
 * Turns the standing entries of a job, and the other circuits it names, into evidence about places.
 * Entries about runs off the circuit say nothing about it and give none; readings on airbag and
 * high-voltage circuits are not used. Electrical readings are left to `hearReadings`.
 * @example
 * jobEvidence(sample.map, sample.line, sample.job, []).pieces.length // => 0
 */
export function jobEvidence(
  map: MapDocument,
  line: CircuitLine,
  job: Job,
  entries: readonly JobEntry[],
): JobEvidence {
  const pieces: Evidence[] = [];
  const placed: PlacedReading[] = [];
  const unused: UnusedReading[] = [];
  const found: StationRange[] = [];
  for (const entry of entries) {
    if (entry.type === 'inspection') {
      if (entry.nodeIds && entry.result !== 'found') {
        pieces.push(plugLook(entry.nodeIds, entry.lookQuality));
      }
      const ranges = onCircuit(line, entry.stretches);
      if (ranges.length === 0) continue;
      if (entry.result === 'found') found.push(...ranges);
      else if (entry.result === 'seen-sound') pieces.push(soundLook(ranges, entry.lookQuality));
      else pieces.push(otherDamage(ranges, entry.lookQuality));
    }
    if (entry.type === 'reading' && !isElectrical(entry.reading)) {
      const said = readingEvidence(line, entry, entries);
      if (typeof said === 'string') unused.push({ entryId: entry.id, why: said });
      else placed.push({ entryId: entry.id, evidence: said });
    }
  }
  if (found.length > 0) pieces.push(faultFound(found));
  const failing = sharedRuns(map, line, job.alsoFailingCircuitIds);
  const working = sharedRuns(map, line, job.workingCircuitIds);
  if (failing.length + working.length > 0) pieces.push(sharedRunsEvidence(failing, working));
  return { pieces, placed, unused };
}

/** Circuits on which no test is ever asked for, and none believed. */
const lookOnly: ReadonlySet<CircuitDuty> = new Set(['restraint', 'high-voltage']);

type ReadingEntry = Extract<JobEntry, { type: 'reading' }>;

/** Evidence of one reading, or why it tells nothing about the place. */
function readingEvidence(
  line: CircuitLine,
  { id, reading, state }: ReadingEntry,
  entries: readonly JobEntry[],
): Evidence | UnusedReading['why'] {
  if (lookOnly.has(line.circuit.duty)) return 'forbidden-duty';
  if (reading.test === 'move') {
    const ranges = onCircuit(line, reading.stretches);
    const changed = Math.min(reading.changed, reading.tried);
    return ranges.length > 0 ? moveEvidence(ranges, changed, reading.tried) : 'off-circuit';
  }
  if (reading.test === 'function') {
    const ranges = onCircuit(line, reading.stretches);
    if (ranges.length === 0) return 'off-circuit';
    const before = lastFunction(entries, id, reading.stretches);
    // One position alone has nothing to be compared with.
    if (before === null) return 'one-position-only';
    return moveEvidence(ranges, before === reading.works ? 0 : 1, 1);
  }
  if (reading.test !== 'symptom') return 'off-circuit';
  return symptomEvidence(line, state.apartNodeIds, reading.stays) ?? 'nothing-apart';
}

/**
 * What it says that the symptom stays, or goes, with plugs and parts pulled: what still hangs together with
 * the end where it is watched, through splices too, and what does not. Null when nothing pulled lies on
 * the circuit.
 * @example
 * symptomEvidence(sample.line, [], true) // => null
 */
export function symptomEvidence(
  line: CircuitLine,
  apartNodeIds: readonly NodeId[],
  stays: boolean,
): Evidence | null {
  const apartMm = allNodes(line).flatMap(({ nodeId, stationMm }) =>
    apartNodeIds.includes(nodeId) ? [stationMm] : [],
  );
  if (apartMm.length === 0) return null;
  const watched = watchedFrom(line);
  return unplugEvidence({
    watchedMm: reachedWire(line, { ...watched, apartNodeIds }),
    watcherMm: watched.atMm,
    apartMm,
    stays,
  });
}

/** Whether it worked at the last try with the same stretches moved, before the entry given. */
function lastFunction(
  entries: readonly JobEntry[],
  before: EntryId,
  stretches: readonly Stretch[],
): boolean | null {
  const key = JSON.stringify(stretches);
  let works: boolean | null = null;
  for (const entry of entries) {
    if (entry.id === before) break;
    if (entry.type !== 'reading' || entry.reading.test !== 'function') continue;
    if (JSON.stringify(entry.reading.stretches) === key) works = entry.reading.works;
  }
  return works;
}

/** Ends that feed or watch the wire; the symptom shows there. */
export const watchingEnds: ReadonlySet<CircuitEndKind> = new Set([
  'fused-supply',
  'module-input-pull-up',
  'high-side-driver',
  'low-side-driver',
]);

/**
 * Where the symptom shows: at the first end of the wire that has a supply or control unit, its own ends
 * before those of its branches.
 * @example
 * watchedFrom(sample.line) // => { row: 0, atMm: 0 }
 */
export function watchedFrom(line: CircuitLine): WirePlace {
  const watching = endPlaces(line).find(({ end }) => watchingEnds.has(end.kind));
  return { row: watching?.row ?? 0, atMm: watching?.atMm ?? 0 };
}

/**
 * Whether the symptom shows at the circuit's second end: supply or control unit sits there.
 * @example
 * isWatchedFromSecondEnd(sample.line) // => false
 */
export function isWatchedFromSecondEnd({ circuit }: CircuitLine): boolean {
  const [first, second] = circuit.ends;
  return !watchingEnds.has(first.kind) && watchingEnds.has(second.kind);
}

/** What other circuits share with the searched one; those not on the map or sharing nothing fall out. */
function sharedRuns(map: MapDocument, line: CircuitLine, ids: readonly CircuitId[]): SharedRuns[] {
  const shared: SharedRuns[] = [];
  const circuitsIn = new Map<string, number>();
  if (ids.length > 0)
    for (const { id, path } of map.circuits.values())
      if (id !== line.circuit.id)
        for (const segmentId of new Set(path.map((step) => step.segmentId)))
          circuitsIn.set(segmentId, (circuitsIn.get(segmentId) ?? 0) + 1);
  for (const id of [...new Set(ids)].sort()) {
    const other = map.circuits.get(id);
    if (!other || id === line.circuit.id) continue;
    const runs = new Set(other.path.map((step) => step.segmentId));
    const nodeIds = new Set<string>();
    for (const segmentId of runs) {
      const segment = map.segments.get(segmentId);
      if (segment) nodeIds.add(segment.fromNodeId).add(segment.toNodeId);
    }
    const ranges = line.spans
      .filter((span) => runs.has(span.segment.id))
      .map(({ segment, fromMm, toMm }) => ({ fromMm, toMm, circuits: circuitsIn.get(segment.id) ?? 1 }));
    if (ranges.length > 0) shared.push({ ranges, nodeIds });
  }
  return shared;
}
