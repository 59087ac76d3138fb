import { readingsLogLikelihood } from '#core/circuit/reading-likelihood.ts';
import type { Chance } from '#core/quantity/chance.ts';
import { cellMiddles } from '#tests/core/circuit/four-metre-wire.ts';
import { readFault, type Way } from './read-fault.ts';

/** How one way of reading did over many faults. */
export interface Coverage {
  readonly way: Way;
  readonly faults: number;
  /** Share of faults that lay in the region said to hold 80 percent. */
  readonly held: number;
  /** Mean length of that region over the wire's. */
  readonly regionShare: number;
}

const cells = 200;

/** Simulates faults and asks whether the smallest region of 80 percent holds them. */
export function coverage(
  way: Way,
  faults: number,
  chance: Chance,
  options: { readonly runLengthSpread: number; readonly draws: number },
): Coverage {
  let held = 0;
  let region = 0;
  for (let i = 0; i < faults; i++) {
    const fault = readFault(way, chance, options.runLengthSpread);
    const stationsMm = cellMiddles(fault.line.lengthMm, cells);
    const said = readingsLogLikelihood(fault.map, fault.line, fault.taken, {
      stationsMm,
      draws: options.draws,
      knowledge: fault.knowledge,
      seed: i + 1,
    }).byClass['short-to-ground'];
    const top = Math.max(...said);
    const weights = [...said].map((value) => Math.exp(value - top));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const order = weights
      .map((_, cell) => cell)
      .sort((a, b) => (weights[b] as number) - (weights[a] as number));
    const trueCell = Math.min(cells - 1, Math.floor((fault.trueMm / fault.line.lengthMm) * cells));
    let wanted = 0.8 * total;
    for (const cell of order) {
      const weight = weights[cell] as number;
      // The last cell belongs to the region in part only: it counts by that part.
      const part = Math.min(1, wanted / weight);
      region += part / cells;
      if (cell === trueCell) held += part;
      wanted -= weight;
      if (wanted <= 0) break;
    }
  }
  return { way, faults, held: held / faults, regionShare: region / faults };
}
