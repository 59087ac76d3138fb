import { type CircuitLine, circuitStationMm } from '#core/circuit/circuit-line.ts';
import type { StretchProbability } from '#core/job/ranking.ts';
import type { Hit } from '../../board/hit.ts';
import { stretchAt } from '../../straight/straight-picture.ts';

/** The circuit's stretch under the pointer on the board; null away from the circuit. */
export function stretchUnder(
  line: CircuitLine,
  stretches: readonly StretchProbability[],
  hits: readonly Hit[],
): StretchProbability | null {
  for (const hit of hits) {
    if (hit.kind !== 'segment' && hit.kind !== 'clip') continue;
    const segmentId = hit.kind === 'clip' ? hit.segmentId : hit.id;
    const span = line.spans.find((each) => each.segment.id === segmentId);
    if (!span) continue;
    const stretch = stretchAt(stretches, circuitStationMm(span, hit.stationMm));
    if (stretch) return stretch;
  }
  return null;
}
