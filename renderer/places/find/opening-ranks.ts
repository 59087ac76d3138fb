import type { Ranking } from '#core/job/ranking.ts';

/** Which opening shows each cell first, and the likeliest cell of each opening. */
export interface OpeningRanks {
  /** Rank of the first opening that shows a cell; 0 where none does. */
  readonly ofCell: Int32Array;
  readonly peaks: readonly OpeningPeak[];
}

/** The likeliest cell of one opening. */
export interface OpeningPeak {
  readonly rank: number;
  readonly cell: number;
  readonly stationMm: number;
  /** One of the first few openings, or likely enough to matter: the rest would only crowd the picture. */
  readonly worthShowing: boolean;
}

/** Openings that are always numbered, and the chance from which later ones are too. */
const alwaysNumbered = 6;
const numberedChance = 0.02;

/** Where each opening's numeral stands: on the likeliest cell it shows first. O(cells x openings). */
export function openingRanks(ranking: Ranking): OpeningRanks {
  const { cellEdgesMm, cellProbability } = ranking.posterior;
  const ofCell = new Int32Array(cellProbability.length);
  const peaks: OpeningPeak[] = [];
  for (const step of ranking.digPlan) {
    let best = -1;
    let bestDensity = -1;
    for (let cell = 0; cell < cellProbability.length; cell++) {
      const from = cellEdgesMm[cell] as number;
      const to = cellEdgesMm[cell + 1] as number;
      const middle = (from + to) / 2;
      if (ofCell[cell] !== 0) continue;
      if (!step.look.parts.some((part) => middle >= part.fromMm && middle <= part.toMm)) continue;
      ofCell[cell] = step.rank;
      const density = (cellProbability[cell] as number) / (to - from);
      if (density <= bestDensity) continue;
      bestDensity = density;
      best = cell;
    }
    if (best >= 0) {
      const stationMm = ((cellEdgesMm[best] as number) + (cellEdgesMm[best + 1] as number)) / 2;
      const worthShowing = step.rank <= alwaysNumbered || step.probability >= numberedChance;
      peaks.push({ rank: step.rank, cell: best, stationMm, worthShowing });
    }
  }
  return { ofCell, peaks };
}
