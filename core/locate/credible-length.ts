/**
 * Total length in mm of the smallest set of cells that holds the given share of the mass on the wire;
 * the last cell counts in part. O(cells log cells).
 * @example
 * credibleLength(new Float64Array([0, 10, 20, 30]), new Float64Array([0.1, 0.6, 0.3]), 0.75) // => 15
 */
export function credibleLength(
  cellEdgesMm: Float64Array,
  cellProbability: Float64Array,
  share: number,
): number {
  const cells = Array.from(cellProbability, (probability, i) => ({
    probability,
    lengthMm: (cellEdgesMm[i + 1] as number) - (cellEdgesMm[i] as number),
  }));
  cells.sort((a, b) => b.probability / b.lengthMm - a.probability / a.lengthMm);
  let wanted = share * cellProbability.reduce((sum, p) => sum + p, 0);
  let lengthMm = 0;
  for (const cell of cells) {
    if (wanted <= 0) break;
    lengthMm += cell.lengthMm * Math.min(1, cell.probability > 0 ? wanted / cell.probability : 0);
    wanted -= cell.probability;
  }
  return lengthMm;
}
