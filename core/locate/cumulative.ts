import type { StationRange } from './station-ranges.ts';

/** Probability up to each cell border, for reading off any stretch at once. */
export interface Cumulative {
  readonly cellEdgesMm: Float64Array;
  /** Probability before each border; the last is the whole mass. */
  readonly upTo: Float64Array;
}

/**
 * Adds up probability along the circuit.
 * @example
 * cumulate(new Float64Array([0, 10, 20]), new Float64Array([0.2, 0.3])).upTo // => new Float64Array([0, 0.2, 0.5])
 */
export function cumulate(cellEdgesMm: Float64Array, cellProbability: Float64Array): Cumulative {
  const upTo = new Float64Array(cellEdgesMm.length);
  for (let i = 0; i < cellProbability.length; i++) {
    upTo[i + 1] = (upTo[i] as number) + (cellProbability[i] as number);
  }
  return { cellEdgesMm, upTo };
}

/**
 * Probability before a station; cells are even inside. O(log cells).
 * @example
 * probabilityBefore(cumulate(new Float64Array([0, 10, 20]), new Float64Array([0.2, 0.3])), 15) // => 0.35
 */
export function probabilityBefore(curve: Cumulative, stationMm: number): number {
  const { cellEdgesMm: edges, upTo } = curve;
  const last = edges.length - 1;
  if (stationMm <= (edges[0] as number)) return 0;
  if (stationMm >= (edges[last] as number)) return upTo[last] as number;
  let low = 0;
  let high = last - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((edges[middle] as number) <= stationMm) low = middle;
    else high = middle - 1;
  }
  const share = (stationMm - (edges[low] as number)) / ((edges[low + 1] as number) - (edges[low] as number));
  return (upTo[low] as number) + share * ((upTo[low + 1] as number) - (upTo[low] as number));
}

/**
 * Probability of a stretch.
 * @example
 * probabilityWithin(cumulate(new Float64Array([0, 10, 20]), new Float64Array([0.2, 0.3])), { fromMm: 5, toMm: 15 }) // => 0.25
 */
export function probabilityWithin(curve: Cumulative, range: StationRange): number {
  return Math.max(0, probabilityBefore(curve, range.toMm) - probabilityBefore(curve, range.fromMm));
}

/**
 * Station that has half of the mass on either side; the circuit's middle when there is no mass.
 * @example
 * medianStation(cumulate(new Float64Array([0, 10, 20]), new Float64Array([0.1, 0.3]))) // => 13.3333
 */
export function medianStation(curve: Cumulative): number {
  const { cellEdgesMm: edges, upTo } = curve;
  const last = edges.length - 1;
  const half = (upTo[last] as number) / 2;
  if (half <= 0) return ((edges[0] as number) + (edges[last] as number)) / 2;
  let cell = 0;
  while (cell < last - 1 && (upTo[cell + 1] as number) < half) cell++;
  const inCell = (upTo[cell + 1] as number) - (upTo[cell] as number);
  const share = inCell > 0 ? (half - (upTo[cell] as number)) / inCell : 0.5;
  return (edges[cell] as number) + share * ((edges[cell + 1] as number) - (edges[cell] as number));
}
