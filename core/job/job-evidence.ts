import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { Evidence } from '../locate/hypotheses.ts';
import { faultFound, otherDamage, plugLook, soundLook } from '../locate/look-evidence.ts';
import { moveEvidence } from '../locate/move-evidence.ts';
import { type SharedRuns, sharedRunsEvidence } from '../locate/shared-runs-evidence.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import { unplugEvidence } from '../locate/unplug-evidence.ts';
import type { CircuitDuty, CircuitEndKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { CircuitId } from '../quantity/id.ts';
import type { Job, JobEntry } from './job-document.ts';
import { onCircuit } from './path-stretches.ts';

/** Everything a job says about the place of the fault, and how many readings it could not use. */
export interface JobEvidence {
  readonly pieces: readonly Evidence[];
  readonly readingsUnused: number;
}

/**
 * Turns the standing entries of a job, and the other circuits it names, into evidence about places.
 * Entries about runs off the circuit say nothing about it and give none; readings on airbag and
 * high-voltage circuits are not used.
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
  const found: StationRange[] = [];
  let readingsUnused = 0;
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
    if (entry.type === 'reading') {
      const piece = readingEvidence(line, entry);
      if (piece) pieces.push(piece);
      else readingsUnused++;
    }
  }
  if (found.length > 0) pieces.push(faultFound(found));
  const failing = sharedRuns(map, line, job.alsoFailingCircuitIds);
  const working = sharedRuns(map, line, job.workingCircuitIds);
  if (failing.length + working.length > 0) pieces.push(sharedRunsEvidence(failing, working));
  return { pieces, readingsUnused };
}

/** Circuits on which no test is ever asked for, and none believed. */
const lookOnly: ReadonlySet<CircuitDuty> = new Set(['restraint', 'high-voltage']);

/** Evidence of one reading, or null for the kinds that tell nothing about the place yet. */
function readingEvidence(
  line: CircuitLine,
  { reading, state }: Extract<JobEntry, { type: 'reading' }>,
): Evidence | null {
  if (lookOnly.has(line.circuit.duty)) return null;
  if (reading.test === 'move') {
    const ranges = onCircuit(line, reading.stretches);
    const changed = Math.min(reading.changed, reading.tried);
    return ranges.length > 0 ? moveEvidence(ranges, changed, reading.tried) : null;
  }
  if (reading.test !== 'symptom') return null;
  const watchedFromSecondEnd = isWatchedFromSecondEnd(line);
  const apart = line.nodes
    .filter(({ nodeId }) => state.apartNodeIds.includes(nodeId))
    .map(({ stationMm }) => stationMm);
  if (apart.length === 0) return null;
  const stationMm = watchedFromSecondEnd ? Math.max(...apart) : Math.min(...apart);
  return unplugEvidence({ stationMm, watchedFromSecondEnd, stays: reading.stays });
}

/** Ends that feed or watch the wire; the symptom shows there. */
const watchingEnds: ReadonlySet<CircuitEndKind> = new Set([
  'fused-supply',
  'module-input-pull-up',
  'high-side-driver',
  'low-side-driver',
]);

function isWatchedFromSecondEnd({ circuit }: CircuitLine): boolean {
  const [first, second] = circuit.ends;
  return !watchingEnds.has(first.kind) && watchingEnds.has(second.kind);
}

/** What other circuits share with the searched one; those not on the map or sharing nothing fall out. */
function sharedRuns(map: MapDocument, line: CircuitLine, ids: readonly CircuitId[]): SharedRuns[] {
  const shared: SharedRuns[] = [];
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
      .map(({ fromMm, toMm }) => ({ fromMm, toMm }));
    if (ranges.length > 0) shared.push({ ranges, nodeIds });
  }
  return shared;
}
