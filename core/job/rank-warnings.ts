import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RankWarning, UnusedReading } from './ranking.ts';

/**
 * What the user should know about an answer before trusting it: care the circuit needs, and what the
 * map does not say about its path. Each run once.
 * @example
 * rankWarnings(sample.map, sample.line, [{ entryId: 'entry:1', why: 'nothing-apart' }]).map(({ code }) => code) // => ['readings-unused', 'no-scale', 'no-panel-tag']
 */
export function rankWarnings(
  map: MapDocument,
  line: CircuitLine,
  readings: readonly UnusedReading[],
): RankWarning[] {
  const warnings: RankWarning[] = [];
  if (line.circuit.duty === 'restraint') warnings.push({ code: 'restraint-circuit' });
  if (line.circuit.duty === 'high-voltage') warnings.push({ code: 'high-voltage-circuit' });
  if (readings.length > 0) warnings.push({ code: 'readings-unused', count: readings.length, readings });
  if (map.details.scale === null) warnings.push({ code: 'no-scale' });
  if (map.rubSpots.size === 0) warnings.push({ code: 'no-rub-spots' });
  const met = new Set<string>();
  for (const { segment, fromMm, toMm } of line.spans) {
    if (met.has(segment.id)) continue;
    met.add(segment.id);
    if (segment.unchecked) warnings.push({ code: 'segment-unchecked', segmentId: segment.id });
    if (segment.tags.length === 0) {
      warnings.push({ code: 'no-panel-tag', segmentId: segment.id, fromMm, toMm });
    }
    const unconfirmed = new Set(segment.tags.filter((tag) => !tag.confirmed).map((tag) => tag.panelId));
    for (const panelId of unconfirmed) {
      warnings.push({ code: 'tag-unconfirmed', segmentId: segment.id, panelId });
    }
  }
  return warnings;
}
