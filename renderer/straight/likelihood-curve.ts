import type { Posterior } from '#core/job/ranking.ts';

/**
 * The probability curve as columns of equal width: the mean density of the wire under each column, as a
 * share of the largest column. Means, not maxima, so that a peak narrower than a pixel keeps its true
 * weight. O(cells + columns).
 */
export function likelihoodColumns(
  posterior: Pick<Posterior, 'cellEdgesMm' | 'cellProbability'>,
  lengthMm: number,
  columns: number,
): readonly number[] {
  const mass = new Float64Array(columns);
  const perMm = columns / lengthMm;
  const { cellEdgesMm, cellProbability } = posterior;
  for (let cell = 0; cell < cellProbability.length; cell++) {
    const from = (cellEdgesMm[cell] as number) * perMm;
    const to = (cellEdgesMm[cell + 1] as number) * perMm;
    if (to <= from) continue;
    const density = (cellProbability[cell] as number) / (to - from);
    const last = Math.min(columns - 1, Math.ceil(to) - 1);
    for (let column = Math.max(0, Math.floor(from)); column <= last; column++) {
      const overlap = Math.min(to, column + 1) - Math.max(from, column);
      if (overlap > 0) mass[column] = (mass[column] as number) + density * overlap;
    }
  }
  const tallest = mass.reduce((most, value) => Math.max(most, value), 0);
  return Array.from(mass, (value) => (tallest > 0 ? value / tallest : 0));
}

/** A run of columns of one tone, for drawing few shapes. `to` is one past the last column. */
export interface ToneRun {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** Joins neighbouring columns of the same tone. */
export function toneRuns(heights: readonly number[], stepOf: (height: number) => number): readonly ToneRun[] {
  const runs: ToneRun[] = [];
  for (const [column, height] of heights.entries()) {
    const step = stepOf(height);
    const last = runs.at(-1);
    if (last && last.step === step) runs[runs.length - 1] = { ...last, to: column + 1 };
    else runs.push({ from: column, to: column + 1, step });
  }
  return runs;
}

/** A rising series of round marks for a ruler: about `wanted` of them from 0 to `length`. */
export function rulerMarks(length: number, wanted: number): readonly number[] {
  if (!(length > 0)) return [0];
  const rough = length / Math.max(1, wanted);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? 10 * power;
  const marks: number[] = [];
  for (let i = 0; i * step <= length * (1 + 1e-9); i++) marks.push(i * step);
  return marks;
}
