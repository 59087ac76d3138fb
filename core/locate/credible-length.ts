/**
 * Total length in mm of the smallest set of cells that holds the given share of the mass on the wire;
 * the cells at the border of the set count in part. O(cells log cells).
 * @example
 * credibleLength(new Float64Array([0, 10, 20, 30]), new Float64Array([0.1, 0.6, 0.3]), 0.75) // => 15
 */
export function credibleLength(
  cellEdgesMm: Float64Array,
  cellProbability: Float64Array,
  share: number,
): number {
  const perMm = cellProbability.map(
    (p, i) => p / ((cellEdgesMm[i + 1] as number) - (cellEdgesMm[i] as number)),
  );
  const wanted = share * cellProbability.reduce((sum, p) => sum + p, 0);
  if (!(wanted > 0)) return 0;
  const denserThan = (least: number): { mass: number; lengthMm: number } => {
    let mass = 0;
    let lengthMm = 0;
    for (let i = 0; i < perMm.length; i++) {
      if (!((perMm[i] as number) > least)) continue;
      mass += cellProbability[i] as number;
      lengthMm += (cellEdgesMm[i + 1] as number) - (cellEdgesMm[i] as number);
    }
    return { mass, lengthMm };
  };
  // Densest first, but only the density at which the set is full is looked for: no cell need be moved.
  const rising = perMm.slice().sort();
  let low = 0;
  let high = rising.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (denserThan(rising[middle] as number).mass < wanted) high = middle;
    else low = middle + 1;
  }
  const border = rising[low] as number;
  const { mass, lengthMm } = denserThan(border);
  return lengthMm + (border > 0 ? Math.max(0, wanted - mass) / border : 0);
}
