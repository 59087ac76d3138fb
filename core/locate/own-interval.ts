import type { Hypotheses } from './hypotheses.ts';
import { joinRanges, type StationRange } from './station-ranges.ts';

/** Where one reading alone puts the fault; `everywhere` tells nothing about the place. */
export type OwnInterval = 'everywhere' | readonly StationRange[];

/** A flat reading holds 80 percent of itself on 80 percent of the wire; this near to it counts as flat. */
const flatShare = 0.74;

/** Ground below this share of the highest is where the likely classes cannot be. */
const leastShare = 1e-6;

/**
 * The smallest stretches that hold 80 percent of one reading's own likelihood, every millimetre as likely
 * before; classes are mixed as `classShares` says.
 * @example
 * ownInterval(layHypotheses(new Float64Array([0, 10, 20]), []), new Float64Array(11), [1, 0, 0, 0, 0]) // => 'everywhere'
 */
export function ownInterval(
  { cellCount, cellEdgesMm, classes }: Hypotheses,
  row: Float64Array,
  classShares: readonly number[],
): OwnInterval {
  const density = new Float64Array(cellCount);
  let top = Number.NEGATIVE_INFINITY;
  classes.forEach((_, k) => {
    if ((classShares[k] as number) <= 0) return;
    for (let i = 0; i < cellCount; i++) top = Math.max(top, row[k * cellCount + i] as number);
  });
  if (top === Number.NEGATIVE_INFINITY) return 'everywhere';
  classes.forEach((_, k) => {
    const share = classShares[k] as number;
    if (share <= 0) return;
    for (let i = 0; i < cellCount; i++)
      density[i] = (density[i] as number) + share * Math.exp((row[k * cellCount + i] as number) - top);
  });
  const lengthOf = (i: number): number => (cellEdgesMm[i + 1] as number) - (cellEdgesMm[i] as number);
  const order = Array.from({ length: cellCount }, (_, i) => i).sort(
    (a, b) => (density[b] as number) - (density[a] as number) || a - b,
  );
  let wanted = 0.8 * density.reduce((sum, value, i) => sum + value * lengthOf(i), 0);
  let heldMm = 0;
  const held: StationRange[] = [];
  for (const i of order) {
    if (wanted <= 0) break;
    wanted -= (density[i] as number) * lengthOf(i);
    heldMm += lengthOf(i);
    held.push({ fromMm: cellEdgesMm[i] as number, toMm: cellEdgesMm[i + 1] as number });
  }
  // Where these classes cannot be at all, a flat reading cannot be either.
  const least = leastShare * density.reduce((most, value) => Math.max(most, value), 0);
  let wholeMm = 0;
  for (let i = 0; i < cellCount; i++) if ((density[i] as number) > least) wholeMm += lengthOf(i);
  return heldMm > flatShare * wholeMm ? 'everywhere' : joinRanges(held);
}
