/** A piece of the circuit, in mm of wire from its first end. */
export interface StationRange {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * The same ground without overlaps, rising: seeing a place twice in one look is seeing it once.
 * @example
 * joinRanges([{ fromMm: 5, toMm: 9 }, { fromMm: 0, toMm: 6 }]) // => [{ fromMm: 0, toMm: 9 }]
 */
export function joinRanges(ranges: readonly StationRange[]): StationRange[] {
  const joined: StationRange[] = [];
  for (const range of [...ranges].sort((a, b) => a.fromMm - b.fromMm || a.toMm - b.toMm)) {
    const last = joined.at(-1);
    if (last && range.fromMm <= last.toMm) {
      joined[joined.length - 1] = { fromMm: last.fromMm, toMm: Math.max(last.toMm, range.toMm) };
    } else joined.push(range);
  }
  return joined;
}

/**
 * Share (0 to 1) of a piece that the ranges cover; the ranges must not overlap one another.
 * @example
 * coveredShare([{ fromMm: 0, toMm: 5 }], 0, 10) // => 0.5
 */
export function coveredShare(ranges: readonly StationRange[], fromMm: number, toMm: number): number {
  let covered = 0;
  for (const range of ranges) {
    covered += Math.max(0, Math.min(toMm, range.toMm) - Math.max(fromMm, range.fromMm));
  }
  return toMm > fromMm ? Math.min(1, covered / (toMm - fromMm)) : 0;
}

/**
 * Distance in mm of wire from a station to the nearest range; zero inside, infinite without ranges.
 * @example
 * distanceToRanges([{ fromMm: 0, toMm: 5 }], 8) // => 3
 */
export function distanceToRanges(ranges: readonly StationRange[], stationMm: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const { fromMm, toMm } of ranges) {
    nearest = Math.min(nearest, Math.max(0, fromMm - stationMm, stationMm - toMm));
  }
  return nearest;
}
