/** How well stated chances fit where the fault really was. */
export interface Calibration {
  /** True chance inside the smallest regions that were said to hold 50, 80 and 95 percent. */
  readonly covered: readonly [fifty: number, eighty: number, ninetyFive: number];
  /** Mean log2 of the stated density at the fault over an even density: bits better than knowing nothing. */
  readonly bits: number;
}

/** The shares of the regions. */
export const regionShares = [0.5, 0.8, 0.95] as const;

/** Compares stated chances per cell with true ones. The last cell of a region counts in part. */
export function calibration(edges: Float64Array, stated: Float64Array, truth: Float64Array): Calibration {
  const lengthMm = (edges[edges.length - 1] as number) - (edges[0] as number);
  const sum = stated.reduce((a, b) => a + b, 0);
  const cells = Array.from(stated, (p, i) => {
    const cellMm = (edges[i + 1] as number) - (edges[i] as number);
    return { share: p / sum, density: p / sum / cellMm, truth: truth[i] as number };
  });
  let bits = 0;
  for (const { density, truth: true_ } of cells) if (true_ > 0) bits += true_ * Math.log2(density * lengthMm);
  cells.sort((a, b) => b.density - a.density);
  const covered = regionShares.map((share) => {
    let wanted = share;
    let inside = 0;
    for (const cell of cells) {
      if (wanted <= 0) break;
      inside += cell.truth * Math.min(1, cell.share > 0 ? wanted / cell.share : 0);
      wanted -= cell.share;
    }
    return inside;
  });
  return { covered: covered as [number, number, number], bits };
}
