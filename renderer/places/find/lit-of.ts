import { type CircuitLine, segmentStationMm } from '#core/circuit/circuit-line.ts';
import { foundLook } from '#core/job/evidence-entries.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import type { Ranking } from '#core/job/ranking.ts';
import { panelsOff } from '#core/job/standing-entries.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import type { Lit, LitMark, LitStretch } from '../../board/lit.ts';
import { stretchesBetween } from '../../session/stretches-between.ts';
import type { Piece } from '../../straight/straight-picture.ts';
import { accentStep } from '../../theme/tokens.ts';
import { openingRanks } from './opening-ranks.ts';

/** How a job shows on the board: its circuit by likelihood, what was seen, what is off, what is pointed at. */
export function litOf(
  line: CircuitLine,
  ranking: Ranking | null,
  standing: readonly JobEntry[],
  pointed: readonly Piece[],
): Lit {
  return {
    stretches: ranking ? litStretches(line, ranking, !isFound(standing)) : new Map(),
    marks: marksOf(standing),
    panelsOff: panelsOff(standing),
    circuitSegments: new Set(line.spans.map((span) => span.segment.id)),
    pointed: pointed.flatMap((piece) => stretchesBetween(line, piece.fromMm, piece.toMm)),
  };
}

/** Neighbouring cells of one tone and one opening become one stretch, so that the board draws few. */
function litStretches(line: CircuitLine, ranking: Ranking, numbered: boolean): Lit['stretches'] {
  const { cellEdgesMm, cellProbability } = ranking.posterior;
  const count = cellProbability.length;
  const density = Float64Array.from(
    cellProbability,
    (p, cell) => p / ((cellEdgesMm[cell + 1] as number) - (cellEdgesMm[cell] as number)),
  );
  const largest = density.reduce((most, value) => Math.max(most, value), 0);
  const step = (cell: number): number => (largest > 0 ? accentStep((density[cell] as number) / largest) : 0);
  const openings = openingRanks(ranking);
  const peakCells = new Map(
    numbered ? openings.peaks.filter((peak) => peak.worthShowing).map((peak) => [peak.cell, peak.rank]) : [],
  );
  const lit = new Map<SegmentId, LitStretch[]>();
  for (const span of line.spans) {
    const list = lit.get(span.segment.id) ?? [];
    lit.set(span.segment.id, list);
    let start = cellAt(cellEdgesMm, span.fromMm);
    while (start < count && (cellEdgesMm[start] as number) < span.toMm - 1e-6) {
      let end = start;
      let rank: number | undefined = peakCells.get(start);
      while (
        end + 1 < count &&
        (cellEdgesMm[end + 1] as number) < span.toMm - 1e-6 &&
        step(end + 1) === step(start) &&
        openings.ofCell[end + 1] === openings.ofCell[start]
      ) {
        end += 1;
        rank ??= peakCells.get(end);
      }
      const a = segmentStationMm(span, Math.max(span.fromMm, cellEdgesMm[start] as number));
      const b = segmentStationMm(span, Math.min(span.toMm, cellEdgesMm[end + 1] as number));
      list.push({
        fromMm: Math.min(a, b),
        toMm: Math.max(a, b),
        level: (step(start) + 0.5) / 7,
        ...(rank === undefined ? {} : { rank }),
      });
      start = end + 1;
    }
  }
  return lit;
}

/** Once the cause is proved there is nothing left to open, so no numerals. */
const isFound = (standing: readonly JobEntry[]): boolean => foundLook(standing) !== null;

/** First cell that ends beyond a station. */
function cellAt(edgesMm: Float64Array, stationMm: number): number {
  let low = 0;
  let high = edgesMm.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((edgesMm[middle + 1] as number) > stationMm + 1e-6) high = middle;
    else low = middle + 1;
  }
  return low;
}

function marksOf(standing: readonly JobEntry[]): readonly LitMark[] {
  const marks: LitMark[] = [];
  for (const entry of standing) {
    if (entry.type !== 'inspection') continue;
    if (entry.result === 'found') {
      const longest = [...entry.stretches].sort((a, b) => b.toMm - b.fromMm - (a.toMm - a.fromMm))[0];
      if (longest) {
        marks.push({
          kind: 'found',
          segmentId: longest.segmentId,
          atMm: (longest.fromMm + longest.toMm) / 2,
        });
      }
      continue;
    }
    const kind = entry.result === 'seen-sound' ? 'clean' : 'damaged-not-ours';
    for (const stretch of entry.stretches) marks.push({ kind, ...stretch });
  }
  return marks;
}
